#pragma once
#include <string>
#include <vector>

#include "app/picture/mount_items.h"

namespace hither {

/// One piece of a drawn solid: a mesh in the solid's own frame G, and what it looks like.
struct DrawnPiece { MeshRef mesh; Look look = Look::metal; };

/// The pieces that a support's solid is drawn with: a wheel with tyre, rim, hub and spokes, a tube with
/// its ends, a cushion with soft edges. What is drawn is within 3 mm of the solid and fills its bounds
/// to 3 mm; a wheel or rim is open where its solid is full.
std::vector<DrawnPiece> drawnSolid(const Support& support, const SupportSolid& solid, MeshStore& store);

}  // namespace hither
