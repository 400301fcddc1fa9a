#include <catch2/catch.hpp>

#include "core/plan/edits/mirror.h"
#include "tests/unit/plan/fixture.h"

using namespace hither;
using namespace hither::test;

namespace {
Pose lastPose(const Plan& plan, std::size_t option, std::size_t mount, Vec3* operating = nullptr) {
    const SetupMade made = makeSetup(plan, option, BodyData{});
    for (const PlanProblem& p : made.problems) UNSCOPED_INFO(p.where << ": " << p.what);
    REQUIRE(made.setup);
    const SetupMount& m = made.setup->mounts.at(mount);
    const Pose X = forward(m.chain, m.q).last();
    if (operating != nullptr) *operating = X.linear() * m.chain.operatingAxis;
    return X;
}
/// What the reflection in the frame's middle plane makes of a point or a direction in W.
Vec3 reflected(const Vec3& v, bool point) {
    const SupportSpec frame = frameSpec();
    const Pose X_WS = pose(rotationFromRollPitchYaw(0, 0, frame.yaw_rad), frame.at_m);
    const Vec3 in = point ? Vec3(X_WS.inverse() * v) : Vec3(X_WS.linear().transpose() * v);
    const Vec3 out(in.x(), -in.y(), in.z());
    return point ? Vec3(X_WS * out) : Vec3(X_WS.linear() * out);
}
}  // namespace

TEST_CASE("a mirrored mount stands where the mirror puts it", "[plan]") {
    Plan plan = smallPlan();
    for (const Part& p : {neckPart(), crankPart()}) plan.parts.push_back(std::make_shared<const Part>(p));
    std::vector<Mount>& mounts = plan.options[0].mounts;
    mounts.push_back(mountOf("necked", {"tube-clamp", "neck", "crank", "round-switch"}));
    mounts[0].place.around_rad = 0.6;
    mounts[0].parts[1].clocking_rad = 0.9;
    mounts[0].parts[2].clocking_rad = -0.4;
    mounts[1].place.around_rad = -1.1;
    mounts[1].parts[1].clocking_rad = 0.2;
    mounts[1].parts[1].joints["neck"] = {{3, -2, 1, 4, -5, 0.5}, false};
    mounts[1].parts[2].clocking_rad = 1.3;
    const Edited edited = mirrorOption(plan, "first", "other-side", "Other side");
    INFO(edited.whyNot);
    REQUIRE(edited.plan);
    REQUIRE(edited.plan->options.size() == 2);
    CHECK(edited.plan->options[0] == plan.options[0]);
    for (std::size_t m = 0; m < 2; ++m) {
        CHECK(edited.plan->options[1].mounts[m].attachment == "tube_left");
        Vec3 before, after;
        const Pose X = lastPose(plan, 0, m, &before), mirrored = lastPose(*edited.plan, 1, m, &after);
        CHECK((mirrored.translation() - reflected(X.translation(), true)).norm() < 1e-9);
        CHECK((after - reflected(before, false)).norm() < 1e-9);
    }
    // The site's twin is new; a second mirroring finds both and comes back to the same pose.
    REQUIRE(edited.plan->sites.size() == 2);
    CHECK(edited.plan->sites[1].id == "elbow_left");
    CHECK(edited.plan->sites[1].controlSite == "elbow_left");
    CHECK((edited.plan->sites[1].point - reflected(plan.sites[0].point, true)).norm() < 1e-12);
    CHECK(edited.plan->options[1].mounts[0].site == "elbow_left");
    const Edited twice = mirrorOption(*edited.plan, "other-side", "back", "Back");
    REQUIRE(twice.plan);
    CHECK(twice.plan->sites.size() == 2);
    CHECK(twice.plan->options[2].mounts[0].site == "elbow_right");
    for (std::size_t m = 0; m < 2; ++m)
        CHECK((lastPose(*twice.plan, 2, m).translation() - lastPose(plan, 0, m).translation()).norm() < 1e-9);
}

