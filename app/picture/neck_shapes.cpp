#include "app/picture/neck_shapes.h"

#include <algorithm>
#include <cmath>

#include "core/chain/swing.h"
#include "core/units/quantity.h"

namespace hither {

namespace {

constexpr double ringStep_m = 0.006;
constexpr int mostRings = 72, around = 8;

}  // namespace

Mesh neckMesh(const BendElement& neck, const NeckBend& bend) {
    Mesh mesh;
    const double arc = neck.length / 3;
    const int each = std::clamp(static_cast<int>(std::ceil(arc / ringStep_m)), 1, mostRings / 3);
    // Each bead's normals lean apart at its two ends, so that the light shows the rings.
    const auto ring = [&](const Pose& X, double lean, double radius) {
        for (int k = 0; k < around; ++k) {
            const double angle = 2 * pi * k / around;
            const Vec3 out(std::cos(angle), std::sin(angle), 0);
            mesh.points.push_back((X * Vec3(radius * out)).cast<float>());
            mesh.normals.push_back((X.linear() * (out + lean * Vec3::UnitZ()).normalized()).cast<float>());
        }
    };
    const auto bead = [&](const Pose& from, const Pose& to) {
        const auto low = static_cast<std::uint32_t>(mesh.points.size());
        ring(from, -0.85, neck.radius);
        ring(to, 0.85, neck.radius);
        for (std::uint32_t k = 0; k < around; ++k) {
            const std::uint32_t next = (k + 1) % around;
            mesh.triangles.push_back({low + k, low + next, low + around + next});
            mesh.triangles.push_back({low + k, low + around + next, low + around + k});
        }
    };
    Pose X = Pose::Identity();
    for (std::size_t i = 0; i < 3; ++i) {
        const double kx = bend[2 * i], ky = bend[2 * i + 1];
        Pose from = X;
        for (int n = 1; n <= each; ++n) {
            const double s = arc * n / each;
            const Swing swing(s * kx, s * ky);
            const Pose to = X * pose(swing.rotation(), s * swing.arcEnd());
            bead(from, to);
            from = to;
        }
        X = from;
    }
    return mesh;
}

}  // namespace hither
