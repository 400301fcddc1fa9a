#include <algorithm>
#include <cmath>

#include "core/chain/chain.h"
#include "core/chain/swing.h"
#include "core/units/tolerances.h"

namespace hither {
namespace {

/// Straight capsules along one arc, their ends on the true curve. A chord over the angle t of a circle
/// of curvature k stays within (1 - cos(t / 2)) / k of it.
void addArc(std::vector<PlacedSolid>& out, const Pose& X_WF, double arc, double kx, double ky, double radius, int part) {
    const double k = std::hypot(kx, ky);
    const double angle = k * arc;
    int pieces = 1;
    if (angle > 0) {
        const double cosHalf = std::max(-1.0, 1 - tolerance::bendSagitta_m * k);
        pieces = std::clamp(static_cast<int>(std::ceil(angle / (2 * std::acos(cosHalf)))), 1, 1000);
    }
    Vec3 from = X_WF.translation();
    for (int i = 1; i <= pieces; ++i) {
        const double s = arc * i / pieces;
        const Vec3 to = X_WF * Vec3(s * Swing(s * kx, s * ky).arcEnd());
        out.push_back({Solid::capsule(from, to, radius), part, false});
        from = to;
    }
}

}  // namespace

std::vector<PlacedSolid> placedSolids(const Chain& chain, const Eigen::Ref<const Eigen::VectorXd>& q, const ChainPoses& poses) {
    std::vector<PlacedSolid> placed;
    placed.reserve(chain.solids.size() + 8 * chain.bends.size());
    for (const ChainSolid& s : chain.solids) {
        placed.push_back({s.solid.movedBy(poses.X_WF[static_cast<std::size_t>(s.frame)]), s.part, s.jaw});
    }
    for (const ChainBend& bend : chain.bends) {
        const ChainStep& step = chain.steps[static_cast<std::size_t>(bend.step)];
        addArc(placed, poses.X_WF[static_cast<std::size_t>(bend.step)], step.arc, q[step.q0], q[step.q0 + 1], bend.radius, bend.part);
    }
    return placed;
}

}  // namespace hither
