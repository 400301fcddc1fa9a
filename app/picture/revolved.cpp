#include "app/picture/revolved.h"

#include <algorithm>
#include <cmath>

#include "core/units/quantity.h"

namespace hither {

namespace {

using Vec2 = Eigen::Vector2d;
constexpr double onAxis_m = 1e-9;

/// Points of one ring, or one point on the axis: the number of the first and whether there is only one.
struct Ring { std::uint32_t first = 0; bool single = false; };

class Builder {
public:
    Builder(const Pose& X, int around) : X_(X), around_(static_cast<std::uint32_t>(around)) {}

    Ring ring(const Turned& at, const Vec2& normal) {
        Ring out{static_cast<std::uint32_t>(mesh.points.size()), at.radius < onAxis_m};
        for (std::uint32_t k = 0; k < (out.single ? 1 : around_); ++k) {
            const double c = cosine(k), s = sine(k);
            mesh.points.push_back((X_ * Vec3(at.radius * c, at.radius * s, at.height)).cast<float>());
            const Vec3 n = out.single ? Vec3(0, 0, normal.y() < 0 ? -1 : 1) : Vec3(normal.x() * c, normal.x() * s, normal.y());
            mesh.normals.push_back((X_.linear() * n).cast<float>());
        }
        return out;
    }
    void strip(const Ring& low, const Ring& high) {
        if (low.single && high.single) return;
        for (std::uint32_t k = 0; k < around_; ++k) {
            const std::uint32_t next = (k + 1) % around_;
            const std::uint32_t a = low.first + (low.single ? 0 : k), b = low.first + (low.single ? 0 : next);
            const std::uint32_t c = high.first + (high.single ? 0 : next), d = high.first + (high.single ? 0 : k);
            if (!low.single) mesh.triangles.push_back({a, b, c});
            if (!high.single) mesh.triangles.push_back({a, c, d});
        }
    }
    void circle(const Turned& at) {
        if (at.radius < onAxis_m) return;
        const auto point = [&](std::uint32_t k) -> Eigen::Vector3f { return (X_ * Vec3(at.radius * cosine(k), at.radius * sine(k), at.height)).cast<float>(); };
        for (std::uint32_t k = 0; k < around_; ++k) mesh.edges.push_back({point(k), point((k + 1) % around_)});
    }
    Mesh mesh;

private:
    double angle(std::uint32_t k) const { return 2 * pi * k / around_; }
    double cosine(std::uint32_t k) const { return std::cos(angle(k)); }
    double sine(std::uint32_t k) const { return std::sin(angle(k)); }
    Pose X_;
    std::uint32_t around_;
};

double volume(const std::vector<Turned>& profile, bool closed) {
    double sum = 0;
    const std::size_t n = profile.size();
    for (std::size_t i = 0; i < (closed ? n : n - 1); ++i) {
        const Turned &a = profile[i], &b = profile[(i + 1) % n];
        sum += (b.height - a.height) * (a.radius * a.radius + a.radius * b.radius + b.radius * b.radius);
    }
    return sum;
}

}  // namespace

Mesh revolved(const Pose& X, std::vector<Turned> profile, int around, bool closed) {
    const auto same = [](const Turned& a, const Turned& b) { return std::hypot(a.radius - b.radius, a.height - b.height) < onAxis_m; };
    profile.erase(std::unique(profile.begin(), profile.end(), same), profile.end());
    if (profile.size() < 2) return {};
    if (volume(profile, closed) < 0) std::reverse(profile.begin(), profile.end());

    const std::size_t n = profile.size(), strips = closed ? n : n - 1;
    const auto normal = [&](std::size_t i) {
        const Turned &a = profile[i], &b = profile[(i + 1) % n];
        return Vec2(b.height - a.height, a.radius - b.radius).normalized();
    };
    Builder builder(X, std::max(3, around));
    struct Both { Ring before, after; };  // the corner as the strip before it and the one after it see it
    std::vector<Both> rings;
    for (std::size_t i = 0; i < n; ++i) {
        const bool first = !closed && i == 0, last = !closed && i + 1 == n;
        const Vec2 before = first ? normal(0) : normal((i + n - 1) % n), after = last ? before : normal(i);
        if (profile[i].crease && !first && !last) {
            const Ring one = builder.ring(profile[i], before);
            rings.push_back({one, builder.ring(profile[i], after)});
        } else {
            const Ring one = builder.ring(profile[i], (before + after).normalized());
            rings.push_back({one, one});
        }
        if (first || last || profile[i].crease) builder.circle(profile[i]);
    }
    for (std::size_t i = 0; i < strips; ++i) builder.strip(rings[i].after, rings[(i + 1) % n].before);
    return std::move(builder.mesh);
}

}  // namespace hither
