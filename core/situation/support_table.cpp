#include "core/situation/support_plate.h"

namespace hither {

namespace {

void makeTable(SupportMaker& m) {
    LevelPlate top{"table_top", m.value("table_width"), m.value("table_depth"), m.value("table_height"), m.value("top_thickness"), m.basis("top_thickness"), m.value("overhang"), 0, 0};
    top.underX = top.depth - 2 * top.edgeDepth;
    top.underY = top.width - 2 * top.edgeDepth;
    makeLevelPlate(m, top);

    // Legs of square tube under the corners of a frame that keeps the overhang free all round.
    const double under = top.top - top.thickness, apron = 0.060;
    for (int side : {1, -1}) {
        for (const auto& [end, far] : {std::pair<const char*, bool>{"near", false}, {"far", true}}) {
            const std::string id = sideId(std::string("leg_") + end, side);
            const double r = m.tubeRadius_m(id, "50 mm");
            const double x = far ? top.depth - top.edgeDepth - r : top.edgeDepth + r, y = side * (0.5 * top.width - top.edgeDepth - r);
            m.rail(id, sideName(far ? "Leg away from the person" : "Leg nearest the person", side), "", Vec3(x, y, 0.010), Vec3(x, y, under), Vec3(0, side, 0), "50 mm", Section::square);
            m.block(id, under - 0.010 - apron - 0.010, under - 0.010, "frame under the top");
            m.landmark(sideId(std::string("foot_") + end, side), sideName(far ? "Foot of the leg away from the person, outer side" : "Foot of the leg nearest the person, outer side", side), "",
                       Vec3(x, y + side * r, 0.010));
        }
        const double y = side * (0.5 * top.width - top.edgeDepth - 0.010);
        m.box(sideId("frame", side), "", Vec3(0.5 * top.depth, y, under - 0.5 * apron), Vec3(top.depth - 2 * top.edgeDepth, 0.020, apron));
    }
    for (const auto& [name, x] : {std::pair<const char*, double>{"frame_near", top.edgeDepth + 0.010}, {"frame_far", top.depth - top.edgeDepth - 0.010}})
        m.box(name, "", Vec3(x, 0, under - 0.5 * apron), Vec3(0.020, top.width - 2 * top.edgeDepth, apron));
}

}  // namespace

SupportRecipe tableRecipe() {
    return {{"table", "Table", "Rectangular top on a frame with four legs of square tube.",
             {lengthDimension_mm("table_width", "across the top, left to right", 1200, 500, 2400), lengthDimension_mm("table_depth", "from the edge nearest the person to the far edge", 700, 400, 1200),
              lengthDimension_mm("table_height", "floor to the upper face", 740, 400, 1100), lengthDimension_mm("top_thickness", "thickness of the top", 25, 6, 60),
              lengthDimension_mm("overhang", "how far the top stands out over the frame and the legs, all round", 60, 20, 100)}},
            makeTable};
}

}  // namespace hither
