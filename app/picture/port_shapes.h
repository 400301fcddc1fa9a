#pragma once
#include "app/picture/part_shapes.h"

namespace hither {

/// The heads of the screws that hold a switch to its back, and the slots they sit in, in the frame of
/// the part's last element; nothing for other outlets.
void addPatternScrews(DrawnPieces& drawn, const Part& part, const RigidElement& plate);

}  // namespace hither
