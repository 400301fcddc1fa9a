#include <algorithm>
#include <cmath>

#include "core/situation/support_chair.h"
#include "core/units/quantity.h"

namespace hither {

namespace {

void makeChairManual(SupportMaker& m) {
    const ChairShape c(m);
    ChairParts parts;
    parts.backGroup = m.turn("recline", "Back, leaning backward", "", c.hip, -Vec3::UnitY(), m.value("recline_range"));
    parts.legGroup = m.turn("legrest", "Foot rests, raised", "", c.onSeat(c.depth, 0), -Vec3::UnitY(), m.value("legrest_range"));
    makeChairSeat(m, parts);

    const double wheel = m.value("wheel_diameter"), axle = m.value("axle_forward"), castor = m.value("castor_diameter");
    const double level = std::min(castor + 0.060, c.height - 0.110);  // lower frame tubes
    const double front = c.depth - 0.030, brakeAt = std::min(axle + 0.5 * wheel + 0.020, c.depth - 0.060);
    for (int side : {1, -1}) {
        const double across = side * 0.5 * c.width;
        const std::string low = sideId("lower_rail", side), seat = sideId("seat_rail", side);
        m.rail(low, sideName("Lower frame tube", side), "", Vec3(-0.020, across, level), Vec3(front, across, level), Vec3(0, side, 0), "7/8 in");
        m.block(low, 0, 0.060, "joins the axle plate");
        m.block(low, front + 0.020 - 0.060, front + 0.020, "joins the castor housing");
        m.bar(sideId("rear_upright", side), "", Vec3(-0.020, across, level), c.onSeat(0, across) - Vec3(0, 0, 0.011), 0.011);
        m.bar(sideId("front_upright", side), "", Vec3(front, across, level), c.onSeat(front, across) - Vec3(0, 0, 0.011), 0.011);
        m.box(sideId("axle_plate", side), "", Vec3(axle, across, 0.5 * wheel), Vec3(0.060, 0.030, 0.100));
        m.bar(sideId("cross_brace", side), "", Vec3(0.5 * c.depth, across, level), c.onSeat(0.5 * c.depth, -across) - Vec3(0, 0, 0.020), 0.011);

        // The wheel stands outside the frame; hand rim outside the wheel.
        const double inner = 0.5 * c.width + 0.050;
        makeWheel(m, "wheel", "wheel", side, axle, inner, wheel, 0.025);
        m.solid(sideId("hand_rim", side), "", Solid::cylinder(Vec3(axle, side * (inner + 0.030), 0.5 * wheel), Vec3(axle, side * (inner + 0.048), 0.5 * wheel), 0.5 * wheel - 0.025));
        m.solid(sideId("castor", side), "", Solid::cylinder(Vec3(front - 0.030, side * (0.5 * c.width - 0.015), 0.5 * castor), Vec3(front - 0.030, side * (0.5 * c.width + 0.015), 0.5 * castor), 0.5 * castor));
        m.bar(sideId("castor_fork", side), "", Vec3(front, across, level), Vec3(front - 0.030, side * (0.5 * c.width + 0.025), 0.5 * castor), 0.010);
        for (const std::string& rail : {low, seat}) {
            const double start = rail == low ? -0.020 : 0.0;
            m.blockSector(rail, axle - 0.5 * wheel - start, axle + 0.5 * wheel - start, Vec3(0, side, 0), radians(70), "side toward the wheel");
        }

        const Vec3 brake = c.onSeat(brakeAt, across) - Vec3(0, 0, 0.030);
        m.box(sideId("brake", side), "", brake + Vec3(0, 0.025 * side, -0.025), Vec3(0.050, 0.030, 0.060));
        m.bar(sideId("brake_lever", side), "", brake + Vec3(0, 0.035 * side, 0), brake + Vec3(0.060, 0.045 * side, 0.110), 0.010);
        m.block(seat, brakeAt - 0.050, brakeAt + 0.050, "brake: leave it free");
        m.landmark(sideId("brake_grip", side), sideName("End of the brake lever", side), "", brake + Vec3(0.060, 0.045 * side, 0.110));
    }
}

}  // namespace

SupportRecipe chairManualRecipe() {
    SupportKind kind{"chair-manual", "Manual wheelchair", "Folding frame on two large wheels and two castors; the back may lean, the foot rests may rise.", chairDimensions(490, 380)};
    for (const SupportDimension& d : {lengthDimension_mm("wheel_diameter", "rear wheel across", 600, 300, 660),
                                      lengthDimension_mm("axle_forward", "rear axle in front of (negative: behind) the line where seat and back meet", 20, -100, 120),
                                      lengthDimension_mm("castor_diameter", "front castor across", 180, 75, 210),
                                      angleDimension_deg("recline_range", "how far the back can lean beyond its angle; 0: fixed", 0, 0, 60),
                                      angleDimension_deg("legrest_range", "how far the foot rests can rise; 0: fixed", 0, 0, 90)})
        kind.dimensions.push_back(d);
    return {kind, makeChairManual};
}

}  // namespace hither
