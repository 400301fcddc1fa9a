#include "tests/unit/offers/offer_data.h"

using namespace hither;

namespace {
std::vector<std::string> fitting(const std::vector<Offer>& offers) {
    std::vector<std::string> ids;
    for (const Offer& o : offers) if (o.fit == OfferFit::fits) ids.push_back(o.part->id);
    return ids;
}
}  // namespace

// Hand-worked from the ranges in resources/parts/grips.json (typical of cheap gear; common practice, no source).
TEST_CASE("A 1 in tube is offered the grips whose range holds 25.4 mm") {
    const auto offers = gripOffers(roundRail(0.0254), {}, nullptr, shippedParts(), UnitSystem::metric);
    const auto ids = fitting(offers);
    for (const char* id : {"spring-clamp-13-38", "screw-clamp-1-in", "jaw-clamp-15-40", "wrap-stand-light"})
        CHECK(std::count(ids.begin(), ids.end(), id) == 1);
    CHECK(std::count(ids.begin(), ids.end(), "spring-clamp-13-25") == 0);
    CHECK(std::count(ids.begin(), ids.end(), "screw-clamp-7-8-in") == 0);
    CHECK(offers.front().part->id == "spring-clamp-13-38");   // 7.50 EUR: the cheapest that holds it
    CHECK(offerOf(offers, "spring-clamp-13-25").words == "takes 13 mm to 25 mm, this tube is 25.4 mm");
    CHECK(offerOf(offers, "desk-clamp-35").words == "has no grip for rails");
    // Nothing but grips, every one of them once.
    std::size_t grips = 0;
    for (const auto& part : shippedParts().parts()) grips += part->grips.empty() ? 0 : 1;
    CHECK(offers.size() == grips);
}

TEST_CASE("Those that fit come first, then by price and name") {
    const auto offers = gripOffers(roundRail(0.0222), {}, nullptr, shippedParts(), UnitSystem::metric);
    for (std::size_t i = 1; i < offers.size(); ++i) {
        const Offer &a = offers[i - 1], &b = offers[i];
        REQUIRE(a.fit <= b.fit);
        if (a.fit != b.fit) continue;
        REQUIRE(a.part->price);
        REQUIRE(b.part->price);
        CHECK(a.part->price->minor <= b.part->price->minor);
        if (a.part->price->minor == b.part->price->minor) CHECK(a.part->name < b.part->name);
    }
}

TEST_CASE("A tube exactly at the end of a range is held, one beyond is not, one not measured may be") {
    const auto fit = [](const Attachment& at, const char* id) { return offerOf(gripOffers(at, {}, nullptr, shippedParts(), UnitSystem::metric), id).fit; };
    CHECK(fit(roundRail(0.038), "spring-clamp-13-38") == OfferFit::fits);
    CHECK(fit(roundRail(0.0381), "spring-clamp-13-38") == OfferFit::no);
    CHECK(fit(roundRail(0.013), "spring-clamp-13-38") == OfferFit::fits);
    CHECK(fit(roundRail(0.0129), "spring-clamp-13-38") == OfferFit::no);
    Attachment unmeasured = roundRail(0.02);
    unmeasured.outside_m = {};
    CHECK(fit(unmeasured, "spring-clamp-13-38") == OfferFit::unknown);
    Attachment square = roundRail(0.022);
    square.section = Section::square;
    CHECK(fit(square, "spring-clamp-13-38") == OfferFit::no);
    CHECK(fit(square, "square-clamp-20-26") == OfferFit::fits);
    Attachment shortRail = roundRail(0.022);
    shortRail.b = Vec3(0.010, 0, 0);
    CHECK(fit(shortRail, "spring-clamp-13-38") == OfferFit::no);   // 30 mm wide on 10 mm
}

TEST_CASE("Edges, faces and cloth are offered their own grips") {
    Attachment edge;
    edge.kind = AttachmentKind::edge;
    edge.b = Vec3(0, 0.4, 0);
    edge.thickness_m = {0.030, {BasisKind::measured, "test"}};
    edge.depth_m = 0.2;
    auto offers = gripOffers(edge, {}, nullptr, shippedParts(), UnitSystem::metric);
    CHECK(offerOf(offers, "desk-clamp-35").fit == OfferFit::fits);
    CHECK(offerOf(offers, "plate-clamp-tab-40").fit == OfferFit::no);   // 3 to 25 mm
    CHECK(offerOf(offers, "spring-clamp-13-38").words == "has no grip for edges");
    edge.depth_m = 0.010;
    CHECK(offerOf(gripOffers(edge, {}, nullptr, shippedParts(), UnitSystem::metric), "desk-clamp-35").fit == OfferFit::no);

    Attachment face;
    face.kind = AttachmentKind::face;
    face.sizeX_m = 0.08;
    face.sizeY_m = 0.045;
    offers = gripOffers(face, {}, nullptr, shippedParts(), UnitSystem::metric);
    CHECK(offerOf(offers, "adhesive-base-40").fit == OfferFit::fits);
    CHECK(offerOf(offers, "adhesive-base-60").fit == OfferFit::no);
    Placement turned;
    turned.yaw_rad = radians(45);   // 40 x 40 turned by 45 degrees is 56.6 across
    CHECK(offerOf(gripOffers(face, turned, nullptr, shippedParts(), UnitSystem::metric), "adhesive-base-40").fit == OfferFit::no);

    Attachment cloth;
    cloth.kind = AttachmentKind::cloth;
    cloth.b = Vec3(0, 0.4, 0);
    cloth.thickness_m = {0.006, {BasisKind::measured, "test"}};
    offers = gripOffers(cloth, {}, nullptr, shippedParts(), UnitSystem::metric);
    CHECK(offerOf(offers, "cloth-clip-small").words == "takes up to 4 mm, this cloth is 6 mm");
    CHECK(offerOf(offers, "cloth-clip-large").fit == OfferFit::fits);
}

TEST_CASE("A grip in place of another must go together with what hangs on it") {
    const Part& neck = shippedPart("gooseneck-300");   // 1/4 stud, 6 mm
    const auto offers = gripOffers(roundRail(0.0222), {}, &neck, shippedParts(), UnitSystem::metric);
    CHECK(offerOf(offers, "spring-clamp-13-38").fit == OfferFit::fits);
    const Offer& stud = offerOf(offers, "spring-clamp-19-38-stud");
    CHECK(stud.fit == OfferFit::withAdapters);
    REQUIRE(stud.after.size() == 1);
    CHECK(mateWith(*stud.part->outlet, *stud.after[0].part).mate.goesTogether());
    CHECK(mateWith(*stud.after[0].part->outlet, neck).mate.goesTogether());
    CHECK(stud.adapterPrice == stud.after[0].part->price);
}
