#pragma once
#include "core/offers/offer.h"

namespace hither {

/// Those that fit first, then by price (known and low first), then by name and id.
void putInOrder(std::vector<Offer>& offers);

/// What adapters cost in all, dearest matter first: those without a price, the sum, how many.
struct StepsCost {
    int unpriced = 0;
    std::int64_t minor = 0;
    std::size_t count = 0;
    auto operator<=>(const StepsCost&) const = default;
};
StepsCost costOf(const std::vector<OfferStep>& before, const std::vector<OfferStep>& after);
std::optional<Money> priceOf(const std::vector<OfferStep>& before, const std::vector<OfferStep>& after);

/// The cheapest adapters from an outlet to a part, remembered by the ends that decide them: a cupboard
/// has many parts with the same ends.
class AdapterFinder {
public:
    explicit AdapterFinder(const Catalogue& cupboard) : cupboard_(cupboard) {}
    /// Empty: none is needed (asked only where there is a need) or none is known.
    const std::vector<OfferStep>& between(const Port& outlet, const Part& next);

private:
    struct Known { Port outlet; std::vector<Port> bases; std::vector<OfferStep> steps; };
    const Catalogue& cupboard_;
    std::vector<std::unique_ptr<Known>> known_;
};

}  // namespace hither
