#pragma once
#include <map>
#include <optional>
#include <string>
#include <vector>

#include "core/situation/person.h"

namespace hither {

/// The body that goes with a size, before it takes a posture: where the joints are and the solids
/// round them. Described sitting upright on a flat seat against an upright back, in the frame U:
/// x forward from the back plane, y left, z up from the compressed seat; there the ISO 7250-1 heights
/// come out as typed or estimated. What the dimensions do not say is assumed: the hip joint lies
/// 0.075 of stature before the back of the buttocks and half the thigh clearance above the seat, the
/// shoulder joint near 0.02 of stature below the acromion (it takes up what acromial height, elbow
/// height and upper arm length disagree by).
struct BodyShape {
    double hipForward = 0, hipAbove = 0;   ///< hip joints in U
    double hipHalf = 0;                    ///< half the distance between the hip joints
    double thigh = 0, shank = 0;           ///< hip to knee, knee to ankle joint
    double kneeRadius = 0;                 ///< knee cap and hollow of the knee are this far from the knee joint
    double ankleAbove = 0;                 ///< ankle joint above the sole
    double upperArm = 0, forearm = 0;      ///< shoulder to elbow, elbow to wrist joint
    double elbowRadius = 0, forearmRadius = 0;
    double shoulderHalf = 0, shoulderForward = 0, shoulderAbove = 0;  ///< shoulder joints in U
    double hand = 0, handBreadth = 0;
    double footLength = 0, footBreadth = 0;
    double headLength = 0, headBreadth = 0;
    double chin_Head = 0;                  ///< z of the chin in the head's frame
    double acromion_Trunk = 0;             ///< z of the acromion in the trunk's frame
    Vec3 headMiddle_Head = Vec3::Zero();   ///< middle of the brain case
    Vec3 eyes_Head = Vec3::Zero();

    /// Origin of a segment in its parent's frame (pelvis: in U).
    std::map<SegmentId, Vec3> joint;
    std::vector<BodySolid> solids;
};

/// Null with problems when the dimensions cannot belong to one body (eyes below the shoulders).
/// Problems without null say what was bent to fit.
std::optional<BodyShape> bodyShape(const BodySize& size, std::vector<std::string>& problems);

/// Adds the solids for the joints and girths of `shape`; left and right are mirror images.
void addBodySolids(BodyShape& shape, const BodySize& size);

}  // namespace hither
