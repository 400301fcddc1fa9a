#pragma once
#include "core/chain/setup.h"

namespace hither {

/// Distance of a point of W from where the mount's switch answers: the middle of its face, or for a
/// touchless one the line from there out to its sensing range. X_WFace: the face as it stands then.
double faceToPoint(const SetupMount& mount, const Pose& X_WFace, const Vec3& p_W);

/// Weakest basis of what places a mount's switch: its parts' dimensions and the support it is fixed to.
BasisKind placingBasis(const SetupMount& mount, const Situation& situation);

}  // namespace hither
