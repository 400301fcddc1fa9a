#include <catch2/catch.hpp>
#include <functional>
#include <set>

#include "core/units/quantity.h"
#include "tests/unit/situation/support_samples.h"

using namespace support_samples;

namespace {

Attachment rail(const std::string& id) {
    Attachment a;
    a.id = id;
    a.tubeAsTyped = "22 mm";
    a.b = Vec3(0.5, 0, 0);
    return a;
}
Attachment edge(const std::string& id, const Vec3& from, const Vec3& to) {
    Attachment a;
    a.id = id;
    a.kind = AttachmentKind::edge;
    a.a = from;
    a.b = to;
    a.thickness_m = {0.018, {BasisKind::measured, {}}};
    a.depth_m = 0.1;
    return a;
}
Attachment face(const std::string& id) {
    Attachment a;
    a.id = id;
    a.kind = AttachmentKind::face;
    a.a = Vec3(0.2, 0, 0.7);
    a.reference = Vec3::UnitX();
    a.sizeX_m = 0.4;
    a.sizeY_m = 0.6;
    return a;
}
Attachment cloth(const std::string& id) {
    Attachment a;
    a.id = id;
    a.kind = AttachmentKind::cloth;
    a.b = Vec3(0, 0.3, 0);
    return a;
}

/// A typed support with one of everything, all right.
SupportSpec good() {
    SupportSpec spec = standard("custom");
    MovingGroup arm;
    arm.id = "arm";
    arm.axis = Vec3(0, 0, 3);
    arm.min = -1;
    arm.max = 1;
    MovingGroup hand;
    hand.id = "hand";
    hand.parent = "arm";
    hand.pivot = Vec3(0.5, 0, 0);
    hand.min = 0.2;
    hand.max = 0.5;
    spec.groups = {hand, arm};  // a child may be typed before its parent
    Attachment r = rail("tube");
    r.group = "arm";
    r.blocked.push_back({0.1, 0.2, -1, 1, false, "bracket"});
    spec.attachments = {r, edge("near", Vec3(0, 0.3, 0.7), Vec3(0, -0.3, 0.7)), face("top"), cloth("cover")};
    spec.landmarks = {{"corner", "Corner", Vec3(0, 0.3, 0.7), ""}};
    spec.solids = {{"block", Solid::box(Pose::Identity(), Vec3(0.1, 0.1, 0.1)), "hand"}};
    return spec;
}

std::set<std::string> problemsWith(const std::function<void(SupportSpec&)>& change) {
    SupportSpec spec = good();
    change(spec);
    const SupportMade made = makeSupport(spec);
    std::set<std::string> keys;
    for (const SupportProblem& p : made.problems) {
        CHECK(!p.found.empty());
        CHECK(!p.allowed.empty());
        CHECK(p.support == "s");
        keys.insert(p.key);
    }
    CHECK(made.support.has_value() == keys.empty());
    return keys;
}

}  // namespace

TEST_CASE("a typed support is made as typed", "[support][typed]") {
    CHECK(problemsWith([](SupportSpec&) {}).empty());
    const Support s = *makeSupport(good()).support;
    CHECK(s.basis == BasisKind::measured);
    CHECK(s.resting.posture == Resting::Posture::none);
    CHECK(*s.attachment("tube")->outside_m.value == Approx(0.022));
    CHECK(s.attachment("tube")->outside_m.basis.kind == BasisKind::measured);
    CHECK(s.group("hand")->value == 0.2);  // zero is out of its range: the nearest that is in it
    CHECK(s.group("arm")->axis == Vec3::UnitZ());
    CHECK((groupPose_S(s, "hand", {{{"s", "arm"}, 0.4}}).linear() - (Eigen::AngleAxisd(0.4, Vec3::UnitZ()) * Eigen::AngleAxisd(0.2, Vec3::UnitY())).toRotationMatrix()).norm() < 1e-12);
    // The tube and the plate got solids of their own, and both edge and face lie on the one plate.
    CHECK(s.attachment("tube")->solids == std::vector<std::string>{"tube"});
    CHECK(s.attachment("near")->solids == s.attachment("top")->solids);
    for (const char* id : {"tube", "near", "top"}) {
        const Attachment& a = *s.attachment(id);
        CHECK(std::abs(distanceToListed(s, a, gripFrame(a, {0.05, 0, false, 0.01, 0.02, 0}).translation())) < 1e-9);
    }
    const Attachment& near = *s.attachment("near");
    CHECK(std::abs(distanceToListed(s, near, gripFrame(near, {0.05, 0, true, 0, 0, 0}).translation())) < 1e-9);  // as thick as the edge says
    CHECK(s.attachment("cover")->solids.empty());
}

