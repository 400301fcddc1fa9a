#include "app/widgets/dimension_places.h"

namespace hither {

std::optional<DimensionMark> chairMark(DimensionPlaces& p, const std::string& key) {
    using D = DimensionPlaces;
    const Vec3 hip = p.landmark("seat_back_middle"), along = p.alongOf("seat_rail_left"), seatUp(-along.z(), 0, along.x()), backUp = p.alongOf("back_cane_left");
    const Vec3 backTop = p.landmark("back_top_middle");
    if (key == "seat_width") return D::length(DrawnFrom::front, p.attachment("seat_rail_right").b, p.attachment("seat_rail_left").b);
    if (key == "seat_depth") {
        const Vec3 front = p.landmark("seat_front_left");
        return D::length(DrawnFrom::side, hip, Vec3(front.x(), 0, front.z()));
    }
    if (key == "seat_height") return D::height(hip);
    if (key == "seat_angle") return D::angle(hip, Vec3::UnitX(), along);
    if (key == "back_angle") return D::angle(hip, Vec3::UnitZ(), backUp);
    if (key == "back_height") return D::length(DrawnFrom::side, hip, backTop);
    if (key == "cane_above_back") {
        const Vec3 top = p.landmark("cane_top_left");
        return D::length(DrawnFrom::side, top + (backTop - top).dot(backUp) * backUp, top);
    }
    if (key == "armrest_height") {
        const Vec3 pad = p.attachment("armrest_pad_face_left").a;
        return D::length(DrawnFrom::side, pad - (pad - hip).dot(seatUp) * seatUp, pad);
    }
    if (key == "armrest_length") {
        const Vec3 front = p.attachment("armrest_tube_left").b;
        return D::length(DrawnFrom::side, front - (front - hip).dot(along) * along, front);
    }
    if (key == "pad_width") {
        const Attachment& pad = p.attachment("armrest_pad_face_left");
        const Vec3 half(0, 0.5 * pad.sizeY_m, 0);
        return D::length(DrawnFrom::above, pad.a - half, pad.a + half);
    }
    if (key == "footrest_height") return D::height(p.attachment("foot_plate_face_left").a);
    if (key == "hanger_angle") return D::angle(p.attachment("footrest_hanger_left").a, Vec3::UnitX(), p.alongOf("footrest_hanger_left"));
    const bool power = p.support().kind == "chair-power";
    if (key == "wheel_diameter") return p.across(power ? "drive_wheel_left" : "wheel_left");
    if (key == "castor_diameter") return p.across("castor_left");
    if (key == "axle_forward") {
        const Vec3 axle = p.solid("wheel_left").X_FG.translation();
        return D::length(DrawnFrom::side, Vec3(hip.x(), axle.y(), axle.z()), axle);
    }
    if (key == "recline_range") return p.range("recline", backTop - hip);
    if (key == "legrest_range") return p.range("legrest", p.alongOf("footrest_hanger_left"));
    if (key == "tilt_range") return p.range("tilt", Vec3::UnitZ());
    if (key == "pivot_forward" || key == "pivot_below") {
        const MovingGroup* tilt = p.support().group("tilt");
        if (!tilt) return std::nullopt;
        const Vec3 pivot = tilt->pivot;
        return key == "pivot_forward" ? D::length(DrawnFrom::side, Vec3(hip.x(), 0, pivot.z()), pivot) : D::length(DrawnFrom::side, Vec3(pivot.x(), 0, hip.z()), pivot);
    }
    if (key == "base_width") {
        const Solid& base = p.solid("power_base");
        const Vec3 middle = base.X_FG.translation(), half(0, base.half.y(), 0);
        return D::length(DrawnFrom::front, middle - half, middle + half);
    }
    if (key == "joystick_inward") {
        const Vec3 stick = p.landmark("joystick_top");
        return D::length(DrawnFrom::front, Vec3(stick.x(), p.attachment("armrest_tube_right").b.y(), stick.z()), stick);
    }
    return std::nullopt;
}

}  // namespace hither
