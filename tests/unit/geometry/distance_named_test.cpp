#include <catch2/catch.hpp>

#include "core/geometry/distance.h"
#include "tests/support/random_solids.h"

using namespace hither;
using namespace hither::test;

// Configurations with answers by elementary geometry, worked by hand, each under many poses and both ways round.
namespace {

struct Named {
    std::string what;
    Solid A;
    Solid B;
    double expected = 0;
    std::optional<Vec3> p_A = {};     // where it is unique
    std::optional<Vec3> p_B = {};
    std::optional<Vec3> normal = {};  // from A to B
};

Solid boxAt(const Vec3& centre, const Vec3& half) { return Solid::box(translation(centre), half); }
Solid roundedAt(const Vec3& centre, const Vec3& half, double radius) { return Solid::roundedBox(translation(centre), half, radius); }
Solid hullOfBox(const Vec3& centre, const Vec3& half) {
    std::vector<Vec3> points;
    for (int i = 0; i < 8; ++i) {
        points.emplace_back(centre + half.cwiseProduct(Vec3((i & 1) ? 1 : -1, (i & 2) ? 1 : -1, (i & 4) ? 1 : -1)));
    }
    return Solid::convexHull(makeHull(points));
}

// Where curved surfaces touch, a normal is known only to the square root of the rounding of a distance.
void checkNamed(const std::vector<Named>& cases, unsigned seed) {
    RandomSolids random(seed);
    for (const Named& c : cases) {
        CAPTURE(c.what);
        for (int turn = 0; turn < 25; ++turn) {
            const Pose X = turn == 0 ? Pose::Identity() : random.anyPose(turn < 20 ? 1.0 : 5.0);
            const Distance d = distance(c.A, X, c.B, X);
            CHECK(std::abs(d.distance - c.expected) < 1e-9);
            CHECK(certify(d, c.A, X, c.B, X).worst() < 1e-8);
            if (c.p_A) CHECK((X.inverse() * d.p_WA - *c.p_A).norm() < 2e-8);
            if (c.p_B) CHECK((X.inverse() * d.p_WB - *c.p_B).norm() < 2e-8);
            if (c.normal) CHECK((X.linear().transpose() * d.normal_AB - *c.normal).norm() < 1e-6);
            const Distance back = distance(c.B, X, c.A, X);
            CHECK(std::abs(back.distance - c.expected) < 1e-9);
            CHECK(certify(back, c.B, X, c.A, X).worst() < 1e-8);
            if (c.p_A) CHECK((X.inverse() * back.p_WB - *c.p_A).norm() < 2e-8);
            if (c.normal) CHECK((X.linear().transpose() * back.normal_AB + *c.normal).norm() < 1e-6);
        }
    }
}

const double root2 = std::sqrt(2.0);
const double root3 = std::sqrt(3.0);
const Vec3 O = Vec3::Zero();
const Vec3 X1 = Vec3::UnitX();
const Vec3 Y1 = Vec3::UnitY();
const Vec3 Z1 = Vec3::UnitZ();

}  // namespace

