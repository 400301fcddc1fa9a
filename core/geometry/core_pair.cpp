#include "core/geometry/core_pair.h"

#include <cmath>

namespace hither {

Core::Core(const Solid& solid) {
    switch (solid.kind) {
        case SolidKind::sphere:
            rounding = solid.radius;
            break;
        case SolidKind::capsule:
            kind = CoreKind::segment;
            half.z() = solid.half.z();
            rounding = solid.radius;
            break;
        case SolidKind::cylinder:
            kind = CoreKind::cylinder;
            half.z() = solid.half.z();
            radius = solid.radius;
            break;
        case SolidKind::box:
            kind = CoreKind::box;
            half = solid.half;
            break;
        case SolidKind::roundedBox:
            kind = CoreKind::box;
            rounding = solid.radius;
            half = (solid.half.array() - solid.radius).max(0.0);
            break;
        case SolidKind::hull:
            kind = CoreKind::hull;
            hull = solid.hull.get();
            break;
    }
}

Vec3 Core::support(const Vec3& n) const {
    switch (kind) {
        case CoreKind::point:
            return Vec3::Zero();
        case CoreKind::segment:
            return {0, 0, std::copysign(half.z(), n.z())};
        case CoreKind::box:
            return {std::copysign(half.x(), n.x()), std::copysign(half.y(), n.y()), std::copysign(half.z(), n.z())};
        case CoreKind::cylinder: {
            const double across = std::sqrt(n.x() * n.x() + n.y() * n.y());
            const double z = std::copysign(half.z(), n.z());
            // A direction along the axis touches the whole disc; its centre will do.
            if (across <= 1e-300) return {0, 0, z};
            return {radius * n.x() / across, radius * n.y() / across, z};
        }
        case CoreKind::hull: {
            const Vec3* best = hull->points.data();
            double most = best->dot(n);
            for (const Vec3& p : hull->points) {
                const double along = p.dot(n);
                if (along > most) {
                    most = along;
                    best = &p;
                }
            }
            return *best;
        }
    }
    return Vec3::Zero();
}

Vec3 anyPerpendicular(const Vec3& v) {
    const Vec3 a = v.cwiseAbs();
    const Vec3 other = a.x() <= a.y() && a.x() <= a.z() ? Vec3::UnitX() : a.y() <= a.z() ? Vec3::UnitY() : Vec3::UnitZ();
    const Vec3 p = v.cross(other);
    const double length = p.norm();
    return length > 0 ? Vec3(p / length) : Vec3::UnitZ();
}

}  // namespace hither
