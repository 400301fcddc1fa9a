#include <catch2/catch.hpp>

#include "core/geometry/pose.h"

using namespace hither;

TEST_CASE("the exponential map agrees with the angle-axis rotation of Eigen", "[geometry]") {
    for (const Vec3& w : {Vec3(0.3, -0.4, 1.2), Vec3(1e-7, 2e-7, -1e-7), Vec3(0, 0, 0), Vec3(3.1, 0.1, 0)}) {
        const double angle = w.norm();
        const Mat3 expected = angle > 0 ? Eigen::AngleAxisd(angle, w / angle).toRotationMatrix() : Mat3::Identity().eval();
        CHECK((rotationFromVector(w) - expected).norm() < 1e-14);
    }
}

TEST_CASE("a frame made from its z axis is right-handed, also when the hint is along z", "[geometry]") {
    for (const Vec3& hint : {Vec3(1, 0, 0), Vec3(0, 0, 2)}) {
        const Pose X = frameFromZ(Vec3(1, 2, 3), Vec3(0, 0, 5), hint);
        CHECK(X.linear().determinant() == Approx(1.0).margin(1e-14));
        CHECK((X.linear().col(2) - Vec3::UnitZ()).norm() < 1e-14);
    }
}
