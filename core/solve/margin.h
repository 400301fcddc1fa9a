#pragma once
#include <vector>

#include "core/chain/chain.h"

namespace hither {

/// Least distance of any freedom to a limit, as a share of its range (a disc: of its diameter), 0
/// at or beyond it, 0.5 in the middle of all; full turns, fixed freedoms and those without room
/// have no say.
double limitMargin(const Chain& chain, const Eigen::VectorXd& q, const std::vector<char>& fixed);
/// 0 when every freedom is at least `share` of its range inside its limits, else the sum of squares
/// of how much of that is missing (1 each at a limit): smooth, to be pushed down.
double limitPressure(const Chain& chain, const Eigen::VectorXd& q, const std::vector<char>& fixed, double share);

}  // namespace hither
