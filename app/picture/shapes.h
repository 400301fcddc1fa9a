#pragma once
#include <vector>

#include "app/picture/mesh.h"
#include "core/geometry/solid.h"

namespace hither {

/// Surfaces of simple shapes with their feature edges. `around` counts the segments of a full turn.
Mesh sphereMesh(const Vec3& centre, double radius, int around = 20);
Mesh boxMesh(const Pose& X, const Vec3& half);
Mesh roundedBoxMesh(const Pose& X, const Vec3& half, double radius);
Mesh cylinderMesh(const Vec3& a, const Vec3& b, double radius, int around = 20);
Mesh coneMesh(const Vec3& a, const Vec3& b, double radiusA, double radiusB, int around = 20);
Mesh capsuleMesh(const Vec3& a, const Vec3& b, double radius, int around = 16);
Mesh torusMesh(const Pose& X, double ringRadius, double tubeRadius, int around = 28, int tube = 10);
/// A profile (radius, height) turned about z of X; creases where the profile turns by more than 30 degrees.
Mesh latheMesh(const Pose& X, const std::vector<Eigen::Vector2d>& profile, int around = 20);
/// A round tube along a smooth line of at least two points.
Mesh tubeMesh(const std::vector<Vec3>& line, double radius, int around = 12);
/// A flat outline (x, y of X, counter-clockwise, may be concave) pushed along z from 0 to `height`.
Mesh extrudedMesh(const Pose& X, const std::vector<Eigen::Vector2d>& outline, double height);
/// Any solid of the core as it is.
Mesh solidMesh(const Solid& solid);

}  // namespace hither
