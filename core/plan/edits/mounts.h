#pragma once
#include <vector>

#include "core/plan/edits/edited.h"

namespace hither {

/// Edits of a mount as a whole. Mounts are named by their option and their id.
/// `data` holds the parts that the plan may not have yet; each is copied into it.
Edited addMount(const Plan& plan, const std::string& option, const Mount& mount, const std::vector<Part>& data);
Edited removeMount(const Plan& plan, const std::string& option, const std::string& mount);
Edited renameMount(const Plan& plan, const std::string& option, const std::string& mount, const std::string& name);
/// Which site its switch serves; an empty site: none.
Edited retargetMount(const Plan& plan, const std::string& option, const std::string& mount, const std::string& site);
/// Where it is fixed. Refused when the support has no such attachment or the first part no grip for it.
Edited setPlacement(const Plan& plan, const std::string& option, const std::string& mount, const std::string& support,
                    const std::string& attachment, const Placement& place);
Edited setPlacementKept(const Plan& plan, const std::string& option, const std::string& mount, bool kept);

}  // namespace hither
