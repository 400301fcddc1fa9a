#include <algorithm>
#include <cmath>

#include "core/chain/placement.h"
#include "core/offers/offer.h"
#include "core/offers/offer_order.h"
#include "core/offers/offer_words.h"
#include "core/units/tolerances.h"

namespace hither {
namespace {

struct Judged { OfferFit fit = OfferFit::no; std::string words; };

/// Whether a size is in the range that a grip takes. `thing`: "this tube is 40 mm outside".
Judged inRange(const Figure& size, double least, const Figure& most, UnitSystem units, const std::string& is, const std::string& measureSize) {
    if (!most.known()) return {OfferFit::unknown, "which size it takes is not known: measure it"};
    const std::string range = least > 0 ? lengthWords(least, units) + " to " + lengthWords(*most.value, units) : "up to " + lengthWords(*most.value, units);
    if (!size.known()) return {OfferFit::unknown, "takes " + range + "; " + measureSize};
    const bool in = *size.value >= least - tolerance::limitSlack && *size.value <= *most.value + tolerance::limitSlack;
    return {in ? OfferFit::fits : OfferFit::no, "takes " + range + ", this " + is + " " + lengthWords(*size.value, units)};
}

Judged tooWide(double width, double length, UnitSystem units) {
    return {OfferFit::no, "is " + lengthWords(width, units) + " wide, only " + lengthWords(length, units) + " is there"};
}
bool over(double value, double limit) { return value > limit + tolerance::limitSlack; }

Judged judge(const RailGrip& grip, const Attachment& at, UnitSystem units) {
    if (at.section == Section::round ? !grip.round : !grip.square)
        return {OfferFit::no, at.section == Section::round ? "is not made for round tube" : "is not made for square tube"};
    if (over(grip.width_m, at.length_m())) return tooWide(grip.width_m, at.length_m(), units);
    return inRange(at.outside_m, grip.min_m.value.value_or(0), grip.max_m, units, "tube is", "measure this tube's outside");
}
Judged judge(const EdgeGrip& grip, const Attachment& at, UnitSystem units) {
    if (over(grip.width_m, at.length_m())) return tooWide(grip.width_m, at.length_m(), units);
    if (at.depth_m > 0 && over(grip.throat_m, at.depth_m))
        return {OfferFit::no, "reaches " + lengthWords(grip.throat_m, units) + " over the edge, only " + lengthWords(at.depth_m, units) + " is free"};
    return inRange(at.thickness_m, grip.min_m.value.value_or(0), grip.max_m, units, "edge is", "measure this edge's thickness");
}
Judged judge(const FaceGrip& grip, const Attachment& at, const Placement& place, UnitSystem units) {
    const double c = std::abs(std::cos(place.yaw_rad)), s = std::abs(std::sin(place.yaw_rad));
    const double x = grip.sizeX_m * c + grip.sizeY_m * s, y = grip.sizeX_m * s + grip.sizeY_m * c;
    const std::string foot = lengthWords(grip.sizeX_m, units) + " x " + lengthWords(grip.sizeY_m, units);
    if (over(x, at.sizeX_m) || over(y, at.sizeY_m))
        return {OfferFit::no, "its foot is " + foot + ", this face only " + lengthWords(at.sizeX_m, units) + " x " + lengthWords(at.sizeY_m, units)};
    static const char* const how[] = {"stands on it", "holds by suction", "sticks on", "holds by hook and loop", "is screwed on"};
    return {OfferFit::fits, std::string(how[static_cast<int>(grip.fixing)]) + ", foot " + foot};
}
Judged judge(const ClothGrip& grip, const Attachment& at, UnitSystem units) {
    return inRange(at.thickness_m, 0, grip.max_m, units, "cloth is", "measure how thick the folded cloth is");
}

Judged judgeGrip(const Part& part, const Attachment& at, const Placement& place, UnitSystem units) {
    static const char* const none[] = {"has no grip for rails", "has no grip for edges", "has no grip for faces", "has no grip for cloth"};
    const Grip* grip = gripFor(part, at);
    if (!grip) return {OfferFit::no, none[static_cast<int>(at.kind)]};
    if (const auto* rail = std::get_if<RailGrip>(grip)) return judge(*rail, at, units);
    if (const auto* edge = std::get_if<EdgeGrip>(grip)) return judge(*edge, at, units);
    if (const auto* face = std::get_if<FaceGrip>(grip)) return judge(*face, at, place, units);
    return judge(std::get<ClothGrip>(*grip), at, units);
}

}  // namespace

std::vector<Offer> gripOffers(const Attachment& attachment, const Placement& place, const Part* next, const Catalogue& cupboard, UnitSystem units) {
    std::vector<Offer> offers;
    AdapterFinder adapters(cupboard);
    for (const auto& part : cupboard.parts()) {
        if (part->grips.empty()) continue;
        const Judged judged = judgeGrip(*part, attachment, place, units);
        Offer offer;
        offer.part = part;
        offer.fit = judged.fit;
        offer.words = judged.words;
        if (next && offer.fit != OfferFit::no) {
            const BestMate behind = part->outlet ? mateWith(*part->outlet, *next) : BestMate{};
            if (!part->outlet) {
                offer.fit = OfferFit::no;
                offer.words += "; nothing can be fixed to it";
            } else if (behind.base < 0 || !behind.mate.goesTogether()) {
                offer.after = adapters.between(*part->outlet, *next);
                offer.fit = offer.after.empty() ? OfferFit::no : OfferFit::withAdapters;
                offer.words += "; behind it: " + mateWords(*part->outlet, *next, behind, units);
            } else if (behind.mate.fault == MateFault::lengthUnknown) {
                offer.fit = OfferFit::unknown;
                offer.words += "; behind it: " + mateWords(*part->outlet, *next, behind, units);
            }
        }
        offer.adapterPrice = priceOf(offer.before, offer.after);
        offers.push_back(std::move(offer));
    }
    putInOrder(offers);
    return offers;
}

}  // namespace hither
