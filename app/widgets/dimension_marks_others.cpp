#include <cmath>

#include "app/widgets/dimension_places.h"

namespace hither {

std::optional<DimensionMark> plateMark(DimensionPlaces& p, const std::string& key) {
    using D = DimensionPlaces;
    const bool tray = p.support().kind == "tray";
    const Vec3 near = p.landmark("corner_near_right"), far = p.landmark("corner_far_right");
    if (key == "tray_width" || key == "table_width") return D::length(DrawnFrom::above, near, p.landmark("corner_near_left"));
    if (key == "tray_depth" || key == "table_depth") return D::length(DrawnFrom::above, near, far);
    if (key == "tray_height" || key == "table_height") return D::height(p.landmark("near_middle"));
    if (key == "tray_thickness" || key == "top_thickness") {
        const Vec3 upper = p.attachment("upper_face").a, under = p.attachment("under_face").a;
        return D::length(DrawnFrom::front, Vec3(near.x(), near.y(), under.z()), Vec3(near.x(), near.y(), upper.z()));
    }
    if (key == "bar_inset") {
        const Solid& bar = p.solid("tray_bar_right");
        const Vec3 at = bar.X_FG.translation();
        return D::length(DrawnFrom::front, Vec3(at.x(), near.y(), at.z()), Vec3(at.x(), at.y() - bar.half.y(), at.z()));
    }
    if (key == "overhang" && !tray) {
        const Solid& frame = p.solid("frame_right");
        const Vec3 at = frame.X_FG.translation();
        return D::length(DrawnFrom::front, Vec3(at.x(), near.y(), at.z()), Vec3(at.x(), at.y() - frame.half.y(), at.z()));
    }
    return std::nullopt;
}

std::optional<DimensionMark> pushchairMark(DimensionPlaces& p, const std::string& key) {
    using D = DimensionPlaces;
    const Vec3 hip = p.landmark("seat_back_middle"), backTop = p.landmark("back_top_middle");
    if (key == "seat_width") {
        // The foot plate is as wide as the seat.
        const double y = std::abs(p.attachment("foot_plate_edge").a.y());
        return D::length(DrawnFrom::front, Vec3(hip.x(), -y, hip.z()), Vec3(hip.x(), y, hip.z()));
    }
    if (key == "seat_depth") return D::length(DrawnFrom::side, hip, p.landmark("seat_front_middle"));
    if (key == "seat_height") return D::height(hip);
    if (key == "back_height") return D::length(DrawnFrom::side, hip, backTop);
    if (key == "back_angle") return D::angle(hip, Vec3::UnitZ(), backTop - hip);
    if (key == "recline_range") return p.range("recline", backTop - hip);
    if (key == "footrest_height") return D::height(p.attachment("foot_plate_face").a);
    const Vec3 bar = p.attachment("push_bar").a;
    if (key == "push_bar_height") return D::height(bar);
    if (key == "push_bar_back") return D::length(DrawnFrom::side, Vec3(hip.x(), bar.y(), bar.z()), bar);
    if (key == "wheel_diameter") return p.across("wheel_rear_left");
    return std::nullopt;
}

std::optional<DimensionMark> poleMark(DimensionPlaces& p, const std::string& key) {
    using D = DimensionPlaces;
    const Vec3 top = p.landmark("pole_top");
    if (key == "base_radius") return D::length(DrawnFrom::side, Vec3::Zero(), p.landmark("foot_front"));
    if (key == "lower_tube") return D::height(p.attachment("pole_lower").b);
    if (key == "pole_height") return D::height(top);
    if (key == "extension_range") return p.range("extension", top);
    return std::nullopt;
}

}  // namespace hither
