#pragma once
#include <vector>

#include "app/picture/mesh.h"

namespace hither {

/// One row of a surface turned about z: its radius and height (m) and which way its normal leans
/// (`out` from the axis, `up` along it; made to length 1). `line`: a drawing shows this row as an edge.
struct TurnedRow {
    double radius = 0, height = 0;
    double out = 1, up = 0;
    bool line = false;
};
/// Rows from low to high. `lobes` waves go round it, each dipping inward by `dip` of the radius.
Mesh turnedMesh(const Pose& X, const std::vector<TurnedRow>& rows, int around, int lobes = 0, double dip = 0);

/// Segments that a turned piece of this radius needs to look round.
int roundSegments(double radius);

/// Which ends of a rod or cylinder are seen; one that is buried in another piece is left open.
struct OpenEnds { bool a = false, b = false; };

/// Machined and moulded pieces with broken edges, for few triangles; none reaches beyond the plain shape.
/// Thin cylinders keep their sharp rims: nobody sees a millimetre broken off them.
Mesh softCylinder(const Vec3& a, const Vec3& b, double radius, double bevel = 0.001, OpenEnds open = {});
Mesh softRod(const Vec3& a, const Vec3& b, double radius, OpenEnds open = {});   ///< a capsule: round ends beyond a and b, but for open ones
Mesh softBall(const Vec3& centre, double radius);
Mesh softBox(const Pose& X, const Vec3& half, double bevel = 0.001);
/// A knob to turn by hand on its axis from a (the side of the screw) to b.
Mesh lobedKnob(const Vec3& a, const Vec3& b, double radius);
/// A screw's head with six flats, from a (its seat) to b.
Mesh hexHead(const Vec3& a, const Vec3& b, double radius);
/// A threaded stud along z of X from 0 to `length`, with a ring for each turn of its thread.
Mesh studMesh(const Pose& X, double majorRadius, double pitch, double length);
/// A flat patch in the xy plane of X that faces z: a hole's mouth, a slot, a label-like face.
Mesh patchMesh(const Pose& X, const std::vector<Eigen::Vector2d>& outline);
std::vector<Eigen::Vector2d> circleOutline(double radius, int around);
/// A bar with round ends, `length` between the middles of its ends, along x.
std::vector<Eigen::Vector2d> slotOutline(double length, double radius, int aroundEnd);
/// Part of a ring: between the angles from and to (rad, from < to), its outer radius going evenly from the first to the second.
std::vector<Eigen::Vector2d> ringSector(double inner, double outerFrom, double outerTo, double from, double to, int steps);

}  // namespace hither