TEST_CASE("named distances of balls", "[geometry]") {
    const Solid ball = Solid::sphere(O, 0.02);
    checkNamed({
        {"ball, ball apart", ball, Solid::sphere(Vec3(0.3, 0.4, 0), 0.05), 0.43, Vec3(0.012, 0.016, 0), Vec3(0.27, 0.36, 0), Vec3(0.6, 0.8, 0)},
        {"ball, ball touching", ball, Solid::sphere(Vec3(0, 0, 0.07), 0.05), 0, Vec3(0, 0, 0.02), Vec3(0, 0, 0.02), Z1},
        {"ball, ball overlapping", ball, Solid::sphere(Vec3(0, 0.03, 0), 0.05), -0.04, Vec3(0, 0.02, 0), Vec3(0, -0.02, 0), Y1},
        {"ball, ball about one centre", ball, Solid::sphere(O, 0.05), -0.07},
        {"ball beside a capsule", ball, Solid::capsule(Vec3(0.1, 0, -0.1), Vec3(0.1, 0, 0.2), 0.03), 0.05, Vec3(0.02, 0, 0), Vec3(0.07, 0, 0), X1},
        {"ball before a capsule's end", ball, Solid::capsule(Vec3(0, 0, 0.1), Vec3(0, 0, 0.2), 0.03), 0.05, Vec3(0, 0, 0.02), Vec3(0, 0, 0.07), Z1},
        {"ball on a capsule's axis", ball, Solid::capsule(Vec3(0, 0, -0.1), Vec3(0, 0, 0.2), 0.03), -0.05},
        {"ball beside a cylinder", ball, Solid::cylinder(Vec3(0.1, 0, -0.1), Vec3(0.1, 0, 0.2), 0.03), 0.05, Vec3(0.02, 0, 0), Vec3(0.07, 0, 0), X1},
        {"ball above a cylinder's end", ball, Solid::cylinder(Vec3(0.01, 0, 0.1), Vec3(0.01, 0, 0.2), 0.03), 0.08, Vec3(0, 0, 0.02), Vec3(0, 0, 0.1), Z1},
        {"ball at a cylinder's rim", ball, Solid::cylinder(Vec3(0.07, 0, 0.03), Vec3(0.07, 0, 0.2), 0.03), 0.03, Vec3(0.016, 0, 0.012), Vec3(0.04, 0, 0.03), Vec3(0.8, 0, 0.6)},
        {"ball's centre on a cylinder's axis", ball, Solid::cylinder(Vec3(0, 0, -0.1), Vec3(0, 0, 0.2), 0.03), -0.05},
        {"ball's centre in a cylinder, nearer its end", ball, Solid::cylinder(Vec3(0, 0, -0.01), Vec3(0, 0, 0.2), 0.03), -0.03, Vec3(0, 0, 0.02), Vec3(0, 0, -0.01), Z1},
        {"ball's centre in a box", ball, boxAt(Vec3(0.02, 0, 0), Vec3(0.03, 0.1, 0.1)), -0.03, Vec3(0.02, 0, 0), Vec3(-0.01, 0, 0), X1},
        {"ball's centre at a box's centre", ball, boxAt(O, Vec3(0.03, 0.1, 0.2)), -0.05},
        {"ball at a box's face", ball, boxAt(Vec3(0.1, 0.01, 0.01), Vec3(0.03, 0.1, 0.1)), 0.05, Vec3(0.02, 0, 0), Vec3(0.07, 0, 0), X1},
        {"ball at a box's edge", ball, boxAt(Vec3(0.13, 0.14, 0.01), Vec3(0.1, 0.1, 0.1)), 0.03, Vec3(0.012, 0.016, 0), Vec3(0.03, 0.04, 0), Vec3(0.6, 0.8, 0)},
        {"ball at a box's corner", ball, boxAt(Vec3(0.2, 0.2, 0.2), Vec3(0.1, 0.1, 0.1)), 0.1 * root3 - 0.02, std::nullopt, Vec3(0.1, 0.1, 0.1), Vec3(1, 1, 1) / root3},
        {"ball at a rounded box's corner", ball, roundedAt(Vec3(0.2, 0.2, 0.2), Vec3(0.1, 0.1, 0.1), 0.03), 0.13 * root3 - 0.05, std::nullopt, std::nullopt, Vec3(1, 1, 1) / root3},
        {"ball's centre on a box's face", ball, boxAt(Vec3(0.03, 0.01, 0.01), Vec3(0.03, 0.1, 0.1)), -0.02, Vec3(0.02, 0, 0), O, X1},
        {"ball at a hull's face", ball, hullOfBox(Vec3(0.1, 0.01, 0.01), Vec3(0.03, 0.1, 0.1)), 0.05, Vec3(0.02, 0, 0), Vec3(0.07, 0, 0), X1},
        {"ball at a hull's corner", ball, hullOfBox(Vec3(0.2, 0.2, 0.2), Vec3(0.1, 0.1, 0.1)), 0.1 * root3 - 0.02, std::nullopt, Vec3(0.1, 0.1, 0.1), Vec3(1, 1, 1) / root3},
        {"ball's centre in a hull", ball, hullOfBox(Vec3(0.02, 0, 0), Vec3(0.03, 0.1, 0.1)), -0.03, Vec3(0.02, 0, 0), Vec3(-0.01, 0, 0), X1},
    }, 31);
}

