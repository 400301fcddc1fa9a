#pragma once
#include "core/plan/edits/edited.h"

namespace hither {

/// Edits of the volumes of an option that must stay free of the mount.
Edited addKeepOut(const Plan& plan, const std::string& option, const KeepOut& keepOut);
Edited replaceKeepOut(const Plan& plan, const std::string& option, const std::string& keepOut, const KeepOut& by);
Edited removeKeepOut(const Plan& plan, const std::string& option, const std::string& keepOut);

}  // namespace hither
