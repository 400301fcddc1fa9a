#include "app/picture/camera.h"

#include <algorithm>
#include <cmath>

#include "core/units/quantity.h"

namespace hither {

namespace {

constexpr double steepest_rad = 89 * pi / 180;
constexpr double nearest_m = 0.05, farthest_m = 60;
constexpr double fitMargin = 1.08;  // room round what is fitted

/// Pixels that one metre at one metre's depth takes.
double focal(const Camera& camera, int height) { return 0.5 * height / std::tan(0.5 * camera.fieldOfView); }

}  // namespace

Vec3 Camera::eye_W() const {
    return target_W + distance * Vec3(std::cos(elevation) * std::cos(azimuth), std::cos(elevation) * std::sin(azimuth), std::sin(elevation));
}

Pose Camera::X_CW() const {
    const Vec3 z = (eye_W() - target_W).normalized(), x = Vec3::UnitZ().cross(z).normalized(), y = z.cross(x);
    Pose X = Pose::Identity();
    X.linear().row(0) = x;
    X.linear().row(1) = y;
    X.linear().row(2) = z;
    X.translation() = -(X.linear() * eye_W());
    return X;
}

Vec3 Camera::project(const Vec3& p_W, int width, int height) const {
    const Vec3 p = X_CW() * p_W;
    const double depth = -p.z(), scale = focal(*this, height) / (std::abs(depth) < 1e-9 ? 1e-9 : depth);
    return {0.5 * width + scale * p.x(), 0.5 * height - scale * p.y(), depth};
}

Camera::Ray Camera::rayThrough(double x, double y, int width, int height) const {
    const double f = focal(*this, height);
    const Vec3 direction_C((x - 0.5 * width) / f, (0.5 * height - y) / f, -1);
    return {eye_W(), (X_CW().linear().transpose() * direction_C).normalized()};
}

double Camera::metresPerPixel(const Vec3& at_W, int height) const { return -(X_CW() * at_W).z() / focal(*this, height); }

void Camera::orbit(double turn, double rise) {
    azimuth = std::remainder(azimuth + turn, 2 * pi);
    elevation = std::clamp(elevation + rise, -steepest_rad, steepest_rad);
}

void Camera::slide(double right_px, double down_px, int height) {
    const Mat3 R_WC = X_CW().linear().transpose();
    target_W += metresPerPixel(target_W, height) * (down_px * R_WC.col(1) - right_px * R_WC.col(0));
}

void Camera::zoomAt(double factor, double x, double y, int width, int height) {
    const double wanted = std::clamp(distance * factor, nearest_m, farthest_m), real = wanted / distance;
    const Ray ray = rayThrough(x, y, width, height);
    const Vec3 forward = (target_W - eye_W()).normalized();
    const Vec3 kept = ray.origin_W + distance / ray.direction_W.dot(forward) * ray.direction_W;
    target_W = kept + real * (target_W - kept);
    distance = wanted;
}

void Camera::fit(const Eigen::AlignedBox3d& box_W, int width, int height) {
    if (box_W.isEmpty()) return;
    const Vec3 centre = box_W.center();
    const Mat3 R_CW = X_CW().linear();
    const double up = std::tan(0.5 * fieldOfView) / fitMargin;
    const Eigen::Vector2d slope(up * width / height, up);
    // The eye at (e, distance) sees a corner (c, z) when |c - e| <= slope (distance - z), in each direction.
    Eigen::Vector2d most(-1e9, -1e9), least(-1e9, -1e9);
    double foremost = -1e9;
    for (int i = 0; i < 8; ++i) {
        const Vec3 c = R_CW * (box_W.corner(static_cast<Eigen::AlignedBox3d::CornerType>(i)) - centre);
        most = most.cwiseMax(c.head<2>() + slope * c.z());
        least = least.cwiseMax(slope * c.z() - c.head<2>());
        foremost = std::max(foremost, c.z());
    }
    const Eigen::Vector2d e = 0.5 * (most - least);
    distance = std::clamp(std::max((0.5 * (most + least)).cwiseQuotient(slope).maxCoeff(), foremost + nearest_m), nearest_m, farthest_m);
    target_W = centre + R_CW.transpose() * Vec3(e.x(), e.y(), 0);
}

}  // namespace hither
