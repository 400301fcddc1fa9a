#pragma once
#include <array>
#include <memory>
#include <string>
#include <vector>

#include "core/geometry/pose.h"

namespace hither {

enum class SolidKind { sphere, capsule, cylinder, box, roundedBox, hull };

/// Corners of a convex hull with its faces, in the solid's own frame, metres. Faces are triangles,
/// counter-clockwise seen from outside. At least four points that are not all in one plane.
struct Hull {
    std::vector<Vec3> points;
    std::vector<std::array<int, 3>> faces;
    bool operator==(const Hull&) const = default;
};
/// Convex hull of a cloud; null when all points lie (nearly) in one plane or there are fewer than four.
std::shared_ptr<const Hull> makeHull(const std::vector<Vec3>& cloud);

/// A convex solid: one piece of a part, a support, a body or a keep-out, in the frame F of the
/// thing that carries it. X_FG places the solid's own frame G, whose origin is its centre:
///   sphere      radius
///   capsule     axis along G's z, `half.z` = half the length between its two end-ball centres, radius
///   cylinder    axis along G's z, `half.z` = half the length, radius
///   box         `half` = half the edge lengths
///   roundedBox  `half` = half the outer edge lengths, edges and corners rounded by `radius` (<= the least half)
///   hull        `hull`, in G
struct Solid {
    SolidKind kind = SolidKind::sphere;
    Pose X_FG = Pose::Identity();
    Vec3 half = Vec3::Zero();
    double radius = 0;
    std::shared_ptr<const Hull> hull;

    static Solid sphere(const Vec3& centre, double radius);
    static Solid capsule(const Vec3& a, const Vec3& b, double radius);
    static Solid cylinder(const Vec3& a, const Vec3& b, double radius);
    static Solid box(const Pose& X_FG, const Vec3& half);
    static Solid roundedBox(const Pose& X_FG, const Vec3& half, double radius);
    static Solid convexHull(std::shared_ptr<const Hull> hull, const Pose& X_FG = Pose::Identity());

    /// The same solid carried by another frame: X_AF * X_FG.
    Solid movedBy(const Pose& X_AF) const;
    /// Farthest that any of its points is from the line through `point` along unit `axis` (F frame),
    /// an upper bound: used to bound how far a turn about that line can move it.
    double reachFromAxis(const Vec3& point, const Vec3& axis) const;
    /// Axis-aligned bounds of the solid in the frame of X_WF.
    Eigen::AlignedBox3d bounds(const Pose& X_WF) const;
    /// Every figure is the same; hulls by content.
    friend bool operator==(const Solid& a, const Solid& b) {
        return a.kind == b.kind && a.X_FG.affine() == b.X_FG.affine() && a.half == b.half && a.radius == b.radius &&
               (a.hull == b.hull || (a.hull && b.hull && *a.hull == *b.hull));
    }
};

}  // namespace hither
