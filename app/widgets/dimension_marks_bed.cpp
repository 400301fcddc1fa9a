#include <algorithm>

#include "app/widgets/dimension_places.h"

namespace hither {

std::optional<DimensionMark> bedMark(DimensionPlaces& p, const std::string& key) {
    using D = DimensionPlaces;
    const Vec3 head = p.landmark("mattress_head_right"), foot = p.landmark("mattress_foot_right");
    const double top = head.z(), thighFrom = p.attachment("blanket_edge_left").a.x(), thighTo = p.attachment("blanket_edge_left").b.x();
    const auto level = [&](double from, double to) { return D::length(DrawnFrom::side, Vec3(from, head.y(), top), Vec3(to, head.y(), top)); };
    const auto above = [&](const Vec3& to) { return D::length(DrawnFrom::side, Vec3(to.x(), to.y(), top), to); };
    if (key == "mattress_width") return D::length(DrawnFrom::front, head, p.landmark("mattress_head_left"));
    if (key == "mattress_length") return level(head.x(), foot.x());
    if (key == "mattress_thickness") {
        const Solid& mattress = p.solid("mattress_back");
        const Vec3 middle = mattress.X_FG.translation(), half(0, 0, mattress.half.z());
        return D::length(DrawnFrom::side, middle - half, middle + half);
    }
    if (key == "mattress_top_height") return D::height(Vec3(0, 0, top));
    if (key == "back_section") return level(head.x(), 0);
    if (key == "seat_section") return level(0, thighFrom);
    if (key == "thigh_section") return level(thighFrom, thighTo);
    if (key == "back_range") return p.range("back", -Vec3::UnitX());
    if (key == "thigh_range") return p.range("thigh", Vec3::UnitX());
    if (key == "lower_leg_range") return p.range("lower_leg", Vec3::UnitX());
    if (key == "height_range") return p.range("height", Vec3(0, head.y(), top));
    if (key == "head_board_height") return above(p.attachment("head_rail_top").a);
    if (key == "foot_board_height") return above(p.attachment("foot_board_edge").a);
    const Attachment& rail = p.attachment("side_rail_top_right");
    if (key == "side_rail_height") return above(0.5 * (rail.a + rail.b));
    if (key == "side_rail_from_head") return D::length(DrawnFrom::side, Vec3(head.x(), rail.a.y(), rail.a.z()), rail.a);
    if (key == "side_rail_length") return D::length(DrawnFrom::side, rail.a, rail.b);
    if (key == "side_rail_gap") {
        // The thickest of the rail's tubes is the nearest to the mattress.
        double radius = 0;
        for (const char* tube : {"side_rail_top_right", "side_rail_bottom_right", "side_rail_head_post_right", "side_rail_foot_post_right"}) radius = std::max(radius, p.solid(tube).radius);
        const double z = rail.a.z();
        return D::length(DrawnFrom::front, Vec3(rail.a.x(), rail.a.y() + radius, z), Vec3(rail.a.x(), head.y(), z));
    }
    return std::nullopt;
}

}  // namespace hither
