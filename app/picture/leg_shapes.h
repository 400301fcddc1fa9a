#pragma once
#include <vector>

#include "app/picture/part_roles.h"
#include "app/picture/part_shapes.h"

namespace hither {

/// The legs of a wrap-leg stand on a rail, in the grip's frame: each leaves the hub along its own solid and
/// winds round the tube, beside the others. Where a leg crosses from its solid to the tube it takes the
/// way that stays nearest to both; round a tube thinner than itself it has to leave them by up to 7 mm, since
/// the solids have a gap there.
void addWrappedLegs(DrawnPieces& drawn, const std::vector<Solid>& solids, const std::vector<SolidRole>& roles, const RailGrip& grip, const Attachment& rail);

}  // namespace hither
