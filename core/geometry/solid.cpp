#include "core/geometry/solid.h"

#include <algorithm>
#include <cassert>
#include <cmath>

namespace hither {
namespace {

// The frame of a solid of revolution between two points: origin midway, z from a to b. When the
// two coincide any axis will do.
Pose frameBetween(const Vec3& a, const Vec3& b) {
    const Vec3 along = b - a;
    const Vec3 middle = 0.5 * (a + b);
    if (!(along.norm() > 0)) return translation(middle);
    const Vec3 hint = std::abs(along.x()) < 0.9 * along.norm() ? Vec3::UnitX() : Vec3::UnitY();
    return frameFromZ(middle, along, hint);
}

double distanceToLine(const Vec3& p, const Vec3& point, const Vec3& axis) { return (p - point).cross(axis).norm(); }

}  // namespace

Solid Solid::sphere(const Vec3& centre, double radius) {
    Solid s;
    s.X_FG = translation(centre);
    s.radius = radius;
    return s;
}

Solid Solid::capsule(const Vec3& a, const Vec3& b, double radius) {
    Solid s;
    s.kind = SolidKind::capsule;
    s.X_FG = frameBetween(a, b);
    s.half.z() = 0.5 * (b - a).norm();
    s.radius = radius;
    return s;
}

Solid Solid::cylinder(const Vec3& a, const Vec3& b, double radius) {
    Solid s = capsule(a, b, radius);
    s.kind = SolidKind::cylinder;
    return s;
}

Solid Solid::box(const Pose& X_FG, const Vec3& half) {
    Solid s;
    s.kind = SolidKind::box;
    s.X_FG = X_FG;
    s.half = half;
    return s;
}

Solid Solid::roundedBox(const Pose& X_FG, const Vec3& half, double radius) {
    Solid s = box(X_FG, half);
    s.kind = SolidKind::roundedBox;
    s.radius = std::min(radius, half.minCoeff());
    return s;
}

Solid Solid::convexHull(std::shared_ptr<const Hull> hull, const Pose& X_FG) {
    assert(hull != nullptr);
    Solid s;
    s.kind = SolidKind::hull;
    s.X_FG = X_FG;
    s.hull = std::move(hull);
    return s;
}

Solid Solid::movedBy(const Pose& X_AF) const {
    Solid s = *this;
    s.X_FG = X_AF * X_FG;
    return s;
}

double Solid::reachFromAxis(const Vec3& point, const Vec3& axis) const {
    const auto reach = [&](const Vec3& p_G) { return distanceToLine(X_FG * p_G, point, axis); };
    switch (kind) {
        case SolidKind::sphere:
            return reach(Vec3::Zero()) + radius;
        case SolidKind::capsule:
        case SolidKind::cylinder:
            return std::max(reach(Vec3(0, 0, half.z())), reach(Vec3(0, 0, -half.z()))) + radius;
        case SolidKind::box:
        case SolidKind::roundedBox: {
            const Vec3 inner = kind == SolidKind::box ? half : Vec3(half.array() - radius);
            double most = 0;
            for (int corner = 0; corner < 8; ++corner) {
                const Vec3 sign((corner & 1) ? 1 : -1, (corner & 2) ? 1 : -1, (corner & 4) ? 1 : -1);
                most = std::max(most, reach(sign.cwiseProduct(inner)));
            }
            return most + (kind == SolidKind::box ? 0.0 : radius);
        }
        case SolidKind::hull: {
            double most = 0;
            for (const Vec3& p : hull->points) most = std::max(most, reach(p));
            return most;
        }
    }
    return 0;
}

Eigen::AlignedBox3d Solid::bounds(const Pose& X_WF) const {
    const Mat3 R = X_WF.linear() * X_FG.linear();
    const Vec3 centre = X_WF * Vec3(X_FG.translation());
    Vec3 extent = Vec3::Constant(radius);
    switch (kind) {
        case SolidKind::sphere:
            break;
        case SolidKind::capsule:
            extent += half.z() * R.col(2).cwiseAbs();
            break;
        case SolidKind::cylinder:  // a disc reaches r sqrt(1 - z^2) along an axis that makes z with its own
            for (int i = 0; i < 3; ++i) {
                extent[i] = half.z() * std::abs(R(i, 2)) + radius * std::hypot(R(i, 0), R(i, 1));
            }
            break;
        case SolidKind::box:
            extent = R.cwiseAbs() * half;
            break;
        case SolidKind::roundedBox:
            extent += R.cwiseAbs() * Vec3(half.array() - radius);
            break;
        case SolidKind::hull: {
            Eigen::AlignedBox3d box;
            for (const Vec3& p : hull->points) box.extend(Vec3(centre + R * p));
            return box;
        }
    }
    return {Vec3(centre - extent), Vec3(centre + extent)};
}

}  // namespace hither
