#pragma once
#include <array>
#include <vector>

#include "app/picture/mesh.h"

namespace hither {

/// A surface put together from points that its triangles share (counter-clockwise from outside, metres).
struct Surface {
    std::vector<Vec3> points;
    std::vector<std::array<int, 3>> triangles;
};
/// Dihedral angle from which an edge is drawn and not shaded over.
constexpr double creaseAngle_rad = 0.6108652381980153;  // 35 degrees

/// The surface with normals: smooth across edges that turn by less than `crease_rad`, points doubled at
/// the others. Those, and borders, become its edges. Triangles without area are left out.
Mesh creased(const Surface& surface, double crease_rad = creaseAngle_rad);

}  // namespace hither
