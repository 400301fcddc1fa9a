#pragma once
#include <memory>
#include <optional>
#include <string>
#include <vector>

#include "core/catalogue/catalogue.h"
#include "core/catalogue/mating.h"
#include "core/plan/plan.h"
#include "core/situation/attachment.h"

namespace hither {

/// How well an offered part goes where it is wanted, best first. `unknown`: a figure is missing, so it
/// may fit; `withAdapters`: it does not by itself, but with the adapters that the offer names.
enum class OfferFit { fits, unknown, withAdapters, no };

/// A part in one of the ways it can be built in.
struct OfferStep {
    std::shared_ptr<const Part> part;
    bool reversed = false;
};

/// One part of the cupboard for one place, and what is said about it there.
struct Offer {
    std::shared_ptr<const Part> part;
    bool reversed = false;                   ///< the way round in which it goes best
    OfferFit fit = OfferFit::no;
    std::string words;                       ///< how it goes together, or why it does not: one plain sentence without a full stop
    Mate mate;                               ///< with what is before it; of a grip, nothing
    std::vector<OfferStep> before, after;    ///< adapters to put in on the support's side and on the switch's side
    std::optional<Money> adapterPrice;       ///< of all of them; empty: there are none, or a price is not known
};

/// The parts to choose from: the catalogue's, and the plan's own copies in place of those of the same id
/// (they may be measured) and beside the others.
Catalogue cupboard(const Catalogue& catalogue, const Plan& plan);

/// A part of a mount in the way round it is built. Null when the plan has no such part, or it cannot be turned.
std::shared_ptr<const Part> builtPart(const Plan& plan, const MountPart& part);
/// Whether a part can be built end for end.
bool turnsAbout(const Part& part);

/// Every grip for a place on a support: those that hold it first, then by price (known and low first)
/// and name. `next` is what hangs on the grip already (in place of another grip): it must go together too.
std::vector<Offer> gripOffers(const Attachment& attachment, const Placement& place, const Part* next, const Catalogue& cupboard, UnitSystem units);

/// Every part but grips for an outlet, in the same order. `next`: what comes after it, when it goes in
/// between two parts; it then needs an outlet that goes together with `next` as well.
std::vector<Offer> partOffers(const Port& outlet, const Part* next, const Catalogue& cupboard, UnitSystem units);

/// What can go behind part `part` of a mount, at its outlet; nothing when it has none.
std::vector<Offer> offersBehind(const Plan& plan, const Mount& mount, int part, const Catalogue& cupboard);
/// What can take the place of part `part` of a mount: a grip for its attachment, or a part between its neighbours.
/// `attachment` is what the mount is fixed to; null: grips are not offered.
std::vector<Offer> offersInPlaceOf(const Plan& plan, const Mount& mount, int part, const Attachment* attachment, const Catalogue& cupboard);

/// Whether every word typed is in the part's name, its words or its kind, in any case of letters.
bool matchesWords(const Part& part, const std::string& typed);

}  // namespace hither
