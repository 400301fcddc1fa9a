#include "core/situation/support_chair.h"

#include <algorithm>
#include <cmath>

#include "core/units/quantity.h"

namespace hither {

namespace {

constexpr const char* frameTube = "7/8 in";  // common practice, no source; typed sizes take its place
constexpr double armrestOut_m = 0.030;       // armrests stand this far outside the seat's tubes
constexpr double padThickness_m = 0.025;
constexpr double armrestFree_m = 0.100;      // front end of the armrest tube that the pad leaves free
constexpr double jointFree_m = 0.025;        // a grip needs this much beside the middle of a joining tube
constexpr double coverGap_m = 0.020;         // seat and back covers end this far short of the tubes, so that a jaw goes between
constexpr double footPlate_m = 0.012;

void makeBack(SupportMaker& m, const ChairShape& c, const ChairParts& parts) {
    const double backHeight = m.value("back_height"), caneLength = backHeight + m.value("cane_above_back");
    double coverHalf = 0.5 * c.width;
    for (int side : {1, -1}) {
        const std::string id = sideId("back_cane", side);
        const double r = m.tubeRadius_m(id, frameTube);
        coverHalf = std::min(coverHalf, 0.5 * c.width - r - coverGap_m);
        const Vec3 foot = c.hip - (r + 0.005) * c.backFront + Vec3(0, side * 0.5 * c.width, 0);
        const Vec3 low = foot + 0.020 * c.backUp, top = foot + caneLength * c.backUp;
        m.rail(id, sideName("Back cane", side), parts.backGroup, low, top, Vec3(0, side, 0), frameTube);
        m.block(id, 0, 0.040, "joins the seat frame");
        m.blockSector(id, 0.030, backHeight - 0.020, c.backFront - Vec3(0, side, 0), radians(60), "back cover and the person's side");
        m.landmark(sideId("cane_top", side), sideName("Top end of the back cane", side), parts.backGroup, top);

        const std::string handle = sideId("push_handle", side);
        const Vec3 backward(-std::cos(radians(10)), 0, -std::sin(radians(10)));
        m.rail(handle, sideName("Push handle", side), parts.backGroup, top, top + 0.130 * backward, Vec3(0, side, 0), frameTube);
        m.block(handle, 0, 0.025, "bend of the tube");
        m.block(id, caneLength - 0.020 - 0.020, caneLength, "bend of the tube");
        m.landmark(sideId("handle_end", side), sideName("End of the push handle", side), parts.backGroup, top + 0.130 * backward);
    }
    m.box("back", parts.backGroup, c.hip + (0.5 * backHeight + 0.025) * c.backUp - 0.010 * c.backFront, Vec3(backHeight - 0.050, 2 * coverHalf, 0.020), c.backUp, -c.backFront);
    const Vec3 coverTop = c.hip + backHeight * c.backUp - 0.010 * c.backFront;
    m.cloth("back_cover_top", "Top edge of the back cover", parts.backGroup, coverTop + Vec3(0, coverHalf, 0), coverTop - Vec3(0, coverHalf, 0), c.backUp, 0.003, {"back"});
    m.landmark("back_top_middle", "Middle of the back's top edge", parts.backGroup, c.hip + backHeight * c.backUp);

    if (parts.backBar) {
        const double r = m.tubeRadius_m("back_bar", frameTube);
        const Vec3 middle = c.hip + 0.6 * backHeight * c.backUp - (0.065 + r) * c.backFront;
        const Vec3 half(0, 0.5 * c.width, 0);
        m.rail("back_bar", "Bar across behind the back", parts.backGroup, middle + half, middle - half, -c.backFront, frameTube);
        for (int side : {1, -1}) {
            m.bar(sideId("back_bar_bracket", side), parts.backGroup, middle + side * half, c.hip + 0.6 * backHeight * c.backUp - 0.016 * c.backFront + side * half, 0.009);
            m.blockNear("back_bar", middle + side * half, 0.030, "bracket to the back cane");
            m.blockNear(sideId("back_cane", side), c.hip + 0.6 * backHeight * c.backUp - 0.016 * c.backFront + side * half, 0.030, "bracket of the bar behind the back");
        }
    }
    if (parts.headrest) {
        const double r = m.tubeRadius_m("headrest_post", "5/8 in");
        const Vec3 foot = c.hip + 0.7 * backHeight * c.backUp - (0.030 + r) * c.backFront;
        const Vec3 top = c.hip + (backHeight + 0.220) * c.backUp - (0.030 + r) * c.backFront;
        m.rail("headrest_post", "Post of the head rest", parts.backGroup, foot, top, -c.backFront, "5/8 in");
        m.block("headrest_post", 0, 0.3 * backHeight, "holder on the back");
        const Vec3 pad = c.hip + (backHeight + 0.220) * c.backUp;
        m.box("headrest", parts.backGroup, pad - 0.015 * c.backFront, Vec3(0.140, 0.240, 0.030), c.backUp, -c.backFront);
        m.blockNear("headrest_post", pad - (0.030 + r) * c.backFront, 0.075, "head rest pad");
        m.landmark("headrest_top", "Top of the head rest", parts.backGroup, pad + 0.070 * c.backUp - 0.015 * c.backFront);
    }
}

void makeArmrests(SupportMaker& m, const ChairShape& c, const ChairParts& parts) {
    const double height = m.value("armrest_height"), front = m.value("armrest_length"), padWidth = m.value("pad_width");
    for (int side : {1, -1}) {
        const std::string tube = sideId("armrest_tube", side), post = sideId("armrest_post", side), pad = sideId("armrest_pad", side);
        const double r = m.tubeRadius_m(tube, frameTube);
        const double across = side * (0.5 * c.width + armrestOut_m);
        const double up = height - padThickness_m - r;
        // The tube starts at the back: where its line leaves the line of the cane.
        const double start = -up * (c.backFront.dot(c.seatUp) / c.backFront.dot(c.along));
        const Vec3 rear = c.onSeat(start, across) + up * c.seatUp, end = c.onSeat(front, across) + up * c.seatUp;
        m.rail(tube, sideName("Armrest tube", side), parts.seatGroup, rear, end, Vec3(0, side, 0), frameTube);
        const double padFrom = start + 0.040, padTo = front - armrestFree_m;
        m.block(tube, 0, 0.035, "joins the back");
        m.block(tube, padFrom - start, padTo - start, "the pad is screwed on here: a clamp cannot close round the tube");

        const double postAt = std::min(front - armrestFree_m - 0.030, c.depth - 0.030);
        const double seatTube = m.tubeRadius_m(sideId("seat_rail", side), frameTube);
        const Vec3 low = c.onSeat(postAt, side * 0.5 * c.width) - seatTube * c.seatUp, high = c.onSeat(postAt, across) + up * c.seatUp;
        m.rail(post, sideName("Armrest post", side), parts.seatGroup, low, high, c.along, frameTube);
        const double postLength = (high - low).norm();
        m.block(post, 0, seatTube + jointFree_m, "joins the seat rail");
        m.block(post, postLength - r - 0.010, postLength, "joins the armrest tube");
        m.blockNear(sideId("seat_rail", side), low, m.tubeRadius_m(post, frameTube) + jointFree_m, "armrest post");
        m.blockNear(tube, high, m.tubeRadius_m(post, frameTube) + jointFree_m, "armrest post");

        const Vec3 padMiddle = c.onSeat(0.5 * (padFrom + padTo), across) + height * c.seatUp;
        const double padLength = padTo - padFrom;
        m.box(pad, parts.seatGroup, padMiddle - 0.5 * padThickness_m * c.seatUp, Vec3(padLength, padWidth, padThickness_m), c.along, c.seatUp);
        m.face(sideId("armrest_pad_face", side), sideName("Top of the armrest pad", side), parts.seatGroup, padMiddle, c.along, c.seatUp, padLength, padWidth, {pad});
        // Outer edge: into the pad is toward the middle, so the left one runs rearward and the right one forward.
        const Vec3 outer = padMiddle + Vec3(0, side * 0.5 * padWidth, 0), half = 0.5 * padLength * c.along;
        m.edge(sideId("armrest_pad_edge", side), sideName("Outer edge of the armrest pad", side), parts.seatGroup, outer + side * half, outer - side * half, c.seatUp,
               padThickness_m, BasisKind::assumed, std::max(0.005, 0.5 * padWidth - r), {pad});
        m.landmark(sideId("armrest_front", side), sideName("Front end of the armrest tube, top", side), parts.seatGroup, end + r * c.seatUp);
        m.landmark(sideId("pad_front_outer", side), sideName("Front outer corner of the armrest pad, top", side), parts.seatGroup, outer + half);
        m.landmark(sideId("seat_tube_joint", side), sideName("Where the armrest post meets the seat rail, middle", side), parts.seatGroup, low);
    }
}

void makeFootrests(SupportMaker& m, const ChairShape& c, const ChairParts& parts) {
    const double plateTop = m.value("footrest_height"), slope = m.value("hanger_angle");
    const Vec3 down(std::cos(slope), 0, -std::sin(slope));
    for (int side : {1, -1}) {
        const std::string id = sideId("footrest_hanger", side), plate = sideId("foot_plate", side);
        const double r = m.tubeRadius_m(id, frameTube);
        const Vec3 top = c.onSeat(c.depth, side * 0.5 * c.width) - r * c.seatUp;
        const double length = (top.z() - plateTop) / std::sin(slope);
        const Vec3 end = top + length * down;
        m.rail(id, sideName("Footrest hanger", side), parts.legGroup, top, end, Vec3(0, side, 0), frameTube);
        m.block(id, 0, 0.050, "hook on the seat frame");
        m.block(id, length - 0.030, length, "joins the foot plate");
        const double from = 0.010, to = 0.5 * c.width, middle = 0.5 * side * (from + to), rear = end.x() - 0.030, front = end.x() + 0.120;
        const Vec3 face(0.5 * (rear + front), middle, plateTop);
        m.box(plate, parts.legGroup, face - Vec3(0, 0, 0.5 * footPlate_m), Vec3(front - rear, to - from, footPlate_m));
        m.face(sideId("foot_plate_face", side), sideName("Top of the foot plate", side), parts.legGroup, face, Vec3::UnitX(), Vec3::UnitZ(), front - rear, to - from, {plate});
        const double y0 = std::min(side * from, side * to), y1 = std::max(side * from, side * to);
        m.edge(sideId("foot_plate_edge", side), sideName("Front edge of the foot plate", side), parts.legGroup, Vec3(front, y0, plateTop), Vec3(front, y1, plateTop), Vec3::UnitZ(),
               footPlate_m, BasisKind::assumed, 0.100, {plate});
        m.landmark(sideId("foot_plate_front", side), sideName("Front outer corner of the foot plate, top", side), parts.legGroup, Vec3(front, side * to, plateTop));
    }
}

}  // namespace

ChairShape::ChairShape(const SupportMaker& m)
    : width(m.value("seat_width")), depth(m.value("seat_depth")), height(m.value("seat_height")), hip(0, 0, m.value("seat_height")) {
    const double seat = m.value("seat_angle"), back = m.value("back_angle");
    along = Vec3(std::cos(seat), 0, std::sin(seat));
    seatUp = Vec3(-std::sin(seat), 0, std::cos(seat));
    backUp = Vec3(-std::sin(back), 0, std::cos(back));
    backFront = Vec3(std::cos(back), 0, std::sin(back));
}

std::vector<SupportDimension> chairDimensions(double seatHeight_mm, double minHeight_mm) {
    return {lengthDimension_mm("seat_width", "across the seat, between the middles of its side tubes", 430, 250, 600),
            lengthDimension_mm("seat_depth", "from the back to the front edge of the seat", 430, 250, 560),
            lengthDimension_mm("seat_height", "floor to the seat (without cushion) at the back, where seat and back meet", seatHeight_mm, minHeight_mm, 650),
            angleDimension_deg("seat_angle", "how much the seat rises toward the front", 3, 0, 10),
            angleDimension_deg("back_angle", "how far the back leans behind upright", 8, 0, 30),
            lengthDimension_mm("back_height", "along the back from the seat to its top edge", 430, 250, 800),
            lengthDimension_mm("cane_above_back", "how far the back canes go on above the back's top edge", 60, 30, 250),
            lengthDimension_mm("armrest_height", "seat to the top of the armrest pad", 230, 150, 330),
            lengthDimension_mm("armrest_length", "from the line where seat and back meet to the front end of the armrest tube, along the seat", 400, 260, 520),
            lengthDimension_mm("pad_width", "width of the armrest pad", 50, 40, 130),
            lengthDimension_mm("footrest_height", "floor to the top of the foot plates", 130, 40, 200),
            angleDimension_deg("hanger_angle", "slope of the footrest hangers below level", 70, 55, 90)};
}

void makeChairSeat(SupportMaker& m, const ChairParts& parts) {
    const ChairShape c(m);
    double coverHalf = 0.5 * c.width;
    for (int side : {1, -1}) {
        const std::string id = sideId("seat_rail", side);
        const double r = m.tubeRadius_m(id, frameTube);
        coverHalf = std::min(coverHalf, 0.5 * c.width - r - coverGap_m);
        m.rail(id, sideName("Seat rail", side), parts.seatGroup, c.onSeat(0, side * 0.5 * c.width) - r * c.seatUp, c.onSeat(c.depth, side * 0.5 * c.width) - r * c.seatUp,
               Vec3(0, side, 0), frameTube);
        m.block(id, 0, 0.040, "joins the back cane");
        m.block(id, c.depth - 0.040, c.depth, "hook of the footrest hanger");
        m.landmark(sideId("seat_front", side), sideName("Front end of the seat rail, top", side), parts.seatGroup, c.onSeat(c.depth, side * 0.5 * c.width));
    }
    m.box("seat", parts.seatGroup, c.onSeat(0.5 * c.depth, 0) - 0.015 * c.seatUp, Vec3(c.depth, 2 * coverHalf, 0.030), c.along, c.seatUp);
    const Vec3 front = c.onSeat(c.depth, 0);
    m.cloth("seat_cover_front", "Front edge of the seat cover", parts.seatGroup, front - Vec3(0, coverHalf, 0), front + Vec3(0, coverHalf, 0), c.along, 0.003, {"seat"});
    m.landmark("seat_back_middle", "Middle of the line where seat and back meet", parts.seatGroup, c.hip);
    makeBack(m, c, parts);
    makeArmrests(m, c, parts);
    makeFootrests(m, c, parts);

    Resting& resting = m.support.resting;
    resting.posture = Resting::Posture::seated;
    resting.hip_S = c.hip;
    resting.seatAngle_rad = m.value("seat_angle");
    resting.backAngle_rad = m.value("back_angle");
    resting.footrest_z_m = m.value("footrest_height");
    resting.seatGroup = parts.seatGroup;
    resting.trunkGroup = parts.backGroup;
    resting.legGroup = parts.legGroup;
}

void makeWheel(SupportMaker& m, const std::string& id, const std::string& name, int side, double x, double inner, double diameter, double width) {
    const Vec3 near(x, side * inner, 0.5 * diameter), far(x, side * (inner + width), 0.5 * diameter);
    m.solid(sideId(id, side), "", Solid::cylinder(near, far, 0.5 * diameter));
    m.landmark(sideId(id + "_middle", side), sideName("Middle of the " + name + ", outer side", side), "", far);
}

}  // namespace hither
