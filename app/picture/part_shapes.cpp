#include "app/picture/part_shapes.h"

#include <algorithm>
#include <cmath>

#include "app/picture/grip_shapes.h"
#include "app/picture/joint_shapes.h"
#include "app/picture/part_roles.h"
#include "app/picture/port_shapes.h"
#include "app/picture/shapes.h"
#include "app/picture/soft_shapes.h"
#include "app/picture/switch_shapes.h"

namespace hither {

namespace {

/// A block, plate, casing: as it is, with its edges broken.
Mesh bodyMesh(const Solid& solid, double bevel) {
    switch (solid.kind) {
        case SolidKind::sphere: return softBall(solid.X_FG.translation(), solid.radius);
        case SolidKind::box: return softBox(solid.X_FG, solid.half, bevel);
        case SolidKind::roundedBox:
            if (solid.radius >= 0.005) return solidMesh(solid);
            return softBox(solid.X_FG, solid.half, std::max(bevel, 0.6 * solid.radius));
        case SolidKind::cylinder: return softCylinder(lowEnd(solid), highEnd(solid), solid.radius, bevel);
        case SolidKind::capsule: return softRod(lowEnd(solid), highEnd(solid), solid.radius);
        case SolidKind::hull: return solidMesh(solid);
    }
    return {};
}

/// A screw turned with a tool: its shank, then its head at the free end.
Mesh screwMesh(const Ends& ends, double radius) {
    const double length = (ends.b - ends.a).norm(), head = std::min(1.2 * radius, 0.4 * length);
    const Vec3 seat = ends.b - head * (ends.b - ends.a).normalized();
    Mesh mesh = softCylinder(ends.a, seat, 0.6 * radius, 0.0004);
    mesh.add(hexHead(seat, ends.b, radius));
    return mesh;
}

bool besideNeck(const Part& part, std::size_t element) {
    const auto neck = [&](std::size_t e) { return e < part.elements.size() && std::holds_alternative<BendElement>(part.elements[e].what); };
    return neck(element + 1) || (element > 0 && neck(element - 1));
}

/// Whether a solid is the ring or nut that fixes the outlet's thread at any angle: the last collar before it.
bool isLockRing(const Part& part, std::size_t element, const std::vector<Solid>& solids, std::size_t which) {
    if (!part.outlet || !part.outlet->lockRing || element + 1 != part.elements.size() || solids.size() < 2) return false;
    const Vec3 outlet = std::get<RigidElement>(part.elements[element].what).X.translation();
    const Solid& s = solids[which];
    return s.half.z() < s.radius && std::min((lowEnd(s) - outlet).norm(), (highEnd(s) - outlet).norm()) < 0.0005;
}

/// The last turned solid of a piece that a slide leaves: the collar that clamps the inner tube.
int collarOf(const std::vector<Solid>& solids, const std::vector<SolidRole>& roles, const RigidContext& context) {
    if (!context.slideAfter) return -1;
    int collar = -1;
    double farthest = -1e9;
    for (std::size_t i = 0; i < solids.size(); ++i) {
        if (roles[i] != SolidRole::turned) continue;
        const double at = (solids[i].X_FG.translation() - context.slideAfter->at).dot(context.slideAfter->along);
        if (at > farthest) { farthest = at; collar = static_cast<int>(i); }
    }
    return collar;
}

}  // namespace

DrawnPieces rigidPieces(const Part& part, std::size_t element, const HeldOn& held) {
    const RigidElement& rigid = std::get<RigidElement>(part.elements[element].what);
    const RigidContext context = contextOf(part, element);
    const std::vector<SolidRole> roles = solidRoles(part, element, context);
    const Look main = mainLook(part);
    const int collar = collarOf(rigid.solids, roles, context);
    std::vector<std::size_t> elsewhere;
    if (held.grip && element == 0) elsewhere = solidsOfGrip(part, held);

    DrawnPieces drawn;
    for (std::size_t i = 0; i < rigid.solids.size(); ++i) {
        if (std::find(elsewhere.begin(), elsewhere.end(), i) != elsewhere.end()) continue;
        const Solid& solid = rigid.solids[i];
        const bool rounded = solid.kind == SolidKind::cylinder || solid.kind == SolidKind::capsule;
        OpenEnds open{rounded && isBuried(rigid.solids, i, false), rounded && isBuried(rigid.solids, i, true)};
        const bool cap = part.face && isCap(part, element, i);
        const Look look = cap ? Look::switchCap : main;
        switch (roles[i]) {
            case SolidRole::knob: {
                const Ends ends = outwardEnds(rigid.solids, i);
                drawn[Look::knob].add(lobedKnob(ends.a, ends.b, solid.radius));
                break;
            }
            case SolidRole::screw: drawn[Look::metal].add(screwMesh(outwardEnds(rigid.solids, i), solid.radius)); break;
            case SolidRole::shaft:
            case SolidRole::pin: drawn[part.face && cap ? look : Look::metal].add(softCylinder(lowEnd(solid), highEnd(solid), solid.radius, 0.0006, open)); break;
            case SolidRole::ball: drawn[Look::metal].add(softBall(solid.X_FG.translation(), solid.radius)); break;
            case SolidRole::hub: drawn[main].add(softCylinder(lowEnd(solid), highEnd(solid), solid.radius, 0.0016, open)); break;
            case SolidRole::turned: {
                const bool inner = context.slideBefore && solid.half.z() > 2 * solid.radius, ferrule = besideNeck(part, element);
                const double bevel = part.face ? std::min(0.0035, 0.35 * 2 * solid.half.z()) : context.ballAfter ? 0.0025 : ferrule ? 0.0018 : 0.0010;
                const Look seen = static_cast<int>(i) == collar ? Look::knob : inner || ferrule || isLockRing(part, element, rigid.solids, i) ? Look::metal : look;
                drawn[seen].add(softCylinder(lowEnd(solid), highEnd(solid), solid.radius, bevel, open));
                break;
            }
            case SolidRole::rod:
                // An end at a ball sits in the cup that is drawn round it.
                for (const auto& ball : {context.ballBefore, context.ballAfter}) {
                    if (!ball || !onLine({*ball, solid.X_FG.linear().col(2), {}}, solid)) continue;
                    open.a = open.a || (lowEnd(solid) - *ball).norm() < 1.4 * solid.radius;
                    open.b = open.b || (highEnd(solid) - *ball).norm() < 1.4 * solid.radius;
                }
                drawn[look].add(softRod(lowEnd(solid), highEnd(solid), solid.radius, open));
                break;
            case SolidRole::body: drawn[look].add(bodyMesh(solid, part.face ? 0.0020 : 0.0010)); break;
        }
    }
    addJointDetails(drawn, part, element, context, roles);
    if (element + 1 == part.elements.size()) addPatternScrews(drawn, part, rigid);
    return drawn;
}

Look mainLook(const Part& part) {
    switch (part.kind) {
        case PartKind::grip: return Look::gripPart;
        case PartKind::arm:
        case PartKind::post: return Look::armPart;
        case PartKind::neck: return Look::neckPart;
        case PartKind::joint:
        case PartKind::adapter:
        case PartKind::back: return Look::adapterPart;
        case PartKind::switchDevice: return Look::switchCase;
    }
    return Look::adapterPart;
}

}  // namespace hither
