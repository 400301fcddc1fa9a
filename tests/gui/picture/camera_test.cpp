#include <catch2/catch.hpp>

#include "app/picture/camera.h"
#include "core/units/quantity.h"

using namespace hither;

namespace {

Camera someCamera() {
    Camera camera;
    camera.target_W = Vec3(0.3, -0.2, 0.8);
    camera.azimuth = 0.9;
    camera.elevation = 0.4;
    camera.distance = 2.1;
    return camera;
}

/// Distance of a point from a ray's line.
double offRay(const Camera::Ray& ray, const Vec3& p) { return (p - ray.origin_W).cross(ray.direction_W).norm(); }

}  // namespace

TEST_CASE("The eye is where azimuth and elevation say, and sees the target in the middle") {
    Camera camera;
    camera.target_W = Vec3(1, 2, 3);
    camera.distance = 2;
    camera.azimuth = 0;
    camera.elevation = 0;
    CHECK((camera.eye_W() - Vec3(3, 2, 3)).norm() < 1e-12);   // from in front of the person
    camera.azimuth = pi / 2;
    CHECK((camera.eye_W() - Vec3(1, 4, 3)).norm() < 1e-12);   // from their left
    camera.elevation = pi / 6;
    CHECK(camera.eye_W().z() == Approx(4));
    const Vec3 middle = camera.project(camera.target_W, 640, 480);
    CHECK(middle.x() == Approx(320));
    CHECK(middle.y() == Approx(240));
    CHECK(middle.z() == Approx(2));
}

TEST_CASE("Up is up, and from in front the person's left is on the right") {
    Camera camera;
    camera.azimuth = 0;
    const Vec3 at = camera.project(camera.target_W, 640, 480);
    CHECK(camera.project(camera.target_W + Vec3(0, 0, 0.1), 640, 480).y() < at.y());
    CHECK(camera.project(camera.target_W + Vec3(0, 0.1, 0), 640, 480).x() > at.x());
    CHECK(camera.project(camera.eye_W() + Vec3(1, 0, 0), 640, 480).z() < 0);
}

TEST_CASE("A point lies on the ray through its pixel") {
    const Camera camera = someCamera();
    for (const Vec3& p : {Vec3(0.1, 0.2, 0.3), Vec3(-0.4, -0.5, 1.2), Vec3(0.9, 0.3, 0.0)}) {
        const Vec3 pixel = camera.project(p, 1000, 700);
        CHECK(offRay(camera.rayThrough(pixel.x(), pixel.y(), 1000, 700), p) < 1e-12);
    }
}

TEST_CASE("The view's height takes the field of view") {
    // tan: half the height at the target is distance times tan of half the angle.
    const Camera camera = someCamera();
    const Vec3 up = camera.X_CW().linear().row(1).transpose();
    const double half = camera.distance * std::tan(0.5 * camera.fieldOfView);
    CHECK(camera.project(camera.target_W + half * up, 1000, 700).y() == Approx(0).margin(1e-9));
    CHECK(camera.metresPerPixel(camera.target_W, 700) == Approx(2 * half / 700));
}

TEST_CASE("Orbiting keeps the target and the distance, and stops short of straight above") {
    Camera camera = someCamera();
    camera.orbit(1.3, 5);
    CHECK((camera.eye_W() - camera.target_W).norm() == Approx(2.1));
    CHECK(camera.elevation == Approx(89 * pi / 180));
    camera.orbit(7 * pi, -20);
    CHECK(camera.elevation == Approx(-89 * pi / 180));
    CHECK(std::abs(camera.azimuth) <= pi + 1e-12);
    CHECK(camera.X_CW().linear().determinant() == Approx(1));
}

TEST_CASE("Sliding moves what is in the target's plane with the pointer") {
    Camera camera = someCamera();
    const Vec3 before = camera.project(camera.target_W, 1000, 700), target = camera.target_W;
    camera.slide(37, -21, 700);
    const Vec3 after = camera.project(target, 1000, 700);
    CHECK(after.x() - before.x() == Approx(37));
    CHECK(after.y() - before.y() == Approx(-21));
}

TEST_CASE("Zooming keeps the point under the pixel, and stops at its ends") {
    Camera camera = someCamera();
    const Camera::Ray ray = camera.rayThrough(120, 610, 1000, 700);
    const Vec3 forward = (camera.target_W - camera.eye_W()).normalized();
    const Vec3 point = ray.origin_W + camera.distance / ray.direction_W.dot(forward) * ray.direction_W;
    camera.zoomAt(0.4, 120, 610, 1000, 700);
    const Vec3 pixel = camera.project(point, 1000, 700);
    CHECK(pixel.x() == Approx(120));
    CHECK(pixel.y() == Approx(610));
    CHECK(camera.distance == Approx(0.84));
    for (int i = 0; i < 50; ++i) camera.zoomAt(0.5, 500, 350, 1000, 700);
    CHECK(camera.distance > 0.01);
    for (int i = 0; i < 50; ++i) camera.zoomAt(3, 500, 350, 1000, 700);
    CHECK(camera.distance < 200);
    CHECK(camera.target_W.allFinite());
}

TEST_CASE("Fitting shows every corner of a box and fills the view one way") {
    const Eigen::AlignedBox3d box(Vec3(-0.5, -0.4, 0), Vec3(1.2, 0.3, 1.4));
    for (const double azimuth : {-0.7, 0.0, 2.5})
        for (const double elevation : {-0.6, 0.0, 0.35, 1.5})
            for (const auto& [width, height] : {std::pair{1000, 700}, {400, 900}}) {
                Camera camera;
                camera.azimuth = azimuth;
                camera.elevation = elevation;
                camera.fit(box, width, height);
                double left = 1e9, right = -1e9, top = 1e9, bottom = -1e9;
                for (int i = 0; i < 8; ++i) {
                    const Vec3 p = camera.project(box.corner(static_cast<Eigen::AlignedBox3d::CornerType>(i)), width, height);
                    REQUIRE(p.z() > 0);
                    left = std::min(left, p.x()); right = std::max(right, p.x());
                    top = std::min(top, p.y()); bottom = std::max(bottom, p.y());
                }
                CHECK(left >= 0);
                CHECK(top >= 0);
                CHECK(right <= width);
                CHECK(bottom <= height);
                CHECK(std::max((right - left) / width, (bottom - top) / height) > 0.8);
                CHECK(camera.azimuth == azimuth);
                CHECK(camera.elevation == elevation);
            }
}
