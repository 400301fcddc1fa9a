#include <algorithm>
#include <cmath>

#include "app/picture/creased.h"
#include "app/picture/shapes.h"
#include "core/units/quantity.h"

namespace hither {

Mesh boxMesh(const Pose& X, const Vec3& half) {
    Surface box;
    for (int i = 0; i < 8; ++i) box.points.push_back(X * Vec3(i & 1 ? half.x() : -half.x(), i & 2 ? half.y() : -half.y(), i & 4 ? half.z() : -half.z()));
    // Each face by its corners, counter-clockwise from outside.
    for (const auto& f : {std::array{0, 2, 3, 1}, std::array{4, 5, 7, 6}, std::array{0, 1, 5, 4}, std::array{2, 6, 7, 3}, std::array{0, 4, 6, 2}, std::array{1, 3, 7, 5}}) {
        box.triangles.push_back({f[0], f[1], f[2]});
        box.triangles.push_back({f[0], f[2], f[3]});
    }
    return creased(box);
}

namespace {

/// A rounded box from eight corners (eighths of a ball, `n` steps a quarter turn), the quarter tubes
/// between neighbours and six flats.
class RoundedBox {
public:
    RoundedBox(const Pose& X, const Vec3& half, double radius, int n) : X_(X), half_(half), radius_(std::min(radius, half.minCoeff())), n_(n) {
        for (int corner = 0; corner < 8; ++corner)
            for (int i = 0; i <= n_; ++i)
                for (int j = 0; i + j <= n_; ++j) add(corner, i, j);
        corners();
        tubes();
        flats();
    }
    Mesh mesh;

private:
    double sign(int corner, int axis) const { return corner >> axis & 1 ? 1 : -1; }
    std::uint32_t at(int corner, int i, int j) const {
        const int each = (n_ + 1) * (n_ + 2) / 2, before = i * (n_ + 1) - i * (i - 1) / 2;
        return static_cast<std::uint32_t>(corner * each + before + j);
    }
    /// The point of a corner that leans i of n steps toward x, j toward y, the rest toward z.
    std::uint32_t at(int corner, const Eigen::Vector3i& steps) const { return at(corner, steps.x(), steps.y()); }
    void add(int corner, int i, int j) {
        const auto part = [&](int k) { return std::sin(0.5 * pi * k / n_); };
        Vec3 d = Vec3(part(i), part(j), part(n_ - i - j)).normalized(), centre = half_ - Vec3::Constant(radius_);
        for (int axis = 0; axis < 3; ++axis) {
            d[axis] *= sign(corner, axis);
            centre[axis] *= sign(corner, axis);
        }
        mesh.points.push_back((X_ * (centre + radius_ * d)).cast<float>());
        mesh.normals.push_back((X_.linear() * d).cast<float>());
    }
    void triangle(std::uint32_t a, std::uint32_t b, std::uint32_t c) {
        const auto& p = mesh.points;
        if ((p[b] - p[a]).cross(p[c] - p[a]).norm() < 1e-12F) return;  // nothing left between two corners
        // The way round follows from the normals, which all point outward.
        const bool outward = (p[b] - p[a]).cross(p[c] - p[a]).dot(mesh.normals[a] + mesh.normals[b] + mesh.normals[c]) > 0;
        if (outward) mesh.triangles.push_back({a, b, c});
        else mesh.triangles.push_back({a, c, b});
    }
    void corners() {
        for (int corner = 0; corner < 8; ++corner)
            for (int i = 0; i < n_; ++i)
                for (int j = 0; i + j < n_; ++j) {
                    triangle(at(corner, i, j), at(corner, i + 1, j), at(corner, i, j + 1));
                    if (i + j + 1 < n_) triangle(at(corner, i + 1, j), at(corner, i + 1, j + 1), at(corner, i, j + 1));
                }
    }
    void tubes() {
        for (int axis = 0; axis < 3; ++axis)
            for (int corner = 0; corner < 8; ++corner) {
                if (corner >> axis & 1) continue;
                const int other = corner | 1 << axis, u = (axis + 1) % 3, v = (axis + 2) % 3;
                const auto step = [&](int k) { Eigen::Vector3i s = Eigen::Vector3i::Zero(); s[u] = k; s[v] = n_ - k; return s; };
                for (int k = 0; k < n_; ++k) {
                    triangle(at(corner, step(k)), at(corner, step(k + 1)), at(other, step(k + 1)));
                    triangle(at(corner, step(k)), at(other, step(k + 1)), at(other, step(k)));
                }
            }
    }
    void flats() {
        for (int axis = 0; axis < 3; ++axis)
            for (int end = 0; end < 2; ++end) {
                const int u = 1 << (axis + 1) % 3, v = 1 << (axis + 2) % 3, base = end << axis;
                Eigen::Vector3i s = Eigen::Vector3i::Zero();
                s[axis] = n_;
                triangle(at(base, s), at(base | u, s), at(base | u | v, s));
                triangle(at(base, s), at(base | u | v, s), at(base | v, s));
            }
    }
    Pose X_;
    Vec3 half_;
    double radius_;
    int n_;
};

}  // namespace

Mesh roundedBoxMesh(const Pose& X, const Vec3& half, double radius) {
    if (radius < 1e-6) return boxMesh(X, half);
    return std::move(RoundedBox(X, half, radius, radius > 0.012 ? 3 : 2).mesh);
}

}  // namespace hither
