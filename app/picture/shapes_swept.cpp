#include <algorithm>
#include <cmath>
#include <numeric>

#include "app/picture/creased.h"
#include "app/picture/shapes.h"
#include "core/units/quantity.h"

namespace hither {

namespace {

using Vec2 = Eigen::Vector2d;

double turn(const Vec2& a, const Vec2& b, const Vec2& c) { return (b - a).x() * (c - a).y() - (b - a).y() * (c - a).x(); }

bool inside(const Vec2& p, const Vec2& a, const Vec2& b, const Vec2& c) { return turn(a, b, p) >= 0 && turn(b, c, p) >= 0 && turn(c, a, p) >= 0; }

/// Triangles of a simple outline, counter-clockwise, by cutting off one ear after the other.
std::vector<std::array<int, 3>> cutIntoTriangles(const std::vector<Vec2>& outline) {
    std::vector<int> left(outline.size());
    std::iota(left.begin(), left.end(), 0);
    const auto at = [&](int i) { return outline[static_cast<std::size_t>(i)]; };
    std::vector<std::array<int, 3>> triangles;
    while (left.size() > 3) {
        const std::size_t n = left.size();
        std::size_t ear = n;
        double best = -1;
        for (std::size_t i = 0; i < n; ++i) {
            const int a = left[(i + n - 1) % n], b = left[i], c = left[(i + 1) % n];
            const double area = turn(at(a), at(b), at(c));
            if (area < 0 || area <= best) continue;
            const bool free = std::none_of(left.begin(), left.end(), [&](int p) { return p != a && p != b && p != c && inside(at(p), at(a), at(b), at(c)); });
            if (free || area == 0) { ear = i; best = area; }
        }
        if (ear == n) break;  // crosses itself: what is left stays open
        triangles.push_back({left[(ear + n - 1) % n], left[ear], left[(ear + 1) % n]});
        left.erase(left.begin() + static_cast<std::ptrdiff_t>(ear));
    }
    if (left.size() == 3) triangles.push_back({left[0], left[1], left[2]});
    return triangles;
}

}  // namespace

Mesh tubeMesh(const std::vector<Vec3>& line, double radius, int around) {
    std::vector<Vec3> path;
    for (const Vec3& p : line)
        if (path.empty() || (p - path.back()).norm() > 1e-9) path.push_back(p);
    if (path.size() < 2) return {};

    Mesh mesh;
    const auto n = static_cast<std::uint32_t>(path.size()), count = static_cast<std::uint32_t>(std::max(3, around));
    const auto direction = [&](std::uint32_t i) { return Vec3((path[i + 1] - path[i]).normalized()); };
    Pose frame = frameFromZ(path[0], direction(0), Vec3::UnitZ());
    const auto ring = [&](const Vec3* flat) {
        for (std::uint32_t k = 0; k < count; ++k) {
            const double angle = 2 * pi * k / count;
            const Vec3 out = std::cos(angle) * frame.linear().col(0) + std::sin(angle) * frame.linear().col(1);
            mesh.points.push_back((frame.translation() + radius * out).cast<float>());
            mesh.normals.push_back((flat ? *flat : out).cast<float>());
        }
    };
    const auto cap = [&](const Vec3& outward, bool reversed) {
        const auto first = static_cast<std::uint32_t>(mesh.points.size());
        ring(&outward);
        for (std::uint32_t k = 1; k + 1 < count; ++k) {
            if (reversed) mesh.triangles.push_back({first, first + k + 1, first + k});
            else mesh.triangles.push_back({first, first + k, first + k + 1});
        }
        for (std::uint32_t k = 0; k < count; ++k) mesh.edges.push_back({mesh.points[first + k], mesh.points[first + (k + 1) % count]});
    };
    cap(-direction(0), true);
    const auto body = static_cast<std::uint32_t>(mesh.points.size());
    for (std::uint32_t i = 0; i < n; ++i) {
        const Vec3 z = i == 0 ? direction(0) : i + 1 == n ? direction(n - 2) : Vec3((direction(i - 1) + direction(i)).normalized());
        // The frame is carried along without turning about the line.
        const Vec3 x = frame.linear().col(0);
        frame = frameFromZ(path[i], z, x);
        ring(nullptr);
        if (i == 0) continue;
        for (std::uint32_t k = 0; k < count; ++k) {
            const std::uint32_t low = body + (i - 1) * count, high = low + count, next = (k + 1) % count;
            mesh.triangles.push_back({low + k, low + next, high + next});
            mesh.triangles.push_back({low + k, high + next, high + k});
        }
    }
    cap(direction(n - 2), false);
    return mesh;
}

Mesh extrudedMesh(const Pose& X, const std::vector<Vec2>& outline, double height) {
    Surface surface;
    const int n = static_cast<int>(outline.size());
    for (const double z : {0.0, height})
        for (const Vec2& p : outline) surface.points.push_back(X * Vec3(p.x(), p.y(), z));
    for (const auto& [a, b, c] : cutIntoTriangles(outline)) {
        surface.triangles.push_back({c, b, a});
        surface.triangles.push_back({n + a, n + b, n + c});
    }
    for (int i = 0; i < n; ++i) {
        const int next = (i + 1) % n;
        surface.triangles.push_back({i, next, n + next});
        surface.triangles.push_back({i, n + next, n + i});
    }
    return creased(surface);
}

}  // namespace hither
