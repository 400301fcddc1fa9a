#pragma once
#include <vector>

#include "app/picture/part_shapes.h"

namespace hither {

/// How a grip for rails closes, told from its part: the words, the tools it takes, the sections it takes.
enum class RailStyle {
    spring,     ///< two jaws pressed together by a spring round their pin
    hinged,     ///< two half shells, a pin on one side and a screw on the other
    hook,       ///< a hook with a jaw that a screw pushes: also for square tubes
    wrapped     ///< bendable legs wound round it
};
RailStyle railStyle(const Part& part, const RailGrip& grip);

/// What clasps the attachment, in the grip's frame (the part's base frame): jaws closed on the tube at its
/// actual size, a pad pressed to the plate's other side, a foot, a suction bell, small jaws on cloth.
/// Within 4 mm of the grip's jaw solids and the part's own; the screw of an edge clamp is drawn
/// through to the plate it presses on, also where the solids leave that gap out.
DrawnPieces gripPieces(const Part& part, const HeldOn& held);

/// Numbers of the first element's solids that gripPieces draws in place of rigidPieces.
std::vector<std::size_t> solidsOfGrip(const Part& part, const HeldOn& held);

}  // namespace hither
