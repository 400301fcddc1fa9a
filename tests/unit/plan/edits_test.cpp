#include <catch2/catch.hpp>

#include <limits>

#include "core/plan/edits/about.h"
#include "core/plan/edits/extra_items.h"
#include "core/plan/edits/findings.h"
#include "core/plan/edits/joints.h"
#include "core/plan/edits/keep_outs.h"
#include "core/plan/edits/mounts.h"
#include "core/plan/edits/options.h"
#include "core/plan/edits/part_figures.h"
#include "core/plan/edits/parts.h"
#include "core/plan/edits/sites.h"
#include "core/plan/edits/supports.h"
#include "tests/unit/plan/fixture.h"

using namespace hither;
using namespace hither::test;

namespace {
constexpr double nan_ = std::numeric_limits<double>::quiet_NaN();

Plan done(const Edited& e) {
    INFO(e.whyNot);
    REQUIRE(e.plan);
    CHECK(e.whyNot.empty());
    return *e.plan;
}
void refused(const Edited& e, const std::string& saysSo) {
    INFO(e.whyNot);
    CHECK_FALSE(e.plan);
    CHECK(e.whyNot.find(saysSo) != std::string::npos);
}
Placement placed(double along) { Placement p; p.along_m = along; return p; }
}  // namespace

TEST_CASE("plans are equal as whole values, parts by content", "[plan]") {
    const Plan a = smallPlan();
    Plan b = smallPlan();  // other copies of the same parts
    CHECK(a == b);
    Part other = armPart();
    std::get<HingeElement>(other.elements[2].what).max = 2.3;
    b.parts[1] = std::make_shared<const Part>(other);
    CHECK_FALSE(a == b);
    b = a;
    b.options[0].mounts[0].parts[1].joints["elbow"].q[0] += 1e-12;
    CHECK_FALSE(a == b);
    b = a;
    b.supports[0].attachments[1].b.x() += 1e-12;
    CHECK_FALSE(a == b);
}

TEST_CASE("what a plan says about itself is edited", "[plan]") {
    const Plan plan = smallPlan();
    CHECK(done(setTitle(plan, "New")).title == "New");
    refused(setTitle(plan, "  "), "title");
    CHECK(done(setShows(plan, "x")).shows == "x");
    refused(setShows(plan, "x\ny"), "one line");
    CHECK(done(setNotes(plan, "x\ny")).notes == "x\ny");
    CHECK(done(setDisplay(plan, UnitSystem::inch)).display == UnitSystem::inch);
    CHECK(done(setCurrency(plan, "USD")).currency == "USD");
    refused(setCurrency(plan, "usd"), "three capital letters");
    CheckLimits limits;
    limits.knock_N = 30;
    CHECK(done(setLimits(plan, limits)).limits == limits);
    limits.knock_N = nan_;
    refused(setLimits(plan, limits), "limit");
    limits.knock_N = -1;
    refused(setLimits(plan, limits), "limit");
    CHECK(plan == smallPlan());  // an edit never changes what it is given
}

TEST_CASE("supports are added, replaced and removed", "[plan]") {
    const Plan plan = smallPlan();
    SupportSpec second = frameSpec();
    second.id = "stand";
    const Plan two = done(addSupport(plan, second));
    REQUIRE(two.supports.size() == 2);
    CHECK(done(removeSupport(two, "stand")) == plan);
    refused(addSupport(plan, frameSpec()), "already");
    refused(removeSupport(plan, "frame"), "\"main\"");
    refused(removeSupport(plan, "none"), "no support");
    SupportSpec wrong = second;
    wrong.kind = "cloud";
    refused(addSupport(plan, wrong), "stand");
    wrong = second;
    wrong.id.clear();
    refused(addSupport(plan, wrong), "id");
    wrong = second;
    wrong.carriedBy = "none";
    refused(addSupport(plan, wrong), "could carry it");
    wrong.carriedBy = "stand";
    refused(addSupport(plan, wrong), "carry itself");

    SupportSpec renamed = frameSpec();
    renamed.id = "base";
    CHECK(done(replaceSupport(plan, "frame", renamed)).options[0].mounts[0].support == "base");
    SupportSpec poorer = frameSpec();
    poorer.attachments.erase(poorer.attachments.begin() + 1);
    refused(replaceSupport(plan, "frame", poorer), "tube_right");
    refused(replaceSupport(two, "frame", second), "already");
    refused(replaceSupport(plan, "none", second), "no support");
}

