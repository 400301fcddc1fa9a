#include <catch2/catch.hpp>
#include <functional>
#include <set>

#include "core/situation/situation.h"
#include "core/units/quantity.h"

using namespace hither;

namespace {

const BodyData& bodyData() {
    static const BodyData data = [] {
        std::vector<std::string> problems;
        std::optional<BodyData> read = BodyData::read(std::string(HITHER_SOURCE_DIR) + "/resources/body", problems);
        REQUIRE(problems.empty());
        REQUIRE(read);
        return *read;
    }();
    return data;
}

SupportSpec support(const std::string& id, const std::string& kind) {
    SupportSpec spec;
    spec.id = id;
    spec.kind = kind;
    return spec;
}

SiteSpec typedSite(const std::string& id, const Vec3& point) {
    SiteSpec site;
    site.id = id;
    site.point = point;
    site.direction = Vec3(0, 0, -2);
    return site;
}

PersonSpec personOn(const std::string& id) {
    PersonSpec person;
    person.name = "Person A";
    person.on = id;
    return person;
}

Situation make(const std::vector<SupportSpec>& supports, const std::optional<PersonSpec>& person, const std::vector<SiteSpec>& sites) {
    const SituationMade made = makeSituation(supports, person, sites, bodyData());
    for (const SituationProblem& p : made.problems) UNSCOPED_INFO(p.where << ": " << p.what);
    REQUIRE(made.problems.empty());
    REQUIRE(made.situation);
    return *made.situation;
}

std::set<std::string> places(const SituationMade& made) {
    std::set<std::string> all;
    for (const SituationProblem& p : made.problems) { CHECK(!p.what.empty()); all.insert(p.where); }
    return all;
}

/// A turn about a line in W by Eigen alone.
Eigen::Affine3d turn(const Vec3& pivot, const Vec3& axis, double angle) {
    return Eigen::Affine3d(Eigen::Translation3d(pivot) * Eigen::AngleAxisd(angle, axis.normalized()) * Eigen::Translation3d(-pivot));
}

/// A tilting chair standing somewhere and turned, a tray that goes with its tilt, a phone holder that goes with the tray.
std::vector<SupportSpec> chairTrayHolder(double tilt) {
    SupportSpec chair = support("chair", "chair-tilt"), tray = support("tray", "tray"), holder = support("holder", "custom");
    chair.at_m = Vec3(1.2, -0.4, 0);
    chair.yaw_rad = 0.7;
    chair.settings["tilt"] = tilt;
    tray.at_m = Vec3(1.4, -0.2, 0);
    tray.yaw_rad = 0.7;
    tray.carriedBy = "chair";
    tray.carriedByGroup = "tilt";
    holder.at_m = Vec3(1.5, -0.1, 0.75);
    holder.carriedBy = "tray";
    Attachment post;
    post.id = "post";
    post.tubeAsTyped = "1/2 in";
    post.b = Vec3(0, 0, 0.2);
    post.reference = Vec3::UnitX();
    post.group = "lid";
    MovingGroup lid;
    lid.id = "lid";
    lid.axis = Vec3(0, 2, 0);
    lid.max = 1;
    holder.groups = {lid};
    holder.attachments = {post};
    return {chair, tray, holder};
}

}  // namespace

