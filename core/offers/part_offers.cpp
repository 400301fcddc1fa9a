#include <algorithm>
#include <tuple>

#include "core/offers/offer.h"
#include "core/offers/offer_order.h"
#include "core/offers/offer_words.h"

namespace hither {
namespace {

/// Judges a part in one way round; `built` is the part as it is then. Nothing when no adapters help.
Offer judged(const std::shared_ptr<const Part>& part, bool turned, const Part& built, const Port& outlet, const Part* next,
             AdapterFinder& adapters, UnitSystem units) {
    Offer offer;
    offer.part = part;
    offer.reversed = turned;
    const BestMate first = mateWith(outlet, built);
    offer.mate = first.mate;
    const bool entered = first.base >= 0 && first.mate.goesTogether();
    offer.words = mateWords(outlet, built, first, units);
    bool unknown = first.mate.fault == MateFault::lengthUnknown, helped = true;
    if (!entered) {
        offer.before = adapters.between(outlet, built);
        helped = !offer.before.empty();
    }
    if (next) {
        if (!built.outlet) {
            offer.words = built.face ? "is a switch: it must come last" : "must come last: nothing can be fixed to it";
            offer.before.clear();
            return offer;
        }
        const BestMate last = mateWith(*built.outlet, *next);
        unknown = unknown || last.mate.fault == MateFault::lengthUnknown;
        if (last.base < 0 || !last.mate.goesTogether()) {
            offer.after = adapters.between(*built.outlet, *next);
            helped = helped && !offer.after.empty();
            const std::string behind = "behind it: " + mateWords(*built.outlet, *next, last, units);
            offer.words = entered ? behind : offer.words + "; " + behind;
        }
    }
    const bool needs = !entered || (next && !mateWith(*built.outlet, *next).mate.goesTogether());
    if (!needs) offer.fit = unknown ? OfferFit::unknown : OfferFit::fits;
    else if (helped) offer.fit = OfferFit::withAdapters;
    if (offer.fit == OfferFit::no) {
        offer.before.clear();
        offer.after.clear();
    }
    offer.adapterPrice = priceOf(offer.before, offer.after);
    return offer;
}

bool better(const Offer& a, const Offer& b) {
    return std::make_tuple(static_cast<int>(a.fit), costOf(a.before, a.after)) < std::make_tuple(static_cast<int>(b.fit), costOf(b.before, b.after));
}

}  // namespace

std::vector<Offer> partOffers(const Port& outlet, const Part* next, const Catalogue& cupboard, UnitSystem units) {
    std::vector<Offer> offers;
    AdapterFinder adapters(cupboard);
    for (const auto& part : cupboard.parts()) {
        if (part->bases.empty()) continue;
        Offer best = judged(part, false, *part, outlet, next, adapters, units);
        if (best.fit != OfferFit::fits && turnsAbout(*part)) {
            Offer turned = judged(part, true, reversed(*part), outlet, next, adapters, units);
            if (better(turned, best)) best = std::move(turned);
        }
        offers.push_back(std::move(best));
    }
    putInOrder(offers);
    return offers;
}

std::vector<Offer> offersBehind(const Plan& plan, const Mount& mount, int part, const Catalogue& cupboard) {
    const auto at = static_cast<std::size_t>(part);
    if (part < 0 || at >= mount.parts.size()) return {};
    const auto here = builtPart(plan, mount.parts[at]);
    if (!here || !here->outlet) return {};
    const auto next = at + 1 < mount.parts.size() ? builtPart(plan, mount.parts[at + 1]) : nullptr;
    return partOffers(*here->outlet, next.get(), cupboard, plan.display);
}

std::vector<Offer> offersInPlaceOf(const Plan& plan, const Mount& mount, int part, const Attachment* attachment, const Catalogue& cupboard) {
    const auto at = static_cast<std::size_t>(part);
    if (part < 0 || at >= mount.parts.size()) return {};
    const auto next = at + 1 < mount.parts.size() ? builtPart(plan, mount.parts[at + 1]) : nullptr;
    std::vector<Offer> offers;
    if (at == 0) {
        if (attachment) offers = gripOffers(*attachment, mount.place, next.get(), cupboard, plan.display);
    } else if (const auto before = builtPart(plan, mount.parts[at - 1]); before && before->outlet) {
        offers = partOffers(*before->outlet, next.get(), cupboard, plan.display);
    }
    return offers;
}

}  // namespace hither
