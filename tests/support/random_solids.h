#pragma once
#include <array>
#include <random>

#include "core/geometry/distance.h"

namespace hither::test {

constexpr std::array<SolidKind, 6> allKinds{SolidKind::sphere, SolidKind::capsule, SolidKind::cylinder,
                                            SolidKind::box, SolidKind::roundedBox, SolidKind::hull};
inline const char* name(SolidKind kind) {
    constexpr std::array<const char*, 6> names{"sphere", "capsule", "cylinder", "box", "rounded box", "hull"};
    return names[static_cast<std::size_t>(kind)];
}

/// Solids and poses from one fixed seed, sizes 6 to 300 mm as the parts of mounts and bodies have them.
class RandomSolids {
public:
    explicit RandomSolids(unsigned seed) : engine_(seed) {}
    double uniform(double low, double high) { return std::uniform_real_distribution<double>(low, high)(engine_); }
    Vec3 direction() {
        std::normal_distribution<double> normal;
        Vec3 v(normal(engine_), normal(engine_), normal(engine_));
        return v.normalized();
    }
    Pose anyPose(double reach = 1.0) {
        std::normal_distribution<double> normal;
        const Eigen::Quaterniond q(normal(engine_), normal(engine_), normal(engine_), normal(engine_));
        return pose(q.normalized().toRotationMatrix(), Vec3(uniform(-reach, reach), uniform(-reach, reach), uniform(-reach, reach)));
    }
    /// In its own frame at the origin.
    Solid solid(SolidKind kind) {
        const Vec3 half(size(), size(), size());
        switch (kind) {
            case SolidKind::sphere:
                return Solid::sphere(Vec3::Zero(), half.x());
            case SolidKind::capsule:
                return Solid::capsule(Vec3(0, 0, -half.z()), Vec3(0, 0, half.z()), half.x());
            case SolidKind::cylinder:
                return Solid::cylinder(Vec3(0, 0, -half.z()), Vec3(0, 0, half.z()), half.x());
            case SolidKind::box:
                return Solid::box(Pose::Identity(), half);
            case SolidKind::roundedBox:
                return Solid::roundedBox(Pose::Identity(), half, uniform(0.1, 0.9) * half.minCoeff());
            case SolidKind::hull: {
                std::vector<Vec3> cloud;
                const int count = static_cast<int>(uniform(6, 40));
                for (int i = 0; i < count; ++i) cloud.emplace_back(direction().cwiseProduct(half));
                return Solid::convexHull(makeHull(cloud));
            }
        }
        return {};
    }

private:
    double size() { return std::exp(uniform(std::log(0.003), std::log(0.15))); }
    std::mt19937 engine_;
};

/// How far the solid reaches along unit n (W), from each kind's own formula.
inline double reach(const Solid& s, const Pose& X_WF, const Vec3& n) {
    const Pose X_WG = X_WF * s.X_FG;
    const Vec3 m = X_WG.linear().transpose() * n;
    const double centre = n.dot(X_WG.translation());
    switch (s.kind) {
        case SolidKind::sphere:
            return centre + s.radius;
        case SolidKind::capsule:
            return centre + s.half.z() * std::abs(m.z()) + s.radius;
        case SolidKind::cylinder:
            return centre + s.half.z() * std::abs(m.z()) + s.radius * std::hypot(m.x(), m.y());
        case SolidKind::box:
            return centre + s.half.dot(m.cwiseAbs());
        case SolidKind::roundedBox:
            return centre + (s.half.array() - s.radius).matrix().dot(m.cwiseAbs()) + s.radius;
        case SolidKind::hull: {
            double most = -1e300;
            for (const Vec3& p : s.hull->points) most = std::max(most, p.dot(m));
            return centre + most;
        }
    }
    return 0;
}

/// Signed distance of a point from the surface, negative inside; for a hull outside, the distance from
/// its farthest plane (a lower bound, zero exactly on the surface).
inline double offSurface(const Solid& s, const Pose& X_WF, const Vec3& p_W) {
    const Vec3 p = (X_WF * s.X_FG).inverse() * p_W;
    const auto fromBox = [&](const Vec3& half) {
        const Vec3 q = p.cwiseAbs() - half;
        return q.cwiseMax(0.0).norm() + std::min(q.maxCoeff(), 0.0);
    };
    switch (s.kind) {
        case SolidKind::sphere:
            return p.norm() - s.radius;
        case SolidKind::capsule:
            return (p - Vec3(0, 0, std::clamp(p.z(), -s.half.z(), s.half.z()))).norm() - s.radius;
        case SolidKind::cylinder: {
            const double side = std::hypot(p.x(), p.y()) - s.radius;
            const double end = std::abs(p.z()) - s.half.z();
            return side > 0 && end > 0 ? std::hypot(side, end) : std::max(side, end);
        }
        case SolidKind::box:
            return fromBox(s.half);
        case SolidKind::roundedBox:
            return fromBox(Vec3(s.half.array() - s.radius)) - s.radius;
        case SolidKind::hull: {
            double most = -1e300;
            for (const auto& f : s.hull->faces) {
                const Vec3& a = s.hull->points[static_cast<std::size_t>(f[0])];
                const Vec3& b = s.hull->points[static_cast<std::size_t>(f[1])];
                const Vec3& c = s.hull->points[static_cast<std::size_t>(f[2])];
                most = std::max(most, (b - a).cross(c - a).normalized().dot(p - a));
            }
            return most;
        }
    }
    return 0;
}

/// Gap between the planes perpendicular to unit n that touch A from ahead and B from behind. The signed
/// distance of convex A and B is its maximum over all n: whatever n, a lower bound.
inline double gapAlong(const Solid& A, const Pose& X_WA, const Solid& B, const Pose& X_WB, const Vec3& n) {
    return -reach(B, X_WB, -n) - reach(A, X_WA, n);
}

/// What is wrong with a distance, metres, by the invariants of distance.h alone; no other library. The plane gap
/// bounds the true distance from below and, when the solids are apart, two points on them bound it from
/// above, so `worst` bounds the error of the distance of separate solids. Of overlapping ones it shows that
/// the depth is attained; that nothing less is must be shown by sampling.
struct Certificate {
    double surface = 0;   ///< witness points off their surfaces
    double relation = 0;  ///< p_WB - p_WA against distance * normal, and the normal's length
    double gap = 0;       ///< distance against the plane gap along its normal
    double worst() const { return std::max({surface, relation, gap}); }
};
inline Certificate certify(const Distance& d, const Solid& A, const Pose& X_WA, const Solid& B, const Pose& X_WB) {
    Certificate c;
    c.surface = std::max(std::abs(offSurface(A, X_WA, d.p_WA)), std::abs(offSurface(B, X_WB, d.p_WB)));
    c.relation = std::max((d.p_WB - d.p_WA - d.distance * d.normal_AB).norm(), std::abs(d.normal_AB.norm() - 1));
    c.gap = std::abs(gapAlong(A, X_WA, B, X_WB, d.normal_AB) - d.distance);
    return c;
}

}  // namespace hither::test
