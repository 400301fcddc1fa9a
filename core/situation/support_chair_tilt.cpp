#include <algorithm>

#include "core/situation/support_chair.h"
#include "core/units/quantity.h"

namespace hither {

namespace {

void makeChairTilt(SupportMaker& m) {
    const ChairShape c(m);
    const Vec3 pivot(m.value("pivot_forward"), 0, c.height - m.value("pivot_below"));
    ChairParts parts;
    parts.seatGroup = m.turn("tilt", "Seat, back and arms together, tilted backward", "", pivot, -Vec3::UnitY(), m.value("tilt_range"));
    parts.backGroup = m.turn("recline", "Back, leaning backward from the seat", parts.seatGroup, c.hip, -Vec3::UnitY(), m.value("recline_range"));
    parts.legGroup = m.turn("legrest", "Foot rests, raised", parts.seatGroup, c.onSeat(c.depth, 0), -Vec3::UnitY(), m.value("legrest_range"));
    parts.headrest = parts.backBar = true;
    makeChairSeat(m, parts);

    const double wheel = m.value("wheel_diameter"), axle = m.value("axle_forward"), castor = m.value("castor_diameter");
    const double level = castor + 0.030, front = c.depth;
    const double postAt = std::clamp(pivot.x(), axle + 0.020, front - 0.020);
    for (int side : {1, -1}) {
        const double across = 0.5 * side * c.width, inner = 0.5 * c.width + 0.045;
        const std::string id = sideId("base_rail", side);
        m.rail(id, sideName("Base frame tube", side), "", Vec3(axle, across, level), Vec3(front, across, level), Vec3(0, side, 0), "1 in");
        m.block(id, 0, 0.050, "joins the axle plate");
        m.block(id, front - axle - 0.060, front - axle, "joins the castor housing");
        m.blockNear(id, Vec3(postAt, across, level), 0.060, "tilt post");
        m.blockSector(id, 0, 0.5 * wheel, Vec3(0, side, 0), radians(70), "side toward the wheel");
        m.bar(sideId("tilt_post", side), "", Vec3(postAt, across, level), Vec3(pivot.x(), across, pivot.z()), 0.020);
        m.bar(sideId("tilt_pivot_arm", side), parts.seatGroup, Vec3(pivot.x(), across, pivot.z()), c.onSeat(std::min(pivot.x(), c.depth), across) - 0.011 * c.seatUp, 0.014);
        m.box(sideId("axle_plate", side), "", Vec3(axle, across, 0.5 * (level + 0.5 * wheel)), Vec3(0.060, 0.030, std::abs(level - 0.5 * wheel) + 0.060));
        makeWheel(m, "wheel", "rear wheel", side, axle, inner, wheel, 0.030);
        const double y = 0.5 * c.width;
        m.solid(sideId("castor", side), "", Solid::cylinder(Vec3(front - 0.030, side * (y - 0.015), 0.5 * castor), Vec3(front - 0.030, side * (y + 0.015), 0.5 * castor), 0.5 * castor));
        m.bar(sideId("castor_fork", side), "", Vec3(front, across, level), Vec3(front - 0.030, side * (y + 0.025), 0.5 * castor), 0.010);
        const Vec3 brake(axle + 0.5 * wheel + 0.030, across, level);
        m.box(sideId("brake", side), "", brake + Vec3(0, side * 0.030, 0), Vec3(0.060, 0.030, 0.050));
        m.blockNear(id, brake, 0.040, "brake: leave it free");
        m.landmark(sideId("brake_middle", side), sideName("Middle of the brake, outer side", side), "", brake + Vec3(0, side * 0.045, 0));
    }
    m.bar("base_cross_rear", "", Vec3(axle, 0.5 * c.width, level), Vec3(axle, -0.5 * c.width, level), 0.0127);
    m.bar("base_cross_front", "", Vec3(front - 0.080, 0.5 * c.width, level), Vec3(front - 0.080, -0.5 * c.width, level), 0.0127);
}

}  // namespace

SupportRecipe chairTiltRecipe() {
    SupportKind kind{"chair-tilt", "Tilt-in-space wheelchair", "Seat, back, arms and foot rests tilt backward together on a wheeled base; the back leans besides, the foot rests rise; with a head rest.",
                     chairDimensions(500, 430)};
    for (const SupportDimension& d : {lengthDimension_mm("pivot_forward", "tilt pivot in front of the line where seat and back meet", 200, 50, 350),
                                      lengthDimension_mm("pivot_below", "tilt pivot below the seat's height at the back", 100, 50, 150),
                                      angleDimension_deg("tilt_range", "how far seat and back tilt backward together; 0: fixed", 45, 0, 60),
                                      angleDimension_deg("recline_range", "how far the back can lean beyond its angle; 0: fixed", 30, 0, 60),
                                      angleDimension_deg("legrest_range", "how far the foot rests can rise; 0: fixed", 60, 0, 90),
                                      lengthDimension_mm("wheel_diameter", "rear wheel across", 300, 200, 610),
                                      lengthDimension_mm("axle_forward", "rear axle in front of (negative: behind) the line where seat and back meet", -40, -150, 60),
                                      lengthDimension_mm("castor_diameter", "front castor across", 180, 100, 210)})
        kind.dimensions.push_back(d);
    return {kind, makeChairTilt};
}

}  // namespace hither
