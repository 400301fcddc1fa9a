#include "core/situation/support_plate.h"

namespace hither {

namespace {

void makeTray(SupportMaker& m) {
    LevelPlate tray{"tray", m.value("tray_width"), m.value("tray_depth"), m.value("tray_height"), m.value("tray_thickness"), m.basis("tray_thickness"), 0, 0, 0};
    // Two bars under the plate slide onto the armrests; between them and the edges the plate is free.
    const double bar = 0.020, inset = m.value("bar_inset");
    tray.edgeDepth = inset;
    tray.underX = tray.depth;
    tray.underY = tray.width - 2 * (inset + bar);
    makeLevelPlate(m, tray);
    const double under = tray.top - tray.thickness;
    for (int side : {1, -1}) {
        const double y = side * (0.5 * tray.width - inset - 0.5 * bar);
        m.box(sideId("tray_bar", side), "", Vec3(0.5 * tray.depth, y, under - 0.5 * bar), Vec3(tray.depth, bar, bar));
        // On the near and far edge the bars' ends are in the way of a jaw from below. The edges run opposite ways.
        for (const auto& [edge, along] : {std::pair<const char*, double>{"edge_near", 0.5 * tray.width - y}, {"edge_far", 0.5 * tray.width + y}})
            m.block(edge, along - 0.5 * bar - 0.005, along + 0.5 * bar + 0.005, "end of the bar under the tray");
    }
}

}  // namespace

SupportRecipe trayRecipe() {
    return {{"tray", "Chair tray", "Rectangular plate with two bars under it that slide onto the armrests; goes with the chair's tilt when the plan says that the chair's group carries it.",
             {lengthDimension_mm("tray_width", "across the tray, left to right", 600, 300, 800), lengthDimension_mm("tray_depth", "from the edge nearest the person to the far edge", 450, 200, 700),
              lengthDimension_mm("tray_height", "floor to the upper face", 750, 400, 1000), lengthDimension_mm("tray_thickness", "thickness of the plate", 10, 3, 40),
              lengthDimension_mm("bar_inset", "edge of the tray to the bar under it, left and right", 50, 20, 110)}},
            makeTray};
}

}  // namespace hither
