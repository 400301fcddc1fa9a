#include "tests/unit/offers/offer_data.h"

using namespace hither;

namespace {
const Port& outletOf(const std::string& id) { return *shippedPart(id).outlet; }
/// The offered row of parts in the way round it is built, from an outlet on: adapters, part, adapters.
std::vector<Part> built(const Offer& offer) {
    std::vector<Part> row;
    const auto add = [&](const OfferStep& s) { row.push_back(s.reversed ? reversed(*s.part) : *s.part); };
    for (const OfferStep& s : offer.before) add(s);
    add({offer.part, offer.reversed});
    for (const OfferStep& s : offer.after) add(s);
    return row;
}
}  // namespace

// 6 mm of a 1/4-20 screw (pitch 25.4 / 20 = 1.27 mm, ASME B1.1) are 4.72 turns.
TEST_CASE("A gooseneck screws into a clamp's socket") {
    const auto offers = partOffers(outletOf("spring-clamp-13-38"), nullptr, shippedParts(), UnitSystem::metric);
    const Offer& neck = offerOf(offers, "gooseneck-300");
    CHECK(neck.fit == OfferFit::fits);
    CHECK_FALSE(neck.reversed);
    CHECK(neck.words == "screws on by its 1/4-20 stud, 4.7 turns");
    for (const Offer& o : offers) CHECK(o.part->grips.empty());
}

TEST_CASE("A part with a socket for a socket is offered with the cheapest adapter between") {
    const Port& socket = outletOf("spring-clamp-13-38");
    const auto offers = partOffers(socket, nullptr, shippedParts(), UnitSystem::metric);
    const Offer& head = offerOf(offers, "ball-head-small");   // 1/4 socket: a double stud, 1.50 EUR
    CHECK(head.fit == OfferFit::withAdapters);
    REQUIRE(head.before.size() == 1);
    CHECK(head.before[0].part->id == "stud-1-4-1-4-short");
    CHECK(head.adapterPrice == Money{150, "EUR"});
    CHECK(head.words == "both ends are a 1/4-20 socket: neither goes into the other");
    const Offer& large = offerOf(offers, "ball-head-large-3-8");
    REQUIRE(large.before.size() == 1);
    CHECK(large.before[0].part->id == "stud-1-4-3-8");
    CHECK(large.adapterPrice == Money{200, "EUR"});
}

TEST_CASE("A reversible part is offered turned end for end where only so it fits") {
    const Offer spacer = offerOf(partOffers(outletOf("spring-clamp-13-38"), nullptr, shippedParts(), UnitSystem::metric), "spacer-12-1-4");
    CHECK(spacer.fit == OfferFit::fits);
    CHECK(spacer.reversed);
    const Offer upright = offerOf(partOffers(outletOf("gooseneck-300"), nullptr, shippedParts(), UnitSystem::metric), "spacer-12-1-4");
    CHECK(upright.fit == OfferFit::fits);
    CHECK_FALSE(upright.reversed);
}

TEST_CASE("Bolt patterns, plates and pads offer the switches that they hold") {
    const auto fit = [](const char* back, const char* device) {
        return offerOf(partOffers(outletOf(back), nullptr, shippedParts(), UnitSystem::metric), device);
    };
    CHECK(fit("back-two-screws-40-m3", "switch-chin-pad").fit == OfferFit::fits);        // 2 M3, 40 mm
    CHECK(fit("back-slotted-m3", "switch-chin-pad").fit == OfferFit::fits);              // 20 to 70 mm
    CHECK(fit("back-two-screws-30-m3", "switch-puff-bulb").fit == OfferFit::no);         // one M5, no pad
    CHECK(fit("back-slide-in-holder", "switch-round-large").words == "slides on by its dovetail");
    CHECK(fit("back-adhesive-40", "switch-ribbon").words == "sticks on by its pad");
    CHECK(fit("back-hook-loop-50", "switch-pillow").fit == OfferFit::fits);
    CHECK(fit("back-single-screw-m5", "switch-puff-bulb").words == "screws on: 1 screw M5");
}

TEST_CASE("Every offer that fits mates all along, at every outlet of the cupboard") {
    int withAdapters = 0;
    for (const auto& part : shippedParts().parts()) {
        if (!part->outlet) continue;
        for (const Offer& o : partOffers(*part->outlet, nullptr, shippedParts(), UnitSystem::inch)) {
            INFO(part->id << " -> " << o.part->id);
            CHECK_FALSE(o.words.empty());
            if (o.fit == OfferFit::no) { CHECK(o.before.empty()); continue; }
            const auto row = built(o);
            const Port* outlet = &*part->outlet;
            for (const Part& next : row) {
                REQUIRE(outlet);
                CHECK(mateWith(*outlet, next).mate.goesTogether());
                outlet = next.outlet ? &*next.outlet : nullptr;
            }
            withAdapters += o.fit == OfferFit::withAdapters;
        }
    }
    CHECK(withAdapters > 100);
}

TEST_CASE("In the middle of a mount a part must go together on both sides") {
    const Part neck = shippedPart("gooseneck-300");
    const auto offers = partOffers(outletOf("spring-clamp-13-38"), &neck, shippedParts(), UnitSystem::metric);
    for (const Offer& o : offers) {
        INFO(o.part->id);
        if (o.part->face) CHECK(o.fit == OfferFit::no);
        if (o.fit == OfferFit::no) continue;
        const auto row = built(o);
        CHECK(mateWith(outletOf("spring-clamp-13-38"), row.front()).mate.goesTogether());
        for (std::size_t i = 1; i < row.size(); ++i) CHECK(mateWith(*row[i - 1].outlet, row[i]).mate.goesTogether());
        CHECK(mateWith(*row.back().outlet, neck).mate.goesTogether());
        if (o.fit == OfferFit::fits) CHECK(row.size() == 1);
    }
    // Two necks: the first ends in a stud, the second begins with one, so a coupler goes between.
    const Offer& second = offerOf(offers, "gooseneck-200");
    CHECK(second.fit == OfferFit::withAdapters);
    REQUIRE(second.after.size() == 1);
    CHECK(second.after[0].part->id == "coupler-1-4-1-4");
    CHECK(second.adapterPrice == Money{200, "EUR"});
}

TEST_CASE("Words find parts by name, by what they are called and by kind") {
    CHECK(matchesWords(shippedPart("gooseneck-300"), "300 GOOSE"));
    CHECK(matchesWords(shippedPart("gooseneck-300"), "neck"));
    CHECK(matchesWords(shippedPart("spring-clamp-13-25"), "rail"));
    CHECK(matchesWords(shippedPart("switch-lever"), "  "));
    CHECK_FALSE(matchesWords(shippedPart("gooseneck-300"), "goose clamp"));
}
