#include "app/scene/named_views.h"

#include <algorithm>
#include <cmath>

#include "core/units/quantity.h"

namespace hither {
namespace {

constexpr double level = 0.12, above = 1.55;       // rad
constexpr double personField = 1.1;
constexpr double nearest_m = 0.15;

}  // namespace

Camera namedCamera(NamedView view, const Camera& now, const Eigen::AlignedBox3d& bounds_W, QSize size, const std::optional<Vec3>& eyes_W, const Vec3& lookAt_W) {
    Camera camera = now;
    camera.fieldOfView = Camera{}.fieldOfView;
    if (view == NamedView::person && eyes_W) {
        const Vec3 back = *eyes_W - lookAt_W;
        camera.target_W = lookAt_W;
        camera.distance = std::max(nearest_m, back.norm());
        camera.azimuth = std::atan2(back.y(), back.x());
        camera.elevation = std::clamp(std::asin(std::clamp(back.z() / camera.distance, -1.0, 1.0)), -above, above);
        camera.fieldOfView = personField;
        return camera;
    }
    switch (view) {
        case NamedView::whole: break;
        case NamedView::front: camera.azimuth = 0; camera.elevation = level; break;
        case NamedView::leftSide: camera.azimuth = pi / 2; camera.elevation = level; break;
        case NamedView::rightSide: camera.azimuth = -pi / 2; camera.elevation = level; break;
        case NamedView::back:
        case NamedView::person: camera.azimuth = pi; camera.elevation = level; break;
        case NamedView::top: camera.azimuth = pi; camera.elevation = above; break;
    }
    if (!bounds_W.isEmpty()) camera.fit(bounds_W, size.width(), size.height());
    return camera;
}

Camera between(const Camera& a, const Camera& b, double share) {
    Camera c = b;
    c.target_W = a.target_W + share * (b.target_W - a.target_W);
    c.azimuth = a.azimuth + share * std::remainder(b.azimuth - a.azimuth, 2 * pi);
    c.elevation = a.elevation + share * (b.elevation - a.elevation);
    c.distance = a.distance * std::pow(b.distance / a.distance, share);
    c.fieldOfView = a.fieldOfView + share * (b.fieldOfView - a.fieldOfView);
    return c;
}

}  // namespace hither
