#pragma once
#include <Eigen/Geometry>

namespace hither {

/// Rigid transforms are Eigen's. X_AB is the pose of frame B in A, p_AP the point P from A in A's
/// axes, R_AB the rotation; adjacent letters match: X_WB = X_WA * X_AB. Frames are right-handed,
/// metres, x forward (the way the person faces), y to the person's left, z up in W and S.
using Pose = Eigen::Isometry3d;
using Vec3 = Eigen::Vector3d;
using Mat3 = Eigen::Matrix3d;

/// The rotation by |w| about w (exponential map); exact to rounding also near zero.
Mat3 rotationFromVector(const Vec3& w);

inline Pose translation(const Vec3& p) { Pose X = Pose::Identity(); X.translation() = p; return X; }
inline Pose pose(const Mat3& R, const Vec3& p) { Pose X = Pose::Identity(); X.linear() = R; X.translation() = p; return X; }

/// A frame at `origin` whose z axis is `z` and whose x axis is `xHint` made perpendicular to it.
/// When the hint is (nearly) along z, some perpendicular direction is taken, always the same one.
Pose frameFromZ(const Vec3& origin, const Vec3& z, const Vec3& xHint);

/// Fixed-axis rotations in the order x, then y, then z (roll, pitch, yaw about the outer frame):
/// R = Rz(yaw) Ry(pitch) Rx(roll), as REP 103. Radians.
Mat3 rotationFromRollPitchYaw(double roll, double pitch, double yaw);

}  // namespace hither
