#include <cassert>
#include <cmath>

#include "core/situation/body_shape.h"

namespace hither {
namespace {

/// A closed curve across z: |x/rx|^n + |y/ry|^n = 1 about (x, y), n = 2 an ellipse.
struct Ring { double z, x, y, rx, ry, n; };

constexpr int pointsRound = 16;  // a multiple of four, so that the curve's widest points are corners

using Cloud = std::vector<Vec3>;

void addRing(Cloud& cloud, const Ring& ring) {
    for (int k = 0; k < pointsRound; ++k) {
        const double angle = 2 * M_PI * k / pointsRound;
        const auto reach = [&](double part) { return std::abs(part) < 1e-9 ? 0.0 : std::copysign(std::pow(std::abs(part), 2 / ring.n), part); };
        cloud.push_back({ring.x + ring.rx * reach(std::cos(angle)), ring.y + ring.ry * reach(std::sin(angle)), ring.z});
    }
}

Cloud loft(std::initializer_list<Ring> rings) {
    Cloud cloud;
    for (const Ring& ring : rings) addRing(cloud, ring);
    return cloud;
}

Solid hullOf(const Cloud& cloud) {
    auto hull = makeHull(cloud);
    assert(hull);
    return Solid::convexHull(hull);
}

Vec3 mirrored(const Vec3& p) { return {p.x(), -p.y(), p.z()}; }

/// Takes pieces of the left side and of the middle; gives the left side's mirror image too.
class Builder {
public:
    explicit Builder(std::vector<BodySolid>& solids) : solids_(solids) {}

