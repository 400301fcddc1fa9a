#include "core/situation/attachment.h"

namespace hither {

Pose gripFrame(const Attachment& attachment, const Placement& placement) {
    const Vec3 line = attachment.b - attachment.a;
    switch (attachment.kind) {
        case AttachmentKind::rail: {
            const Vec3 x = line.normalized();
            const Vec3 z0 = (attachment.reference - attachment.reference.dot(x) * x).normalized();
            const Vec3 z = Eigen::AngleAxisd(placement.around_rad, x) * z0;
            const double radius = 0.5 * attachment.outside_m.value.value_or(0.0);
            return frameFromZ(attachment.a + placement.along_m * x + radius * z, z, x);
        }
        case AttachmentKind::edge: {
            const Vec3 x = line.normalized();
            const Vec3 up = (attachment.up - attachment.up.dot(x) * x).normalized();
            const Vec3 onLine = attachment.a + placement.along_m * x;
            if (!placement.fromBelow) return frameFromZ(onLine, up, x);
            return frameFromZ(onLine - attachment.thickness_m.value.value_or(0.0) * up, -up, -x);
        }
        case AttachmentKind::face: {
            const Pose X_SFace = frameFromZ(attachment.a, attachment.up, attachment.reference);
            const Mat3 turn = Eigen::AngleAxisd(placement.yaw_rad, Vec3::UnitZ()).toRotationMatrix();
            return X_SFace * pose(turn, Vec3(placement.x_m, placement.y_m, 0));
        }
        case AttachmentKind::cloth: {
            const Vec3 x = line.normalized();
            return frameFromZ(attachment.a + placement.along_m * x, attachment.up, x);
        }
    }
    return Pose::Identity();
}

}  // namespace hither