TEST_CASE("a typed rail that runs inside a typed solid takes that, not one of its own", "[support][typed]") {
    SupportSpec spec = standard("custom");
    spec.attachments = {rail("tube")};
    spec.solids = {{"bar", Solid::cylinder(Vec3(-0.1, 0, 0), Vec3(0.6, 0, 0), 0.011), ""}};
    const SupportMade made = makeSupport(spec);
    REQUIRE(made.support);
    CHECK(made.support->solids.size() == 1);
    CHECK(made.support->attachment("tube")->solids == std::vector<std::string>{"bar"});
}

TEST_CASE("typed pieces go with a made kind and its groups", "[support][typed]") {
    SupportSpec spec = standard("bed");
    Attachment lamp = rail("lamp_tube");
    lamp.group = "back";
    spec.attachments = {lamp};
    spec.tubes["lamp_tube"] = "1/2 in";
    spec.landmarks = {{"lamp", "Lamp", Vec3(0, 0, 1), "back"}};
    SupportMade made = makeSupport(spec);
    REQUIRE(made.support);
    CHECK(*made.support->attachment("lamp_tube")->outside_m.value == Approx(0.0127));
    spec.attachments[0].id = "head_rail_top";
    made = makeSupport(spec);
    REQUIRE(!made.support);
    CHECK(made.problems[0].key == "rails/head_rail_top/id");
}