TEST_CASE("named distances of capsules", "[geometry]") {
    const Solid rod = Solid::capsule(Vec3(0, 0, -0.1), Vec3(0, 0, 0.1), 0.01);
    checkNamed({
        {"crossing apart", rod, Solid::capsule(Vec3(-0.2, 0.05, 0), Vec3(0.1, 0.05, 0), 0.02), 0.02, Vec3(0, 0.01, 0), Vec3(0, 0.03, 0), Y1},
        {"axes crossing", rod, Solid::capsule(Vec3(-0.2, 0, 0.03), Vec3(0.1, 0, 0.03), 0.02), -0.03},
        {"side by side", rod, Solid::capsule(Vec3(0.05, 0, 0), Vec3(0.05, 0, 0.3), 0.02), 0.02, std::nullopt, std::nullopt, X1},
        {"end to end", rod, Solid::capsule(Vec3(0, 0, 0.15), Vec3(0, 0, 0.3), 0.02), 0.02, Vec3(0, 0, 0.11), Vec3(0, 0, 0.13), Z1},
        {"end to end, touching", rod, Solid::capsule(Vec3(0, 0, 0.13), Vec3(0, 0, 0.3), 0.02), 0, Vec3(0, 0, 0.11), Vec3(0, 0, 0.11), Z1},
        {"the same axis", rod, Solid::capsule(Vec3(0, 0, -0.05), Vec3(0, 0, 0.3), 0.02), -0.03},
        {"the same capsule", rod, rod, -0.02},
        {"end against a side", rod, Solid::capsule(Vec3(0.06, 0, 0.02), Vec3(0.3, 0, 0.02), 0.02), 0.03, Vec3(0.01, 0, 0.02), Vec3(0.04, 0, 0.02), X1},
        {"nearly parallel", rod, Solid::capsule(Vec3(0.05, -1e-9, -0.1), Vec3(0.05, 1e-9, 0.1), 0.02), 0.02, std::nullopt, std::nullopt, X1},
        {"along a box's face", rod, boxAt(Vec3(0.1, 0, 0), Vec3(0.03, 0.2, 0.05)), 0.06, std::nullopt, std::nullopt, X1},
        {"its end on a box's face", rod, boxAt(Vec3(0, 0, 0.2), Vec3(0.1, 0.1, 0.05)), 0.04, Vec3(0, 0, 0.11), Vec3(0, 0, 0.15), Z1},
        {"across a box's edge", rod, Solid::box(pose(rotationFromRollPitchYaw(0, 0, 0.25 * 3.14159265358979323846), Vec3(0.2, 0, 0)), Vec3(0.05, 0.05, 0.01)), 0.19 - 0.05 * root2},
        {"across a slanted edge", rod, Solid::box(pose(rotationFromRollPitchYaw(0.25 * 3.14159265358979323846, 0, 0), Vec3(0, 0.2, 0)), Vec3(0.3, 0.05, 0.05)), 0.19 - 0.05 * root2, Vec3(0, 0.01, 0), Vec3(0, 0.2 - 0.05 * root2, 0), Y1},
        {"through a box", rod, boxAt(Vec3(0.01, 0, 0), Vec3(0.04, 0.2, 0.05)), -0.04, std::nullopt, std::nullopt, X1},
        {"inside a box", rod, boxAt(Vec3(0.01, 0, 0), Vec3(0.04, 0.3, 0.4)), -0.04, std::nullopt, std::nullopt, X1},
        {"touching a box", rod, boxAt(Vec3(0.05, 0, 0), Vec3(0.04, 0.3, 0.05)), 0, std::nullopt, std::nullopt, X1},
        {"its axis in a box's face", rod, boxAt(Vec3(0.04, 0, 0), Vec3(0.04, 0.3, 0.05)), -0.01, std::nullopt, std::nullopt, X1},
        {"along a rounded box", rod, roundedAt(Vec3(0.1, 0, 0), Vec3(0.03, 0.2, 0.05), 0.01), 0.06, std::nullopt, std::nullopt, X1},
        {"beside a cylinder", rod, Solid::cylinder(Vec3(0.1, -0.1, 0), Vec3(0.1, 0.1, 0), 0.03), 0.06, Vec3(0.01, 0, 0), Vec3(0.07, 0, 0), X1},
        {"above a cylinder", rod, Solid::cylinder(Vec3(0, 0.01, 0.15), Vec3(0, 0.01, 0.2), 0.03), 0.04, Vec3(0, 0, 0.11), Vec3(0, 0, 0.15), Z1},
        {"on the axis of a cylinder", rod, Solid::cylinder(Vec3(0, 0, -0.3), Vec3(0, 0, 0.3), 0.03), -0.04},
        {"through a flat cylinder", rod, Solid::cylinder(Vec3(0, 0, -0.005), Vec3(0, 0, 0.005), 0.03), -0.04},
        {"above a hull", rod, hullOfBox(Vec3(0, 0, 0.2), Vec3(0.1, 0.1, 0.05)), 0.04, Vec3(0, 0, 0.11), Vec3(0, 0, 0.15), Z1},
        {"through a hull", rod, hullOfBox(Vec3(0.01, 0, 0), Vec3(0.04, 0.2, 0.05)), -0.04, std::nullopt, std::nullopt, X1},
    }, 32);
}

