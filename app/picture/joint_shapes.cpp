#include "app/picture/joint_shapes.h"

#include <algorithm>
#include <cmath>

#include "app/picture/soft_shapes.h"
#include "core/geometry/distance.h"
#include "core/units/quantity.h"

namespace hither {

namespace {

/// What the functions below look at.
struct Piece {
    DrawnPieces& drawn;
    const Part& part;
    std::size_t element;
    const RigidContext& context;
    const std::vector<SolidRole>& roles;
    const std::vector<Solid>& solids;
    Look main;
};

/// A small knob on a short screw, standing off a surface at `from` along `outward`.
void addKnob(DrawnPieces& drawn, const Vec3& from, const Vec3& outward, double radius) {
    drawn[Look::metal].add(softCylinder(from - 0.002 * outward, from + 0.002 * outward, 0.35 * radius, 0.0004, {true, true}));
    drawn[Look::knob].add(lobedKnob(from + 0.002 * outward, from + 0.0085 * outward, radius));
}
/// A direction across a line, always the same one for it.
Vec3 across(const Vec3& along) { return frameFromZ(Vec3::Zero(), along, std::abs(along.y()) < 0.9 ? Vec3::UnitY() : Vec3::UnitX()).linear().col(0); }

/// Radius of the ball of a ball joint at `centre`, in this element or the neighbour across the joint.
double ballRadius(const Part& part, std::size_t element, const Vec3& centre, const Vec3& centreBeyond, std::size_t beyond) {
    const auto in = [&](std::size_t e, const Vec3& at) -> double {
        if (e >= part.elements.size()) return 0;
        const auto* rigid = std::get_if<RigidElement>(&part.elements[e].what);
        if (!rigid) return 0;
        for (const Solid& s : rigid->solids)
            if (s.kind == SolidKind::sphere && (s.X_FG.translation() - at).norm() < 0.001) return s.radius;
        return 0;
    };
    return std::max(in(element, centre), in(beyond, centreBeyond));
}

/// Where this piece is the socket of a ball joint: a cup round the ball at the end of a rod, and the knob that presses it.
void addCup(const Piece& p, const Vec3& centre, bool before) {
    const bool mine = std::any_of(p.solids.begin(), p.solids.end(), [&](const Solid& s) { return s.kind == SolidKind::sphere && (s.X_FG.translation() - centre).norm() < 0.001; });
    if (mine) return;
    const std::size_t joint = before ? p.element - 1 : p.element + 1;
    Vec3 beyond = Vec3::Zero();
    if (before && joint > 0)
        if (const auto* rigid = std::get_if<RigidElement>(&p.part.elements[joint - 1].what)) beyond = rigid->X.translation();
    const double ball = ballRadius(p.part, p.element, centre, beyond, before ? joint - 1 : joint + 1);
    int nearest = -1;
    double least = 1;
    for (std::size_t i = 0; i < p.solids.size(); ++i) {
        if (p.roles[i] != SolidRole::rod && p.roles[i] != SolidRole::turned) continue;
        const Vec3 off = centre - p.solids[i].X_FG.translation(), along = p.solids[i].X_FG.linear().col(2);
        if (p.roles[i] == SolidRole::rod && (off - off.dot(along) * along).norm() > 0.001) continue;  // a leg beside it
        const double d = std::abs(distance(Solid::sphere(centre, 1e-6), p.solids[i]).distance);
        if (d < least) { least = d; nearest = static_cast<int>(i); }
    }
    if (nearest < 0 || ball <= 0) return;
    const Solid& holder = p.solids[static_cast<std::size_t>(nearest)];
    const Vec3 middle = holder.X_FG.translation(), away = (middle - centre).normalized();
    double outer = holder.radius, from = 0;
    Vec3 at = middle;
    if (p.roles[static_cast<std::size_t>(nearest)] == SolidRole::rod) {
        outer = std::min(1.16 * ball, holder.radius + 0.0035);
        p.drawn[p.main].add(turnedMesh(frameFromZ(centre, away, Vec3::UnitX()),
                                       {{0.9 * ball, -0.15 * ball, 0.2, -1}, {outer, 0.05 * ball, 1, 0, true}, {outer, 0.95 * ball, 1, 0, true}, {0.9 * holder.radius, 1.75 * ball, 0.8, 0.6}},
                                       roundSegments(outer)));
        at = centre + 0.6 * ball * away;
        from = outer;
    } else {
        from = outer;
    }
    if (needsOwnKnob(p.part, joint)) addKnob(p.drawn, at + from * across(away), across(away), 0.0065);
}

/// A hinge about `line` as this piece shows it.
void addHinge(const Piece& p, const RoleLine& line, bool before) {
    double outer = 0;
    const Solid* hub = nullptr;
    bool knob = false;
    for (std::size_t i = 0; i < p.solids.size(); ++i) {
        if (p.roles[i] == SolidRole::hub && onLine(line, p.solids[i]) && p.solids[i].radius > outer) { hub = &p.solids[i]; outer = hub->radius; }
        if ((p.roles[i] == SolidRole::knob || p.roles[i] == SolidRole::shaft) && onLine(line, p.solids[i])) knob = true;
    }
    if (!hub) return;
    Ends ends{lowEnd(*hub), highEnd(*hub)};
    if ((ends.a - line.at).norm() > (ends.b - line.at).norm()) std::swap(ends.a, ends.b);
    const Vec3 outward = (ends.b - ends.a).normalized();
    if (!knob) p.drawn[Look::metal].add(softCylinder(ends.b - 0.001 * outward, ends.b + 0.0014 * outward, 0.34 * outer, 0.0005, {true, false}));
    if (before && line.clicks && *line.clicks > 0.01) {
        // Teeth where the two cheeks meet, one a click.
        const int teeth = std::clamp(static_cast<int>(std::lround(2 * pi / *line.clicks)), 6, 72);
        p.drawn[Look::metal].add(turnedMesh(frameFromZ(line.at, line.along, Vec3::UnitX()),
                                            {{outer + 0.0010, -0.0015, 1, 0, true}, {outer + 0.0010, 0.0015, 1, 0, true}}, 2 * teeth, teeth, 0.0022 / outer));
    }
    const std::size_t joint = before ? p.element - 1 : p.element + 1;
    if (!before && !knob && needsOwnKnob(p.part, joint)) addKnob(p.drawn, ends.b + 0.001 * outward, outward, std::min(0.010, outer));
}

/// The collar at the plane where a swivel turns, notched when it clicks.
void addSwivel(const Piece& p, const RoleLine& line) {
    double outer = 0;
    for (std::size_t i = 0; i < p.solids.size(); ++i)
        if (p.roles[i] == SolidRole::turned && onLine(line, p.solids[i]) && std::abs((p.solids[i].X_FG.translation() - line.at).dot(line.along)) < p.solids[i].half.z() + 0.002)
            outer = std::max(outer, p.solids[i].radius);
    if (outer <= 0) return;
    const int notches = line.clicks ? std::clamp(static_cast<int>(std::lround(2 * pi / *line.clicks)), 4, 36) : 0;
    const double r = outer + 0.0012;
    p.drawn[Look::metal].add(turnedMesh(frameFromZ(line.at, line.along, Vec3::UnitX()),
                                        {{outer - 0.001, 0, 0, -1}, {r, 0.0004, 1, -0.4, true}, {r, 0.0026, 1, 0.4, true}, {outer - 0.001, 0.003, 0, 1}},
                                        notches ? 2 * notches : roundSegments(outer), notches, notches ? 0.10 : 0));
}

/// The holes of an inner tube that stops at a pin: one a stop, on two sides.
void addHoles(const Piece& p) {
    const auto& slide = std::get<SlideElement>(p.part.elements[p.element - 1].what);
    const RoleLine& line = *p.context.slideBefore;
    const auto tube = std::find_if(p.solids.begin(), p.solids.end(), [&](const Solid& s) { return s.kind == SolidKind::cylinder && onLine(line, s) && s.half.z() > 2 * s.radius; });
    const auto* outerTube = p.element >= 2 ? std::get_if<RigidElement>(&p.part.elements[p.element - 2].what) : nullptr;
    if (tube == p.solids.end() || !slide.step || *slide.step <= 0 || !outerTube) return;
    const RigidContext context = contextOf(p.part, p.element - 2);
    const std::vector<SolidRole> roles = solidRoles(p.part, p.element - 2, context);
    Vec3 pin = -0.009 * line.along, side = across(line.along);
    for (std::size_t i = 0; i < roles.size(); ++i) {
        if (roles[i] != SolidRole::knob) continue;
        const Vec3 at = outerTube->X.inverse() * outerTube->solids[i].X_FG.translation();
        const Vec3 off = at - at.dot(line.along) * line.along;
        if (off.norm() > 1e-4) { side = off.normalized(); pin = at - off; }
    }
    for (int n = 0; slide.min + n * *slide.step <= slide.max + 1e-9 && n < 24; ++n)
        for (const double way : {1.0, -1.0}) {
            const Vec3 at = pin - (slide.min + n * *slide.step) * line.along + way * (tube->radius + 0.0002) * side;
            Mesh hole = patchMesh(frameFromZ(at, way * side, line.along), circleOutline(0.35 * tube->radius, 8));
            hole.edges.clear();  // those still inside the outer tube must not shine through as lines
            p.drawn[Look::pad].add(hole);
        }
}

}  // namespace

void addJointDetails(DrawnPieces& drawn, const Part& part, std::size_t element, const RigidContext& context, const std::vector<SolidRole>& roles) {
    const Piece piece{drawn, part, element, context, roles, std::get<RigidElement>(part.elements[element].what).solids, mainLook(part)};
    if (context.ballBefore) addCup(piece, *context.ballBefore, true);
    if (context.ballAfter) addCup(piece, *context.ballAfter, false);
    if (context.hingeBefore) addHinge(piece, *context.hingeBefore, true);
    if (context.hingeAfter) addHinge(piece, *context.hingeAfter, false);
    if (context.swivelBefore) addSwivel(piece, *context.swivelBefore);
    if (context.slideBefore) addHoles(piece);
    if (context.slideAfter && needsOwnKnob(part, element + 1)) {
        // On the collar: the turned solid that is farthest along.
        const Solid* collar = nullptr;
        for (std::size_t i = 0; i < roles.size(); ++i) {
            if (roles[i] != SolidRole::turned) continue;
            const Solid& s = piece.solids[i];
            if (!collar || (s.X_FG.translation() - collar->X_FG.translation()).dot(context.slideAfter->along) > 0) collar = &s;
        }
        if (collar) {
            const Vec3 side = across(context.slideAfter->along);
            addKnob(drawn, collar->X_FG.translation() + collar->radius * side, side, 0.008);
        }
    }
}

}  // namespace hither
