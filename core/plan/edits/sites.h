#pragma once
#include "core/plan/edits/edited.h"

namespace hither {

/// Edits of the activation sites. Refused: an empty id or one that is taken, numbers that are none, a
/// direction without length, a site on the body while there is no person.
Edited addSite(const Plan& plan, const SiteSpec& site);
/// Also under another id: mounts that serve it follow.
Edited replaceSite(const Plan& plan, const std::string& site, const SiteSpec& by);
/// Refused while a mount serves it.
Edited removeSite(const Plan& plan, const std::string& site);

}  // namespace hither
