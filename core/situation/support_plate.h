#pragma once
#include "core/situation/support_maker.h"

namespace hither {

/// A level rectangular plate (table top, tray): its solid, the four edges, the upper and under face
/// and the corners as landmarks. x from 0 (the edge nearest the person) to `depth`, y +-width/2.
struct LevelPlate {
    std::string solid;              ///< name of its solid, and of the plate in words ("tray")
    double width, depth, top, thickness;
    BasisKind thicknessBasis;
    double edgeDepth;               ///< how far in from an edge it is free above and below
    double underX, underY;          ///< size of the free under face
};
void makeLevelPlate(SupportMaker& maker, const LevelPlate& plate);

}  // namespace hither