TEST_CASE("named distances of cylinders", "[geometry]") {
    const Solid can = Solid::cylinder(Vec3(0, 0, -0.05), Vec3(0, 0, 0.05), 0.03);
    checkNamed({
        {"on top of each other, apart", can, Solid::cylinder(Vec3(0.01, 0, 0.07), Vec3(0.01, 0, 0.2), 0.08), 0.02, std::nullopt, std::nullopt, Z1},
        {"standing on each other", can, Solid::cylinder(Vec3(0.01, 0, 0.05), Vec3(0.01, 0, 0.2), 0.08), 0, std::nullopt, std::nullopt, Z1},
        {"side by side", can, Solid::cylinder(Vec3(0.1, 0, 0), Vec3(0.1, 0, 0.2), 0.04), 0.03, std::nullopt, std::nullopt, X1},
        {"side by side, touching", can, Solid::cylinder(Vec3(0, 0.07, 0), Vec3(0, 0.07, 0.2), 0.04), 0, std::nullopt, std::nullopt, Y1},
        {"crossed", can, Solid::cylinder(Vec3(-0.1, 0.1, 0), Vec3(0.1, 0.1, 0), 0.04), 0.03, Vec3(0, 0.03, 0), Vec3(0, 0.06, 0), Y1},
        {"crossed, overlapping", can, Solid::cylinder(Vec3(-0.1, 0.06, 0), Vec3(0.1, 0.06, 0), 0.04), -0.01, Vec3(0, 0.03, 0), Vec3(0, 0.02, 0), Y1},
        {"one in the other, same axis, long", Solid::cylinder(Vec3(0, 0, -0.3), Vec3(0, 0, 0.3), 0.03), Solid::cylinder(Vec3(0, 0, -0.4), Vec3(0, 0, 0.4), 0.04), -0.07},
        {"the same can", can, can, -0.06},
        {"rim to rim", can, Solid::cylinder(Vec3(0.09, 0, 0.09), Vec3(0.09, 0, 0.3), 0.03), 0.05, Vec3(0.03, 0, 0.05), Vec3(0.06, 0, 0.09), Vec3(0.6, 0, 0.8)},
        {"beside a box", can, boxAt(Vec3(0.1, 0, 0), Vec3(0.04, 0.2, 0.1)), 0.03, std::nullopt, std::nullopt, X1},
        {"standing on a box", can, boxAt(Vec3(0, 0, -0.1), Vec3(0.2, 0.2, 0.05)), 0, std::nullopt, std::nullopt, Vec3(-Z1)},
        {"above a box", can, boxAt(Vec3(0, 0, -0.11), Vec3(0.2, 0.2, 0.05)), 0.01, std::nullopt, std::nullopt, Vec3(-Z1)},
        {"against a box's edge", can, Solid::box(pose(rotationFromRollPitchYaw(0, 0, 0.25 * 3.14159265358979323846), Vec3(0.2, 0, 0)), Vec3(0.05, 0.05, 0.01)), 0.17 - 0.05 * root2, std::nullopt, std::nullopt, X1},
        {"in the middle of a box", can, boxAt(O, Vec3(0.04, 0.2, 0.2)), -0.07},
        {"upright in a square tube's place", can, boxAt(O, Vec3(0.03, 0.03, 0.2)), -0.06},
        {"beside a rounded box", can, roundedAt(Vec3(0.1, 0, 0), Vec3(0.04, 0.2, 0.1), 0.02), 0.03, std::nullopt, std::nullopt, X1},
        {"beside a hull", can, hullOfBox(Vec3(0.1, 0, 0), Vec3(0.04, 0.2, 0.1)), 0.03, std::nullopt, std::nullopt, X1},
        {"in the middle of a hull", can, hullOfBox(O, Vec3(0.04, 0.2, 0.2)), -0.07},
    }, 33);
}

