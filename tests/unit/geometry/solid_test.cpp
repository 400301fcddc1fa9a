#include <catch2/catch.hpp>

#include "core/geometry/solid.h"
#include "tests/support/random_solids.h"

using namespace hither;
using namespace hither::test;

TEST_CASE("a capsule's and a cylinder's ends lie where they were given", "[geometry]") {
    const Vec3 a(0.1, -0.2, 0.3);
    const Vec3 b(0.4, 0.2, 0.3);
    for (const Solid& s : {Solid::capsule(a, b, 0.02), Solid::cylinder(a, b, 0.02)}) {
        CHECK((s.X_FG * Vec3(0, 0, -s.half.z()) - a).norm() < 1e-15);
        CHECK((s.X_FG * Vec3(0, 0, s.half.z()) - b).norm() < 1e-15);
        CHECK(s.half.z() == Approx(0.25).epsilon(1e-14));  // 3-4-5 triangle
        CHECK(s.radius == 0.02);
    }
}

TEST_CASE("a capsule between equal points is a ball there", "[geometry]") {
    const Solid s = Solid::capsule(Vec3(1, 2, 3), Vec3(1, 2, 3), 0.5);
    CHECK(s.half.z() == 0);
    CHECK(s.X_FG.linear().determinant() == Approx(1));
    const Eigen::AlignedBox3d box = s.bounds(Pose::Identity());
    CHECK((box.min() - Vec3(0.5, 1.5, 2.5)).norm() < 1e-15);
    CHECK((box.max() - Vec3(1.5, 2.5, 3.5)).norm() < 1e-15);
}

TEST_CASE("a rounding larger than a box allows is cut to the least half", "[geometry]") {
    CHECK(Solid::roundedBox(Pose::Identity(), Vec3(0.1, 0.02, 0.3), 0.05).radius == 0.02);
    CHECK(Solid::roundedBox(Pose::Identity(), Vec3(0.1, 0.02, 0.3), 0.01).radius == 0.01);
}

TEST_CASE("bounds touch the solid on every side", "[geometry]") {
    RandomSolids random(11);
    for (SolidKind kind : allKinds) {
        CAPTURE(name(kind));
        for (int i = 0; i < 50; ++i) {
            const Solid s = random.solid(kind).movedBy(random.anyPose());
            const Pose X_WF = random.anyPose();
            const Eigen::AlignedBox3d box = s.bounds(X_WF);
            for (int axis = 0; axis < 3; ++axis) {
                CHECK(std::abs(box.max()[axis] - reach(s, X_WF, Vec3::Unit(axis))) < 1e-14);
                CHECK(std::abs(box.min()[axis] + reach(s, X_WF, -Vec3::Unit(axis))) < 1e-14);
            }
        }
    }
}

TEST_CASE("moving by a pose is placing the frame there", "[geometry]") {
    RandomSolids random(12);
    for (SolidKind kind : allKinds) {
        const Solid s = random.solid(kind).movedBy(random.anyPose());
        const Pose X = random.anyPose();
        const Vec3 n = random.direction();
        CHECK(std::abs(reach(s.movedBy(X), Pose::Identity(), n) - reach(s, X, n)) < 1e-14);
    }
}

// The farthest point across the axis is where some direction across it is supported, so the largest support
// over directions across the axis is the true reach; the bound may exceed it only for a slanted cylinder.
TEST_CASE("no point of a solid is farther from an axis than its reach", "[geometry]") {
    RandomSolids random(13);
    for (SolidKind kind : allKinds) {
        CAPTURE(name(kind));
        for (int i = 0; i < 40; ++i) {
            const Solid s = random.solid(kind).movedBy(random.anyPose(0.3));
            const Vec3 axis = random.direction();
            const Vec3 point(random.uniform(-0.3, 0.3), random.uniform(-0.3, 0.3), random.uniform(-0.3, 0.3));
            const Pose X = frameFromZ(point, axis, Vec3::UnitX());
            double farthest = 0;
            for (int k = 0; k < 3600; ++k) {
                const double angle = k * (2 * 3.14159265358979323846 / 3600);
                const Vec3 n = X.linear() * Vec3(std::cos(angle), std::sin(angle), 0);
                farthest = std::max(farthest, reach(s, Pose::Identity(), n) - n.dot(point));
            }
            const double bound = s.reachFromAxis(point, axis);
            CHECK(farthest <= bound + 1e-12);
            if (kind != SolidKind::cylinder) CHECK(bound <= farthest * (1 + 1e-6));  // cos of half a step: 4e-7
            if (kind == SolidKind::cylinder) CHECK(bound <= farthest + s.radius);
        }
    }
}