TEST_CASE("the person is set and taken away", "[plan]") {
    const Plan plan = smallPlan();
    PersonSpec person;
    person.name = "KL";
    refused(setPerson(plan, person), "rests on nothing");
    person.on = "none";
    refused(setPerson(plan, person), "no support");
    person.on = "frame";
    Plan with = done(setPerson(plan, person));
    CHECK(with.person == person);
    refused(removeSupport(with, "frame"), "");
    CHECK(done(setPerson(with, std::nullopt)) == plan);
    SiteSpec onBody;
    onBody.id = "head";
    onBody.given = SiteGiven::fromPosture;
    onBody.controlSite = "head_left";
    refused(addSite(plan, onBody), "no person");
    with = done(addSite(with, onBody));
    refused(setPerson(with, std::nullopt), "on the body");
}

TEST_CASE("sites are added, replaced and removed", "[plan]") {
    const Plan plan = smallPlan();
    SiteSpec site = plan.sites[0];
    refused(addSite(plan, site), "already");
    site.id = "knee";
    const Plan two = done(addSite(plan, site));
    CHECK(done(removeSite(two, "knee")) == plan);
    refused(removeSite(plan, "elbow_right"), "serves it");
    refused(removeSite(plan, "none"), "no site");
    CHECK(done(replaceSite(plan, "elbow_right", site)).options[0].mounts[0].site == "knee");
    refused(replaceSite(plan, "none", site), "no site");
    refused(replaceSite(two, "elbow_right", site), "already");
    SiteSpec wrong = site;
    wrong.id = "x";
    wrong.point.x() = nan_;
    refused(addSite(plan, wrong), "no number");
    wrong = site;
    wrong.id = "x";
    wrong.direction.setZero();
    refused(addSite(plan, wrong), "no length");
    wrong = site;
    wrong.id = "x";
    wrong.tolerance_m = -1;
    refused(addSite(plan, wrong), "tolerances");
    wrong = site;
    wrong.id = "x";
    wrong.goesWithSupport = "none";
    refused(addSite(plan, wrong), "no support");
    wrong.id.clear();
    refused(addSite(plan, wrong), "id");
}

TEST_CASE("options are added, renamed, copied and removed", "[plan]") {
    const Plan plan = smallPlan();
    const Plan two = done(addOption(plan, "second", "Second"));
    CHECK(done(removeOption(two, "second")) == plan);
    refused(addOption(plan, "first", ""), "already");
    refused(addOption(plan, "", ""), "id");
    CHECK(done(renameOption(plan, "first", "Best")).options[0].name == "Best");
    refused(renameOption(plan, "none", "x"), "no option");
    refused(renameOption(plan, "first", ""), "name");
    CHECK(done(setOptionNotes(plan, "first", "n")).options[0].notes == "n");
    refused(setOptionNotes(plan, "none", "n"), "no option");
    const Plan copied = done(copyOption(two, "first", "copy", "Copy"));
    REQUIRE(copied.options.size() == 3);
    CHECK(copied.options[1].id == "copy");
    CHECK(copied.options[1].mounts == plan.options[0].mounts);
    refused(copyOption(plan, "none", "x", ""), "no option");
    refused(copyOption(plan, "first", "first", ""), "already");
    refused(removeOption(plan, "none"), "no option");
    const Plan accepted = done(acceptFinding(plan, {"first", "f", "n", "KL", "t"}));
    const Plan none = done(removeOption(accepted, "first"));
    CHECK(none.parts.empty());
    CHECK(none.accepted.empty());
}

