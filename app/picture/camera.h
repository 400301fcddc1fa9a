#pragma once
#include <Eigen/Geometry>

#include "core/geometry/pose.h"

namespace hither {

/// A camera that looks at a point and turns about the vertical. Angles rad, lengths m.
struct Camera {
    Vec3 target_W{0.2, 0, 0.7};
    double azimuth = -0.7;     ///< from which side: 0 from in front of the person (+x), positive toward their left
    double elevation = 0.35;   ///< above level, within +-89 degrees
    double distance = 2.6;
    double fieldOfView = 0.7;  ///< across the height of the view

    Vec3 eye_W() const;
    /// World to camera: x right, y up, z toward the eye.
    Pose X_CW() const;
    /// Pixel (x right, y down) of a point in a view of that size, and its depth (m in front of the eye; <= 0: behind).
    Vec3 project(const Vec3& p_W, int width, int height) const;
    struct Ray { Vec3 origin_W, direction_W; };
    Ray rayThrough(double x, double y, int width, int height) const;
    /// Metres in the target's plane that a pixel covers.
    double metresPerPixel(const Vec3& at_W, int height) const;

    void orbit(double turn, double rise);
    void slide(double right_px, double down_px, int height);
    /// Nearer (factor < 1) or farther, keeping the point under the pixel where it is.
    void zoomAt(double factor, double x, double y, int width, int height);
    /// Keeps the direction of view and fits a box.
    void fit(const Eigen::AlignedBox3d& box_W, int width, int height);
};
enum class NamedView { whole, front, leftSide, rightSide, back, top, person };

}  // namespace hither
