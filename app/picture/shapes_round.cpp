#include <algorithm>
#include <cmath>

#include "app/picture/revolved.h"
#include "app/picture/shapes.h"
#include "core/units/quantity.h"

namespace hither {

namespace {

/// A frame at `a` whose z points to `b`.
Pose along(const Vec3& a, const Vec3& b) {
    const Vec3 line = b - a;
    return frameFromZ(a, line.norm() > 0 ? line : Vec3::UnitZ(), Vec3::UnitX());
}

/// A quarter or half circle of the profile from one angle above level to another.
void arc(std::vector<Turned>& profile, double radius, double height, double from, double to, int steps) {
    for (int i = 0; i <= steps; ++i) {
        const double angle = from + (to - from) * i / steps;
        const bool pole = std::abs(std::abs(angle) - 0.5 * pi) < 1e-9;
        profile.push_back({pole ? 0 : radius * std::cos(angle), height + radius * std::sin(angle)});
    }
}

}  // namespace

Mesh sphereMesh(const Vec3& centre, double radius, int around) {
    std::vector<Turned> profile;
    arc(profile, radius, 0, -0.5 * pi, 0.5 * pi, std::max(4, around / 2));
    return revolved(translation(centre), profile, around);
}

Mesh cylinderMesh(const Vec3& a, const Vec3& b, double radius, int around) { return coneMesh(a, b, radius, radius, around); }

Mesh coneMesh(const Vec3& a, const Vec3& b, double radiusA, double radiusB, int around) {
    const double length = (b - a).norm();
    return revolved(along(a, b), {{0, 0}, {radiusA, 0, true}, {radiusB, length, true}, {0, length}}, around);
}

Mesh capsuleMesh(const Vec3& a, const Vec3& b, double radius, int around) {
    std::vector<Turned> profile;
    const int quarter = std::max(2, around / 4);
    arc(profile, radius, 0, -0.5 * pi, 0, quarter);
    arc(profile, radius, (b - a).norm(), 0, 0.5 * pi, quarter);
    return revolved(along(a, b), profile, around);
}

Mesh torusMesh(const Pose& X, double ringRadius, double tubeRadius, int around, int tube) {
    std::vector<Turned> profile;
    for (int i = 0; i < tube; ++i) profile.push_back({ringRadius + tubeRadius * std::cos(2 * pi * i / tube), tubeRadius * std::sin(2 * pi * i / tube)});
    return revolved(X, profile, around, true);
}

Mesh latheMesh(const Pose& X, const std::vector<Eigen::Vector2d>& profile, int around) {
    const double cosine = std::cos(radians(30) + 1e-9);
    std::vector<Turned> turned;
    for (std::size_t i = 0; i < profile.size(); ++i) {
        const bool inner = i > 0 && i + 1 < profile.size();
        const bool crease = inner && (profile[i] - profile[i - 1]).normalized().dot((profile[i + 1] - profile[i]).normalized()) < cosine;
        turned.push_back({profile[i].x(), profile[i].y(), crease});
    }
    return revolved(X, turned, around);
}

}  // namespace hither
