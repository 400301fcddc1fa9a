#include "app/picture/creased.h"

#include <algorithm>
#include <cmath>
#include <map>
#include <utility>

namespace hither {

namespace {

/// Sets of corners (three a triangle) that share a point and a normal.
class Corners {
public:
    explicit Corners(std::size_t count) : parent_(count) {
        for (std::size_t i = 0; i < count; ++i) parent_[i] = i;
    }
    std::size_t find(std::size_t i) {
        while (parent_[i] != i) i = parent_[i] = parent_[parent_[i]];
        return i;
    }
    void join(std::size_t a, std::size_t b) { parent_[find(a)] = find(b); }

private:
    std::vector<std::size_t> parent_;
};

Eigen::Vector3f single(const Vec3& v) { return v.cast<float>(); }

}  // namespace

Mesh creased(const Surface& surface, double crease_rad) {
    std::vector<std::array<int, 3>> triangles;
    std::vector<Vec3> normals;
    for (const auto& t : surface.triangles) {
        const auto at = [&](int k) { return surface.points[static_cast<std::size_t>(t[static_cast<std::size_t>(k)])]; };
        const Vec3 n = (at(1) - at(0)).cross(at(2) - at(0));
        if (n.norm() < 1e-14) continue;
        triangles.push_back(t);
        normals.push_back(n.normalized());
    }

    Mesh mesh;
    Corners corners(3 * triangles.size());
    struct Side { std::size_t triangle; int from; };  // `from`: which of its corners the side starts at
    std::map<std::pair<int, int>, Side> sides;
    for (std::size_t t = 0; t < triangles.size(); ++t)
        for (int k = 0; k < 3; ++k) {
            const auto& c = triangles[t];
            sides[{c[static_cast<std::size_t>(k)], c[static_cast<std::size_t>((k + 1) % 3)]}] = {t, k};
        }
    const double cosine = std::cos(crease_rad);
    for (const auto& [ends, side] : sides) {
        const auto [a, b] = ends;
        const auto other = sides.find({b, a});
        const bool border = other == sides.end();
        if (!border && normals[side.triangle].dot(normals[other->second.triangle]) >= cosine) {
            const std::size_t mine = 3 * side.triangle, theirs = 3 * other->second.triangle;
            const auto corner = [](std::size_t first, int k) { return first + static_cast<std::size_t>(k % 3); };
            corners.join(corner(mine, side.from), corner(theirs, other->second.from + 1));
            corners.join(corner(mine, side.from + 1), corner(theirs, other->second.from));
        } else if (border || a < b) {
            mesh.edges.push_back({single(surface.points[static_cast<std::size_t>(a)]), single(surface.points[static_cast<std::size_t>(b)])});
        }
    }

    // One point for each set of corners, its normal weighted by the angle that each triangle has there.
    std::map<std::size_t, std::uint32_t> numbers;
    std::vector<Vec3> sums;
    for (std::size_t t = 0; t < triangles.size(); ++t) {
        std::array<std::uint32_t, 3> out{};
        for (std::size_t k = 0; k < 3; ++k) {
            const auto [number, fresh] = numbers.try_emplace(corners.find(3 * t + k), static_cast<std::uint32_t>(sums.size()));
            const Vec3& p = surface.points[static_cast<std::size_t>(triangles[t][k])];
            if (fresh) {
                sums.push_back(Vec3::Zero());
                mesh.points.push_back(single(p));
            }
            const Vec3 u = (surface.points[static_cast<std::size_t>(triangles[t][(k + 1) % 3])] - p).normalized();
            const Vec3 v = (surface.points[static_cast<std::size_t>(triangles[t][(k + 2) % 3])] - p).normalized();
            sums[number->second] += std::acos(std::clamp(u.dot(v), -1.0, 1.0)) * normals[t];
            out[k] = number->second;
        }
        mesh.triangles.push_back(out);
    }
    for (const Vec3& sum : sums) mesh.normals.push_back(single(sum.normalized()));
    return mesh;
}

}  // namespace hither