TEST_CASE("a tray goes with the chair's tilt, and what stands on the tray goes with it", "[situation]") {
    for (double tilt : {0.0, radians(20)}) {
        const Situation s = make(chairTrayHolder(tilt), std::nullopt, {});
        const Support& chair = *s.support("chair");
        const MovingGroup& g = *chair.group("tilt");
        // Worked out here: the tilt's line in W, and everything turned about it.
        const Eigen::Affine3d X_WChair = Eigen::Affine3d(Eigen::Translation3d(1.2, -0.4, 0) * Eigen::AngleAxisd(0.7, Vec3::UnitZ()));
        for (double other : {tilt, radians(35)}) {
            const GroupSettings settings{{{"chair", "tilt"}, other}, {{"holder", "lid"}, 0.3}};
            const Eigen::Affine3d D = turn(X_WChair * g.pivot, X_WChair.linear() * g.axis, other);
            const Eigen::Affine3d tray = D * Eigen::Affine3d(Eigen::Translation3d(1.4, -0.2, 0) * Eigen::AngleAxisd(0.7, Vec3::UnitZ()));
            CHECK((groupPose_W(s, "tray", "", settings).matrix() - tray.matrix()).norm() < 1e-12);
            const Eigen::Affine3d holder = D * Eigen::Affine3d(Eigen::Translation3d(1.5, -0.1, 0.75)) * turn(Vec3::Zero(), Vec3::UnitY(), 0.3);
            CHECK((groupPose_W(s, "holder", "lid", settings).matrix() - holder.matrix()).norm() < 1e-12);
            CHECK((groupPose_W(s, "chair", "", settings).matrix() - X_WChair.matrix()).norm() < 1e-12);
            // From now to then: the same as turning by the difference about the same line.
            const Eigen::Affine3d more = turn(X_WChair * g.pivot, X_WChair.linear() * g.axis, other - tilt);
            CHECK((carriedFromNow_W(s, "tray", "", settings).matrix() - more.matrix()).norm() < 1e-12);
            CHECK((carriedFromNow_W(s, "chair", "", settings).matrix() - Eigen::Matrix4d::Identity()).norm() < 1e-12);
            CHECK((carriedFromNow_W(s, "", "", settings).matrix() - Eigen::Matrix4d::Identity()).norm() == 0);
        }
    }
}

TEST_CASE("a typed site is where it is at the plan's present settings, and goes with what it is said to go with", "[situation]") {
    SiteSpec onTray = typedSite("on_tray", Vec3(1.5, 0, 0.9));
    onTray.goesWithSupport = "tray";
    SiteSpec free = typedSite("free", Vec3(0.1, 0.2, 0.3));
    const Situation s = make(chairTrayHolder(radians(20)), std::nullopt, {onTray, free});
    REQUIRE(s.sites.size() == 2);
    CHECK(s.site("on_tray")->p_W == onTray.point);
    CHECK((s.site("on_tray")->d_W - Vec3(0, 0, -1)).norm() < 1e-15);
    CHECK(s.site("on_tray")->support == "tray");
    CHECK(s.site("on_tray")->basis == BasisKind::measured);
    CHECK(!s.site("on_tray")->segment);
    CHECK(!s.site("on_tray")->movement_m.known());
    CHECK(s.site("free")->support.empty());
    CHECK(s.site("nobody") == nullptr);
    const GroupSettings level{{{"chair", "tilt"}, 0.0}};
    const Vec3 levelled = carriedFromNow_W(s, s.site("on_tray")->support, s.site("on_tray")->group, level) * s.site("on_tray")->p_W;
    CHECK((levelled - onTray.point).norm() > 0.1);
    CHECK((carriedFromNow_W(s, "", "", level) * free.point - free.point).norm() == 0);
}