TEST_CASE("mounts are added, removed, renamed, retargeted and fixed elsewhere", "[plan]") {
    const Plan plan = smallPlan();
    const Mount neck = mountOf("neck", {"tube-clamp", "neck"});
    const Plan two = done(addMount(plan, "first", neck, {clampPart(), neckPart()}));
    CHECK(two.parts.size() == 4);
    CHECK(*two.part("neck") == neckPart());
    CHECK(done(removeMount(two, "first", "neck")) == plan);  // and the copy of its part
    refused(addMount(plan, "none", neck, {}), "no option");
    refused(addMount(plan, "first", neck, {}), "no part \"neck\"");
    refused(addMount(plan, "first", mountOf("main", {"tube-clamp"}), {}), "already");
    refused(addMount(plan, "first", mountOf("", {"tube-clamp"}), {}), "id");
    refused(addMount(plan, "first", mountOf("x", {}), {}), "at least one part");
    refused(addMount(plan, "first", mountOf("x", {"arm"}), {}), "no grip for a support");
    refused(addMount(plan, "first", mountOf("x", std::vector<std::string>(65, "arm")), {}), "at most 64");
    refused(addMount(plan, "first", mountOf("x", {"plate-clamp"}), {edgeClampPart()}), "no grip for a rail");
    Mount wrong = neck;
    wrong.support.clear();
    refused(addMount(plan, "first", wrong, {neckPart()}), "fixed to nothing");
    wrong = neck;
    wrong.site = "none";
    refused(addMount(plan, "first", wrong, {neckPart()}), "no site");
    refused(removeMount(plan, "first", "none"), "no mount");
    refused(removeMount(plan, "none", "main"), "no option");
    CHECK(done(renameMount(plan, "first", "main", "Elbow")).options[0].mounts[0].name == "Elbow");
    refused(renameMount(plan, "first", "none", "x"), "no mount");
    refused(renameMount(plan, "first", "main", ""), "name");
    CHECK(done(retargetMount(plan, "first", "main", "")).options[0].mounts[0].site.empty());
    refused(retargetMount(plan, "first", "main", "none"), "no site");
    refused(retargetMount(plan, "first", "none", ""), "no mount");
    const Plan moved = done(setPlacement(plan, "first", "main", "frame", "tube_left", placed(0.1)));
    CHECK(moved.options[0].mounts[0].attachment == "tube_left");
    CHECK(moved.options[0].mounts[0].place.along_m == 0.1);
    CHECK(moved.options[0].mounts[0].parts == plan.options[0].mounts[0].parts);
    refused(setPlacement(plan, "first", "main", "frame", "none", placed(0)), "no attachment");
    refused(setPlacement(plan, "first", "main", "none", "x", placed(0)), "no support");
    refused(setPlacement(plan, "first", "main", "frame", "tube_left", placed(nan_)), "no number");
    refused(setPlacement(plan, "first", "none", "frame", "tube_left", placed(0)), "no mount");
    CHECK(done(setPlacementKept(plan, "first", "main", true)).options[0].mounts[0].placeKept);
    refused(setPlacementKept(plan, "first", "none", true), "no mount");
}

TEST_CASE("parts are put in, replaced, taken out and turned round, the rest staying as it was", "[plan]") {
    const Plan plan = smallPlan();
    const Plan more = done(insertPart(plan, "first", "main", 1, crankPart()));
    const std::vector<MountPart>& parts = more.options[0].mounts[0].parts;
    REQUIRE(parts.size() == 4);
    CHECK(parts[1].part == "crank");
    CHECK(parts[2] == plan.options[0].mounts[0].parts[1]);
    CHECK(*more.part("crank") == crankPart());
    CHECK(done(removePart(more, "first", "main", 1)) == plan);
    refused(insertPart(plan, "first", "main", 3, crankPart()), "must come last");
    refused(insertPart(plan, "first", "main", 0, crankPart()), "cannot come first");
    refused(insertPart(plan, "first", "main", 1, clampPart()), "only come first");
    refused(insertPart(plan, "first", "main", 9, crankPart()), "no part number 10");
    refused(insertPart(plan, "first", "none", 0, crankPart()), "no mount");

    // What somebody measured in this plan stays when the same part is put in again from elsewhere.
    const Plan measured = done(useMeasuredFigure(more, "crank", "elements/0/mass", 0.05, "KL, 2026-05-01"));
    CHECK(*done(insertPart(measured, "first", "main", 1, crankPart())).part("crank") == *measured.part("crank"));

    const Plan replaced = done(replacePart(plan, "first", "main", 1, neckPart()));
    CHECK(replaced.options[0].mounts[0].parts[1].part == "neck");
    CHECK(replaced.options[0].mounts[0].parts[1].joints.empty());
    CHECK(replaced.part("arm") == nullptr);
    Part longArm = armPart();
    longArm.id = "arm-long";
    CHECK(done(replacePart(plan, "first", "main", 1, longArm)).options[0].mounts[0].parts[1].joints == plan.options[0].mounts[0].parts[1].joints);
    CHECK(done(replacePart(plan, "first", "main", 0, edgeClampPart())).options[0].mounts[0].parts[0].part == "plate-clamp");  // setPlacement comes next
    refused(replacePart(plan, "first", "main", 0, armPart()), "cannot come first");
    refused(replacePart(plan, "first", "main", 1, switchPart()), "must come last");
    refused(replacePart(plan, "first", "main", 3, armPart()), "no part number");

    refused(removePart(plan, "first", "main", 0), "holds the whole mount");
    refused(removePart(plan, "first", "main", 3), "no part number");
    Plan one = plan;
    one.options[0].mounts[0].parts.resize(1);
    refused(removePart(one, "first", "main", 0), "only part");

    CHECK(done(reversePart(more, "first", "main", 1)).options[0].mounts[0].parts[1].reversed);
    CHECK(done(reversePart(done(reversePart(more, "first", "main", 1)), "first", "main", 1)) == more);
    refused(reversePart(more, "first", "main", 2), "end for end");
    refused(reversePart(more, "first", "main", 4), "no part number");
}

