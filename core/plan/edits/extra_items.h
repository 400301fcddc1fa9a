#pragma once
#include "core/plan/edits/edited.h"

namespace hither {

/// Edits of the rows of the parts list that are no part of a mount: batteries, tape, a strap.
Edited addExtraItem(const Plan& plan, const ExtraItem& item);
Edited replaceExtraItem(const Plan& plan, const std::string& item, const ExtraItem& by);
Edited removeExtraItem(const Plan& plan, const std::string& item);

}  // namespace hither
