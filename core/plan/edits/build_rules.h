#pragma once
#include <memory>
#include <string>
#include <vector>

#include "core/chain/mount.h"
#include "core/plan/edits/edited.h"

namespace hither {

/// Why a row of parts cannot be a mount, or nothing: it has at least one part and not too many, a grip
/// comes first and only there, a switch only last, and every part between them has both ends. Whether
/// ports mate is a question for Fit. All parts are looked up in the plan's copies.
std::string cannotBuild(const Plan& plan, const std::vector<MountPart>& parts);

/// Copies a part's data into the plan unless it has that part already: what somebody measured stays.
void copyPart(Plan& plan, const Part& part);

}  // namespace hither
