#pragma once
#include <map>

#include "core/situation/body_shape.h"

namespace hither {

/// Forward kinematics of the body: poses of all segments for joint angles (`Posture`; what is not in
/// it is zero) and the pelvis. A three-axis joint turns by flexion, then abduction (bend), then
/// rotation, each about the axis that the former ones have moved. The neck's rotation happens in the
/// head, the forearm's in the hand.
std::map<SegmentId, Pose> poseBody(const BodyShape& shape, const Posture& posture, const Pose& X_WPelvis);

}  // namespace hither
