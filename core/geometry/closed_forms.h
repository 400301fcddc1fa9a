#pragma once
#include <optional>

#include "core/geometry/core_pair.h"

namespace hither {

/// Closed forms for pairs of cores, from A's origin. Those that return an optional leave the pairs that
/// (nearly) touch or overlap to the general method.
/// Two segments (or points, half 0) that need no frame of their own: A's middle is the origin, B's is at `p`; u are unit
/// vectors along them in the axes of `p`, half the halves of their lengths.
struct SegmentPair {
    Vec3 uA;
    double halfA = 0;
    Vec3 p;
    Vec3 uB;
    double halfB = 0;
};
CoreSeparation pointToPoint(const Vec3& p);
CoreSeparation pointToSegment(const Vec3& p, const Vec3& uB, double halfB);
CoreSeparation segmentToSegment(const SegmentPair& pair);
/// Inside, the way out through the nearest face.
CoreSeparation pointToBox(const CorePair& pair);
CoreSeparation pointToCylinder(const CorePair& pair);
std::optional<CoreSeparation> segmentToBox(const CorePair& pair);

}  // namespace hither
