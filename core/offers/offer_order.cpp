#include "core/offers/offer_order.h"

#include <algorithm>
#include <tuple>

namespace hither {

void putInOrder(std::vector<Offer>& offers) {
    const auto key = [](const Offer& o) {
        static const std::string none;
        const auto& price = o.part->price;
        return std::make_tuple(static_cast<int>(o.fit), !price, std::cref(price ? price->currency : none), price ? price->minor : 0,
                               std::cref(o.part->name), std::cref(o.part->id));
    };
    std::sort(offers.begin(), offers.end(), [&](const Offer& a, const Offer& b) { return key(a) < key(b); });
}

StepsCost costOf(const std::vector<OfferStep>& before, const std::vector<OfferStep>& after) {
    StepsCost cost;
    for (const auto* steps : {&before, &after})
        for (const OfferStep& step : *steps) {
            ++cost.count;
            if (step.part->price) cost.minor += step.part->price->minor;
            else ++cost.unpriced;
        }
    return cost;
}

std::optional<Money> priceOf(const std::vector<OfferStep>& before, const std::vector<OfferStep>& after) {
    std::optional<Money> sum;
    for (const auto* steps : {&before, &after})
        for (const OfferStep& step : *steps) {
            const auto& price = step.part->price;
            if (!price || (sum && sum->currency != price->currency)) return std::nullopt;
            sum = Money{(sum ? sum->minor : 0) + price->minor, price->currency};
        }
    return sum;
}

const std::vector<OfferStep>& AdapterFinder::between(const Port& outlet, const Part& next) {
    for (const auto& known : known_)
        if (known->outlet == outlet && known->bases == next.bases) return known->steps;
    auto known = std::make_unique<Known>(Known{outlet, next.bases, {}});
    for (const AdapterStep& step : cheapestAdapters(outlet, next, cupboard_)) {
        const auto& parts = cupboard_.parts();
        const auto found = std::find_if(parts.begin(), parts.end(), [&](const auto& p) { return p.get() == step.part; });
        known->steps.push_back({*found, step.reversed});
    }
    known_.push_back(std::move(known));
    return known_.back()->steps;
}

}  // namespace hither
