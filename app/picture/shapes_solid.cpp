#include "app/picture/creased.h"
#include "app/picture/shapes.h"

namespace hither {

namespace {

/// Segments of a full turn: enough that the drawn surface is within about 1 mm of the round one.
int segments(double radius) { return radius > 0.12 ? 36 : radius > 0.04 ? 24 : radius > 0.012 ? 14 : 10; }

}  // namespace

Mesh solidMesh(const Solid& solid) {
    const Vec3 up(0, 0, solid.half.z());
    Mesh mesh;
    switch (solid.kind) {
        case SolidKind::sphere: mesh = sphereMesh(Vec3::Zero(), solid.radius, segments(solid.radius)); break;
        case SolidKind::capsule: mesh = capsuleMesh(-up, up, solid.radius, segments(solid.radius)); break;
        case SolidKind::cylinder: mesh = cylinderMesh(-up, up, solid.radius, segments(solid.radius)); break;
        case SolidKind::box: mesh = boxMesh(Pose::Identity(), solid.half); break;
        case SolidKind::roundedBox: mesh = roundedBoxMesh(Pose::Identity(), solid.half, solid.radius); break;
        case SolidKind::hull: {
            Surface surface;
            surface.points = solid.hull->points;
            surface.triangles = solid.hull->faces;
            mesh = creased(surface);
            break;
        }
    }
    Mesh placed;
    placed.add(mesh, solid.X_FG);
    return placed;
}

}  // namespace hither
