#include <cmath>

#include "core/situation/support_maker.h"
#include "core/units/quantity.h"

namespace hither {

namespace {

void makePole(SupportMaker& m) {
    const double radius = m.value("base_radius"), height = m.value("pole_height"), sleeve = m.value("lower_tube");
    const std::string upper = m.slide("extension", "Upper tube, drawn out", "", Vec3::UnitZ(), m.value("extension_range"));

    // Five feet, one of them straight forward; they are the corners of the base's polygon.
    const double footTube = 0.0125, hub = 0.090;
    const struct { const char* id; const char* name; double turn_deg; } feet[] = {
        {"foot_front", "Front foot", 0}, {"foot_middle_left", "Middle foot, left", 72}, {"foot_rear_left", "Rear foot, left", 144}, {"foot_rear_right", "Rear foot, right", -144}, {"foot_middle_right", "Middle foot, right", -72}};
    for (const auto& foot : feet) {
        const Vec3 out(std::cos(radians(foot.turn_deg)), std::sin(radians(foot.turn_deg)), 0);
        const Vec3 end = radius * out;
        m.bar(foot.id, "", Vec3(0, 0, hub), end + Vec3(0, 0, 0.040), footTube);
        m.solid(std::string(foot.id) + "_pad", "", Solid::cylinder(end, end + Vec3(0, 0, 0.040), 0.020));
        m.landmark(foot.id, std::string(foot.name) + ": where its pad's middle meets the floor", "", end);
    }
    m.solid("hub", "", Solid::cylinder(Vec3(0, 0, hub - 0.030), Vec3(0, 0, hub + 0.050), 0.035));
    m.rail("pole_lower", "Lower tube", "", Vec3(0, 0, hub), Vec3(0, 0, sleeve), -Vec3::UnitX(), "1 1/4 in");
    m.block("pole_lower", 0, 0.055, "hub of the base");
    m.block("pole_lower", sleeve - hub - 0.050, sleeve - hub, "clamp of the upper tube");
    m.solid("sleeve_clamp", "", Solid::cylinder(Vec3(0, 0, sleeve - 0.040), Vec3(0, 0, sleeve + 0.010), 0.026));
    m.rail("pole_upper", "Upper tube", upper, Vec3(0, 0, sleeve + 0.010), Vec3(0, 0, height), -Vec3::UnitX(), "1 in");
    m.block("pole_upper", 0, 0.015, "clamp of the upper tube");
    m.landmark("pole_top", "Top end of the upper tube", upper, Vec3(0, 0, height));
    m.landmark("sleeve_top", "Top of the clamp on the lower tube", "", Vec3(0, 0, sleeve + 0.010));
}

}  // namespace

SupportRecipe poleRecipe() {
    return {{"pole", "Free-standing pole", "Upright of two tubes on a base with five feet; the upper tube draws out.",
             {lengthDimension_mm("base_radius", "middle of the pole to the middle of a foot's pad", 300, 150, 500), lengthDimension_mm("lower_tube", "floor to the top end of the lower tube", 600, 250, 1000),
              lengthDimension_mm("pole_height", "floor to the top end of the upper tube, pushed in", 1100, 1050, 2000), lengthDimension_mm("extension_range", "how far the upper tube can be drawn out; 0: fixed", 300, 0, 800)}},
            makePole};
}

}  // namespace hither
