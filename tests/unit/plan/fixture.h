#pragma once
#include "core/plan/edits/edited.h"
#include "core/plan/plan.h"
#include "core/units/quantity.h"

namespace hither::test {

/// Invented parts and a frame of two tubes, left and right of the middle, that mirror each other.

inline Port threadPort(Gender gender, double length) {
    Port port;
    port.gender = gender;
    port.thread = *parseThread("1/4-20").value;
    port.length = {length, {BasisKind::assumed, {}}};
    return port;
}
inline Element rigid(const Vec3& to, const Vec3& rollPitchYaw = Vec3::Zero()) {
    RigidElement r;
    r.X = pose(rotationFromRollPitchYaw(rollPitchYaw.x(), rollPitchYaw.y(), rollPitchYaw.z()), to);
    r.solids.push_back(Solid::capsule(Vec3::Zero(), to, 0.008));
    return {"", r};
}
inline Element hinge(const std::string& name, const Vec3& axis, double min, double max) {
    HingeElement h;
    h.axis = axis;
    h.min = min;
    h.max = max;
    return {name, h};
}

inline Part clampPart() {
    Part p;
    p.id = "tube-clamp";
    p.name = "Tube clamp";
    p.kind = PartKind::grip;
    RailGrip grip;
    grip.min_m = {0.015, {}};
    grip.max_m = {0.035, {}};
    p.grips = {grip};
    p.elements = {rigid(Vec3(0, 0, 0.03))};
    p.outlet = threadPort(Gender::male, 0.0055);
    p.price = Money{1450, "EUR"};
    p.priceBasis = {BasisKind::published, "demo price list"};
    p.tools = {"4 mm hex key"};
    return p;
}
inline Part edgeClampPart() {
    Part p = clampPart();
    p.id = "plate-clamp";
    p.name = "Plate clamp";
    p.grips = {EdgeGrip{}};
    return p;
}
inline Part armPart() {
    Part p;
    p.id = "arm";
    p.name = "Arm";
    p.kind = PartKind::arm;
    p.bases = {threadPort(Gender::female, 0.008)};
    BallElement ball;
    ball.cone = 1.2;
    p.elements = {{"ball", ball}, rigid(Vec3(0, 0, 0.15)), hinge("elbow", Vec3::UnitX(), 0.0, 2.4), rigid(Vec3(0, 0, 0.12))};
    p.outlet = threadPort(Gender::male, 0.0055);
    p.price = Money{3000, "EUR"};
    p.priceBasis = {BasisKind::assumed, {}};
    return p;
}
inline Part neckPart() {
    Part p;
    p.id = "neck";
    p.name = "Gooseneck";
    p.kind = PartKind::neck;
    p.bases = {threadPort(Gender::female, 0.008)};
    BendElement bend;
    bend.length = 0.3;
    bend.minRadius = 0.06;
    bend.mass_kg = {0.2, {BasisKind::assumed, {}}};
    p.elements = {{"neck", bend}};
    p.outlet = threadPort(Gender::male, 0.0055);
    p.price = Money{1200, "USD"};
    return p;
}
/// Not the same on its left and its right: it steps aside and forward at once.
inline Part crankPart() {
    Part p;
    p.id = "crank";
    p.name = "Crank";
    p.kind = PartKind::adapter;
    p.bases = {threadPort(Gender::female, 0.008)};
    p.elements = {rigid(Vec3(0.03, 0.02, 0.05))};
    p.outlet = threadPort(Gender::male, 0.0055);
    p.reversible = true;
    return p;
}
inline Part switchPart() {
    Part p;
    p.id = "round-switch";
    p.name = "Round switch";
    p.kind = PartKind::switchDevice;
    p.bases = {threadPort(Gender::female, 0.008)};
    p.elements = {rigid(Vec3(0, 0, 0.02))};
    SwitchFace face;
    face.size = Vec3(0.06, 0.06, 0.02);
    face.force_N = {1.0, {BasisKind::assumed, {}}};
    p.face = face;
    return p;
}

inline Attachment rail(const std::string& id, const Vec3& a, const Vec3& b, const Vec3& reference) {
    Attachment r;
    r.id = id;
    r.name = id;
    r.a = a;
    r.b = b;
    r.reference = reference;
    r.tubeAsTyped = "7/8 in";
    r.outside_m = {0.022225, {BasisKind::measured, "demo"}};
    return r;
}
inline SupportSpec frameSpec() {
    SupportSpec s;
    s.id = "frame";
    s.kind = "custom";
    s.name = "Frame";
    s.at_m = Vec3(0.2, -0.1, 0);
    s.yaw_rad = 0.4;
    s.attachments = {rail("tube_left", Vec3(0, 0.25, 0.7), Vec3(0.4, 0.25, 0.75), Vec3::UnitZ()), rail("tube_right", Vec3(0, -0.25, 0.7), Vec3(0.4, -0.25, 0.75), Vec3::UnitZ()),
                     rail("upright", Vec3(0.1, 0.3, 0.2), Vec3(0.1, 0.3, 0.6), Vec3::UnitX())};
    return s;
}
inline MountPart mounted(const std::string& part) {
    MountPart p;
    p.part = part;
    return p;
}
inline Mount mountOf(const std::string& id, const std::vector<std::string>& parts) {
    Mount m;
    m.id = id;
    m.name = id;
    m.support = "frame";
    m.attachment = "tube_right";
    m.place.along_m = 0.2;
    m.site = "elbow_right";
    for (const std::string& p : parts) m.parts.push_back(mounted(p));
    return m;
}
/// One option "first" with the mount "main": clamp, arm, switch.
inline Plan smallPlan() {
    Plan plan;
    plan.id = "demo";
    plan.title = "Demo";
    plan.supports = {frameSpec()};
    SiteSpec site;
    site.id = "elbow_right";
    site.controlSite = "elbow_right";
    site.point = Vec3(0.3, -0.3, 0.8);
    site.direction = Vec3(0, -1, 0);
    plan.sites = {site};
    for (const Part& p : {clampPart(), armPart(), switchPart()}) plan.parts.push_back(std::make_shared<const Part>(p));
    PlanOption option;
    option.id = "first";
    option.name = "First";
    option.mounts = {mountOf("main", {"tube-clamp", "arm", "round-switch"})};
    option.mounts[0].parts[1].joints["elbow"] = {{0.7}, false};
    option.mounts[0].parts[1].joints["ball"] = {{0.3, -0.2, 0.5}, true};
    plan.options = {option};
    return plan;
}

}  // namespace hither::test
