#pragma once
#include "core/geometry/core_pair.h"

namespace hither {

/// The signed separation of cores that overlap, touch or nearly touch, where the difference of the
/// nearest points says little about the direction. `guess` (when not zero) is a direction that already
/// separates them.
CoreSeparation nearOrOverlapping(const CorePair& pair, const Vec3& guess);

}  // namespace hither
