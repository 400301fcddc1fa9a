#include "app/widgets/dimension_marks.h"

#include <algorithm>
#include <cmath>

#include "app/widgets/dimension_places.h"

namespace hither {

double DimensionMark::measured() const {
    if (!angle) return (b - a).norm();
    return std::atan2(from.cross(to).norm(), from.dot(to));
}

Vec3 DimensionPlaces::landmark(const std::string& id) {
    const auto found = std::find_if(support_.landmarks.begin(), support_.landmarks.end(), [&](const Landmark& l) { return l.id == id; });
    if (found != support_.landmarks.end()) return found->p_S;
    missing_ = true;
    return Vec3::Zero();
}

const Attachment& DimensionPlaces::attachment(const std::string& id) {
    static const Attachment none;
    if (const Attachment* found = support_.attachment(id)) return *found;
    missing_ = true;
    return none;
}

const Solid& DimensionPlaces::solid(const std::string& name) {
    static const Solid none;
    const auto found = std::find_if(support_.solids.begin(), support_.solids.end(), [&](const SupportSolid& s) { return s.name == name; });
    if (found != support_.solids.end()) return found->solid;
    missing_ = true;
    return none;
}

DimensionMark DimensionPlaces::across(const std::string& cylinder) {
    const Solid& round = solid(cylinder);
    const Vec3 middle = round.X_FG.translation(), up(0, 0, round.radius);
    return length(DrawnFrom::side, middle - up, middle + up);
}

std::optional<DimensionMark> DimensionPlaces::range(const std::string& group, const Vec3& piece) {
    const MovingGroup* moves = support_.group(group);
    if (!moves) return std::nullopt;
    if (moves->slides) return length(DrawnFrom::side, piece, piece + moves->max * moves->axis);
    const Vec3 from = piece - piece.dot(moves->axis) * moves->axis;
    return angle(moves->pivot, from, rotationFromVector(moves->max * moves->axis) * from);
}

std::optional<DimensionMark> dimensionMark(const Support& support, const std::string& key) {
    static const std::pair<const char*, MarkTable> tables[] = {{"chair-manual", chairMark}, {"chair-tilt", chairMark}, {"chair-power", chairMark}, {"bed", bedMark},
                                                              {"tray", plateMark}, {"table", plateMark}, {"pushchair", pushchairMark}, {"pole", poleMark}};
    for (const auto& [kind, table] : tables) {
        if (support.kind != kind) continue;
        DimensionPlaces places(support);
        const std::optional<DimensionMark> mark = table(places, key);
        return places.missing() ? std::nullopt : mark;
    }
    return std::nullopt;
}

}  // namespace hither
