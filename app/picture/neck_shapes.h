#pragma once
#include <array>

#include "app/picture/mesh.h"
#include "core/catalogue/element.h"

namespace hither {

/// Curvatures of a neck's three arcs, 1/m: (kx, ky) of each.
using NeckBend = std::array<double, 6>;

/// A gooseneck bent as set, in the frame before its first arc: its surface within 4 mm (a neck's own
/// thickness) of the true arcs, ringed about every 6 mm.
Mesh neckMesh(const BendElement& neck, const NeckBend& bend);

}  // namespace hither
