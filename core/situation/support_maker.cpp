#include "core/situation/support_maker.h"

#include <algorithm>
#include <cassert>
#include <cmath>

#include "core/situation/support_typed.h"
#include "core/units/quantity.h"
#include "core/units/thread.h"

namespace hither {

SupportMaker::SupportMaker(const SupportSpec& spec, const SupportKind& kind, std::vector<SupportProblem>& problems)
    : spec_(spec), kind_(kind), problems_(problems) {}

double SupportMaker::value(const std::string& key) const {
    const auto typedValue = spec_.dimensions.find(key);
    if (typedValue != spec_.dimensions.end()) return typedValue->second;
    const auto dimension = std::find_if(kind_.dimensions.begin(), kind_.dimensions.end(), [&](const SupportDimension& d) { return d.key == key; });
    assert(dimension != kind_.dimensions.end());
    return dimension->standard;
}

bool SupportMaker::allTyped() const {
    return std::all_of(kind_.dimensions.begin(), kind_.dimensions.end(), [&](const SupportDimension& d) { return typed(d.key); });
}

std::string SupportMaker::turn(const std::string& id, const std::string& name, const std::string& parent, const Vec3& pivot, const Vec3& axis, double max_rad) {
    if (max_rad <= 0) return parent;
    MovingGroup group;
    group.id = id;
    group.name = name;
    group.parent = parent;
    group.pivot = pivot;
    group.axis = axis.normalized();
    group.max = max_rad;
    support.groups.push_back(group);
    return id;
}

std::string SupportMaker::slide(const std::string& id, const std::string& name, const std::string& parent, const Vec3& axis, double max_m) {
    if (max_m <= 0) return parent;
    MovingGroup group;
    group.id = id;
    group.name = name;
    group.parent = parent;
    group.axis = axis.normalized();
    group.slides = true;
    group.max = max_m;
    support.groups.push_back(group);
    return id;
}

Figure SupportMaker::tube_m(const std::string& railId, const std::string& standard) {
    const auto typedTube = spec_.tubes.find(railId);
    if (typedTube == spec_.tubes.end()) {
        const Parsed<TubeSize> size = parseTube(standard);
        assert(size);
        return {size.value->outside_m, {BasisKind::assumed, {}}};
    }
    const Parsed<double> outside_m = tubeOutside_m(typedTube->second);
    // What is wrong with the text is reported once, where all typed tubes are looked through.
    return {outside_m.value.value_or(0.02), {BasisKind::measured, {}}};
}

void SupportMaker::rail(const std::string& id, const std::string& name, const std::string& group, const Vec3& a, const Vec3& b, const Vec3& reference,
                        const std::string& standard, Section section) {
    Attachment rail;
    rail.id = id;
    rail.name = name;
    rail.kind = AttachmentKind::rail;
    rail.group = group;
    rail.a = a;
    rail.b = b;
    const Vec3 x = (b - a).normalized();
    rail.reference = (reference - reference.dot(x) * x).normalized();
    rail.section = section;
    rail.outside_m = tube_m(id, standard);
    const auto typedTube = spec_.tubes.find(id);
    rail.tubeAsTyped = typedTube == spec_.tubes.end() ? standard : typedTube->second;
    rail.solids = {id};
    support.solids.push_back({id, railSolid(rail), group});
    support.attachments.push_back(std::move(rail));
}

void SupportMaker::edge(const std::string& id, const std::string& name, const std::string& group, const Vec3& a, const Vec3& b, const Vec3& up,
                        double thickness_m, BasisKind basis, double depth_m, const std::vector<std::string>& solids) {
    Attachment edge;
    edge.id = id;
    edge.name = name;
    edge.kind = AttachmentKind::edge;
    edge.group = group;
    edge.a = a;
    edge.b = b;
    edge.up = up.normalized();
    edge.thickness_m = {thickness_m, {basis, {}}};
    edge.depth_m = depth_m;
    edge.solids = solids;
    support.attachments.push_back(std::move(edge));
}

void SupportMaker::face(const std::string& id, const std::string& name, const std::string& group, const Vec3& middle, const Vec3& xAxis, const Vec3& up,
                        double sizeX_m, double sizeY_m, const std::vector<std::string>& solids) {
    Attachment face;
    face.id = id;
    face.name = name;
    face.kind = AttachmentKind::face;
    face.group = group;
    face.a = face.b = middle;
    face.reference = xAxis.normalized();
    face.up = up.normalized();
    face.sizeX_m = sizeX_m;
    face.sizeY_m = sizeY_m;
    face.solids = solids;
    support.attachments.push_back(std::move(face));
}

void SupportMaker::cloth(const std::string& id, const std::string& name, const std::string& group, const Vec3& a, const Vec3& b, const Vec3& up,
                         double thickness_m, const std::vector<std::string>& solids) {
    Attachment cloth;
    cloth.id = id;
    cloth.name = name;
    cloth.kind = AttachmentKind::cloth;
    cloth.group = group;
    cloth.a = a;
    cloth.b = b;
    cloth.up = up.normalized();
    cloth.thickness_m = {thickness_m, {BasisKind::assumed, {}}};
    cloth.solids = solids;
    support.attachments.push_back(std::move(cloth));
}

Attachment& SupportMaker::find(const std::string& id) {
    const auto found = std::find_if(support.attachments.begin(), support.attachments.end(), [&](const Attachment& a) { return a.id == id; });
    assert(found != support.attachments.end());
    return *found;
}

void SupportMaker::block(const std::string& attachment, double from_m, double to_m, const std::string& why) {
    Attachment& a = find(attachment);
    const double from = std::max(0.0, from_m), to = std::min(a.length_m(), to_m);
    if (to <= from) return;
    Blocked blocked;
    blocked.from_m = from;
    blocked.to_m = to;
    blocked.why = why;
    a.blocked.push_back(blocked);
}

void SupportMaker::blockNear(const std::string& attachment, const Vec3& point, double reach_m, const std::string& why) {
    const Attachment& a = find(attachment);
    const Vec3 x = (a.b - a.a).normalized();
    const double along = (point - a.a).dot(x);
    const double off2 = (point - a.a - along * x).squaredNorm(), reach2 = reach_m * reach_m;
    if (off2 >= reach2) return;
    const double half = std::sqrt(reach2 - off2);
    block(attachment, along - half, along + half, why);
}

void SupportMaker::blockSector(const std::string& attachment, double from_m, double to_m, const Vec3& direction, double half_rad, const std::string& why) {
    Attachment& a = find(attachment);
    const double from = std::max(0.0, from_m), to = std::min(a.length_m(), to_m);
    if (to <= from) return;
    const Vec3 x = (a.b - a.a).normalized();
    const Vec3 y = x.cross(a.reference);
    const double middle = std::atan2(direction.dot(y), direction.dot(a.reference));
    Blocked blocked;
    blocked.from_m = from;
    blocked.to_m = to;
    blocked.sectorFrom_rad = middle - half_rad;
    blocked.sectorTo_rad = middle + half_rad;
    blocked.wholeTurn = false;
    blocked.why = why;
    a.blocked.push_back(blocked);
}

void SupportMaker::alsoTouches(const std::string& attachment, const std::string& solid) { find(attachment).solids.push_back(solid); }

void SupportMaker::solid(const std::string& name, const std::string& group, const Solid& solid) { support.solids.push_back({name, solid, group}); }

void SupportMaker::box(const std::string& name, const std::string& group, const Vec3& centre, const Vec3& size, const Vec3& x, const Vec3& z) {
    const Vec3 k = (z - z.dot(x) / x.squaredNorm() * x).normalized();
    solid(name, group, Solid::box(frameFromZ(centre, k, x), 0.5 * size));
}

void SupportMaker::bar(const std::string& name, const std::string& group, const Vec3& a, const Vec3& b, double radius_m) {
    solid(name, group, Solid::capsule(a, b, radius_m));
}

void SupportMaker::landmark(const std::string& id, const std::string& name, const std::string& group, const Vec3& p_S) {
    support.landmarks.push_back({id, name, p_S, group});
}

SupportDimension lengthDimension_mm(const char* key, const char* means, double standard, double min, double max) {
    return {key, means, standard / 1000, min / 1000, max / 1000, false};
}
SupportDimension angleDimension_deg(const char* key, const char* means, double standard, double min, double max) {
    return {key, means, radians(standard), radians(min), radians(max), true};
}

}  // namespace hither
