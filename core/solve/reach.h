#pragma once
#include <vector>

#include "core/chain/chain.h"

namespace hither {

/// How much the target point is beyond the chain even with every joint between its links straightened
/// out: a lower bound of the distance that must remain, 0 when it may be reachable. Slides before
/// the first turn (along a rail, over a face) count with their limits; `fixed` freedoms keep q.
double reachShort_m(const Chain& chain, const Eigen::VectorXd& q, const std::vector<char>& fixed, const Vec3& p_W);

}  // namespace hither
