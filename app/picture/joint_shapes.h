#pragma once
#include "app/picture/part_roles.h"
#include "app/picture/part_shapes.h"

namespace hither {

/// What the joints beside a rigid element add to it: the cup round a ball, a hinge's pin ends and its ring
/// of teeth (as many as it has clicks), a swivel's collar, the holes of a post that stops at a pin, and a
/// small knob where something locks a joint and the part's solids show none.
void addJointDetails(DrawnPieces& drawn, const Part& part, std::size_t element, const RigidContext& context, const std::vector<SolidRole>& roles);

}  // namespace hither