TEST_CASE("joints and clockings are set and kept", "[plan]") {
    const Plan plan = smallPlan();
    const Plan set = done(setJoint(plan, "first", "main", 1, "elbow", {1.1}));
    CHECK(set.options[0].mounts[0].parts[1].joints.at("elbow").q == std::vector<double>{1.1});
    CHECK(set.options[0].mounts[0].parts[1].joints.at("ball") == plan.options[0].mounts[0].parts[1].joints.at("ball"));
    CHECK(done(setJoint(plan, "first", "main", 1, "ball", {0, 0, 0})).options[0].mounts[0].parts[1].joints.at("ball").kept);
    refused(setJoint(plan, "first", "main", 1, "ball", {0}), "takes 3 values, not 1");
    refused(setJoint(plan, "first", "main", 1, "wrist", {0}), "no joint");
    refused(setJoint(plan, "first", "main", 1, "", {}), "no joint");
    refused(setJoint(plan, "first", "main", 1, "elbow", {nan_}), "no number");
    refused(setJoint(plan, "first", "main", 7, "elbow", {0}), "no part number 8");
    refused(setJoint(plan, "first", "none", 1, "elbow", {0}), "no mount");
    CHECK(done(setJointKept(plan, "first", "main", 1, "elbow", true)).options[0].mounts[0].parts[1].joints.at("elbow") == JointSetting{{0.7}, true});
    refused(setJointKept(plan, "first", "main", 1, "wrist", true), "no joint");
    CHECK(done(setClocking(plan, "first", "main", 1, 0.3)).options[0].mounts[0].parts[1].clocking_rad == 0.3);
    refused(setClocking(plan, "first", "main", 0, 0.3), "place");
    refused(setClocking(plan, "first", "main", 1, nan_), "no number");
    CHECK(done(setClockingKept(plan, "first", "main", 1, true)).options[0].mounts[0].parts[1].clockingKept);
    refused(setClockingKept(plan, "first", "main", 0, true), "place");
}

TEST_CASE("keep-outs are added, replaced and removed", "[plan]") {
    const Plan plan = smallPlan();
    KeepOut k;
    k.id = "door";
    k.name = "Door";
    k.solid = Solid::sphere(Vec3(1, 0, 1), 0.2);
    k.margin_m = 0.02;
    const Plan with = done(addKeepOut(plan, "first", k));
    CHECK(with.options[0].keepOuts == std::vector<KeepOut>{k});
    CHECK(done(removeKeepOut(with, "first", "door")) == plan);
    refused(addKeepOut(with, "first", k), "already");
    refused(addKeepOut(plan, "none", k), "no option");
    KeepOut other = k;
    other.id = "screen";
    CHECK(done(replaceKeepOut(with, "first", "door", other)).options[0].keepOuts[0].id == "screen");
    refused(replaceKeepOut(plan, "first", "door", other), "no keep-out");
    refused(removeKeepOut(plan, "first", "door"), "no keep-out");
    KeepOut wrong = other;
    wrong.margin_m = -1;
    refused(addKeepOut(plan, "first", wrong), "margin");
    wrong = other;
    wrong.solid.radius = nan_;
    refused(addKeepOut(plan, "first", wrong), "no number");
    wrong = other;
    wrong.support = "none";
    refused(addKeepOut(plan, "first", wrong), "no support");
    wrong.support = "frame";
    wrong.group = "none";
    refused(addKeepOut(plan, "first", wrong), "no moving group");
    wrong.support.clear();
    refused(addKeepOut(plan, "first", wrong), "without its support");
}

