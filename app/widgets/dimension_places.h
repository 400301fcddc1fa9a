#pragma once
#include "app/widgets/dimension_marks.h"

namespace hither {

/// A support's places by name, for the tables of marks. What is not there leaves `missing` set.
class DimensionPlaces {
public:
    explicit DimensionPlaces(const Support& support) : support_(support) {}

    Vec3 landmark(const std::string& id);
    const Attachment& attachment(const std::string& id);
    const Solid& solid(const std::string& name);
    Vec3 alongOf(const std::string& attachment) { const Attachment& at = this->attachment(attachment); return (at.b - at.a).normalized(); }
    double z(const std::string& landmarkId) { return landmark(landmarkId).z(); }
    const Support& support() const { return support_; }
    bool missing() const { return missing_; }

    static DimensionMark length(DrawnFrom drawnFrom, const Vec3& a, const Vec3& b) { return {drawnFrom, false, a, b, {}, {}}; }
    static DimensionMark angle(const Vec3& at, const Vec3& from, const Vec3& to) { return {DrawnFrom::side, true, at, at, from.normalized(), to.normalized()}; }
    /// From the floor up to a point.
    static DimensionMark height(const Vec3& p, DrawnFrom drawnFrom = DrawnFrom::side) { return length(drawnFrom, Vec3(p.x(), p.y(), 0), p); }
    /// Across a round solid standing on its rim, top to bottom.
    DimensionMark across(const std::string& cylinder);
    /// How far a moving group goes: a piece that points along `piece` from the group's pivot turns with it.
    std::optional<DimensionMark> range(const std::string& group, const Vec3& piece);

private:
    const Support& support_;
    bool missing_ = false;
};

using MarkTable = std::optional<DimensionMark> (*)(DimensionPlaces&, const std::string& key);
std::optional<DimensionMark> chairMark(DimensionPlaces& places, const std::string& key);
std::optional<DimensionMark> bedMark(DimensionPlaces& places, const std::string& key);
std::optional<DimensionMark> plateMark(DimensionPlaces& places, const std::string& key);      ///< table and tray
std::optional<DimensionMark> pushchairMark(DimensionPlaces& places, const std::string& key);
std::optional<DimensionMark> poleMark(DimensionPlaces& places, const std::string& key);

}  // namespace hither
