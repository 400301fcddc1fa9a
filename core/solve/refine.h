#pragma once
#include "core/solve/search.h"

namespace hither {

/// Moves a solution along itself, where the mount has freedoms to spare, toward more clearance and
/// away from limits; the target stays met. Leaves alone what has both: parts must not jump for nothing.
/// Returns the iterations spent.
int refine(const Search& search, const FlatChain& flat, Descent& descent, Eigen::VectorXd& q);

}  // namespace hither
