#pragma once
#include <vector>

#include "app/picture/mesh.h"

namespace hither {

/// A corner of a profile that is turned about z: distance from the axis, height, and whether the
/// surface has a crease there.
struct Turned { double radius = 0, height = 0; bool crease = false; };

/// The profile turned about z of X by a full turn of `around` segments, its corners on the true circle.
/// `closed`: the profile returns to its first corner (a ring). Open ends off the axis are borders.
/// Either order of the corners will do: the outside is where the volume is positive.
Mesh revolved(const Pose& X, std::vector<Turned> profile, int around, bool closed = false);

}  // namespace hither
