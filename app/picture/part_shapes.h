#pragma once
#include <cstdint>
#include <map>

#include "app/picture/mesh.h"
#include "app/picture/picture.h"
#include "core/catalogue/part.h"
#include "core/situation/attachment.h"

namespace hither {

/// What a part is drawn with, by what it looks like, in the incoming frame of the element that carries it.
using DrawnPieces = std::map<Look, Mesh>;

/// The attachment that the part holds on to and its grip that does; null for parts further on.
struct HeldOn { const Grip* grip = nullptr; const Attachment* attachment = nullptr; };

/// One rigid element drawn as what its solids are: turned pieces, hinge cheeks with their pin (and a
/// ring of teeth when it clicks), balls in their cups, collars, knobs, screws, rods. The surface stays
/// within 4 mm of the part's solids; knobs, screws and studs stand out by at most 12 mm (a stud by its own length).
DrawnPieces rigidPieces(const Part& part, std::size_t element, const HeldOn& held);

/// What shows at an outlet that carries nothing: the stud, the socket's mouth, pads, holes and screws.
/// In the outlet frame.
DrawnPieces outletPieces(const Part& part);

/// The colour family of a part's main pieces.
Look mainLook(const Part& part);
/// A number that differs when anything differs that a part's drawing is made from.
std::uint64_t shapeHash(const Part& part);
std::uint64_t mixed(std::uint64_t hash, double value);

}  // namespace hither
