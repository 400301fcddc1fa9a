#pragma once
#include <array>
#include <vector>

#include "core/geometry/core_pair.h"

namespace hither {

/// Directions along which two overlapping cores are separated with the least movement, best first: the
/// first is the best found, the others are faces that the search could not tell from it (curved cores only).
struct WaysOut {
    std::array<Vec3, 6> n;
    int count = 0;
};

/// The expanding polytope algorithm (van den Bergen 2001): a polytope inside D grows by support points
/// until its face nearest zero is on D's own boundary.
WaysOut waysOut(const CorePair& pair);

}  // namespace hither
