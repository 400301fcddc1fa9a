#pragma once
#include "core/chain/setup.h"
#include "core/offers/offer.h"
#include "core/plan/edits/edited.h"

namespace hither {

/// Edits that take an offer: the part and the adapters that it needs, in one.

/// A new mount with the offered grip. Its id is made from the attachment's; its name is the given one.
/// The grip goes to the nearest place that its width leaves free.
struct MountPlace { std::string support, attachment; Placement place; };
Edited startMount(const Plan& plan, const std::string& option, const MountPlace& where, const Attachment& attachment,
                  const Offer& offer, const std::string& name);
/// Between part `part` of the mount and what comes behind it. A switch serves `site` from then on,
/// when one is named and the mount serves none.
Edited putBehind(const Plan& plan, const std::string& option, const std::string& mount, int part, const Offer& offer, const std::string& site = {});
/// In place of part `part`.
Edited putInPlaceOf(const Plan& plan, const std::string& option, const std::string& mount, int part, const Offer& offer);

/// The id that `startMount` gives: the first one free in the option.
std::string newMountId(const Plan& plan, const std::string& option, const std::string& attachment);
/// Number that the offered part has in the mount after `putBehind` or `putInPlaceOf`.
int numberBehind(int part, const Offer& offer);
int numberInPlaceOf(int part, const Offer& offer);

/// Where a grip goes when it is put at a place: within what its width leaves free of the attachment.
Placement freePlace(const Attachment& attachment, const Grip& grip, const Placement& place);
/// The site nearest to the end of a mount that no mount of the setup serves; empty when all are served.
std::string nearestUnservedSite(const Setup& setup, const std::string& mount);

}  // namespace hither
