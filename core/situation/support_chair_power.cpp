#include <algorithm>
#include <cmath>

#include "core/situation/support_chair.h"

namespace hither {

namespace {

/// The joystick's box in front of the armrest, on a bracket from the nearer armrest tube.
void makeJoystick(SupportMaker& m, const ChairShape& c, const ChairParts& parts) {
    // As the armrests are made: the tube's middle, 30 mm outside the seat's side tubes, under the pad.
    const double armrest = 0.5 * c.width + 0.030, y = -armrest + m.value("joystick_inward");
    const double front = m.value("armrest_length"), up = m.value("armrest_height");
    const Vec3 middle = c.onSeat(front + 0.060, y) + (up - 0.020) * c.seatUp;
    m.box("joystick_box", parts.seatGroup, middle, Vec3(0.090, 0.070, 0.050), c.along, c.seatUp);
    const Vec3 stickEnd = middle + 0.085 * c.seatUp;
    m.bar("joystick", parts.seatGroup, middle + 0.025 * c.seatUp, stickEnd, 0.012);
    const int side = y > 0 ? 1 : -1;
    const std::string tube = sideId("armrest_tube", side);
    const double r = m.tubeRadius_m(tube, "7/8 in");
    const Vec3 tubeEnd = c.onSeat(front, side * armrest) + (up - 0.025 - r) * c.seatUp;
    m.bar("joystick_bracket", parts.seatGroup, tubeEnd - 0.020 * c.along, middle, 0.009);
    m.blockNear(tube, tubeEnd, 0.045, "joystick bracket");
    m.landmark("joystick_top", "Top of the joystick, standing upright", parts.seatGroup, stickEnd + 0.012 * c.seatUp);
}

void makeChairPower(SupportMaker& m) {
    const ChairShape c(m);
    const Vec3 pivot(0.200, 0, c.height - 0.100);
    ChairParts parts;
    parts.seatGroup = m.turn("tilt", "Seat, back and arms together, tilted backward", "", pivot, -Vec3::UnitY(), m.value("tilt_range"));
    parts.backGroup = m.turn("recline", "Back, leaning backward from the seat", parts.seatGroup, c.hip, -Vec3::UnitY(), m.value("recline_range"));
    parts.legGroup = m.turn("legrest", "Foot rests, raised", parts.seatGroup, c.onSeat(c.depth, 0), -Vec3::UnitY(), m.value("legrest_range"));
    parts.backBar = true;
    makeChairSeat(m, parts);
    makeJoystick(m, c, parts);

    const double width = m.value("base_width"), wheel = m.value("wheel_diameter"), baseTop = std::min(0.320, c.height - 0.170), rear = -0.160, front = 0.420;
    m.box("power_base", "", Vec3(0.5 * (rear + front), 0, 0.5 * (0.080 + baseTop)), Vec3(front - rear, width, baseTop - 0.080));
    m.box("seat_post", "", Vec3(0.200, 0, 0.5 * (baseTop + pivot.z())), Vec3(0.160, 0.160, pivot.z() - baseTop));
    m.box("seat_plate", parts.seatGroup, c.onSeat(0.200, 0) - 0.045 * c.seatUp, Vec3(0.200, std::min(0.240, c.width - 0.060), 0.030), c.along, c.seatUp);
    m.landmark("base_front_middle", "Middle of the power base's front, top", "", Vec3(front, 0, baseTop));
    for (int side : {1, -1}) {
        makeWheel(m, "drive_wheel", "drive wheel", side, 0.130, 0.5 * width + 0.010, wheel, 0.065);
        for (const auto& [end, x] : {std::pair<const char*, double>{"front", front + 0.030}, {"rear", rear - 0.060}}) {
            const double y = side * (0.5 * width - 0.050), r = 0.075;
            m.solid(sideId(std::string("castor_") + end, side), "", Solid::cylinder(Vec3(x, y - 0.020, r), Vec3(x, y + 0.020, r), r));
            m.bar(sideId(std::string("castor_arm_") + end, side), "", Vec3(x, y, 2 * r + 0.015), Vec3(x > 0 ? front - 0.020 : rear + 0.020, y, 0.180), 0.015);
        }
        // Behind the back the base carries a tube for accessories.
        const std::string id = sideId("base_rail", side);
        const double y = side * (0.5 * width - 0.060), level = baseTop + 0.030;
        m.rail(id, sideName("Accessory tube on the power base", side), "", Vec3(rear, y, level), Vec3(0.100, y, level), Vec3::UnitZ(), "1 in");
        m.bar(sideId("base_rail_foot_rear", side), "", Vec3(rear + 0.010, y, level), Vec3(rear + 0.010, y, baseTop - 0.010), 0.010);
        m.bar(sideId("base_rail_foot_front", side), "", Vec3(0.090, y, level), Vec3(0.090, y, baseTop - 0.010), 0.010);
        m.block(id, 0, 0.035, "foot of the tube");
        m.block(id, 0.225, 0.260, "foot of the tube");
        m.landmark(sideId("base_rear_corner", side), sideName("Rear corner of the power base, top", side), "", Vec3(rear, side * 0.5 * width, baseTop));
    }
}

}  // namespace

SupportRecipe chairPowerRecipe() {
    SupportKind kind{"chair-power", "Power wheelchair", "Seat on a power base with drive wheels in the middle and castors before and behind; joystick in front of an armrest. Tilt, recline and rising foot rests when their range is typed.",
                     chairDimensions(520, 450)};
    for (const SupportDimension& d : {lengthDimension_mm("base_width", "power base without its wheels", 460, 380, 520),
                                      lengthDimension_mm("wheel_diameter", "drive wheel across", 340, 250, 400),
                                      lengthDimension_mm("joystick_inward", "joystick to the left of the right armrest tube's line; type the distance between the armrests for a joystick at the left", 0, -80, 740),
                                      angleDimension_deg("tilt_range", "how far seat and back tilt backward together; 0: fixed", 0, 0, 55),
                                      angleDimension_deg("recline_range", "how far the back can lean beyond its angle; 0: fixed", 0, 0, 60),
                                      angleDimension_deg("legrest_range", "how far the foot rests can rise; 0: fixed", 0, 0, 90)})
        kind.dimensions.push_back(d);
    return {kind, makeChairPower};
}

}  // namespace hither
