#include "core/checks/serving.h"

#include <algorithm>

namespace hither {

double faceToPoint(const SetupMount& mount, const Pose& X_WFace, const Vec3& p_W) {
    const Vec3 offset = p_W - X_WFace.translation();
    if (!mount.chain.face || mount.chain.face->action != SwitchFace::Action::sense) return offset.norm();
    const double range = mount.chain.face->sensingRange_m.value.value_or(0.0);
    const Vec3 out = X_WFace.linear().col(2);
    return (offset - std::clamp(offset.dot(out), 0.0, range) * out).norm();
}

BasisKind placingBasis(const SetupMount& mount, const Situation& situation) {
    BasisKind basis = BasisKind::measured;
    for (const auto& part : mount.chain.parts) basis = weakest(basis, part->dimensionsBasis.kind);
    if (const Support* support = situation.support(mount.chain.support)) basis = weakest(basis, support->basis);
    return basis;
}

}  // namespace hither