TEST_CASE("an elbow that bends only one way still does on the other side", "[plan]") {
    Plan plan = smallPlan();
    plan.options[0].mounts[0].parts[1].joints["elbow"].q = {2.0};
    const Edited edited = mirrorOption(plan, "first", "m", "M");
    REQUIRE(edited.plan);
    const double elbow = edited.plan->options[1].mounts[0].parts[1].joints.at("elbow").q.at(0);
    CHECK(elbow >= 0);
    CHECK(elbow <= 2.4);
    CHECK(edited.plan->options[1].mounts[0].parts[1].joints.at("ball").kept);
}

TEST_CASE("keep-outs are mirrored with the option", "[plan]") {
    Plan plan = smallPlan();
    KeepOut k;
    k.id = "door";
    k.name = "Right door";
    k.solid = Solid::capsule(Vec3(0.1, -0.4, 0.2), Vec3(0.5, -0.5, 0.9), 0.05);
    KeepOut hull;
    hull.id = "wedge";
    hull.solid = Solid::convexHull(makeHull({Vec3(0, 0, 0), Vec3(0.2, 0, 0), Vec3(0, 0.3, 0), Vec3(0, 0, 0.4)}));
    plan.options[0].keepOuts = {k, hull};
    const Edited edited = mirrorOption(plan, "first", "m", "M");
    REQUIRE(edited.plan);
    const KeepOut& out = edited.plan->options[1].keepOuts[0];
    CHECK(out.name == "Left door");
    const Vec3 half(0, 0, k.solid.half.z());
    const Vec3 a = out.solid.X_FG * half, b = out.solid.X_FG * -half, wanted = reflected(k.solid.X_FG * half, true);
    CHECK(std::min((a - wanted).norm(), (b - wanted).norm()) < 1e-12);
    const Solid& wedge = edited.plan->options[1].keepOuts[1].solid;
    CHECK(wedge.X_FG.linear().determinant() == Approx(1));
    for (const Vec3& p : hull.solid.hull->points) {
        double nearest = 1;
        for (const Vec3& r : wedge.hull->points) nearest = std::min(nearest, (wedge.X_FG * r - reflected(hull.solid.X_FG * p, true)).norm());
        CHECK(nearest < 1e-12);
    }
}

TEST_CASE("a mirroring that is not well defined is refused with the reason", "[plan]") {
    const auto refused = [](const Plan& plan, const std::string& saysSo) {
        const Edited e = mirrorOption(plan, "first", "m", "M");
        INFO(e.whyNot);
        CHECK_FALSE(e.plan);
        CHECK(e.whyNot.find(saysSo) != std::string::npos);
    };
    Plan plan = smallPlan();
    plan.options[0].mounts[0].attachment = "upright";
    refused(plan, "nothing like \"upright\"");
    // Steps forward and then aside: there is no plane in which it is its own image.
    Part skew = crankPart();
    skew.id = "skew";
    skew.name = "Skew piece";
    skew.elements = {rigid(Vec3(0.03, 0, 0.02)), rigid(Vec3(0, 0.02, 0.02))};
    plan = smallPlan();
    plan.parts.push_back(std::make_shared<const Part>(skew));
    plan.options[0].mounts[0].parts.insert(plan.options[0].mounts[0].parts.begin() + 2, mounted("skew"));
    refused(plan, "\"Skew piece\", is not the same on its left and its right");
    plan = smallPlan();
    SupportSpec other = frameSpec();
    other.id = "other";
    other.yaw_rad += 0.1;
    plan.supports.push_back(other);
    plan.options[0].mounts.push_back(mountOf("second", {"tube-clamp"}));
    plan.options[0].mounts[1].support = "other";
    refused(plan, "different middle planes");
    plan = smallPlan();
    plan.options[0].mounts.clear();
    refused(plan, "no mounts");
    CHECK_FALSE(mirrorOption(smallPlan(), "none", "m", "M"));
    CHECK_FALSE(mirrorOption(smallPlan(), "first", "first", "M"));
    CHECK_FALSE(mirrorOption(smallPlan(), "first", "", "M"));
}

TEST_CASE("sides change places in names", "[plan]") {
    CHECK(otherSide("elbow_right") == "elbow_left");
    CHECK(otherSide("Left elbow, right rail") == "Right elbow, left rail");
    CHECK(otherSide("bright leftover") == "bright leftover");
    CHECK(otherSide("") == "");
}
