#pragma once
#include "app/picture/part_shapes.h"

namespace hither {

/// Whether a solid of a switch is the piece that is pressed, pulled or squeezed: the one that its face lies on,
/// when it has others beside, or the whole of a cushion.
bool isCap(const Part& part, std::size_t element, std::size_t solid);
/// What a switch shows beside its solids, in the face frame: a cap's disc when it is all one piece, a
/// sensor's window. Proud of the solids by at most 1.5 mm.
DrawnPieces facePieces(const Part& part);
/// The stub of its cable or hose, 9 mm long, in the base port's frame.
DrawnPieces cablePieces(const Part& part);
/// The zone in which a touchless switch answers, in the face frame; empty when it has none or its range is unknown.
Mesh sensingCone(const Part& part);

}  // namespace hither
