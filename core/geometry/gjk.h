#pragma once
#include "core/geometry/core_pair.h"

namespace hither {

/// What the descent found. When `overlap` is false the cores are `separation.distance` > 0 apart and
/// `scale` is the largest |b - a| met, against which rounding has to be judged.
struct GjkResult {
    bool overlap = false;
    CoreSeparation separation;
    double scale = 0;
};

/// Distance between two convex cores by the algorithm of Gilbert, Johnson and Keerthi (1988), with B
/// moved by `shift_A` first. Ends when the distance of the points found and the gap of the planes
/// perpendicular to their difference, which enclose the true distance, agree to about 1e-14 of the scale, or
/// when rounding allows no more progress. `guess` is a first direction from A to B.
GjkResult gjk(const CorePair& pair, const Vec3& shift_A, const Vec3& guess);

}  // namespace hither