TEST_CASE("named distances of boxes and hulls", "[geometry]") {
    const Vec3 half(0.05, 0.04, 0.03);
    for (const bool asHull : {false, true}) {
        const auto block = [&](const Vec3& centre, const Vec3& h) { return asHull ? hullOfBox(centre, h) : boxAt(centre, h); };
        const Solid a = block(O, half);
        checkNamed({
            {"face to face", a, block(Vec3(0.2, 0.01, 0.01), Vec3(0.1, 0.1, 0.1)), 0.05, std::nullopt, std::nullopt, X1},
            {"edge to parallel edge", a, block(Vec3(0.18, 0.18, 0), Vec3(0.1, 0.1, 0.1)), 0.05, std::nullopt, std::nullopt, Vec3(0.6, 0.8, 0)},
            {"corner to corner", a, block(Vec3(0.25, 0.24, 0.23), Vec3(0.1, 0.1, 0.1)), 0.1 * root3, half, Vec3(0.15, 0.14, 0.13), Vec3(1, 1, 1) / root3},
            {"touching along a face", a, block(Vec3(0.15, 0.01, 0.01), Vec3(0.1, 0.1, 0.1)), 0, std::nullopt, std::nullopt, X1},
            {"overlapping", a, block(Vec3(0.14, 0.01, 0.01), Vec3(0.1, 0.1, 0.1)), -0.01, std::nullopt, std::nullopt, X1},
            {"the same block", a, a, -0.06},
            {"one inside the other", a, block(Vec3(0.01, 0, 0), Vec3(0.1, 0.2, 0.2)), -0.14, std::nullopt, std::nullopt, X1},
            {"a flat plate through it", a, block(Vec3(0, 0, 0.01), Vec3(0.3, 0.3, 0.001)), -0.021, std::nullopt, std::nullopt, Z1},
            {"against a rounded box", a, roundedAt(Vec3(0.2, 0.01, 0.01), Vec3(0.1, 0.1, 0.1), 0.03), 0.05, std::nullopt, std::nullopt, X1},
            {"corner to a rounded corner", a, roundedAt(Vec3(0.25, 0.24, 0.23), Vec3(0.1, 0.1, 0.1), 0.02), 0.12 * root3 - 0.02, half, std::nullopt, Vec3(1, 1, 1) / root3},
            {"a rounded box in the same place", a, roundedAt(O, half, 0.01), -0.06},
        }, 34);
    }
    // Two crossed edges: a cube stood on an edge below another stood on an edge at right angles.
    const double eighth = 0.25 * 3.14159265358979323846;
    const auto onEdge = [&](double z, bool alongX) {
        return Solid::box(pose(alongX ? rotationFromRollPitchYaw(eighth, 0, 0) : rotationFromRollPitchYaw(0, eighth, 0), Vec3(0, 0, z)), Vec3(0.05, 0.05, 0.05));
    };
    const double up = 0.05 * root2;
    checkNamed({
        {"edge across edge, apart", onEdge(0, true), onEdge(2 * up + 0.02, false), 0.02, Vec3(0, 0, up), Vec3(0, 0, up + 0.02), Z1},
        {"edge across edge, touching", onEdge(0, true), onEdge(2 * up, false), 0, Vec3(0, 0, up), Vec3(0, 0, up), Z1},
        {"edge across edge, overlapping", onEdge(0, true), onEdge(2 * up - 0.002, false), -0.002, Vec3(0, 0, up), Vec3(0, 0, up - 0.002), Z1},
    }, 35);
    checkNamed({
        {"rounded, face to face", roundedAt(O, half, 0.01), roundedAt(Vec3(0.2, 0, 0), Vec3(0.1, 0.1, 0.1), 0.05), 0.05, std::nullopt, std::nullopt, X1},
        {"fully rounded plates", roundedAt(O, Vec3(0.1, 0.1, 0.01), 0.01), roundedAt(Vec3(0, 0, 0.05), Vec3(0.1, 0.1, 0.01), 0.01), 0.03, std::nullopt, std::nullopt, Z1},
        {"fully rounded plates in one plane", roundedAt(O, Vec3(0.1, 0.1, 0.01), 0.01), roundedAt(Vec3(0.05, 0, 0), Vec3(0.1, 0.1, 0.01), 0.01), -0.02, std::nullopt, std::nullopt, std::nullopt},
        {"fully rounded bars in one line", roundedAt(O, Vec3(0.1, 0.01, 0.01), 0.01), roundedAt(Vec3(0.05, 0, 0), Vec3(0.1, 0.01, 0.01), 0.01), -0.02},
    }, 36);
}