TEST_CASE("whatever is wrong with a typed support is a problem at its place", "[support][typed]") {
    using Keys = std::set<std::string>;
    const double nan = std::nan(""), inf = std::numeric_limits<double>::infinity();
    // groups: [0] is "hand", [1] its parent "arm"
    CHECK(problemsWith([](SupportSpec& s) { s.groups[0].id.clear(); }).count("groups/0/id"));
    CHECK(problemsWith([](SupportSpec& s) { s.groups[0].id = "arm"; }).count("groups/arm/id"));
    CHECK(problemsWith([](SupportSpec& s) { s.groups[0].parent = "leg"; }).count("groups/hand/parent"));
    CHECK(problemsWith([](SupportSpec& s) { s.groups[0].parent = "hand"; }).count("groups/hand/parent"));
    CHECK(problemsWith([](SupportSpec& s) { s.groups[1].parent = "hand"; }).count("groups/arm/parent"));
    CHECK(problemsWith([](SupportSpec& s) { s.groups[0].axis.setZero(); }).count("groups/hand/axis"));
    CHECK(problemsWith([&](SupportSpec& s) { s.groups[0].pivot.x() = nan; }).count("groups/hand/pivot_mm"));
    CHECK(problemsWith([](SupportSpec& s) { s.groups[0].min = 0.6; }).count("groups/hand/min_deg"));
    CHECK(problemsWith([&](SupportSpec& s) { s.groups[0].max = inf; }).count("groups/hand/min_deg"));
    CHECK(problemsWith([](SupportSpec& s) { s.groups[0].slides = true; s.groups[0].max = 30; }).count("groups/hand/min_mm"));
    CHECK(problemsWith([](SupportSpec& s) { s.settings["hand"] = 0.6; }) == Keys{"settings/hand_deg"});
    CHECK(problemsWith([](SupportSpec& s) { s.settings["leg"] = 0.6; }) == Keys{"settings/leg"});
    // rail
    CHECK(problemsWith([](SupportSpec& s) { s.attachments[0].b.setZero(); }) == Keys{"rails/tube/to_mm"});
    CHECK(problemsWith([&](SupportSpec& s) { s.attachments[0].a.z() = nan; }) == Keys{"rails/tube/from_mm"});
    CHECK(problemsWith([](SupportSpec& s) { s.attachments[0].reference = Vec3(2, 0, 0); }) == Keys{"rails/tube/reference"});
    CHECK(problemsWith([](SupportSpec& s) { s.attachments[0].reference.setZero(); }) == Keys{"rails/tube/reference"});
    CHECK(problemsWith([](SupportSpec& s) { s.attachments[0].tubeAsTyped = "thick"; }) == Keys{"rails/tube/size"});
    // A size nobody has measured yet is unknown, no mistake: Fit says how to measure it.
    CHECK(problemsWith([](SupportSpec& s) { s.attachments[0].tubeAsTyped.clear(); s.attachments[0].outside_m = {}; }) == Keys{});
    CHECK(problemsWith([](SupportSpec& s) { s.tubes["tube"] = "thick"; }) == Keys{"rails/tube/size"});
    CHECK(problemsWith([](SupportSpec& s) { s.attachments[0].outside_m = {0.0, {}}; }) == Keys{"rails/tube/size"});
    CHECK(problemsWith([](SupportSpec& s) { s.attachments[0].group = "leg"; }) == Keys{"rails/tube/group"});
    CHECK(problemsWith([](SupportSpec& s) { s.attachments[0].solids = {"air"}; }) == Keys{"rails/tube/touches"});
    CHECK(problemsWith([](SupportSpec& s) { s.attachments[0].id.clear(); }) == Keys{"rails/0/id"});
    CHECK(problemsWith([](SupportSpec& s) { s.attachments[0].id = "top"; }) == Keys{"faces/top/id"});
    CHECK(problemsWith([](SupportSpec& s) { s.attachments[0].blocked[0].to_m = 0.51; }) == Keys{"rails/tube/blocked/0"});
    CHECK(problemsWith([](SupportSpec& s) { s.attachments[0].blocked[0].from_m = -0.01; }) == Keys{"rails/tube/blocked/0"});
    CHECK(problemsWith([](SupportSpec& s) { s.attachments[0].blocked[0].from_m = 0.2; }) == Keys{"rails/tube/blocked/0"});
    CHECK(problemsWith([](SupportSpec& s) { s.attachments[0].blocked[0].sectorTo_rad = -2; }) == Keys{"rails/tube/blocked/0"});
    CHECK(problemsWith([](SupportSpec& s) { s.attachments[0].blocked[0].sectorTo_rad = 7; }) == Keys{"rails/tube/blocked/0"});
    // edge, face, cloth
    CHECK(problemsWith([](SupportSpec& s) { s.attachments[1].up = Vec3(0, 1, 0); }) == Keys{"edges/near/up"});
    CHECK(problemsWith([](SupportSpec& s) { s.attachments[1].up.setZero(); }) == Keys{"edges/near/up"});
    CHECK(problemsWith([](SupportSpec& s) { s.attachments[1].depth_m = 0; }) == Keys{"edges/near/depth_mm"});
    CHECK(problemsWith([](SupportSpec& s) { s.attachments[1].thickness_m.value = -0.01; }) == Keys{"edges/near/thickness_mm"});
    CHECK(problemsWith([](SupportSpec& s) { s.attachments[1].blocked.push_back({0, 0.1, 0, 1, false, ""}); }) == Keys{"edges/near/blocked/0"});
    CHECK(problemsWith([](SupportSpec& s) { s.attachments[2].reference = Vec3::UnitZ(); }) == Keys{"faces/top/x_axis"});
    CHECK(problemsWith([](SupportSpec& s) { s.attachments[2].up.setZero(); }) == Keys{"faces/top/up"});
    CHECK(problemsWith([](SupportSpec& s) { s.attachments[2].sizeY_m = 0; }) == Keys{"faces/top/size_mm"});
    CHECK(problemsWith([&](SupportSpec& s) { s.attachments[2].a.x() = inf; }) == Keys{"faces/top/middle_mm"});
    CHECK(problemsWith([](SupportSpec& s) { s.attachments[3].b.setZero(); }) == Keys{"cloths/cover/to_mm"});
    CHECK(problemsWith([](SupportSpec& s) { s.attachments[3].up = Vec3(0, -1, 0); }) == Keys{"cloths/cover/up"});
    // landmarks and solids
    CHECK(problemsWith([](SupportSpec& s) { s.landmarks[0].group = "leg"; }) == Keys{"landmarks/corner/group"});
    CHECK(problemsWith([&](SupportSpec& s) { s.landmarks[0].p_S.y() = nan; }) == Keys{"landmarks/corner/at_mm"});
    CHECK(problemsWith([](SupportSpec& s) { s.landmarks.push_back(s.landmarks[0]); }) == Keys{"landmarks/corner/id"});
    CHECK(problemsWith([](SupportSpec& s) { s.solids[0].group = "leg"; }) == Keys{"solids/block/group"});
    CHECK(problemsWith([](SupportSpec& s) { s.solids.push_back(s.solids[0]); }) == Keys{"solids/block/name"});
    CHECK(problemsWith([](SupportSpec& s) { s.solids[0].name.clear(); }) == Keys{"solids/0/name"});
    CHECK(problemsWith([](SupportSpec& s) { s.solids[0].solid.half.x() = 0; }) == Keys{"solids/block/solid"});
    CHECK(problemsWith([&](SupportSpec& s) { s.solids[0].solid.X_FG.translation().x() = nan; }) == Keys{"solids/block/solid"});
    CHECK(problemsWith([](SupportSpec& s) { s.solids[0].solid.kind = SolidKind::hull; }) == Keys{"solids/block/solid"});
    CHECK(problemsWith([](SupportSpec& s) { s.dimensions["width"] = 1; }) == Keys{"dimensions/width"});
    CHECK(problemsWith([&](SupportSpec& s) { s.at_m.x() = nan; }) == Keys{"at_mm"});
    CHECK(problemsWith([&](SupportSpec& s) { s.yaw_rad = inf; }) == Keys{"yaw_deg"});
}
