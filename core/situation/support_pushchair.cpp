#include <cmath>

#include "core/situation/support_maker.h"
#include "core/units/quantity.h"

namespace hither {

namespace {

constexpr const char* frameTube = "3/4 in";  // common practice, no source

void makePushchair(SupportMaker& m) {
    const double width = m.value("seat_width"), depth = m.value("seat_depth"), height = m.value("seat_height"), backHeight = m.value("back_height");
    const double lean = m.value("back_angle"), footrest = m.value("footrest_height"), wheel = m.value("wheel_diameter"), across = 0.5 * width + 0.030;
    const Vec3 hip(0, 0, height), backUp(-std::sin(lean), 0, std::cos(lean)), backFront(std::cos(lean), 0, std::sin(lean));
    const std::string back = m.turn("recline", "Back, leaning backward", "", hip, -Vec3::UnitY(), m.value("recline_range"));

    m.box("seat", "", hip + Vec3(0.5 * depth, 0, -0.015), Vec3(depth, width - 0.020, 0.030));
    m.box("back", back, hip + 0.5 * backHeight * backUp - 0.010 * backFront, Vec3(backHeight, width - 0.020, 0.020), backUp, -backFront);
    const Vec3 coverTop = hip + backHeight * backUp - 0.010 * backFront, coverSide(0, 0.5 * width - 0.010, 0), front = hip + Vec3(depth, 0, 0);
    m.cloth("back_cover_top", "Top edge of the back cover", back, coverTop + coverSide, coverTop - coverSide, backUp, 0.004, {"back"});
    m.cloth("seat_cover_front", "Front edge of the seat cover", "", front - coverSide, front + coverSide, Vec3::UnitX(), 0.004, {"seat"});
    m.landmark("seat_back_middle", "Middle of the line where seat and back meet", "", hip);
    m.landmark("seat_front_middle", "Middle of the seat's front edge", "", front);
    m.landmark("back_top_middle", "Middle of the back's top edge", back, hip + backHeight * backUp);

    // A long tube each side from the front wheel past the seat to the push bar, a leg to the rear wheel.
    const double barHeight = m.value("push_bar_height"), frontX = depth + 0.060, rearX = -0.200;
    const double low = 0.5 * wheel + 0.040;
    const auto onFrame = [&](double z, double y) {  // point of the long tube's line at a height
        const double t = (z - low) / (barHeight - low);
        return Vec3(frontX + t * (-m.value("push_bar_back") - frontX), y, z);
    };
    const double bumperZ = height + 0.170, bumperX = depth - 0.020;
    for (int side : {1, -1}) {
        const double y = side * across;
        const Vec3 out(0, side, 0);
        const std::string tube = sideId("frame_tube", side), leg = sideId("rear_leg", side), arm = sideId("bumper_arm", side);
        const Vec3 bottom = onFrame(low, y), top = onFrame(barHeight, y), joint = onFrame(height - 0.040, y);
        m.rail(tube, sideName("Frame tube from the front wheel to the push bar", side), "", bottom, top, out, frameTube);
        m.block(tube, 0, 0.050, "front wheel's fork");
        m.block(tube, (top - bottom).norm() - 0.050, (top - bottom).norm(), "bend of the tube");
        m.blockNear(tube, joint, 0.060, "folding joint: leave it free");
        m.box(sideId("fold_joint", side), "", joint, Vec3(0.050, 0.036, 0.050));
        m.bar(sideId("seat_bracket", side), "", joint, Vec3(joint.x(), side * (0.5 * width - 0.020), height - 0.020), 0.010);
        const Vec3 rear(rearX, y, low);
        m.rail(leg, sideName("Leg to the rear wheel", side), "", joint, rear, out, frameTube);
        m.block(leg, 0, 0.060, "folding joint: leave it free");
        m.block(leg, (rear - joint).norm() - 0.050, (rear - joint).norm(), "axle");

        const Vec3 armStart = onFrame(bumperZ, y), armEnd(bumperX, y, bumperZ);
        m.rail(arm, sideName("Arm of the front bar", side), "", armStart, armEnd, out, frameTube);
        m.block(arm, 0, 0.040, "joins the frame tube");
        m.block(arm, (armEnd - armStart).norm() - 0.030, (armEnd - armStart).norm(), "catch of the front bar: leave it free");
        m.blockNear(tube, armStart, 0.040, "arm of the front bar");
        for (const auto& [end, x] : {std::pair<const char*, double>{"front", frontX}, {"rear", rearX}}) {
            m.solid(sideId(std::string("wheel_") + end, side), "", Solid::cylinder(Vec3(x, side * (across + 0.020), 0.5 * wheel), Vec3(x, side * (across + 0.055), 0.5 * wheel), 0.5 * wheel));
            m.bar(sideId(std::string("fork_") + end, side), "", Vec3(x, y, low), Vec3(x, side * (across + 0.010), 0.5 * wheel), 0.010);
        }
        m.landmark(sideId("push_bar_end", side), sideName("Top corner where the frame tube meets the push bar", side), "", top);
        m.landmark(sideId("rear_wheel_middle", side), sideName("Middle of the rear wheel, outer side", side), "", Vec3(rearX, side * (across + 0.055), 0.5 * wheel));
        m.landmark(sideId("front_bar_corner", side), sideName("Corner of the front bar", side), "", armEnd);
    }
    const Vec3 barLeft = onFrame(barHeight, across), barRight = onFrame(barHeight, -across);
    m.rail("push_bar", "Push bar", "", barLeft, barRight, -Vec3::UnitX(), "1 in");
    m.block("push_bar", 0, 0.030, "bend of the tube");
    m.block("push_bar", 2 * across - 0.030, 2 * across, "bend of the tube");
    m.rail("front_bar", "Bar in front of the person", "", Vec3(bumperX, across, bumperZ), Vec3(bumperX, -across, bumperZ), Vec3::UnitX(), "1 in");
    m.block("front_bar", 0, 0.030, "catch of the front bar: leave it free");
    m.block("front_bar", 2 * across - 0.030, 2 * across, "catch of the front bar: leave it free");
    m.bar("rear_axle", "", Vec3(rearX, across, 0.5 * wheel), Vec3(rearX, -across, 0.5 * wheel), 0.008);

    const double plateDepth = 0.120, plateX = depth + 0.040;
    m.box("foot_plate", "", Vec3(plateX + 0.5 * plateDepth, 0, footrest - 0.006), Vec3(plateDepth, width, 0.012));
    m.bar("foot_plate_stem", "", Vec3(plateX + 0.020, 0, footrest - 0.006), Vec3(depth - 0.020, 0, height - 0.020), 0.012);
    m.edge("foot_plate_edge", "Front edge of the foot plate", "", Vec3(plateX + plateDepth, -0.5 * width, footrest), Vec3(plateX + plateDepth, 0.5 * width, footrest), Vec3::UnitZ(), 0.012,
           BasisKind::assumed, 0.080, {"foot_plate"});
    m.face("foot_plate_face", "Top of the foot plate", "", Vec3(plateX + 0.5 * plateDepth, 0, footrest), Vec3::UnitX(), Vec3::UnitZ(), plateDepth, width, {"foot_plate"});

    Resting& resting = m.support.resting;
    resting.posture = Resting::Posture::seated;
    resting.hip_S = hip;
    resting.backAngle_rad = lean;
    resting.footrest_z_m = footrest;
    resting.trunkGroup = back;
}

}  // namespace

SupportRecipe pushchairRecipe() {
    return {{"pushchair", "Pushchair", "Child's pushchair: seat in a folding frame with a push bar behind, a bar in front of the person and a back that leans.",
             {lengthDimension_mm("seat_width", "across the seat", 320, 220, 420), lengthDimension_mm("seat_depth", "from the back to the front edge of the seat", 280, 180, 420),
              lengthDimension_mm("seat_height", "floor to the seat, at the back", 480, 350, 600), lengthDimension_mm("back_height", "along the back from the seat to its top edge", 520, 300, 700),
              angleDimension_deg("back_angle", "how far the back leans behind upright, raised as far as it goes", 15, 0, 30), angleDimension_deg("recline_range", "how far the back can lean beyond its angle; 0: fixed", 40, 0, 65),
              lengthDimension_mm("footrest_height", "floor to the top of the foot plate", 230, 80, 320), lengthDimension_mm("push_bar_height", "floor to the middle of the push bar", 1020, 800, 1150),
              lengthDimension_mm("push_bar_back", "push bar behind the line where seat and back meet", 380, 200, 600), lengthDimension_mm("wheel_diameter", "wheels across", 200, 120, 320)}},
            makePushchair};
}

}  // namespace hither