TEST_CASE("a site on the body is carried by the group that carries its body part", "[situation]") {
    SupportSpec bed = support("bed", "bed");
    bed.settings["back"] = radians(30);
    SiteSpec head = typedSite("head", Vec3(-0.6, 0.1, 1.0));
    head.controlSite = "head_left";
    SiteSpec posture;
    posture.id = "posture";
    posture.controlSite = "head_left";
    posture.given = SiteGiven::fromPosture;
    posture.directionTyped = false;
    SiteSpec offset = posture;
    offset.id = "offset";
    offset.point = Vec3(0.01, 0.02, 0.03);
    offset.directionTyped = true;
    offset.direction = Vec3(0, 3, 0);
    SiteSpec picked;
    picked.id = "picked";
    picked.given = SiteGiven::onBody;
    picked.segment = {Segment::shank, Side::right};
    picked.point = Vec3(0.05, 0, -0.1);
    picked.direction = Vec3(2, 0, 0);
    picked.movement_m = {0.02, {BasisKind::measured, "trial"}};
    const Situation s = make({bed}, personOn("bed"), {head, posture, offset, picked});
    REQUIRE(s.body);
    const ControlSite& control = *s.body->site("head_left");
    const Pose& X_WHead = s.body->X_WSegment.at(control.segment);

    CHECK(s.site("head")->p_W == head.point);  // typed stays where it was typed
    CHECK(s.site("head")->support == "bed");
    CHECK(s.site("head")->group == "back");
    CHECK(s.site("head")->segment == control.segment);
    CHECK(s.site("head")->basis == BasisKind::measured);
    CHECK(*s.site("head")->movement_m.value == control.usual_m);
    CHECK(s.site("head")->movement_m.basis.kind == BasisKind::assumed);

    CHECK((s.site("posture")->p_W - X_WHead * control.point).norm() < 1e-12);
    CHECK((s.site("posture")->d_W - X_WHead.linear() * control.movement.normalized()).norm() < 1e-12);
    CHECK(s.site("posture")->group == "back");
    CHECK(s.site("posture")->basis != BasisKind::measured);  // nobody measured this body
    CHECK((s.site("offset")->p_W - X_WHead * (control.point + offset.point)).norm() < 1e-12);
    CHECK((s.site("offset")->d_W - X_WHead.linear() * Vec3::UnitY()).norm() < 1e-12);

    const Pose& X_WShank = s.body->X_WSegment.at(picked.segment);
    CHECK((s.site("picked")->p_W - X_WShank * picked.point).norm() < 1e-12);
    CHECK((s.site("picked")->d_W - X_WShank.linear() * Vec3::UnitX()).norm() < 1e-12);
    CHECK(s.site("picked")->group == "lower_leg");
    CHECK(*s.site("picked")->movement_m.value == 0.02);

    // The body part keeps its site when the back section moves; a rail of the bed does not follow.
    const GroupSettings flat{{{"bed", "back"}, 0.0}};
    CHECK((carriedFromNow_W(s, "bed", "back", flat) * s.site("posture")->p_W - s.site("posture")->p_W).norm() > 0.2);
    CHECK((carriedFromNow_W(s, "bed", s.support("bed")->attachment("side_rail_top_left")->group, flat).matrix() - Eigen::Matrix4d::Identity()).norm() == 0);
}

TEST_CASE("a person without a support named takes the first one that carries somebody, and moves with what carries that", "[situation]") {
    SupportSpec lift = support("lift", "custom"), chair = support("chair", "chair-manual");
    MovingGroup platform;
    platform.id = "platform";
    platform.slides = true;
    platform.axis = Vec3::UnitZ();
    platform.max = 1;
    lift.groups = {platform};
    const Situation low = make({lift, chair}, personOn(""), {});
    CHECK(low.body->support == "chair");
    lift.settings["platform"] = 0.25;
    chair.carriedBy = "lift";
    chair.carriedByGroup = "platform";
    const Situation high = make({lift, chair}, personOn(""), {});
    for (const auto& [segment, X_W] : low.body->X_WSegment) {
        INFO(word(segment));
        CHECK((high.body->X_WSegment.at(segment).translation() - X_W.translation() - Vec3(0, 0, 0.25)).norm() < 1e-12);
    }
    CHECK((high.body->eyes_W - low.body->eyes_W - Vec3(0, 0, 0.25)).norm() < 1e-12);
}

