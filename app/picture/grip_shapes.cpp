#include "app/picture/grip_shapes.h"

#include <algorithm>
#include <cmath>

#include "app/picture/foot_shapes.h"
#include "app/picture/leg_shapes.h"
#include "app/picture/part_roles.h"
#include "app/picture/shapes.h"
#include "app/picture/soft_shapes.h"
#include "core/units/quantity.h"

namespace hither {

namespace {

constexpr double thinWall_m = 0.006;       // jaws as thin as a bent strip belong to a spring clamp
constexpr double thickWall_m = 0.012;

/// The solids of the first element with their roles.
struct First {
    const std::vector<Solid>& solids;
    std::vector<SolidRole> roles;
};
First firstOf(const Part& part) {
    static const std::vector<Solid> none;
    const auto* rigid = part.elements.empty() ? nullptr : std::get_if<RigidElement>(&part.elements[0].what);
    if (!rigid) return {none, {}};
    return {rigid->solids, solidRoles(part, 0, contextOf(part, 0))};
}
const Solid* firstWith(const First& first, SolidRole role) {
    for (std::size_t i = 0; i < first.solids.size(); ++i)
        if (first.roles[i] == role) return &first.solids[i];
    return nullptr;
}

/// A jaw's outline in the plane across the tube, pushed along the tube. Angles from y toward z about the tube's middle.
struct Jaws {
    Pose X = Pose::Identity();
    double half = 0, wall = 0, width = 0;

