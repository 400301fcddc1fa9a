#include "core/situation/body_posture.h"

namespace hither {
namespace {

/// Turn by flexion (forward for `forward` = 1, backward for -1), then away from the middle, then outward.
Mat3 turned(double flexion, double abduction, double rotation, double forward, double outward) {
    return (Eigen::AngleAxisd(-forward * flexion, Vec3::UnitY()) * Eigen::AngleAxisd(outward * abduction, Vec3::UnitX()) *
            Eigen::AngleAxisd(outward * rotation, Vec3::UnitZ())).toRotationMatrix();
}

}  // namespace

std::map<SegmentId, Pose> poseBody(const BodyShape& shape, const Posture& posture, const Pose& X_WPelvis) {
    const auto angle = [&](const char* joint, const char* side) {
        const auto found = posture.find(std::string(joint) + side);
        return found == posture.end() ? 0.0 : found->second;
    };
    std::map<SegmentId, Pose> X;
    const auto add = [&](SegmentId id, SegmentId parent, const Mat3& R) { X[id] = X.at(parent) * pose(R, shape.joint.at(id)); };
    const SegmentId pelvis{Segment::pelvis, Side::none}, trunk{Segment::trunk, Side::none}, neck{Segment::neck, Side::none}, head{Segment::head, Side::none};
    X[pelvis] = X_WPelvis;
    add(trunk, pelvis, Mat3::Identity());
    // The neck bends forward and to the right: its segment points up, so signs are those of a leg turned over.
    add(neck, trunk, turned(angle("neck_flexion", ""), angle("neck_bend", ""), 0, -1, 1));
    add(head, neck, turned(0, 0, angle("neck_rotation", ""), 1, 1));
    for (const Side side : {Side::left, Side::right}) {
        const char* const word = side == Side::left ? "_left" : "_right";
        const double out = side == Side::left ? 1 : -1;
        const SegmentId upperArm{Segment::upperArm, side}, forearm{Segment::forearm, side}, hand{Segment::hand, side};
        const SegmentId thigh{Segment::thigh, side}, shank{Segment::shank, side}, foot{Segment::foot, side};
        add(upperArm, trunk, turned(angle("shoulder_flexion", word), angle("shoulder_abduction", word), angle("shoulder_rotation", word), 1, out));
        add(forearm, upperArm, turned(angle("elbow_flexion", word), 0, 0, 1, out));
        // Pronation turns the thumb inward; the wrist bends to the palm (inward) and to the thumb (forward).
        add(hand, forearm, turned(0, 0, -angle("forearm_pronation", word), 1, out) * turned(0, -angle("wrist_flexion", word), 0, 1, out) * turned(angle("wrist_deviation", word), 0, 0, 1, out));
        add(thigh, pelvis, turned(angle("hip_flexion", word), angle("hip_abduction", word), angle("hip_rotation", word), 1, out));
        add(shank, thigh, turned(angle("knee_flexion", word), 0, 0, -1, out));
        add(foot, shank, turned(angle("ankle_flexion", word), 0, 0, 1, out));
    }
    return X;
}

}  // namespace hither