TEST_CASE("problems of a situation say where and what", "[situation]") {
    const auto check = [](const std::vector<SupportSpec>& supports, const std::optional<PersonSpec>& person, const std::vector<SiteSpec>& sites) {
        const SituationMade made = makeSituation(supports, person, sites, bodyData());
        CHECK(!made.situation);
        return places(made);
    };
    using Places = std::set<std::string>;
    SupportSpec chair = support("chair", "chair-tilt"), tray = support("tray", "tray");

    CHECK(check({chair, chair}, {}, {}) == Places{"supports/1/id"});
    CHECK(check({support("", "table")}, {}, {}) == Places{"supports/0/id"});
    tray.carriedBy = "cart";
    CHECK(check({chair, tray}, {}, {}) == Places{"supports/1/carried_by"});
    tray.carriedBy = "chair";
    tray.carriedByGroup = "lid";
    CHECK(check({chair, tray}, {}, {}) == Places{"supports/1/carried_by"});
    tray.carriedBy = "";
    CHECK(check({chair, tray}, {}, {}) == Places{"supports/1/carried_by"});
    tray.carriedByGroup = "";
    tray.carriedBy = "tray";
    CHECK(check({chair, tray}, {}, {}) == Places{"supports/1/carried_by"});
    tray.carriedBy = "chair";
    chair.carriedBy = "tray";
    CHECK(check({chair, tray}, {}, {}) == Places{"supports/0/carried_by", "supports/1/carried_by"});
    chair.carriedBy = "";
    chair.settings["tilt"] = radians(46);
    chair.dimensions["seat_width"] = 5;
    CHECK(check({chair, tray}, {}, {}) == Places{"supports/0/dimensions/seat_width_mm"});
    chair.dimensions.clear();
    CHECK(check({chair, tray}, {}, {}) == Places{"supports/0/settings/tilt_deg"});
    chair.settings.clear();

    CHECK(check({chair}, personOn("sofa"), {}) == Places{"person/on"});
    CHECK(check({tray = support("tray", "tray")}, personOn(""), {}) == Places{"person/on"});
    CHECK(check({tray}, personOn("tray"), {}) == Places{"person"});

    SiteSpec good = typedSite("a", Vec3(0.3, 0, 0.8));
    CHECK(check({chair}, {}, {good, good}) == Places{"sites/1/id"});
    const auto with = [&](const std::function<void(SiteSpec&)>& change) {
        SiteSpec site = good;
        change(site);
        return check({chair}, {}, {site});
    };
    const double nan = std::nan(""), inf = std::numeric_limits<double>::infinity();
    CHECK(with([](SiteSpec& s) { s.id.clear(); }) == Places{"sites/0/id"});
    CHECK(with([](SiteSpec& s) { s.direction.setZero(); }) == Places{"sites/0/direction"});
    CHECK(with([&](SiteSpec& s) { s.direction.y() = nan; }) == Places{"sites/0/direction"});
    CHECK(with([&](SiteSpec& s) { s.point.x() = inf; }) == Places{"sites/0/point_mm"});
    for (double bad : {0.0, -0.01, nan, inf}) {
        CHECK(with([&](SiteSpec& s) { s.tolerance_m = bad; }) == Places{"sites/0/tolerance_mm"});
        CHECK(with([&](SiteSpec& s) { s.angleTolerance_rad = bad; }) == Places{"sites/0/angle_tolerance_deg"});
        CHECK(with([&](SiteSpec& s) { s.movement_m = {bad, {}}; }) == Places{"sites/0/movement_mm"});
    }
    CHECK(with([](SiteSpec& s) { s.force_N = {-1, {}}; }) == Places{"sites/0/force_N"});
    CHECK(with([&](SiteSpec& s) { s.spread_m = {nan, {}}; }) == Places{"sites/0/spread_mm"});
    CHECK(with([](SiteSpec& s) { s.controlSite = "third_elbow"; }) == Places{"sites/0/control_site"});
    CHECK(with([](SiteSpec& s) { s.given = SiteGiven::fromPosture; }) == Places{"sites/0/control_site"});
    CHECK(with([](SiteSpec& s) { s.given = SiteGiven::fromPosture; s.controlSite = "elbow_right"; }) == Places{"sites/0/given"});
    CHECK(with([](SiteSpec& s) { s.given = SiteGiven::onBody; }) == Places{"sites/0/given"});
    CHECK(with([](SiteSpec& s) { s.goesWithSupport = "sofa"; }) == Places{"sites/0/goes_with"});
    CHECK(with([](SiteSpec& s) { s.goesWithSupport = "chair"; s.goesWithGroup = "lid"; }) == Places{"sites/0/goes_with"});
    CHECK(with([](SiteSpec& s) { s.goesWithGroup = "tilt"; }) == Places{"sites/0/goes_with"});
    // Exactly at a limit passes.
    good.angleTolerance_rad = radians(90);
    CHECK(make({chair}, {}, {good}).sites.size() == 1);
}
