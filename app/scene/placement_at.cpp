#include "app/scene/placement_at.h"

#include <algorithm>
#include <cmath>

namespace hither {

Pose attachmentFrame_W(const Situation& situation, const std::string& support, const Attachment& attachment) {
    const Pose X_WG = groupPose_W(situation, support, attachment.group);
    if (attachment.kind == AttachmentKind::face) return X_WG * frameFromZ(attachment.a, attachment.up, attachment.reference);
    const Vec3 x = (attachment.b - attachment.a).normalized();
    const Vec3 away = attachment.kind == AttachmentKind::rail ? attachment.reference : attachment.up;
    return X_WG * frameFromZ(attachment.a, away - away.dot(x) * x, x);
}

std::optional<Placement> placementAt(const Situation& situation, const std::string& support, const std::string& attachment, const Vec3& point_W) {
    const Support* found = situation.support(support);
    const Attachment* a = found ? found->attachment(attachment) : nullptr;
    if (!a) return std::nullopt;
    const Vec3 p = attachmentFrame_W(situation, support, *a).inverse() * point_W;
    Placement place;
    if (a->kind == AttachmentKind::face) {
        place.x_m = std::clamp(p.x(), -0.5 * a->sizeX_m, 0.5 * a->sizeX_m);
        place.y_m = std::clamp(p.y(), -0.5 * a->sizeY_m, 0.5 * a->sizeY_m);
        return place;
    }
    place.along_m = std::clamp(p.x(), 0.0, a->length_m());
    // z turned about x by `around` is (0, -sin, cos).
    if (a->kind == AttachmentKind::rail) place.around_rad = std::hypot(p.y(), p.z()) > 1e-9 ? std::atan2(-p.y(), p.z()) : 0;
    if (a->kind == AttachmentKind::edge) place.fromBelow = p.z() < -0.5 * a->thickness_m.value.value_or(0.0) - 1e-9;
    return place;
}

}  // namespace hither
