#pragma once
#include <vector>

#include "app/picture/support_forms.h"

namespace hither {

/// Wheels that fill the bounds of a cylinder along z of its own frame: a large one with tyre, rim, hub
/// and spokes, a castor with tyre and disc, the ring that a hand pushes with its stays.
std::vector<DrawnPiece> drawnWheel(const Solid& cylinder, MeshStore& store);
std::vector<DrawnPiece> drawnCastor(const Solid& cylinder, MeshStore& store);
std::vector<DrawnPiece> drawnHandRim(const Solid& cylinder, MeshStore& store);

}  // namespace hither
