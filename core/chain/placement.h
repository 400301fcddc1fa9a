#pragma once
#include <optional>
#include <string>
#include <vector>

#include "core/chain/chain.h"

namespace hither {

/// The freedoms that a grip has on its attachment as chain steps from W to the grip's frame, so
/// that the frame they reach is `gripFrame` of the placement, carried by the group.
///   rail  slide along it within half the grip's width of the ends, then a full turn round it (a
///         square tube: a quarter turn a step)
///   edge  slide along it within half the grip's width of the ends
///   face  slides along x and y within the face less the footprint, then a full turn about z
///   cloth slide along it
/// A slide stays in the free stretch it stands in (or the nearest one) between stretches that are
/// blocked all round; blocked sectors are no limit here: the Fit check judges both.
/// The freedoms are appended with their present values. Returns what is wrong with the
/// attachment, or nothing.
std::optional<std::string> addPlacement(Chain& chain, std::vector<double>& values, const Attachment& attachment,
                                        const Pose& X_WGroup, const Grip& grip, const Placement& place, bool kept);

/// The pieces of a grip that clasp the attachment, in the grip's frame, as simple solids: a sleeve
/// round a tube, two plates and a back over an edge, a plate 4 mm thick on a face, two small plates on cloth.
std::vector<Solid> jawSolids(const Grip& grip, const Attachment& attachment);

/// The first of a part's grips that can hold this kind of attachment; among those for rails the
/// first whose range takes the tube. Null when there is none.
const Grip* gripFor(const Part& part, const Attachment& attachment);

}  // namespace hither
