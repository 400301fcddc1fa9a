#include "core/plan/edits/mounts.h"
#include "tests/unit/offers/offer_data.h"

using namespace hither;

namespace {

Setup setupOf(const Plan& plan) {
    const SetupMade made = makeSetup(plan, 0, shippedBody());
    REQUIRE(made.setup);
    return *made.setup;
}
void everyPortMates(const Plan& plan, std::size_t mount) {
    const Setup setup = setupOf(plan);
    for (const ChainMate& m : setup.mounts.at(mount).chain.mates) {
        INFO(m.part);
        CHECK(m.mate.goesTogether());
    }
}
Plan without(const Plan& plan) {
    Plan p = plan;
    while (!p.options[0].mounts.empty()) p = *removeMount(p, p.options[0].id, p.options[0].mounts[0].id).plan;
    return p;
}

}  // namespace

TEST_CASE("A mount is started, continued and finished by offers alone") {
    const Plan start = without(samplePlan("elbow_switch_on_chair"));
    const std::string option = start.options[0].id;
    const Setup setup = setupOf(start);
    const Support& chair = setup.situation.supports[0];
    const auto rail = std::find_if(chair.attachments.begin(), chair.attachments.end(), [](const Attachment& a) { return a.kind == AttachmentKind::rail; });
    REQUIRE(rail != chair.attachments.end());

    Placement end;
    end.along_m = 0;   // at the very end: the grip's width keeps it half its width from there
    const auto grips = gripOffers(*rail, end, nullptr, shippedParts(), start.display);
    const Offer& grip = offerOf(grips, "spring-clamp-13-38");
    REQUIRE(grip.fit == OfferFit::fits);
    Edited done = startMount(start, option, {chair.id, rail->id, end}, *rail, grip, "Mount 1");
    REQUIRE(done);
    Plan plan = *done.plan;
    REQUIRE(plan.options[0].mounts.size() == 1);
    const std::string mount = plan.options[0].mounts[0].id;
    CHECK(plan.options[0].mounts[0].place.along_m >= 0.015 - 1e-12);

    const auto behind = [&] { return offersBehind(plan, plan.options[0].mounts[0], static_cast<int>(plan.options[0].mounts[0].parts.size()) - 1, cupboard(shippedParts(), plan)); };
    const auto take = [&](const std::string& id, const std::string& site) {
        const int last = static_cast<int>(plan.options[0].mounts[0].parts.size()) - 1;
        const Offer offer = offerOf(behind(), id);
        Edited next = putBehind(plan, option, mount, last, offer, site);
        INFO(next.whyNot);
        REQUIRE(next);
        plan = *next.plan;
        CHECK(plan.options[0].mounts[0].parts.at(static_cast<std::size_t>(numberBehind(last, offer))).part == id);
    };
    take("ball-head-small", "");       // socket on socket: with a double stud
    CHECK(plan.options[0].mounts[0].parts.size() == 3);
    take("gooseneck-300", "");         // stud on stud: with a coupler
    take("back-two-screws-40-m3", "");
    const std::string site = nearestUnservedSite(setupOf(plan), mount);
    CHECK(site == start.sites[0].id);
    take("switch-chin-pad", site);
    CHECK(plan.options[0].mounts[0].site == site);
    CHECK(nearestUnservedSite(setupOf(plan), mount).empty());
    CHECK(behind().empty());           // nothing goes behind a switch
    everyPortMates(plan, 0);
}

TEST_CASE("A part in the middle is replaced with what it needs, the others keep their settings") {
    const Plan start = samplePlan("elbow_switch_on_chair");
    const std::string option = start.options[0].id;
    const Mount& mount = start.options[0].mounts[0];
    const Catalogue all = cupboard(shippedParts(), start);
    int tried = 0;
    for (std::size_t i = 1; i < mount.parts.size(); ++i) {
        for (const Offer& o : offersInPlaceOf(start, mount, static_cast<int>(i), nullptr, all)) {
            if (o.fit == OfferFit::no || o.part->id == mount.parts[i].part) continue;
            INFO(i << " " << o.part->id);
            const Edited done = putInPlaceOf(start, option, mount.id, static_cast<int>(i), o);
            REQUIRE(done);
            const Mount& now = done.plan->options[0].mounts[0];
            const auto at = static_cast<std::size_t>(numberInPlaceOf(static_cast<int>(i), o));
            CHECK(now.parts.at(at).part == o.part->id);
            CHECK(now.parts.at(at).reversed == o.reversed);
            CHECK(now.parts.front() == mount.parts.front());
            if (i + 1 < mount.parts.size()) CHECK(now.parts.back() == mount.parts.back());
            everyPortMates(*done.plan, 0);
            ++tried;
        }
    }
    CHECK(tried > 20);
}

TEST_CASE("The plan's own copy of a part is offered in place of the shipped one") {
    Plan plan = samplePlan("elbow_switch_on_chair");
    Part mine = shippedPart("gooseneck-300");
    mine.name = "Gooseneck, measured";
    Part unknown = mine;
    unknown.id = "from-elsewhere";
    plan.parts = {std::make_shared<const Part>(mine), std::make_shared<const Part>(unknown)};
    const Catalogue all = cupboard(shippedParts(), plan);
    CHECK(all.find("gooseneck-300")->name == "Gooseneck, measured");
    CHECK(all.find("from-elsewhere"));
    CHECK(all.parts().size() == shippedParts().parts().size() + 1);
}