TEST_CASE("shapes that come to the same have the same distance", "[geometry]") {
    RandomSolids random(37);
    for (SolidKind kind : allKinds) {
        CAPTURE(name(kind));
        for (int i = 0; i < 60; ++i) {
            const Solid other = random.solid(kind);
            const Pose X = random.anyPose(0.15);
            const Pose X_WA = random.anyPose(0.15);
            const Vec3 half(random.uniform(0.01, 0.1), random.uniform(0.01, 0.1), random.uniform(0.01, 0.1));
            const double r = random.uniform(0.005, 0.05);
            const auto to = [&](const Solid& s) { return distance(s, X_WA, other, X).distance; };
            const double ball = to(Solid::sphere(O, r));
            CHECK(std::abs(to(Solid::capsule(O, O, r)) - ball) < 1e-9);
            CHECK(std::abs(to(roundedAt(O, Vec3(r, r, r), r)) - ball) < 1e-9);
            const double rod = to(Solid::capsule(Vec3(0, 0, -half.z()), Vec3(0, 0, half.z()), r));
            CHECK(std::abs(to(roundedAt(O, Vec3(r, r, half.z() + r), r)) - rod) < 1e-9);
            const double block = to(boxAt(O, half));
            CHECK(std::abs(to(hullOfBox(O, half)) - block) < 1e-9);
            CHECK(std::abs(to(roundedAt(O, half, 0)) - block) < 1e-9);
        }
    }
}
