#include "app/picture/part_roles.h"

#include <algorithm>
#include <cmath>

#include "core/geometry/distance.h"
#include "core/units/quantity.h"

namespace hither {

namespace {

constexpr double touching_m = 0.0015;   // pieces listed as meeting may leave this much between them
constexpr double onLine_m = 0.001;
constexpr double probe_m = 1e-6;

const RigidElement* rigidAt(const Part& part, std::size_t element) {
    return element < part.elements.size() ? std::get_if<RigidElement>(&part.elements[element].what) : nullptr;
}

/// Where a solid's axis runs along a line: the stretch of the line that it covers.
struct Stretch { double from = 0, to = 0; };
Stretch along(const RoleLine& line, const Solid& solid) {
    const double a = (lowEnd(solid) - line.at).dot(line.along), b = (highEnd(solid) - line.at).dot(line.along);
    return {std::min(a, b), std::max(a, b)};
}
bool isHub(const std::optional<RoleLine>& hinge, const Solid& solid) {
    if (!hinge || solid.kind != SolidKind::cylinder || !onLine(*hinge, solid)) return false;
    const Stretch s = along(*hinge, solid);
    return s.from <= onLine_m && s.to >= -onLine_m;
}
/// The thinner cylinder on the same axis that ends where this one begins.
int shaftOf(const std::vector<Solid>& solids, std::size_t which) {
    const Solid& knob = solids[which];
    const RoleLine axis{knob.X_FG.translation(), knob.X_FG.linear().col(2), {}};
    for (std::size_t i = 0; i < solids.size(); ++i) {
        const Solid& s = solids[i];
        if (i == which || s.kind != SolidKind::cylinder || s.radius > 0.75 * knob.radius || !onLine(axis, s)) continue;
        const Stretch stretch = along(axis, s);
        if (std::abs(stretch.from - knob.half.z()) < touching_m || std::abs(stretch.to + knob.half.z()) < touching_m) return static_cast<int>(i);
    }
    return -1;
}

}  // namespace

Vec3 lowEnd(const Solid& s) { return s.X_FG * Vec3(0, 0, -s.half.z()); }
Vec3 highEnd(const Solid& s) { return s.X_FG * Vec3(0, 0, s.half.z()); }

bool onLine(const RoleLine& line, const Solid& solid) {
    const auto off = [&](const Vec3& p) { const Vec3 d = p - line.at; return (d - d.dot(line.along) * line.along).norm(); };
    return off(lowEnd(solid)) < onLine_m && off(highEnd(solid)) < onLine_m;
}

double distanceToOthers(const std::vector<Solid>& solids, int leftOut, const Vec3& point) {
    double least = 1;
    for (std::size_t i = 0; i < solids.size(); ++i)
        if (static_cast<int>(i) != leftOut) least = std::min(least, distance(Solid::sphere(point, probe_m), solids[i]).distance);
    return least;
}

bool isBuried(const std::vector<Solid>& solids, std::size_t which, bool high) {
    const Solid& s = solids[which];
    // A flat end may just rest on the other; of a round one the dome's whole base must be inside.
    const double beyond = s.kind == SolidKind::capsule ? 0.0 : 0.0003;
    const auto inside = [&](double x, double y) {
        const Vec3 p = s.X_FG * Vec3(x, y, (high ? 1 : -1) * (s.half.z() + beyond));
        return distanceToOthers(solids, static_cast<int>(which), p) < 0;
    };
    if (!inside(0, 0)) return false;
    for (int k = 0; k < 8; ++k)
        if (!inside(0.96 * s.radius * std::cos(k * pi / 4), 0.96 * s.radius * std::sin(k * pi / 4))) return false;
    return true;
}

Ends outwardEnds(const std::vector<Solid>& solids, std::size_t which) {
    const Vec3 low = lowEnd(solids[which]), high = highEnd(solids[which]);
    const int own = static_cast<int>(which);
    return distanceToOthers(solids, own, low) > distanceToOthers(solids, own, high) ? Ends{high, low} : Ends{low, high};
}

RigidContext contextOf(const Part& part, std::size_t element) {
    RigidContext context;
    const RigidElement& rigid = *rigidAt(part, element);
    context.in = {};
    context.out = {rigid.X.translation(), rigid.X.linear().col(2), {}};
    const auto line = [](const Pose& X, const Vec3& axis, const std::optional<double>& clicks) {
        return RoleLine{X.translation(), Vec3(X.linear() * axis.normalized()), clicks};
    };
    const auto look = [&](const Element& joint, const Pose& X, auto& hinge, auto& swivel, auto& slide, auto& ball) {
        if (const auto* h = std::get_if<HingeElement>(&joint.what)) hinge = line(X, h->axis, h->detent);
        if (const auto* s = std::get_if<SwivelElement>(&joint.what)) swivel = line(X, Vec3::UnitZ(), s->detent);
        if (const auto* s = std::get_if<SlideElement>(&joint.what)) slide = line(X, s->axis, s->step);
        if (std::holds_alternative<BallElement>(joint.what)) ball = X.translation();
    };
    if (element > 0) look(part.elements[element - 1], Pose::Identity(), context.hingeBefore, context.swivelBefore, context.slideBefore, context.ballBefore);
    if (element + 1 < part.elements.size()) look(part.elements[element + 1], rigid.X, context.hingeAfter, context.swivelAfter, context.slideAfter, context.ballAfter);
    return context;
}

std::vector<SolidRole> solidRoles(const Part& part, std::size_t element, const RigidContext& context) {
    const std::vector<Solid>& solids = rigidAt(part, element)->solids;
    std::vector<SolidRole> roles(solids.size(), SolidRole::body);
    const auto atBall = [&](const std::optional<Vec3>& centre, const Solid& s) { return centre && (s.X_FG.translation() - *centre).norm() < onLine_m; };
    for (std::size_t i = 0; i < solids.size(); ++i) {
        const Solid& s = solids[i];
        if (s.kind == SolidKind::sphere && (atBall(context.ballBefore, s) || atBall(context.ballAfter, s))) roles[i] = SolidRole::ball;
        if (s.kind == SolidKind::capsule) roles[i] = SolidRole::rod;
        if (s.kind != SolidKind::cylinder) continue;
        const bool main = onLine(context.in, s) || onLine(context.out, s) || (context.slideBefore && onLine(*context.slideBefore, s));
        if (isHub(context.hingeBefore, s) || isHub(context.hingeAfter, s)) { roles[i] = SolidRole::hub; continue; }
        if (main) { roles[i] = SolidRole::turned; continue; }
        const Ends ends = outwardEnds(solids, i);
        const Vec3 outward = (ends.b - ends.a).normalized();
        const bool free = distanceToOthers(solids, static_cast<int>(i), ends.b + 0.002 * outward) > touching_m;
        const bool held = distanceToOthers(solids, static_cast<int>(i), ends.a) < touching_m;
        if (!free || !held) {
            // Between others or across them: a knob's screw, found with its knob, or a pin.
            if (roles[i] == SolidRole::body) roles[i] = SolidRole::pin;
            continue;
        }
        const int shaft = shaftOf(solids, i);
        if (shaft >= 0) {
            roles[i] = SolidRole::knob;
            roles[static_cast<std::size_t>(shaft)] = SolidRole::shaft;
        } else if (distanceToOthers(solids, static_cast<int>(i), 0.5 * (ends.a + ends.b)) < touching_m) {
            roles[i] = SolidRole::pin;
        } else {
            roles[i] = !part.tools.empty() && s.radius < 0.007 ? SolidRole::screw : SolidRole::knob;
        }
    }
    // A shaft listed after its knob was taken for a pin in between.
    for (std::size_t i = 0; i < solids.size(); ++i)
        if (roles[i] == SolidRole::knob)
            if (const int shaft = shaftOf(solids, i); shaft >= 0 && roles[static_cast<std::size_t>(shaft)] != SolidRole::turned) roles[static_cast<std::size_t>(shaft)] = SolidRole::shaft;
    return roles;
}

bool needsOwnKnob(const Part& part, std::size_t jointElement) {
    const auto figuresOf = [&](std::size_t element) -> const JointFigures* {
        return std::visit([](const auto& what) -> const JointFigures* {
            if constexpr (requires { what.joint; }) return &what.joint;
            else return nullptr;
        }, part.elements[element].what);
    };
    const auto hasKnob = [&](std::size_t element) {
        if (!rigidAt(part, element)) return false;
        const std::vector<SolidRole> roles = solidRoles(part, element, contextOf(part, element));
        return std::find(roles.begin(), roles.end(), SolidRole::knob) != roles.end();
    };
    const JointFigures* figures = figuresOf(jointElement);
    if (!figures || figures->hold.value.value_or(0) <= 0) return false;
    if (!figures->lockGroup.empty()) {
        // One knob for the whole group: at the first of its joints, when no piece has one.
        for (std::size_t e = 0; e < part.elements.size(); ++e) {
            if (hasKnob(e)) return false;
            if (e < jointElement && figuresOf(e) && figuresOf(e)->lockGroup == figures->lockGroup) return false;
        }
        return true;
    }
    const auto& what = part.elements[jointElement].what;
    if (std::holds_alternative<SwivelElement>(what) || std::holds_alternative<BendElement>(what)) return false;  // stiff by friction
    if (jointElement > 0 && hasKnob(jointElement - 1)) return false;
    // A knob on the piece after it belongs to the next joint when there is one.
    const bool next = jointElement + 2 < part.elements.size() && figuresOf(jointElement + 2);
    return next || !hasKnob(jointElement + 1);
}

bool saysWord(const Part& part, const std::string& word) {
    const auto letter = [](char c) { return (c >= 'a' && c <= 'z') || (c >= 'A' && c <= 'Z'); };
    for (const std::string& text : part.words) {
        for (std::size_t at = text.find(word); at != std::string::npos; at = text.find(word, at + 1)) {
            std::size_t end = at + word.size();
            if (end < text.size() && text[end] == 's') ++end;
            if ((at == 0 || !letter(text[at - 1])) && (end >= text.size() || !letter(text[end]))) return true;
        }
    }
    return false;
}

}  // namespace hither