TEST_CASE("extra items are added, replaced and removed", "[plan]") {
    const Plan plan = smallPlan();
    const ExtraItem tape{"tape", "Tape", 2, Money{250, "EUR"}, ""};
    const Plan with = done(addExtraItem(plan, tape));
    CHECK(with.extraItems == std::vector<ExtraItem>{tape});
    CHECK(done(removeExtraItem(with, "tape")) == plan);
    refused(addExtraItem(with, tape), "already");
    refused(removeExtraItem(plan, "tape"), "no extra item");
    ExtraItem by = tape;
    by.count = 3;
    CHECK(done(replaceExtraItem(with, "tape", by)).extraItems[0].count == 3);
    refused(replaceExtraItem(plan, "tape", by), "no extra item");
    by.count = 0;
    refused(replaceExtraItem(with, "tape", by), "count");
    refused(addExtraItem(plan, {"", "x", 1, {}, ""}), "id");
    refused(addExtraItem(plan, {"x", "", 1, {}, ""}), "name");
    refused(addExtraItem(plan, {"x", "x", 1, Money{-1, "EUR"}, ""}), "negative");
}

TEST_CASE("a finding is accepted with who and why, and the acceptance withdrawn", "[plan]") {
    const Plan plan = smallPlan();
    const AcceptedFinding a{"first", "fit:main/1", "checked in hand", "KL", "2026-05-01T09:00:00Z"};
    const Plan with = done(acceptFinding(plan, a));
    CHECK(with.accepted == std::vector<AcceptedFinding>{a});
    AcceptedFinding again = a;
    again.note = "again";
    CHECK(done(acceptFinding(with, again)).accepted == std::vector<AcceptedFinding>{again});
    CHECK(done(withdrawAcceptance(with, "first", "fit:main/1")) == plan);
    refused(withdrawAcceptance(plan, "first", "fit:main/1"), "not accepted");
    refused(acceptFinding(plan, {"none", "f", "n", "KL", ""}), "no option");
    refused(acceptFinding(plan, {"first", "", "n", "KL", ""}), "no finding");
    refused(acceptFinding(plan, {"first", "f", " ", "KL", ""}), "why");
    refused(acceptFinding(plan, {"first", "f", "n", "", ""}), "who");
}

TEST_CASE("a measured figure goes into the plan's own copy of a part", "[plan]") {
    const Plan plan = smallPlan();
    const Plan with = done(useMeasuredFigure(plan, "arm", "joints/elbow/hold", 3.5, "KL, 2026-05-01"));
    const auto& elbow = std::get<HingeElement>(with.part("arm")->elements[2].what);
    CHECK(*elbow.joint.hold.value == 3.5);
    CHECK(elbow.joint.hold.basis == Basis{BasisKind::measured, "KL, 2026-05-01"});
    CHECK(*plan.part("arm") == armPart());
    // Every figure that is listed can be set, and only that one changes.
    for (const NamedFigure& f : figuresOf(*plan.part("tube-clamp"))) {
        const Plan one = done(useMeasuredFigure(plan, "tube-clamp", f.place, 0.5, "KL"));
        int changed = 0;
        const auto before = figuresOf(*plan.part("tube-clamp")), after = figuresOf(*one.part("tube-clamp"));
        REQUIRE(before.size() == after.size());
        for (std::size_t i = 0; i < before.size(); ++i) if (!(before[i].figure == after[i].figure)) { ++changed; CHECK(after[i].place == f.place); }
        CHECK(changed == 1);
    }
    refused(useMeasuredFigure(plan, "arm", "joints/wrist/hold", 1, "KL"), "no figure");
    refused(useMeasuredFigure(plan, "none", "rated_load", 1, "KL"), "does not use");
    refused(useMeasuredFigure(plan, "arm", "rated_load", -1, "KL"), "not negative");
    refused(useMeasuredFigure(plan, "arm", "rated_load", 1, ""), "who");

    Part dearer = armPart();
    dearer.price = Money{9900, "EUR"};
    CHECK(done(replacePartData(plan, dearer)).part("arm")->price->minor == 9900);
    Part blunt = armPart();
    blunt.outlet.reset();
    refused(replacePartData(plan, blunt), "could not be built");
    refused(replacePartData(plan, neckPart()), "does not use");
}
