#include <catch2/catch.hpp>

#include "app/scene/placement_at.h"
#include "shown_scene.h"

using namespace hither;

TEST_CASE("A click on a rail asks for grips at the place that was clicked") {
    SceneStand s("elbow_switch_on_chair", JobStep::build);
    const Situation& situation = *s.analysis.situation();
    int clicked = 0;
    for (const Attachment& a : situation.supports.front().attachments) {
        if (a.kind != AttachmentKind::rail) continue;
        const std::optional<QPointF> at = s.pixelOf(Picked::attachment("chair", a.id));
        if (!at) continue;
        s.click(*at);
        const OfferFor& offer = s.view.offerFor();
        REQUIRE(offer.kind == OfferFor::Kind::attachment);
        CHECK(offer.attachment == a.id);
        CHECK(s.view.picked() == Picked::attachment("chair", a.id));
        // The place along it by the core's own frame: a grip there is as near to the line of sight as the tube is thick.
        const Pose X_W = groupPose_W(situation, "chair", a.group) * gripFrame(a, offer.place);
        const Ray r = s.ray(*at);
        const Vec3 d = r.direction_W.normalized(), off = X_W.translation() - r.origin_W;
        CHECK((off - d * d.dot(off)).norm() < a.outside_m.value.value_or(0.02) + 0.006);
        ++clicked;
    }
    CHECK(clicked >= 3);
    s.click(QPointF(3, 3));
    CHECK(s.view.offerFor().kind == OfferFor::Kind::nothing);
    CHECK(s.view.picked().nothing());
}

TEST_CASE("A place on an attachment comes back from the grip's frame there") {
    for (const char* sample : {"elbow_switch_on_chair", "two_switches_on_tray", "head_switch_on_bed", "foot_switch_on_pole"}) {
        const Plan plan = samplePlan(sample);
        const SituationMade made = makeSituation(plan.supports, plan.person, plan.sites, shippedForTests()->body);
        REQUIRE(made.situation);
        for (const Support& support : made.situation->supports)
            for (const Attachment& a : support.attachments) {
                Placement place;
                if (a.kind == AttachmentKind::face) {
                    place.x_m = 0.2 * a.sizeX_m;
                    place.y_m = -0.3 * a.sizeY_m;
                } else {
                    place.along_m = 0.4 * a.length_m();
                }
                if (a.kind == AttachmentKind::rail) place.around_rad = -2.1;
                if (a.kind == AttachmentKind::edge && a.thickness_m.value.value_or(0) > 0.002) place.fromBelow = true;
                const Vec3 at = (groupPose_W(*made.situation, support.id, a.group) * gripFrame(a, place)).translation();
                const auto back = placementAt(*made.situation, support.id, a.id, at);
                REQUIRE(back);
                INFO(sample << " " << a.id);
                CHECK(back->along_m == Approx(place.along_m).margin(1e-9));
                CHECK(back->x_m == Approx(place.x_m).margin(1e-9));
                CHECK(back->y_m == Approx(place.y_m).margin(1e-9));
                CHECK(back->fromBelow == place.fromBelow);
                if (a.kind == AttachmentKind::rail && a.outside_m.known()) CHECK(back->around_rad == Approx(place.around_rad).margin(1e-9));
            }
    }
}

TEST_CASE("A click on the body puts the site there, and moves the one that is picked") {
    SceneStand s("elbow_switch_on_chair", JobStep::site);
    std::optional<QPointF> at;
    for (const Segment segment : {Segment::thigh, Segment::head, Segment::shank}) {
        for (const Side side : {Side::right, Side::none}) if (!at) at = s.pixelOf(Picked::person(word(SegmentId{segment, side})));
    }
    REQUIRE(at);
    const std::size_t had = s.document.plan().sites.size();
    s.view.pick({});
    s.click(*at);
    REQUIRE(s.document.plan().sites.size() == had + 1);
    const auto seen = pickOnBody(*s.analysis.situation()->body, s.ray(*at));
    REQUIRE(seen);
    const std::string id = s.document.plan().sites.back().id;
    CHECK(s.view.picked() == Picked::site(id));
    const Site* site = s.analysis.situation()->site(id);
    REQUIRE(site);
    CHECK((site->p_W - seen->point_W).norm() < 1e-9);
    // Outward: against the line of sight.
    CHECK(site->d_W.dot(s.ray(*at).direction_W) < 0);
    // The picked one moves, in one more step.
    s.click(*at + QPointF(0, 12));
    CHECK(s.document.plan().sites.size() == had + 1);
    s.document.undo();
    s.document.undo();
    CHECK(s.document.plan() == samplePlan("elbow_switch_on_chair"));
}
