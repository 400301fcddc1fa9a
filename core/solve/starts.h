#pragma once
#include "core/solve/flat_chain.h"

namespace hither {

/// The index-th starting point (from 1): evenly spread over the boxes and discs by the leaped Halton
/// sequence (Kocis and Whiten 1997), the same every time.
Eigen::VectorXd startingPoint(const FlatChain& flat, unsigned index);

}  // namespace hither
