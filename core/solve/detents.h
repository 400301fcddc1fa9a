#pragma once
#include "core/solve/search.h"

namespace hither {

/// Freedoms that may move but stop only at steps, with at least one step inside their limits.
std::vector<int> detentedFreedoms(const Search& search);

/// Puts the detented freedoms of a setting on steps, holds them there and brings the others as
/// near to the target as they get. Tries the nearest steps first, then neighbours (both sides of
/// the four freedoms that are farthest off their steps); the first that meets the target, else
/// the nearest.
struct Snapped { Eigen::VectorXd q; Residual::Value value; int iterations = 0; };
Snapped snapToDetents(const Search& search, const std::vector<int>& detented, const Eigen::VectorXd& q);

}  // namespace hither
