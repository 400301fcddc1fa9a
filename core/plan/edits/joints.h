#pragma once
#include <vector>

#include "core/plan/edits/edited.h"

namespace hither {

/// Edits of settings; `at` is the part's number in the mount, from 0. Values are SI, in the order of
/// the joint's element. A value outside the joint's range is taken: Reach says so.
Edited setJoint(const Plan& plan, const std::string& option, const std::string& mount, std::size_t at, const std::string& joint, const std::vector<double>& q);
/// Kept: the solver leaves it alone.
Edited setJointKept(const Plan& plan, const std::string& option, const std::string& mount, std::size_t at, const std::string& joint, bool kept);
Edited setClocking(const Plan& plan, const std::string& option, const std::string& mount, std::size_t at, double clocking_rad);
Edited setClockingKept(const Plan& plan, const std::string& option, const std::string& mount, std::size_t at, bool kept);
/// All values of a mount at once, as the solver gave them for `chain`, which was made from this mount.
/// Refused when the mount is no longer the one that the chain was made from.
Edited applySolved(const Plan& plan, const std::string& option, const std::string& mount, const Chain& chain, const Eigen::VectorXd& q);

}  // namespace hither
