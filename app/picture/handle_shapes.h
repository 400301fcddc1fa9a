#pragma once
#include "app/picture/mesh.h"

namespace hither {

/// Handles to take hold of a joint in the picture. All reach at least 16 mm from their middle.

/// A third of a ring about z, in the xy plane, with a ball to grab in its middle, at x.
Mesh turnHandle(double radius);
/// A whole ring with a ball on it, at x: a ball joint, or the end of a neck's arc.
Mesh haloHandle(double radius);
/// Two arrows along x, away from the middle, `aside` off it along z.
Mesh slideHandle(double aside);
/// Four arrows in the xy plane and a ring round them: a grip on a face.
Mesh faceHandle(double radius);
/// A ring in the xy plane with a plus in it, which is one from the side as well: a part can be added here.
Mesh outletHandle();

}  // namespace hither
