#include "core/situation/body_sites.h"

#include <cassert>
#include <functional>

namespace hither {
namespace {

/// A control site as it is looked for on any body: a point inside the body part and the way out to
/// the surface, and the movement with which people operate there. Left side of the body; the right
/// side is its mirror image (y -> -y). Segment frame of a standing person: x forward, y left, z up.
struct Place {
    const char* id;    ///< with "_left" / "_right" added when paired
    const char* name;  ///< with "left " / "right " put before when paired
    Segment segment;
    bool paired;
    std::function<Vec3(const BodyShape&)> inside;
    Vec3 outward;
    Vec3 movement;
    double usual_m;
};

/// Usual movement lengths are common practice, no source: large joints move a switch by some
/// centimetres, fingers and the face by one.
const std::vector<Place>& places() {
    const Vec3 x = Vec3::UnitX(), y = Vec3::UnitY(), z = Vec3::UnitZ();
    static const std::vector<Place> all{
        {"forehead", "forehead", Segment::head, false, [](const BodyShape& s) { return Vec3(s.headMiddle_Head + Vec3(0, 0, 0.2 * s.headLength)); }, x, x, 0.03},
        {"head_back", "back of the head", Segment::head, false, [](const BodyShape& s) { return s.headMiddle_Head; }, -x, -x, 0.03},
        {"head", "side of the head", Segment::head, true, [](const BodyShape& s) { return s.headMiddle_Head; }, y, y, 0.03},
        {"chin", "chin", Segment::head, false, [](const BodyShape& s) { return Vec3(s.headMiddle_Head.x() + 0.38 * s.headLength, 0, s.chin_Head + 0.02); }, -z, -z, 0.015},
        {"cheek", "cheek", Segment::head, true, [](const BodyShape& s) { return Vec3(s.headMiddle_Head.x() + 0.25 * s.headLength, 0, 0.6 * s.eyes_Head.z() + 0.4 * s.chin_Head); }, y, y, 0.02},
        {"mouth", "corner of the mouth", Segment::head, true, [](const BodyShape& s) { return Vec3(s.headMiddle_Head.x() + 0.30 * s.headLength, 0.10 * s.headBreadth, 0.35 * s.eyes_Head.z() + 0.65 * s.chin_Head); }, x, x, 0.01},
        {"shoulder_up", "shoulder, lifted", Segment::upperArm, true, [](const BodyShape&) { return Vec3(0, 0, 0); }, z, z, 0.03},
        {"shoulder_forward", "shoulder, forward", Segment::upperArm, true, [](const BodyShape&) { return Vec3(0, 0, 0); }, x, x, 0.03},
        {"elbow", "elbow, outward", Segment::upperArm, true, [](const BodyShape& s) { return Vec3(0, 0, -s.upperArm + 0.2 * s.elbowRadius); }, y, y, 0.04},
        {"elbow_back", "elbow, backward", Segment::upperArm, true, [](const BodyShape& s) { return Vec3(0, 0, -s.upperArm); }, -x, -x, 0.04},
        {"forearm", "forearm, outward", Segment::forearm, true, [](const BodyShape& s) { return Vec3(s.forearmRadius - s.elbowRadius, 0, -0.5 * s.forearm); }, y, y, 0.04},
        {"wrist", "back of the wrist", Segment::hand, true, [](const BodyShape& s) { return Vec3(0, 0, -0.05 * s.hand); }, y, y, 0.03},
        {"hand_back", "back of the hand", Segment::hand, true, [](const BodyShape& s) { return Vec3(0, 0, -0.35 * s.hand); }, y, y, 0.03},
        {"palm", "palm", Segment::hand, true, [](const BodyShape& s) { return Vec3(0, 0, -0.35 * s.hand); }, -y, -y, 0.03},
        {"hand_side", "little finger's side of the hand or fist", Segment::hand, true, [](const BodyShape& s) { return Vec3(0, 0, -0.40 * s.hand); }, -x, -x, 0.03},
        {"index", "tip of the index finger", Segment::hand, true, [](const BodyShape& s) { return Vec3(0.375 * s.handBreadth, -0.035 * s.hand, -0.91 * s.hand); }, -y, -y, 0.015},
        {"thumb", "tip of the thumb", Segment::hand, true, [](const BodyShape& s) { return Vec3(0.64 * s.handBreadth, -0.19 * s.handBreadth, -0.49 * s.hand); }, -y, -y, 0.015},
        {"knee_inner", "knee, inward", Segment::thigh, true, [](const BodyShape& s) { return Vec3(0, 0, -s.thigh); }, -y, -y, 0.04},
        {"knee_outer", "knee, outward", Segment::thigh, true, [](const BodyShape& s) { return Vec3(0, 0, -s.thigh); }, y, y, 0.04},
        {"knee_top", "knee, lifted", Segment::thigh, true, [](const BodyShape& s) { return Vec3(0, 0, -s.thigh); }, x, x, 0.04},
        {"foot_toe", "top of the toes", Segment::foot, true, [](const BodyShape& s) { return Vec3(0.65 * s.footLength, 0, -0.9 * s.ankleAbove); }, z, z, 0.03},
        {"foot_heel", "heel, backward", Segment::foot, true, [](const BodyShape& s) { return Vec3(0, 0, -0.8 * s.ankleAbove); }, -x, -x, 0.03},
        {"foot_outer", "outer side of the foot", Segment::foot, true, [](const BodyShape& s) { return Vec3(0.45 * s.footLength, 0, -0.8 * s.ankleAbove); }, y, y, 0.03},
        {"foot_inner", "inner side of the foot", Segment::foot, true, [](const BodyShape& s) { return Vec3(0.45 * s.footLength, 0, -0.8 * s.ankleAbove); }, -y, -y, 0.03},
        {"foot_sole", "ball of the foot, pressed down", Segment::foot, true, [](const BodyShape& s) { return Vec3(0.48 * s.footLength, 0, -0.9 * s.ankleAbove); }, -z, -z, 0.03},
    };
    return all;
}

const char* idEnd(Side side) { return side == Side::left ? "_left" : side == Side::right ? "_right" : ""; }
const char* nameStart(Side side) { return side == Side::left ? "left " : side == Side::right ? "right " : ""; }

template <class Take>
void forEach(const Place& place, Take take) {
    if (!place.paired) return take(Side::none);
    take(Side::left);
    take(Side::right);
}

/// The outermost point of a body part along a line through it.
Vec3 surface(const BodyShape& shape, SegmentId id, const Vec3& inside, const Vec3& outward) {
    constexpr double outside_m = 1.0;
    const Ray ray{inside + outside_m * outward, -outward};
    double least = outside_m;
    bool met = false;
    for (const BodySolid& solid : shape.solids)
        if (solid.segment == id)
            if (const auto hit = castRay(ray, solid.solid); hit && hit->along_m < least) {
                least = hit->along_m;
                met = true;
            }
    assert(met);
    return ray.origin_W + least * ray.direction_W;
}

}  // namespace

std::vector<ControlSite> sitesOn(const BodyShape& shape) {
    std::vector<ControlSite> sites;
    for (const Place& place : places())
        forEach(place, [&](Side side) {
            const Vec3 mirror(1, side == Side::right ? -1 : 1, 1);
            const SegmentId id{place.segment, side == Side::none || place.segment == Segment::head ? Side::none : side};
            ControlSite site;
            site.id = std::string(place.id) + idEnd(side);
            site.name = std::string(nameStart(side)) + place.name;
            site.segment = id;
            site.point = surface(shape, id, place.inside(shape).cwiseProduct(mirror), place.outward.cwiseProduct(mirror));
            site.movement = place.movement.cwiseProduct(mirror);
            site.usual_m = place.usual_m;
            sites.push_back(std::move(site));
        });
    return sites;
}

const std::vector<std::pair<std::string, std::string>>& controlSites() {
    static const std::vector<std::pair<std::string, std::string>> all = [] {
        std::vector<std::pair<std::string, std::string>> list;
        for (const Place& place : places())
            forEach(place, [&](Side side) { list.emplace_back(std::string(place.id) + idEnd(side), std::string(nameStart(side)) + place.name); });
        return list;
    }();
    return all;
}

}  // namespace hither
