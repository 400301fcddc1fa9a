#pragma once
#include <optional>

#include "core/geometry/core_pair.h"

namespace hither {

/// Closed forms for pairs of cores, in A's frame. Those that return an optional leave the pairs that
/// (nearly) touch or overlap to the general method.
CoreSeparation pointToPoint(const CorePair& pair);
CoreSeparation pointToSegment(const CorePair& pair);
CoreSeparation segmentToSegment(const CorePair& pair);
/// Inside, the way out through the nearest face.
CoreSeparation pointToBox(const CorePair& pair);
CoreSeparation pointToCylinder(const CorePair& pair);
std::optional<CoreSeparation> segmentToBox(const CorePair& pair);

}  // namespace hither
