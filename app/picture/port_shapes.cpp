#include "app/picture/port_shapes.h"

#include <algorithm>
#include <cmath>

#include "app/picture/soft_shapes.h"
#include "core/geometry/distance.h"
#include "core/units/quantity.h"

namespace hither {

namespace {

constexpr double lift_m = 0.0002;          // patches lie this much above what they mark
constexpr double usualStud_m = 0.006;      // a stud whose length nobody knows is drawn as a camera screw's

/// Places of a pattern's screws in the outlet frame; of slotted plates at the middle of the slot.
std::vector<Vec3> places(const BoltPattern& pattern) {
    std::vector<Vec3> at;
    const double radius = 0.25 * (pattern.circleMin_m + pattern.circleMax_m);
    for (int k = 0; k < pattern.count; ++k) {
        const double angle = 2 * pi * k / pattern.count;
        at.emplace_back(radius * std::cos(angle), radius * std::sin(angle), 0);
    }
    return at;
}
double screwRadius(const BoltPattern& pattern) {
    const Parsed<Thread> thread = parseThread(pattern.screw);
    return thread.value ? 0.5 * thread.value->majorDiameter_m : 0.0015;
}
/// A hole's mouth or a slot about a place, facing z of the frame X_outlet.
Mesh mouth(const BoltPattern& pattern, const Vec3& at, double height, bool down) {
    const Vec3 out = at.norm() > 1e-6 ? Vec3(at.normalized()) : Vec3::UnitX();
    const double slot = 0.5 * (pattern.circleMax_m - pattern.circleMin_m), radius = screwRadius(pattern) + 0.0002;
    const Pose X = frameFromZ(at + height * Vec3::UnitZ(), down ? Vec3(-Vec3::UnitZ()) : Vec3(Vec3::UnitZ()), out);
    return patchMesh(X, slot > 1e-4 ? slotOutline(slot, radius, 4) : circleOutline(radius, 8));
}

/// Half the size of the plate that an outlet's pad lies on, by looking down on it.
Vec3 padHalf(const Part& part) {
    const auto* rigid = part.elements.empty() ? nullptr : std::get_if<RigidElement>(&part.elements.back().what);
    Vec3 half(0.012, 0.012, 0);
    if (!rigid) return half;
    const Pose X_outlet = rigid->X.inverse();
    for (const Solid& s : rigid->solids) {
        const Eigen::AlignedBox3d box = s.bounds(X_outlet);
        if (box.max().z() > -0.0005 && box.max().z() < 0.0005) half = {0.5 * box.sizes().x(), 0.5 * box.sizes().y(), s.kind == SolidKind::cylinder ? 1.0 : 0.0};
    }
    return half;
}

}  // namespace

void addPatternScrews(DrawnPieces& drawn, const Part& part, const RigidElement& plate) {
    if (!part.outlet || part.outlet->interface != Interface::boltPattern || part.outlet->gender != Gender::male || !part.outlet->pattern) return;
    const BoltPattern& pattern = *part.outlet->pattern;
    const Vec3 down = -plate.X.linear().col(2);
    for (const Vec3& at : places(pattern)) {
        if (at.norm() < 1e-6) continue;  // sits in the middle, behind the socket
        // Where the plate begins below this screw, seen from the support.
        const Ray ray{plate.X * at + 0.06 * down, Vec3(-down)};
        double along = 0.06;
        for (const Solid& s : plate.solids)
            if (const auto hit = castRay(ray, s)) along = std::min(along, hit->along_m);
        if (along >= 0.06 - 1e-6) continue;
        const double under = along - 0.06;
        if (pattern.circleMax_m - pattern.circleMin_m > 1e-4) drawn[Look::pad].add(mouth(pattern, at, under - lift_m, true), plate.X);
        const double radius = screwRadius(pattern);
        const Vec3 seat = plate.X * (at + under * Vec3::UnitZ());
        drawn[Look::metal].add(softCylinder(seat, seat + 1.1 * radius * down, 1.8 * radius, 0.0005, {true, false}));
    }
}

DrawnPieces outletPieces(const Part& part) {
    DrawnPieces drawn;
    if (!part.outlet) return drawn;
    const Port& port = *part.outlet;
    const Pose lifted = translation(Vec3(0, 0, lift_m));
    switch (port.interface) {
        case Interface::thread: {
            const double radius = port.thread ? 0.5 * port.thread->majorDiameter_m : 0.003;
            if (port.gender == Gender::male) {
                drawn[Look::thread].add(studMesh(Pose::Identity(), radius, port.thread ? port.thread->pitch_m : 0.001, port.length.value.value_or(usualStud_m)));
            } else {
                drawn[Look::pad].add(patchMesh(lifted, circleOutline(radius, 14)));
            }
            break;
        }
        case Interface::boltPattern:
            if (port.pattern)
                for (const Vec3& at : places(*port.pattern)) drawn[Look::pad].add(mouth(*port.pattern, at, lift_m, false));
            break;
        case Interface::adhesivePad:
        case Interface::hookAndLoop: {
            const Vec3 half = padHalf(part);
            const double side = 0.94;
            if (half.z() > 0.5) drawn[Look::pad].add(softCylinder(Vec3(0, 0, -0.0005), Vec3(0, 0, 0.0012), side * half.x(), 0.0004));
            else drawn[Look::pad].add(softBox(translation(Vec3(0, 0, 0.0004)), Vec3(side * half.x(), side * half.y(), 0.0008), 0.0004));
            break;
        }
        case Interface::dovetailPlate:
        case Interface::accessoryShoe:
            if (port.gender == Gender::female) {
                // Two lips that hold the plate or foot, a third in from the sides.
                const Vec3 half = padHalf(part);
                for (const double way : {1.0, -1.0})
                    drawn[Look::metal].add(softBox(translation(Vec3(way * 0.86 * half.x(), 0, 0.001)), Vec3(0.1 * half.x(), 0.9 * half.y(), 0.0012), 0.0004));
            }
            break;
    }
    return drawn;
}

}  // namespace hither