    Jaws(const RailGrip& grip, const Attachment& rail)
        : half(std::max(0.5 * rail.outside_m.value.value_or(0.0), 0.001)), wall(grip.wall_m), width(grip.width_m) {
        Mat3 R;
        R << Vec3::UnitY(), Vec3::UnitZ(), Vec3::UnitX();
        X = pose(R, Vec3(-width / 2, 0, -0.5 * rail.outside_m.value.value_or(0.0)));
    }
    Vec3 middle() const { return {0, 0, X.translation().z()}; }
    Mesh shell(double from_deg, double to_deg, double wallFrom, double wallTo, double share = 1) const {
        const int steps = std::max(3, static_cast<int>((to_deg - from_deg) / 20));
        const Pose X_in = X * translation(Vec3(0, 0, 0.5 * (1 - share) * width));
        return extrudedMesh(X_in, ringSector(half, half + wallFrom * wall, half + wallTo * wall, radians(from_deg), radians(to_deg), steps), share * width);
    }
    Mesh block(double y0, double y1, double z0, double z1, double share = 1) const {
        return softBox(translation(middle() + Vec3(0, 0.5 * (y0 + y1), 0.5 * (z0 + z1))), Vec3(0.5 * share * width, 0.5 * (y1 - y0), 0.5 * (z1 - z0)), 0.0012);
    }
};

/// Turns of wire round a pin.
Mesh coil(const Solid& pin, double radius) {
    const double length = 0.62 * 2 * pin.half.z();
    std::vector<TurnedRow> rows;
    constexpr int turns = 5;
    for (int i = 0; i <= turns; ++i) {
        const double z = length * (static_cast<double>(i) / turns - 0.5);
        rows.push_back({0.86 * radius, z, 1, 0, true});
        if (i < turns) rows.push_back({radius, z + 0.5 * length / turns, 1, 0});
    }
    return turnedMesh(pin.X_FG, rows, 10);
}

void springJaws(DrawnPieces& drawn, const First& first, const Jaws& jaws) {
    // The mouth opens low on the side away from the pin.
    drawn[Look::gripPart].add(jaws.shell(14, 197, 1, 0.65, 0.94));
    drawn[Look::gripPart].add(jaws.shell(213, 368, 0.65, 1, 0.94));
    const Solid* pin = firstWith(first, SolidRole::pin);
    if (pin) {
        drawn[Look::metal].add(coil(*pin, pin->radius + 0.0022));
        drawn[Look::metal].add(softCylinder(lowEnd(*pin), highEnd(*pin), 0.6 * pin->radius, 0.0005));
        // The arms of both jaws reach to the pin.
        const double y = pin->X_FG.translation().y(), z = pin->X_FG.translation().z() - jaws.middle().z();
        if (y > jaws.half + 0.002) {
            for (const double side : {1.0, -1.0}) {
                const double x = side * 0.40 * jaws.width;
                drawn[Look::gripPart].add(softBox(translation(jaws.middle() + Vec3(x, 0.5 * (jaws.half + y), z)), Vec3(0.09 * jaws.width, 0.5 * (y - jaws.half) + 0.002, 0.0055), 0.001));
            }
        }
    }
    // Handles: steel arms with soft sleeves on their free halves.
    for (std::size_t i = 0; i < first.solids.size(); ++i) {
        if (first.roles[i] != SolidRole::rod) continue;
        const Solid& rod = first.solids[i];
        Ends ends{lowEnd(rod), highEnd(rod)};
        if (ends.a.norm() > ends.b.norm()) std::swap(ends.a, ends.b);
        drawn[Look::gripPart].add(softRod(ends.a, ends.a + 0.5 * (ends.b - ends.a), 0.85 * rod.radius));
        drawn[Look::pad].add(softRod(ends.a + 0.4 * (ends.b - ends.a), ends.b, rod.radius + 0.0004));
    }
}

void hingedShells(DrawnPieces& drawn, const First& first, const Jaws& jaws) {
    drawn[Look::gripPart].add(jaws.shell(-6, 174, 1, 1, 0.94));
    drawn[Look::gripPart].add(jaws.shell(178, 350, 1, 1, 0.94));
    const Solid* screw = firstWith(first, SolidRole::screw);
    if (!screw) screw = firstWith(first, SolidRole::knob);
    const Solid* pin = firstWith(first, SolidRole::pin);
    // Ears of the lower shell below the splits, at the screw and at the pin.
    const double low = 0.30 * jaws.half + 0.0005, high = low + 0.007;
    if (screw) drawn[Look::gripPart].add(jaws.block(0.9 * jaws.half, screw->X_FG.translation().y() + screw->radius, -high, -low, 0.52));
    if (pin) drawn[Look::gripPart].add(jaws.block(pin->X_FG.translation().y() - 0.7 * pin->radius, -0.9 * jaws.half, -0.0075, -0.0005, 0.5));
}

void hookAndJaw(DrawnPieces& drawn, const First& first, const Jaws& jaws, Section section) {
    const double h = jaws.half, s = h + jaws.wall;
    if (section == Section::round) {
        drawn[Look::gripPart].add(jaws.shell(58, 284, 1, 0.8, 0.94));
        drawn[Look::gripPart].add(jaws.shell(-62, 46, 0.75, 0.75, 0.85));
    } else {
        drawn[Look::gripPart].add(jaws.block(-s, -h, -s, s, 0.94));
        drawn[Look::gripPart].add(jaws.block(-h, 0.6 * h, -s, -h, 0.94));
        drawn[Look::gripPart].add(jaws.block(-h, 0.9 * h, h, s, 0.94));
        drawn[Look::gripPart].add(jaws.block(h, h + 0.75 * jaws.wall, -0.85 * h, 0.85 * h, 0.85));
    }
    for (std::size_t i = 0; i < first.solids.size(); ++i) {
        // The screw runs on from its solid to the jaw that it pushes.
        if (first.roles[i] != SolidRole::shaft) continue;
        const Solid& shaft = first.solids[i];
        const Vec3 inner = lowEnd(shaft).y() < highEnd(shaft).y() ? lowEnd(shaft) : highEnd(shaft);
        const Vec3 tip(inner.x(), h + 0.5 * jaws.wall, inner.z());
        if (inner.y() > tip.y()) drawn[Look::metal].add(softCylinder(tip, inner, shaft.radius, 0.0004, {true, true}));
    }
}

void clothJaws(DrawnPieces& drawn, const First& first, const Attachment& cloth) {
    const double thick = cloth.thickness_m.value.value_or(0.0);
    const Vec3 half(0.015, 0.010, 0.0015);
    drawn[Look::gripPart].add(softBox(translation(Vec3(0, 0, half.z())), half, 0.0008));
    drawn[Look::gripPart].add(softBox(translation(Vec3(0, 0, -thick - half.z())), half, 0.0008));
    // Teeth along both mouths, and the spring's pin between body and lever.
    for (int k = -2; k <= 2; ++k)
        for (const double z : {half.z(), -thick - half.z()})
            drawn[Look::pad].add(softBox(translation(Vec3(0.006 * k, -half.y(), z)), Vec3(0.0018, 0.0012, 0.0013), 0.0003));
    double back = half.y();
    for (const Solid& s : first.solids) back = std::max(back, s.kind == SolidKind::roundedBox && s.half.z() > 0.004 ? s.X_FG.translation().y() + s.half.y() : back);
    drawn[Look::metal].add(softCylinder(Vec3(-0.013, back - 0.001, 0.0085), Vec3(0.013, back - 0.001, 0.0085), 0.0032, 0.0005));
}

}  // namespace

RailStyle railStyle(const Part& part, const RailGrip& grip) {
    const bool stands = std::any_of(part.grips.begin(), part.grips.end(), [](const Grip& g) { return std::holds_alternative<FaceGrip>(g); });
    if (saysWord(part, "leg") || (stands && grip.wall_m > thickWall_m)) return RailStyle::wrapped;
    if (grip.square) return RailStyle::hook;
    if (saysWord(part, "spring") || (part.tools.empty() && part.releaseActions <= 1 && grip.wall_m <= thinWall_m)) return RailStyle::spring;
    return RailStyle::hinged;
}

DrawnPieces gripPieces(const Part& part, const HeldOn& held) {
    DrawnPieces drawn;
    if (!held.grip || !held.attachment) return drawn;
    const First first = firstOf(part);
    if (const auto* rail = std::get_if<RailGrip>(held.grip)) {
        if (railStyle(part, *rail) == RailStyle::wrapped) {
            addWrappedLegs(drawn, first.solids, first.roles, *rail, *held.attachment);
            return drawn;
        }
        const Jaws jaws(*rail, *held.attachment);
        switch (railStyle(part, *rail)) {
            case RailStyle::spring: springJaws(drawn, first, jaws); break;
            case RailStyle::hinged: hingedShells(drawn, first, jaws); break;
            case RailStyle::hook: hookAndJaw(drawn, first, jaws, held.attachment->section); break;
            case RailStyle::wrapped: break;
        }
    } else if (const auto* edge = std::get_if<EdgeGrip>(held.grip)) {
        addEdgeJaws(drawn, part, first.solids, first.roles, *edge, *held.attachment);
    } else if (const auto* face = std::get_if<FaceGrip>(held.grip)) {
        addFoot(drawn, first.solids, first.roles, *face);
    } else {
        clothJaws(drawn, first, *held.attachment);
    }
    return drawn;
}

std::vector<std::size_t> solidsOfGrip(const Part& part, const HeldOn& held) {
    std::vector<std::size_t> own;
    if (!held.grip || !held.attachment) return own;
    const First first = firstOf(part);
    const auto take = [&](auto which) {
        for (std::size_t i = 0; i < first.solids.size(); ++i) if (which(i)) own.push_back(i);
    };
    if (const auto* rail = std::get_if<RailGrip>(held.grip)) {
        const RailStyle style = railStyle(part, *rail);
        if (style == RailStyle::spring) take([&](std::size_t i) { return first.roles[i] == SolidRole::rod || (first.roles[i] == SolidRole::pin && &first.solids[i] == firstWith(first, SolidRole::pin)); });
        if (style == RailStyle::wrapped) take([&](std::size_t i) { return first.roles[i] == SolidRole::rod; });
    } else if (std::holds_alternative<EdgeGrip>(*held.grip)) {
        const int tab = tabOf(part, first.solids);
        take([&](std::size_t i) { return static_cast<int>(i) == tab; });
    } else if (const auto* face = std::get_if<FaceGrip>(held.grip)) {
        if (face->fixing == FaceFixing::suction) {
            const int bell = groundSolid(first.solids);
            take([&](std::size_t i) { return static_cast<int>(i) == bell && first.solids[i].kind == SolidKind::cylinder; });
        }
    }
    return own;
}

}  // namespace hither
