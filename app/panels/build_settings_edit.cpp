#include <algorithm>
#include <cmath>

#include "app/panels/build_settings.h"
#include "app/panels/build_words.h"
#include "core/plan/edits/joints.h"
#include "core/plan/edits/mounts.h"

namespace hither {
namespace {

const Element* elementOf(const Plan& plan, const Mount& mount, const SettingOf& of) {
    const auto at = static_cast<std::size_t>(of.part);
    const Part* part = at < mount.parts.size() ? plan.part(mount.parts[at].part) : nullptr;
    if (part)
        for (const Element& e : part->elements) if (e.name == of.joint && e.freedoms() > 0) return &e;
    return nullptr;
}

/// 0, or the end of the range that is nearest to it.
struct Home {
    std::vector<double> operator()(const RigidElement&) const { return {}; }
    std::vector<double> operator()(const HingeElement& e) const { return {std::clamp(0.0, e.min, std::max(e.min, e.max))}; }
    std::vector<double> operator()(const SwivelElement& e) const { return {std::clamp(0.0, e.min, std::max(e.min, e.max))}; }
    std::vector<double> operator()(const BallElement& e) const { return {0, 0, std::clamp(0.0, e.twistMin, std::max(e.twistMin, e.twistMax))}; }
    std::vector<double> operator()(const SlideElement& e) const { return {std::clamp(0.0, e.min, std::max(e.min, e.max))}; }
    std::vector<double> operator()(const BendElement&) const { return std::vector<double>(6, 0.0); }
};

std::vector<double> valuesOf(const Mount& mount, const SettingOf& of, const Element& element) {
    const MountPart& part = mount.parts[static_cast<std::size_t>(of.part)];
    const auto found = part.joints.find(of.joint);
    if (found != part.joints.end() && !found->second.q.empty()) return found->second.q;
    return std::visit(Home{}, element.what);
}

/// Brings the other number of a pair inside the circle that both share.
void giveWay(double set, double& other, double radius) {
    const double room = std::sqrt(std::max(0.0, radius * radius - set * set));
    other = std::clamp(other, -room, room);
}

void setIn(std::vector<double>& q, const Element& element, const Dial& dial, double value) {
    if (const auto* ball = std::get_if<BallElement>(&element.what)) {
        if (dial.what == Dial::What::twist) q[2] = value;
        const int set = dial.what == Dial::What::swingToward ? 0 : dial.what == Dial::What::swingSideways ? 1 : -1;
        if (set < 0) return;
        q[static_cast<std::size_t>(set)] = value;
        giveWay(value, q[static_cast<std::size_t>(1 - set)], ball->cone);
    } else if (const auto* neck = std::get_if<BendElement>(&element.what)) {
        double &kx = q[static_cast<std::size_t>(2 * dial.arc)], &ky = q[static_cast<std::size_t>(2 * dial.arc) + 1];
        const double bend = std::hypot(kx, ky);
        const double direction = dial.what == Dial::What::bendDirection ? value : bend > 0 ? std::atan2(-kx, ky) : 0.0;
        const double now = dial.what == Dial::What::bend ? value / (neck->length / 3) : bend;
        kx = -now * std::sin(direction);
        ky = now * std::cos(direction);
    } else {
        q[0] = value;
    }
}

Edited notThere() { return {std::nullopt, "this can no longer be set: the mount has changed"}; }

}  // namespace

double settled(const Dial& dial, double value) {
    if (dial.fullTurn) {
        value = std::remainder(value, 2 * pi);
        if (value <= -pi) value += 2 * pi;
    }
    if (dial.step && *dial.step > 0) {
        Freedom f;
        f.min = dial.min;
        f.max = dial.max;
        f.fullTurn = dial.fullTurn;
        f.isAngle = dial.of == NumberField::Of::angle;
        f.step = dial.step;
        value = detentValue(f, nearestDetent(f, value));
    }
    return dial.fullTurn ? value : std::clamp(value, dial.min, std::max(dial.min, dial.max));
}

Edited withDial(const Plan& plan, const std::string& option, const std::string& mount, const SettingOf& of, const Dial& dial, double value) {
    const Mount* m = mountIn(plan, option, mount);
    if (!m || of.part < 0 || static_cast<std::size_t>(of.part) >= m->parts.size()) return notThere();
    value = settled(dial, value);
    if (of.what == SettingOf::What::clocking) return setClocking(plan, option, mount, static_cast<std::size_t>(of.part), value);
    if (of.what == SettingOf::What::place) {
        Placement place = m->place;
        switch (dial.what) {
            case Dial::What::along: place.along_m = value; break;
            case Dial::What::around: place.around_rad = value; break;
            case Dial::What::x: place.x_m = value; break;
            case Dial::What::y: place.y_m = value; break;
            case Dial::What::yaw: place.yaw_rad = value; break;
            default: return notThere();
        }
        return setPlacement(plan, option, mount, m->support, m->attachment, place);
    }
    const Element* element = elementOf(plan, *m, of);
    if (!element) return notThere();
    std::vector<double> q = valuesOf(*m, of, *element);
    setIn(q, *element, dial, value);
    return setJoint(plan, option, mount, static_cast<std::size_t>(of.part), of.joint, q);
}

Edited withKept(const Plan& plan, const std::string& option, const std::string& mount, const SettingOf& of, bool kept) {
    const auto part = static_cast<std::size_t>(of.part);
    switch (of.what) {
        case SettingOf::What::place: return setPlacementKept(plan, option, mount, kept);
        case SettingOf::What::clocking: return setClockingKept(plan, option, mount, part, kept);
        case SettingOf::What::joint: break;
    }
    const Mount* m = mountIn(plan, option, mount);
    const Element* element = m ? elementOf(plan, *m, of) : nullptr;
    if (!element) return notThere();
    // One knob locks all joints of its group: they are kept, and let go, together.
    const auto groupOf = [](const Element& e) {
        return std::visit([](const auto& what) -> std::string {
            if constexpr (requires { what.joint; }) return what.joint.lockGroup;
            return {};
        }, e.what);
    };
    const std::string group = groupOf(*element);
    Edited done = setJointKept(plan, option, mount, part, of.joint, kept);
    if (group.empty()) return done;
    for (const Element& e : plan.part(m->parts[part].part)->elements)
        if (done && e.name != of.joint && e.freedoms() > 0 && groupOf(e) == group) done = setJointKept(*done.plan, option, mount, part, e.name, kept);
    return done;
}

Edited withFromBelow(const Plan& plan, const std::string& option, const std::string& mount, bool fromBelow) {
    const Mount* m = mountIn(plan, option, mount);
    if (!m) return notThere();
    Placement place = m->place;
    place.fromBelow = fromBelow;
    return setPlacement(plan, option, mount, m->support, m->attachment, place);
}

Edited atHome(const Plan& plan, const std::string& option, const std::string& mount, const SettingOf& of) {
    const Mount* m = mountIn(plan, option, mount);
    if (!m || of.what == SettingOf::What::place) return notThere();
    if (of.what == SettingOf::What::clocking) return setClocking(plan, option, mount, static_cast<std::size_t>(of.part), 0);
    const Element* element = elementOf(plan, *m, of);
    if (!element) return notThere();
    return setJoint(plan, option, mount, static_cast<std::size_t>(of.part), of.joint, std::visit(Home{}, element->what));
}

}  // namespace hither
