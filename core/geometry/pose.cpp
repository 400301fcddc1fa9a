#include "core/geometry/pose.h"

#include <cmath>

namespace hither {

Mat3 rotationFromVector(const Vec3& w) {
    const double angle2 = w.squaredNorm();
    const double angle = std::sqrt(angle2);
    // Rodrigues: R = I + a [w] + b [w]^2 with a = sin(angle)/angle, b = (1 - cos(angle))/angle^2;
    // below 1e-4 rad the series are exact to rounding.
    const double a = angle < 1e-4 ? 1.0 - angle2 / 6.0 : std::sin(angle) / angle;
    const double half = 0.5 * angle;
    const double b = angle < 1e-4 ? 0.5 - angle2 / 24.0 : 2.0 * std::sin(half) * std::sin(half) / angle2;
    Mat3 W;
    W << 0, -w.z(), w.y(), w.z(), 0, -w.x(), -w.y(), w.x(), 0;
    return Mat3::Identity() + a * W + b * W * W;
}

Pose frameFromZ(const Vec3& origin, const Vec3& z, const Vec3& xHint) {
    const Vec3 k = z.normalized();
    Vec3 x = xHint - xHint.dot(k) * k;
    if (x.norm() < 1e-9 * std::max(1.0, xHint.norm())) {
        const Vec3 other = std::abs(k.x()) < 0.9 ? Vec3::UnitX() : Vec3::UnitY();
        x = other - other.dot(k) * k;
    }
    x.normalize();
    Mat3 R;
    R << x, k.cross(x), k;
    return pose(R, origin);
}

Mat3 rotationFromRollPitchYaw(double roll, double pitch, double yaw) {
    return (Eigen::AngleAxisd(yaw, Vec3::UnitZ()) * Eigen::AngleAxisd(pitch, Vec3::UnitY()) *
            Eigen::AngleAxisd(roll, Vec3::UnitX())).toRotationMatrix();
}

}  // namespace hither
