#include <algorithm>
#include <cmath>

#include "core/geometry/distance.h"

namespace hither {
namespace {

// A ray in the solid's own frame, direction of unit length.
struct LocalRay {
    Vec3 origin;
    Vec3 u;
};

struct LocalHit {
    double along = 0;
    Vec3 normal = Vec3::Zero();
};

void keepNearer(std::optional<LocalHit>& best, const std::optional<LocalHit>& other) {
    if (other && (!best || other->along < best->along)) best = other;
}

// The ray clipped by planes: the last plane entered is the face that is hit.
class Clip {
public:
    // Keeps n . x <= offset; false when nothing is left.
    bool plane(const Vec3& n, double offset, const LocalRay& ray) {
        const double height = n.dot(ray.origin) - offset;
        const double speed = n.dot(ray.u);
        if (speed == 0) return height <= 0;
        const double t = -height / speed;
        if (speed < 0) {
            if (t > enter_) {
                enter_ = t;
                normal_ = n;
            }
        } else {
            leave_ = std::min(leave_, t);
        }
        return enter_ <= leave_ && leave_ >= 0;
    }
    std::optional<LocalHit> hit(const LocalRay& ray) const {
        if (enter_ <= 0) return LocalHit{0, normal_.isZero() || enter_ < 0 ? Vec3(-ray.u) : normal_};
        return LocalHit{enter_, normal_};
    }

private:
    double enter_ = -std::numeric_limits<double>::infinity();
    double leave_ = std::numeric_limits<double>::infinity();
    Vec3 normal_ = Vec3::Zero();
};

std::optional<LocalHit> castBox(const LocalRay& ray, const Vec3& half) {
    Clip clip;
    for (int i = 0; i < 3; ++i) {
        if (!clip.plane(Vec3::Unit(i), half[i], ray) || !clip.plane(-Vec3::Unit(i), half[i], ray)) return std::nullopt;
    }
    return clip.hit(ray);
}

std::optional<LocalHit> castHull(const LocalRay& ray, const Hull& hull) {
    Clip clip;
    for (const auto& f : hull.faces) {
        const Vec3& a = hull.points[static_cast<std::size_t>(f[0])];
        const Vec3& b = hull.points[static_cast<std::size_t>(f[1])];
        const Vec3& c = hull.points[static_cast<std::size_t>(f[2])];
        const Vec3 n = (b - a).cross(c - a).normalized();
        if (!clip.plane(n, n.dot(a), ray)) return std::nullopt;
    }
    return clip.hit(ray);
}

// The nearer root of |o + t u| = r with o from the point of the ray nearest the centre, which keeps the
// digits of far origins.
std::optional<LocalHit> castSphere(const LocalRay& ray, const Vec3& centre, double radius) {
    const Vec3 o = ray.origin - centre;
    if (o.squaredNorm() <= radius * radius) return LocalHit{0, -ray.u};
    const double nearest = -o.dot(ray.u);
    const double miss2 = (o + nearest * ray.u).squaredNorm();
    if (nearest < 0 || miss2 > radius * radius) return std::nullopt;
    const double along = std::max(0.0, nearest - std::sqrt(radius * radius - miss2));
    return LocalHit{along, (o + along * ray.u).normalized()};
}

// The side of a cylinder about the line through `centre` along unit `axis`, between -half and half of it.
// Nothing when the ray starts inside the endless cylinder: the ends answer then.
std::optional<LocalHit> castSide(const LocalRay& ray, const Vec3& centre, const Vec3& axis, double half, double radius) {
    const Vec3 o = ray.origin - centre;
    const Vec3 across = ray.u - axis * axis.dot(ray.u);
    const double speed2 = across.squaredNorm();
    const Vec3 from = o - axis * axis.dot(o);
    if (!(speed2 > 0) || from.squaredNorm() <= radius * radius) return std::nullopt;
    const double nearest = -from.dot(across) / speed2;
    const double miss2 = (from + nearest * across).squaredNorm();
    if (nearest < 0 || miss2 > radius * radius) return std::nullopt;
    const double along = std::max(0.0, nearest - std::sqrt((radius * radius - miss2) / speed2));
    if (std::abs(axis.dot(o + along * ray.u)) > half) return std::nullopt;
    return LocalHit{along, (from + along * across).normalized()};
}

std::optional<LocalHit> castCapsule(const LocalRay& ray, const Vec3& centre, const Vec3& axis, double half, double radius) {
    const Vec3 o = ray.origin - centre;
    const Vec3 off = o - axis * std::clamp(axis.dot(o), -half, half);
    if (off.squaredNorm() <= radius * radius) return LocalHit{0, -ray.u};
    std::optional<LocalHit> best = castSide(ray, centre, axis, half, radius);
    keepNearer(best, castSphere(ray, centre + half * axis, radius));
    keepNearer(best, castSphere(ray, centre - half * axis, radius));
    return best;
}

std::optional<LocalHit> castCylinder(const LocalRay& ray, double half, double radius) {
    const Vec3& o = ray.origin;
    const double across2 = o.x() * o.x() + o.y() * o.y();
    if (across2 <= radius * radius && std::abs(o.z()) <= half) return LocalHit{0, -ray.u};
    std::optional<LocalHit> best = castSide(ray, Vec3::Zero(), Vec3::UnitZ(), half, radius);
    if (std::abs(o.z()) > half && o.z() * ray.u.z() < 0) {
        const double end = std::copysign(half, o.z());
        const double along = (end - o.z()) / ray.u.z();
        const Vec3 p = o + along * ray.u;
        if (p.x() * p.x() + p.y() * p.y() <= radius * radius) {
            keepNearer(best, LocalHit{along, Vec3(0, 0, std::copysign(1.0, o.z()))});
        }
    }
    return best;
}

// A rounded box is the union of three boxes, each grown along one axis, and a capsule on each of its twelve edges.
std::optional<LocalHit> castRoundedBox(const LocalRay& ray, const Vec3& half, double radius) {
    const Vec3 inner = (half.array() - radius).max(0.0);
    std::optional<LocalHit> best;
    if (!castBox(ray, half)) return best;
    for (int i = 0; i < 3; ++i) {
        Vec3 grown = inner;
        grown[i] = half[i];
        keepNearer(best, castBox(ray, grown));
        for (int corner = 0; corner < 4; ++corner) {
            Vec3 centre = Vec3::Zero();
            centre[(i + 1) % 3] = (corner & 1) ? inner[(i + 1) % 3] : -inner[(i + 1) % 3];
            centre[(i + 2) % 3] = (corner & 2) ? inner[(i + 2) % 3] : -inner[(i + 2) % 3];
            keepNearer(best, castCapsule(ray, centre, Vec3::Unit(i), inner[i], radius));
        }
    }
    return best;
}

std::optional<LocalHit> castLocal(const LocalRay& ray, const Solid& solid) {
    switch (solid.kind) {
        case SolidKind::sphere:
            return castSphere(ray, Vec3::Zero(), solid.radius);
        case SolidKind::capsule:
            return castCapsule(ray, Vec3::Zero(), Vec3::UnitZ(), solid.half.z(), solid.radius);
        case SolidKind::cylinder:
            return castCylinder(ray, solid.half.z(), solid.radius);
        case SolidKind::box:
            return castBox(ray, solid.half);
        case SolidKind::roundedBox:
            return castRoundedBox(ray, solid.half, solid.radius);
        case SolidKind::hull:
            return castHull(ray, *solid.hull);
    }
    return std::nullopt;
}

}  // namespace

std::optional<RayHit> castRay(const Ray& ray, const Solid& solid_W) {
    const Mat3 R = solid_W.X_FG.linear();
    const Vec3 u_W = ray.direction_W.normalized();
    const LocalRay local{R.transpose() * (ray.origin_W - solid_W.X_FG.translation()), R.transpose() * u_W};
    const std::optional<LocalHit> hit = castLocal(local, solid_W);
    if (!hit) return std::nullopt;
    return RayHit{hit->along, ray.origin_W + hit->along * u_W, R * hit->normal};
}

}  // namespace hither