    void middle(Segment segment, const Cloud& cloud) { solids_.push_back({{segment, Side::none}, hullOf(cloud)}); }
    void middle(Segment segment, const Vec3& a, const Vec3& b, double radius) { solids_.push_back({{segment, Side::none}, Solid::capsule(a, b, radius)}); }
    void sides(Segment segment, const Cloud& left) {
        Cloud right;
        for (const Vec3& p : left) right.push_back(mirrored(p));
        solids_.push_back({{segment, Side::left}, hullOf(left)});
        solids_.push_back({{segment, Side::right}, hullOf(right)});
    }
    void sides(Segment segment, const Vec3& a, const Vec3& b, double radius) {
        solids_.push_back({{segment, Side::left}, Solid::capsule(a, b, radius)});
        solids_.push_back({{segment, Side::right}, Solid::capsule(mirrored(a), mirrored(b), radius)});
    }
    void sides(Segment segment, const Vec3& centre, double radius) {
        solids_.push_back({{segment, Side::left}, Solid::sphere(centre, radius)});
        solids_.push_back({{segment, Side::right}, Solid::sphere(mirrored(centre), radius)});
    }

private:
    std::vector<BodySolid>& solids_;
};

void addTrunk(Builder& builder, const BodyShape& s, const BodySize& size) {
    const double chestDepth = size.m("chestdepth"), chest = 0.5 * size.m("chestbreadth");
    const double belly = size.m("abdominalextensiondepthsitting"), hips = 0.5 * size.m("hipbreadthsitting");
    const double neckRadius = size.m("neckcircumference") / (2 * M_PI);
    const double thighClearance = size.m("thighclearance");
    // Rings are given in U (x from the back plane, z from the seat) and moved to the segment's frame.
    const Vec3 pelvis = s.joint.at({Segment::pelvis, Side::none});
    const Vec3 trunk = pelvis + s.joint.at({Segment::trunk, Side::none});
    const double acromion = s.acromion_Trunk + trunk.z();
    const auto against = [&](const Vec3& origin, double z, double depth, double ry, double n) {
        return Ring{z - origin.z(), 0.5 * depth - origin.x(), 0, 0.5 * depth, ry, n};
    };
    const double waist = 0.5 * (chest + hips);
    const double neckForward = trunk.x() + s.joint.at({Segment::neck, Side::none}).x();
    const double shoulder = s.shoulderHalf;
    builder.middle(Segment::trunk, loft({
        Ring{acromion + 0.30 * neckRadius - trunk.z(), neckForward - trunk.x(), 0, 0.9 * neckRadius, 1.2 * neckRadius, 2},
        Ring{acromion - 0.010 - trunk.z(), s.shoulderForward - trunk.x(), 0, 0.26 * chestDepth, 0.97 * shoulder, 2.4},
        against(trunk, 0.90 * acromion, 0.86 * chestDepth, 0.5 * (chest + shoulder), 2.4),
        against(trunk, 0.74 * acromion, chestDepth, chest, 2.4),
        against(trunk, 0.50 * acromion, 0.92 * chestDepth, 0.96 * chest, 2.3),
        against(trunk, 0.42 * acromion, 0.80 * chestDepth, 0.88 * chest, 2.2)}));
    builder.middle(Segment::trunk, loft({
        against(trunk, 0.58 * acromion, 0.88 * chestDepth, 0.92 * chest, 2.3),
        against(trunk, 0.42 * acromion, belly, waist, 2.3),
        against(trunk, std::max(0.30 * acromion, trunk.z()), 0.97 * belly, 0.92 * hips, 2.4),
        against(trunk, s.hipAbove, 0.80 * belly, 0.80 * hips, 2.4)}));
    const double depth = 2 * s.hipForward;
    builder.middle(Segment::pelvis, loft({
        against(pelvis, trunk.z() + 0.02, 0.88 * depth, 0.90 * hips, 2.5),
        against(pelvis, 0.80 * thighClearance, 0.98 * depth, 0.98 * hips, 2.5),
        against(pelvis, 0.40 * thighClearance, depth, hips, 2.5),
        Ring{-pelvis.z(), 0, 0, 0.80 * s.hipForward, 0.84 * hips, 2.5}}));
    builder.middle(Segment::neck, Vec3(0, 0, -0.02), s.joint.at({Segment::head, Side::none}), neckRadius);
}

void addHead(Builder& builder, const BodyShape& s, double top) {
    const Vec3& c = s.headMiddle_Head;
    const double rx = 0.5 * s.headLength, ry = 0.5 * s.headBreadth, up = top - c.z();
    Cloud cloud;
    for (const double latitude : {90.0, 72.0, 54.0, 36.0, 18.0, 0.0, -18.0, -36.0, -54.0}) {
        const double angle = latitude * M_PI / 180;
        const double z = c.z() + (latitude > 0 ? up : 1.15 * up) * std::sin(angle);
        if (latitude == 90.0) cloud.push_back({c.x(), 0, z});
        else addRing(cloud, {z, c.x(), 0, rx * std::cos(angle), ry * std::cos(angle), 2.1});
    }
    const double chin = s.chin_Head, eye = s.eyes_Head.z();
    const auto face = [&](double share, double front, double half, double breadth) {
        addRing(cloud, {chin + share * (eye - chin), c.x() + (front - half) * rx, 0, half * rx, breadth * ry, 2.2});
    };
    face(0.55, 0.97, 0.75, 0.84);
    face(0.28, 0.93, 0.58, 0.66);
    face(0.08, 0.88, 0.34, 0.44);
    face(0.00, 0.80, 0.20, 0.28);
    builder.middle(Segment::head, cloud);
}

void addArms(Builder& builder, const BodyShape& s, const BodySize& size) {
    const double deltoid = 0.5 * size.m("bideltoidbreadth") - s.shoulderHalf;
    const double biceps = 0.95 * size.m("bicepscircumferenceflexed") / (2 * M_PI);
    const double wrist = size.m("wristcircumference") / (2 * M_PI);
    const double e = s.elbowRadius, f = s.forearmRadius;
    const Vec3 pelvis = s.joint.at({Segment::pelvis, Side::none}), trunk = pelvis + s.joint.at({Segment::trunk, Side::none});
    const double acromion = s.acromion_Trunk + trunk.z() - s.shoulderAbove;  // above the shoulder joint
    builder.sides(Segment::upperArm, loft({
        {acromion, 0, 0, 0.45 * deltoid, 0.45 * deltoid, 2},
        {0.80 * acromion, 0, 0, 0.78 * deltoid, 0.78 * deltoid, 2},
        {0.45 * acromion, 0, 0, 0.94 * deltoid, 0.94 * deltoid, 2},
        {0, 0, 0, deltoid, deltoid, 2},
        {-0.15 * s.upperArm, 0, 0, deltoid, deltoid, 2},
        {-0.45 * s.upperArm, 0, 0, std::min(biceps, deltoid), std::min(0.9 * biceps, deltoid), 2},
        {-0.80 * s.upperArm, 0, 0, 0.5 * (e + 0.9 * biceps), 0.5 * (1.2 * e + 0.8 * biceps), 2},
        {-s.upperArm, 0, 0, e, 1.2 * e, 2}}));
    builder.sides(Segment::upperArm, Vec3(0, 0, -s.upperArm), e);
    // The forearm's underside is level with the elbow's when the elbow is bent, as on an armrest.
    const auto level = [&](double z, double rx, double ry) { return Ring{z, rx - e, 0, rx, ry, 2}; };
    builder.sides(Segment::forearm, loft({
        level(0.3 * e, 0.9 * e, 1.1 * e),
        level(-0.10 * s.forearm, 0.5 * (e + f), 0.5 * (1.2 * e + f)),
        level(-0.25 * s.forearm, f, f),
        level(-0.50 * s.forearm, 0.5 * (f + 1.15 * wrist), 0.5 * (f + 1.0 * wrist)),
        level(-0.85 * s.forearm, 1.15 * wrist, 0.85 * wrist),
        level(-s.forearm, 1.15 * wrist, 0.85 * wrist)}));
    builder.sides(Segment::forearm, Vec3::Zero(), e);

    const double b = s.handBreadth, h = s.hand, finger = 0.10 * b;
    builder.sides(Segment::hand, loft({
        {0.06 * h, 0, 0, 1.05 * wrist, 0.8 * wrist, 2},
        {-0.10 * h, 0, 0, 0.40 * b, 0.18 * b, 2.4},
        {-0.35 * h, 0, 0, 0.49 * b, 0.16 * b, 2.6},
        {-0.55 * h, 0, 0, 0.50 * b, 0.13 * b, 2.8},
        {-0.60 * h, 0, 0, 0.46 * b, 0.10 * b, 2.8}}));
    // Fingers from the index (thumb side, +x) to the little one, slightly bent toward the palm (-y on the left).
    constexpr double across[] = {0.375, 0.125, -0.125, -0.375}, reach[] = {0.95, 1.00, 0.95, 0.84};
    for (int k = 0; k < 4; ++k)
        builder.sides(Segment::hand, Vec3(across[k] * b, 0, -0.55 * h), Vec3(across[k] * b, -0.04 * h, -reach[k] * h + finger), finger);
    builder.sides(Segment::hand, Vec3(0.30 * b, -0.06 * b, -0.16 * h), Vec3(0.66 * b, -0.20 * b, -0.50 * h), 0.12 * b);
}

void addLegs(Builder& builder, const BodyShape& s, const BodySize& size) {
    const double top = 0.5 * size.m("thighclearance"), k = s.kneeRadius, ankle = 0.58 * k;
    builder.sides(Segment::thigh, Vec3::Zero(), top);
    builder.sides(Segment::thigh, loft({
        {0.2 * top, 0, 0, 0.97 * top, 0.97 * top, 2},
        {-0.25 * s.thigh, 0, 0, 0.75 * top + 0.25 * k, 0.75 * top + 0.25 * k, 2},
        {-s.thigh, 0, 0, k, k, 2}}));
    builder.sides(Segment::thigh, Vec3(0, 0, -s.thigh), k);
    builder.sides(Segment::shank, Vec3::Zero(), 0.97 * k);
    builder.sides(Segment::shank, loft({
        {0, 0, 0, 0.97 * k, 0.97 * k, 2},
        {-0.15 * s.shank, -0.04 * k, 0, 0.94 * k, 0.92 * k, 2},
        {-0.33 * s.shank, -0.10 * k, 0, 0.96 * k, 0.93 * k, 2},
        {-0.60 * s.shank, -0.04 * k, 0, 0.74 * k, 0.70 * k, 2},
        {-0.90 * s.shank, 0, 0, ankle, 0.92 * ankle, 2},
        {-s.shank - 0.2 * ankle, 0, 0, ankle, 0.92 * ankle, 2}}));
    const double l = s.footLength, half = 0.5 * s.footBreadth, sole = -s.ankleAbove;
    builder.sides(Segment::foot, loft({
        {sole, 0.25 * l, 0, 0.47 * l, 0.86 * half, 2.6},
        {sole + 0.15 * s.ankleAbove, 0.25 * l, 0, 0.50 * l, half, 2.6},
        {sole + 0.32 * s.ankleAbove, 0.25 * l, 0, 0.49 * l, 0.94 * half, 2.6},
        {sole + 0.70 * s.ankleAbove, 0.10 * l, 0, 0.33 * l, 0.78 * half, 2.3},
        {0, 0, 0, 1.05 * ankle, 0.95 * ankle, 2},
        {0.4 * ankle, 0, 0, ankle, 0.9 * ankle, 2}}));
}

}  // namespace

void addBodySolids(BodyShape& shape, const BodySize& size) {
    Builder builder(shape.solids);
    addTrunk(builder, shape, size);
    const double headOrigin = shape.joint.at({Segment::pelvis, Side::none}).z() + shape.joint.at({Segment::trunk, Side::none}).z() +
                              shape.joint.at({Segment::neck, Side::none}).z() + shape.joint.at({Segment::head, Side::none}).z();
    addHead(builder, shape, size.m("sittingheight") - headOrigin);
    addArms(builder, shape, size);
    addLegs(builder, shape, size);
}

}  // namespace hither
