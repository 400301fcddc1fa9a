#pragma once
#include "core/plan/edits/edited.h"

namespace hither {

/// Edits of the supports and of the person who rests on one. A support that cannot be made (unknown
/// kind, dimension out of range) is refused with the first problem.
Edited addSupport(const Plan& plan, const SupportSpec& support);
/// Also under another id: everything that refers to it follows. Refused when a mount would lose what it is fixed to.
Edited replaceSupport(const Plan& plan, const std::string& support, const SupportSpec& by);
/// Refused while a mount is fixed to it, the person rests on it, or something goes with it.
Edited removeSupport(const Plan& plan, const std::string& support);
/// Nobody: refused while a site is on the body.
Edited setPerson(const Plan& plan, const std::optional<PersonSpec>& person);

}  // namespace hither
