#include <catch2/catch.hpp>

#include "core/geometry/distance.h"
#include "tests/support/random_solids.h"

using namespace hither;
using namespace hither::test;

namespace {

// Walks along the ray by the distance to the surface, which can never step through it. `grazing` when the ray
// passes so near that the walk cannot tell.
struct Walk {
    std::optional<double> along;
    bool grazing = false;
};
Walk walk(const Ray& ray, const Solid& s) {
    const Vec3 u = ray.direction_W.normalized();
    double t = 0;
    double nearest = 1e300;
    for (int step = 0; step < 200000 && t < 5; ++step) {
        const double off = offSurface(s, Pose::Identity(), ray.origin_W + t * u);
        if (off < 1e-11) return {t, false};
        nearest = std::min(nearest, off);
        t += off;
    }
    return {std::nullopt, nearest < 1e-7};
}

}  // namespace

TEST_CASE("rays hit every kind where walking by distances hits it", "[geometry]") {
    RandomSolids random(51);
    for (SolidKind kind : allKinds) {
        CAPTURE(name(kind));
        int hits = 0;
        int misses = 0;
        for (int i = 0; i < 1500; ++i) {
            const Solid s = random.solid(kind).movedBy(random.anyPose(0.3));
            const Vec3 target = s.X_FG.translation() + 0.12 * random.uniform(0, 1) * random.direction();
            Ray ray;
            ray.origin_W = target + random.uniform(0.2, 1) * random.direction();
            ray.direction_W = random.uniform(0.1, 5) * (target - ray.origin_W);
            if (offSurface(s, Pose::Identity(), ray.origin_W) <= 0) continue;
            const auto hit = castRay(ray, s);
            const Walk expected = walk(ray, s);
            if (expected.grazing) continue;
            REQUIRE(hit.has_value() == expected.along.has_value());
            if (!hit) {
                ++misses;
                continue;
            }
            ++hits;
            const Vec3 u = ray.direction_W.normalized();
            CHECK(std::abs(offSurface(s, Pose::Identity(), hit->point_W)) < 1e-12);
            CHECK((ray.origin_W + hit->along_m * u - hit->point_W).norm() < 1e-14);
            CHECK(hit->normal_W.norm() == Approx(1));
            CHECK(hit->normal_W.dot(u) <= 1e-12);
            // A grazing approach makes the walk stop a little early.
            CHECK(std::abs(hit->along_m - *expected.along) < 1e-10 / std::max(1e-5, std::abs(hit->normal_W.dot(u))));
            // Nothing of the solid is ahead of the tangent plane at the hit.
            CHECK(reach(s, Pose::Identity(), hit->normal_W) - hit->normal_W.dot(hit->point_W) < 1e-12);
        }
        CHECK(hits > 300);
        CHECK(misses > 100);
    }
}

TEST_CASE("a ray from inside hits at its origin, one that points away hits nothing", "[geometry]") {
    RandomSolids random(52);
    for (SolidKind kind : allKinds) {
        CAPTURE(name(kind));
        for (int i = 0; i < 50; ++i) {
            const Solid s = random.solid(kind).movedBy(random.anyPose());
            const Vec3 u = random.direction();
            Vec3 middle = s.X_FG.translation();
            if (s.hull) {
                Vec3 sum = Vec3::Zero();
                for (const Vec3& p : s.hull->points) sum += p;
                middle = s.X_FG * Vec3(sum / static_cast<double>(s.hull->points.size()));
            }
            const auto inside = castRay({middle, 3 * u}, s);
            REQUIRE(inside.has_value());
            CHECK(inside->along_m == 0);
            CHECK(inside->point_W == middle);
            const Vec3 beyond = s.X_FG.translation() + 2 * u;
            CHECK_FALSE(castRay({beyond, u}, s).has_value());
        }
    }
}

TEST_CASE("rays along the axes of a rounded box see faces, edges and corners", "[geometry]") {
    const Solid s = Solid::roundedBox(Pose::Identity(), Vec3(0.05, 0.04, 0.03), 0.01);
    const auto face = castRay({Vec3(0, 0, 1), Vec3(0, 0, -1)}, s);
    REQUIRE(face);
    CHECK(face->along_m == Approx(0.97));
    // Into the rounding over the edge x, z: at x = 0.046 the arc about (0.04, 0.02) is 0.008 above its centre.
    const auto edge = castRay({Vec3(0.046, 0, 1), Vec3(0, 0, -1)}, s);
    REQUIRE(edge);
    CHECK(edge->along_m == Approx(1 - 0.028));
    CHECK((edge->normal_W - Vec3(0.6, 0, 0.8)).norm() < 1e-12);
    // Towards the corner's centre along the space diagonal.
    const Vec3 diagonal = Vec3(1, 1, 1).normalized();
    const auto corner = castRay({Vec3(0.04, 0.03, 0.02) + diagonal, -diagonal}, s);
    REQUIRE(corner);
    CHECK(corner->along_m == Approx(0.99));
    CHECK((corner->normal_W - diagonal).norm() < 1e-12);
    CHECK_FALSE(castRay({Vec3(0.0499, 0.0399, 1), Vec3(0, 0, -1)}, s).has_value());  // past the rounded corner
}
