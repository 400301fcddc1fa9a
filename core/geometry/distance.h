#pragma once
#include <optional>

#include "core/geometry/solid.h"

namespace hither {

/// The least distance between two solids. Invariants (tested): p_WA lies on A's surface, p_WB on
/// B's; normal_AB is a unit vector from A toward B; p_WB - p_WA = distance * normal_AB. A negative
/// distance is how far they overlap: moving B by -distance along normal_AB makes them just touch.
struct Distance {
    double distance = 0;
    Vec3 p_WA = Vec3::Zero();
    Vec3 p_WB = Vec3::Zero();
    Vec3 normal_AB = Vec3::UnitZ();
};

/// Exact (to the table in DEVELOPERS.md) for every pair of kinds, in W. X_WA places the frame that
/// carries A. Closed forms for spheres, capsules and boxes; otherwise GJK on the cores with their
/// rounding radius added (Gilbert, Johnson and Keerthi 1988), and EPA (van den Bergen 2001) or a
/// support-direction search when the cores overlap.
Distance distance(const Solid& A, const Pose& X_WA, const Solid& B, const Pose& X_WB);
inline Distance distance(const Solid& A_W, const Solid& B_W) { return distance(A_W, Pose::Identity(), B_W, Pose::Identity()); }

struct Ray { Vec3 origin_W; Vec3 direction_W; };  ///< the direction need not be of unit length, but not zero
struct RayHit { double along_m = 0; Vec3 point_W; Vec3 normal_W; };  ///< outward normal at the hit; along in metres
/// First hit of the surface from outside; from inside, along 0 at the origin itself.
std::optional<RayHit> castRay(const Ray& ray, const Solid& solid_W);

}  // namespace hither
