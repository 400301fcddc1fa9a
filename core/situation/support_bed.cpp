#include <algorithm>
#include <cmath>

#include "core/situation/support_maker.h"

namespace hither {

namespace {

constexpr double barSpacing_m = 0.110;  // between middles of bars, so that every opening is under the 120 mm of FDA 2006, zone 1
constexpr double board_m = 0.020;       // thickness of head and foot boards
constexpr double deck_m = 0.020;        // the sections' decks under the mattress
constexpr double frameGap_m = 0.015;    // the decks lie on rests this high above the frame's tubes, so that a jaw closes round them
constexpr double castor_m = 0.100;      // castor across

struct BedShape {
    explicit BedShape(const SupportMaker& m)
        : width(m.value("mattress_width")), length(m.value("mattress_length")), thickness(m.value("mattress_thickness")), top(m.value("mattress_top_height")),
          head(-m.value("back_section")), thighFrom(m.value("seat_section")), thighTo(thighFrom + m.value("thigh_section")), foot(length + head),
          deckTop(top - thickness), frame(deckTop - deck_m - frameGap_m - 0.020) {}
    double width, length, thickness, top;
    double head, thighFrom, thighTo, foot;  ///< x of the sections' borders; the hip pivot is x = 0
    double deckTop, frame;                  ///< heights: under the mattress; middle of the frame's tubes
};

struct BedGroups { std::string height, back, thigh, leg; };

void section(SupportMaker& m, const BedShape& bed, const std::string& name, const std::string& group, double from, double to) {
    if (to - from < 0.001) return;
    const double middle = 0.5 * (from + to);
    m.box("mattress_" + name, group, Vec3(middle, 0, bed.top - 0.5 * bed.thickness), Vec3(to - from, bed.width, bed.thickness));
    m.box("deck_" + name, group, Vec3(middle, 0, bed.deckTop - 0.5 * deck_m), Vec3(to - from, bed.width - 0.040, deck_m));
}

void sections(SupportMaker& m, const BedShape& bed, const BedGroups& g) {
    section(m, bed, "back", g.back, bed.head, 0);
    section(m, bed, "seat", g.height, 0, bed.thighFrom);
    section(m, bed, "thigh", g.thigh, bed.thighFrom, bed.thighTo);
    section(m, bed, "leg", g.leg, bed.thighTo, bed.foot);
    for (int side : {1, -1}) {
        const double y = 0.5 * side * bed.width, z = bed.top - 0.020;
        const Vec3 up(0, side, 0);
        m.cloth(sideId("sheet_edge_back", side), sideName("Sheet at the side of the back section", side), g.back, Vec3(bed.head, y, z), Vec3(0, y, z), up, 0.001, {"mattress_back"});
        m.cloth(sideId("sheet_edge_leg", side), sideName("Sheet at the side of the lower leg section", side), g.leg, Vec3(bed.thighTo, y, z), Vec3(bed.foot, y, z), up, 0.001, {"mattress_leg"});
        m.cloth(sideId("blanket_edge", side), sideName("Blanket at the side of the thigh section", side), g.thigh, Vec3(bed.thighFrom, y, z), Vec3(bed.thighTo, y, z), up, 0.010, {"mattress_thigh"});
        m.landmark(sideId("mattress_head", side), sideName("Head corner of the mattress, top", side), g.back, Vec3(bed.head, y, bed.top));
        m.landmark(sideId("mattress_foot", side), sideName("Foot corner of the mattress, top", side), g.leg, Vec3(bed.foot, y, bed.top));
        m.landmark(sideId("hip_pivot", side), sideName("Hinge of the back section, at the deck's side", side), g.height, Vec3(0, side * (0.5 * bed.width - 0.020), bed.deckTop));
    }
}

void frame(SupportMaker& m, const BedShape& bed, const BedGroups& g) {
    for (int side : {1, -1}) {
        const double y = side * (0.5 * bed.width - 0.040);
        const std::string id = sideId("frame_rail", side);
        m.rail(id, sideName("Frame tube under the deck", side), g.height, Vec3(bed.head, y, bed.frame), Vec3(bed.foot, y, bed.frame), Vec3(0, side, 0), "40 mm", Section::square);
        m.blockSector(id, 0, bed.length, Vec3::UnitZ(), 0.79, "the decks close down on it");
        for (const auto& [part, x] : {std::pair<const char*, double>{"head", bed.head + 0.060}, {"hip", 0.0}, {"foot", bed.foot - 0.060}}) {
            m.box(sideId(std::string("deck_rest_") + part, side), g.height, Vec3(x, y, bed.frame + 0.020 + 0.5 * frameGap_m), Vec3(0.040, 0.040, frameGap_m));
            m.block(id, x - bed.head - 0.040, x - bed.head + 0.040, "rest of the deck");
        }
        m.block(id, 0.120, 0.280, "leg");
        m.block(id, bed.length - 0.280, bed.length - 0.120, "leg");
        for (const auto& [end, x] : {std::pair<const char*, double>{"head", bed.head + 0.200}, {"foot", bed.foot - 0.200}}) {
            m.bar(sideId(std::string("leg_") + end, side), "", Vec3(x, y, castor_m), Vec3(x, y, bed.frame), 0.020);
            m.solid(sideId(std::string("castor_") + end, side), "", Solid::cylinder(Vec3(x, y - 0.015, 0.5 * castor_m), Vec3(x, y + 0.015, 0.5 * castor_m), 0.5 * castor_m));
        }
    }
}

void headBoard(SupportMaker& m, const BedShape& bed, const BedGroups& g) {
    const double x = bed.head - 0.040, railTop = bed.top + m.value("head_board_height");
    m.box("head_board", g.height, Vec3(x, 0, 0.5 * (bed.frame + bed.top)), Vec3(board_m, bed.width, bed.top - bed.frame));
    const double half = 0.5 * bed.width;
    m.rail("head_rail_top", "Top rail of the head board", g.height, Vec3(x, half, railTop), Vec3(x, -half, railTop), Vec3::UnitZ(), "1 in");
    m.block("head_rail_top", 0, 0.035, "bend of the tube");
    m.block("head_rail_top", bed.width - 0.035, bed.width, "bend of the tube");
    for (int side : {1, -1}) {
        const std::string id = sideId("head_post", side);
        m.rail(id, sideName("Post of the head board", side), g.height, Vec3(x, side * half, bed.frame), Vec3(x, side * half, railTop), Vec3(0, side, 0), "1 in");
        m.block(id, 0, bed.top + 0.015 - bed.frame, "the board joins here");
        m.block(id, railTop - bed.frame - 0.035, railTop - bed.frame, "bend of the tube");
        m.landmark(sideId("head_post_top", side), sideName("Top corner of the head board, middle of the tube", side), g.height, Vec3(x, side * half, railTop));
    }
    const int spaces = static_cast<int>(std::ceil(half / barSpacing_m - 1e-9));
    const auto bar = [&](const std::string& id, const std::string& name, double y, const Vec3& reference) {
        m.rail(id, name, g.height, Vec3(x, y, bed.top), Vec3(x, y, railTop), reference, "1/2 in");
        m.block(id, 0, 0.015, "the board joins here");
        m.block(id, railTop - bed.top - 0.025, railTop - bed.top, "joins the top rail");
        m.blockNear("head_rail_top", Vec3(x, y, railTop), 0.012, "bar");
    };
    bar("head_bar_middle", "Middle bar of the head board", 0, -Vec3::UnitX());
    for (int k = 1; k < spaces; ++k)
        for (int side : {1, -1})
            bar(sideId("head_bar_" + std::to_string(k), side), sideName("Bar " + std::to_string(k) + " from the middle of the head board", side), side * k * half / spaces, -Vec3::UnitX());
}

void footBoard(SupportMaker& m, const BedShape& bed, const BedGroups& g) {
    const double inner = bed.foot + 0.030, outer = inner + board_m, boardTop = bed.top + m.value("foot_board_height"), half = 0.5 * bed.width;
    m.box("foot_board", g.height, Vec3(0.5 * (inner + outer), 0, 0.5 * (bed.frame + boardTop)), Vec3(board_m, bed.width, boardTop - bed.frame));
    m.edge("foot_board_edge", "Top edge of the foot board", g.height, Vec3(outer, half, boardTop), Vec3(outer, -half, boardTop), Vec3::UnitX(), board_m, BasisKind::assumed,
           std::min(0.100, boardTop - bed.frame), {"foot_board"});
    m.face("foot_board_face", "Outer face of the foot board", g.height, Vec3(outer, 0, 0.5 * (bed.frame + boardTop)), Vec3::UnitY(), Vec3::UnitX(), bed.width, boardTop - bed.frame, {"foot_board"});
    for (int side : {1, -1})
        m.landmark(sideId("foot_board_top", side), sideName("Top outer corner of the foot board", side), g.height, Vec3(outer, side * half, boardTop));
}

void sideRails(SupportMaker& m, const BedShape& bed, const BedGroups& g) {
    const double from = bed.head + m.value("side_rail_from_head"), to = from + m.value("side_rail_length");
    const double low = bed.top - 0.020, high = bed.top + m.value("side_rail_height");
    const int spaces = static_cast<int>(std::ceil((high - low) / barSpacing_m - 1e-9));
    for (int side : {1, -1}) {
        const std::string name = "side_rail";
        double radius = 0;
        for (const char* part : {"side_rail_top", "side_rail_head_post", "side_rail_foot_post", "side_rail_bottom"}) radius = std::max(radius, m.tubeRadius_m(sideId(part, side), "1 in"));
        const double y = side * (0.5 * bed.width + m.value("side_rail_gap") + radius);
        const Vec3 out(0, side, 0);
        const auto level = [&](const std::string& id, const std::string& words, double z, const char* tube) {
            m.rail(sideId(id, side), sideName(words, side), g.height, Vec3(from, y, z), Vec3(to, y, z), out, tube);
            m.block(sideId(id, side), 0, 0.035, "joins the rail's end");
            m.block(sideId(id, side), to - from - 0.035, to - from, "joins the rail's end");
        };
        level("side_rail_top", "Top of the side rail", high, "1 in");
        level("side_rail_bottom", "Bottom bar of the side rail", low, "1 in");
        m.block(sideId("side_rail_bottom", side), to - from - 0.250, to - from - 0.035, "the rail's own release: leave it free");
        for (int k = 1; k < spaces; ++k)
            level("side_rail_bar_" + std::to_string(k), "Bar " + std::to_string(k) + " from the bottom of the side rail", low + k * (high - low) / spaces, "3/4 in");
        for (const auto& [end, x] : {std::pair<const char*, double>{"head", from}, {"foot", to}}) {
            const std::string id = sideId(name + "_" + end + "_post", side);
            m.rail(id, sideName(std::string("End post of the side rail, ") + end + " end", side), g.height, Vec3(x, y, low), Vec3(x, y, high), out, "1 in");
            for (int k = 0; k <= spaces; ++k) m.blockNear(id, Vec3(x, y, low + k * (high - low) / spaces), 0.025, "bar");
            m.bar(sideId(name + "_" + end + "_arm", side), g.height, Vec3(x, y, low), Vec3(x, side * (0.5 * bed.width - 0.040), bed.frame), 0.015);
            m.landmark(sideId(name + "_" + end + "_end", side), sideName(std::string("Top corner of the side rail, ") + end + " end", side), g.height, Vec3(x, y, high));
        }
        m.box(sideId("side_rail_release", side), g.height, Vec3(to - 0.140, y, low - 0.030 - radius), Vec3(0.120, 0.040, 0.050));
    }
}

void makeBed(SupportMaker& m) {
    const BedShape bed(m);
    BedGroups g;
    g.height = m.slide("height", "Height of the bed", "", Vec3::UnitZ(), m.value("height_range"));
    g.back = m.turn("back", "Back section", g.height, Vec3(0, 0, bed.deckTop), Vec3::UnitY(), m.value("back_range"));
    g.thigh = m.turn("thigh", "Thigh section", g.height, Vec3(bed.thighFrom, 0, bed.deckTop), -Vec3::UnitY(), m.value("thigh_range"));
    g.leg = m.turn("lower_leg", "Lower leg section, down from the thigh section", g.thigh, Vec3(bed.thighTo, 0, bed.deckTop), Vec3::UnitY(), m.value("lower_leg_range"));
    sections(m, bed, g);
    frame(m, bed, g);
    headBoard(m, bed, g);
    footBoard(m, bed, g);
    sideRails(m, bed, g);

    Resting& resting = m.support.resting;
    resting.posture = Resting::Posture::lying;
    resting.hip_S = Vec3(0, 0, bed.top);
    resting.footrest_z_m = 0;
    resting.trunkGroup = g.back;
    resting.seatGroup = g.thigh;
    resting.legGroup = g.leg;
}

}  // namespace

SupportRecipe bedRecipe() {
    return {{"bed", "Bed with side rails",
             "Mattress on a back section, a fixed seat section, a thigh and a lower leg section; boards at head and foot; side rails on the frame, which do not move with the sections. The origin is below the back section's hinge; forward is toward the feet.",
             {lengthDimension_mm("mattress_width", "mattress, side to side", 900, 700, 1200),
              lengthDimension_mm("mattress_length", "mattress, head to foot", 2000, 1500, 2300),
              lengthDimension_mm("mattress_thickness", "mattress, as it lies", 140, 60, 220),
              lengthDimension_mm("mattress_top_height", "floor to the top of the mattress, everything level, bed at its lowest", 600, 400, 900),
              lengthDimension_mm("back_section", "head end of the mattress to the back section's hinge", 800, 400, 850),
              lengthDimension_mm("seat_section", "fixed piece between the back's hinge and the thigh section's hinge", 180, 0, 200),
              lengthDimension_mm("thigh_section", "thigh section, hinge to hinge", 340, 200, 400),
              angleDimension_deg("back_range", "how far the back section rises; 0: fixed", 70, 0, 85),
              angleDimension_deg("thigh_range", "how far the thigh section rises; 0: fixed", 35, 0, 45),
              angleDimension_deg("lower_leg_range", "how far the lower leg section folds down from the thigh section's line; 0: fixed", 45, 0, 60),
              lengthDimension_mm("height_range", "how far the whole bed rises; 0: fixed", 0, 0, 500),
              lengthDimension_mm("head_board_height", "top of the mattress to the middle of the head board's top rail", 400, 200, 700),
              lengthDimension_mm("foot_board_height", "top of the mattress to the foot board's top edge", 150, 50, 400),
              lengthDimension_mm("side_rail_height", "top of the mattress to the middle of the side rail's top tube", 240, 100, 450),
              lengthDimension_mm("side_rail_from_head", "head end of the mattress to the head end of the side rail", 300, 0, 500),
              lengthDimension_mm("side_rail_length", "side rail, end to end", 1000, 400, 1000),
              lengthDimension_mm("side_rail_gap", "between the mattress and the side rail", 30, 0, 110)}},
            makeBed};
}

}  // namespace hither
