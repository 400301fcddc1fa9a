#include <algorithm>
#include <cmath>
#include <set>

#include "core/chain/chain.h"
#include "core/chain/placement.h"
#include "core/chain/weights.h"
#include "core/units/quantity.h"

namespace hither {
namespace {

constexpr double fullTurnSlack_rad = 1e-6;  // degrees typed with six decimals still make a full turn

using Kind = ChainStep::Kind;

/// Appends steps, freedoms and values to a chain that is being made.
struct Builder {
    Chain chain;
    std::vector<double> values;
    int part = 0;
    int element = -1;

    int frame() const { return static_cast<int>(chain.steps.size()); }
    ChainStep& step(Kind kind) {
        ChainStep s;
        s.kind = kind;
        s.part = part;
        s.element = element;
        return chain.steps.emplace_back(s);
    }
    void fixed(const Pose& X) { step(Kind::fixed).X = X; }
    void freedom(Freedom f, double value) {
        f.part = part;
        chain.freedoms.push_back(std::move(f));
        values.push_back(value);
    }
};

bool isFullTurn(double min, double max) {
    return std::abs(min + pi) < fullTurnSlack_rad && std::abs(max - pi) < fullTurnSlack_rad;
}

/// A joint's freedoms from its element and its setting.
struct ElementAdder {
    Builder& out;
    const Element& element;
    const JointSetting& setting;

    double value(int component, double min, double max) const {
        const auto i = static_cast<std::size_t>(component);
        return i < setting.q.size() ? setting.q[i] : std::clamp(0.0, min, std::max(min, max));
    }
    Freedom freedom(int component, double min, double max, const JointFigures& figures) const {
        Freedom f;
        f.of = Freedom::Of::joint;
        f.joint = element.name;
        f.component = component;
        f.min = min;
        f.max = max;
        f.kept = setting.kept;
        f.figures = figures;
        return f;
    }
    void add(int component, const Freedom& f) const { out.freedom(f, value(component, f.min, f.max)); }
    int nextFreedom() const { return out.chain.freedomCount(); }

    void turn(const Vec3& axis, double min, double max, const std::optional<double>& detent, const JointFigures& joint) const {
        ChainStep& s = out.step(Kind::turn);
        s.axis = axis.normalized();
        s.q0 = nextFreedom();
        Freedom f = freedom(0, min, max, joint);
        f.fullTurn = isFullTurn(min, max);
        f.step = detent;
        add(0, f);
    }
    void operator()(const RigidElement& rigid) const {
        const int frame = out.frame();
        for (const Solid& solid : rigid.solids) out.chain.solids.push_back({solid, frame, out.part, false});
        out.chain.masses.push_back({rigid.mass_kg, rigid.centreOfMass, frame, out.part});
        out.fixed(rigid.X);
    }
    void operator()(const HingeElement& hinge) const { turn(hinge.axis, hinge.min, hinge.max, hinge.detent, hinge.joint); }
    void operator()(const SwivelElement& swivel) const { turn(Vec3::UnitZ(), swivel.min, swivel.max, swivel.detent, swivel.joint); }
    void operator()(const BallElement& ball) const {
        out.step(Kind::ball).q0 = nextFreedom();
        out.chain.discs.push_back({nextFreedom(), ball.cone});
        add(0, freedom(0, -ball.cone, ball.cone, ball.joint));
        add(1, freedom(1, -ball.cone, ball.cone, ball.joint));
        Freedom twist = freedom(2, ball.twistMin, ball.twistMax, ball.joint);
        twist.fullTurn = isFullTurn(ball.twistMin, ball.twistMax);
        add(2, twist);
    }
    void operator()(const SlideElement& slide) const {
        ChainStep& s = out.step(Kind::slide);
        s.axis = slide.axis.normalized();
        s.q0 = nextFreedom();
        Freedom f = freedom(0, slide.min, slide.max, slide.joint);
        f.isAngle = false;
        f.step = slide.step;
        add(0, f);
    }
    void operator()(const BendElement& bend) const {
        const double most = 1 / std::max(bend.minRadius, 1e-3);  // a neck cannot be bent tighter than a millimetre
        for (int arc = 0; arc < 3; ++arc) {
            if (arc == 1) out.chain.masses.push_back({bend.mass_kg, Vec3(0, 0, bend.length / 6), out.frame(), out.part});
            out.chain.bends.push_back({out.frame(), out.part, bend.radius});
            ChainStep& s = out.step(Kind::bend);
            s.arc = bend.length / 3;
            s.q0 = nextFreedom();
            out.chain.discs.push_back({nextFreedom(), most});
            for (int c = 0; c < 2; ++c) {
                Freedom f = freedom(2 * arc + c, -most, most, bend.joint);
                f.isAngle = false;
                add(2 * arc + c, f);
            }
        }
    }
};

/// What is wrong with the joint settings of a part, or nothing.
std::optional<std::string> settingProblem(const MountPart& settings, const Part& part) {
    for (const auto& named : settings.joints) {
        const std::string& name = named.first;
        const JointSetting& setting = named.second;
        const auto found = std::find_if(part.elements.begin(), part.elements.end(), [&name](const Element& e) {
            return !e.name.empty() && e.name == name && e.freedoms() > 0;
        });
        if (found == part.elements.end()) return "part \"" + part.id + "\" has no joint \"" + name + "\"";
        const auto wanted = static_cast<std::size_t>(found->freedoms());
        if (!setting.q.empty() && setting.q.size() != wanted) {
            return "joint \"" + name + "\" of part \"" + part.id + "\" takes " + std::to_string(wanted) +
                   (wanted == 1 ? " value, " : " values, ") + std::to_string(setting.q.size()) +
                   (setting.q.size() == 1 ? " is given" : " are given");
        }
        for (double q : setting.q) if (!std::isfinite(q)) return "joint \"" + name + "\" of part \"" + part.id + "\" has a value that is no number";
    }
    if (!std::isfinite(settings.clocking_rad)) return "part \"" + part.id + "\" has a clocking that is no number";
    return std::nullopt;
}

/// The mate before a part, and the clocking freedom that it leaves.
void addMate(Builder& out, const Part& previous, const Part& next, const MountPart& settings) {
    ChainMate made;
    made.part = out.part;
    made.mate.fault = MateFault::interfaceDiffers;
    if (previous.outlet) {
        const BestMate best = mateWith(*previous.outlet, next);
        made.base = best.base;
        if (best.base >= 0) made.mate = best.mate;
    }
    out.chain.mates.push_back(made);
    if (made.base < 0) return;
    const Interface from = previous.outlet->interface;
    const Interface to = next.bases[static_cast<std::size_t>(made.base)].interface;
    Freedom f;
    f.of = Freedom::Of::clocking;
    f.min = -pi;
    f.max = pi;
    f.fullTurn = true;
    f.kept = settings.clockingKept;
    if (from == Interface::thread && to == Interface::thread) {
        // Any angle: a ring or nut holds it, or friction does.
    } else if (!made.mate.goesTogether()) {
        return;
    } else if (from == Interface::boltPattern) {
        if (made.mate.clockingSteps > 0) f.step = 2 * pi / made.mate.clockingSteps;
    } else if (from != Interface::adhesivePad && from != Interface::hookAndLoop) {
        return;  // a dovetail plate or a shoe goes in one way only
    }
    ChainStep& s = out.step(Kind::turn);
    s.axis = Vec3::UnitZ();
    s.q0 = out.chain.freedomCount();
    out.freedom(f, settings.clocking_rad);
}

ChainMade problem(std::string text, int part = -1) {
    ChainMade made;
    made.problem = std::move(text);
    made.part = part;
    return made;
}

/// One knob locks all joints of its group: when one of them is kept, so are the others.
void keepLockGroups(Chain& chain) {
    std::set<std::pair<int, std::string>> locked;
    for (const Freedom& f : chain.freedoms)
        if (f.of == Freedom::Of::joint && f.kept && !f.figures.lockGroup.empty()) locked.insert({f.part, f.figures.lockGroup});
    for (Freedom& f : chain.freedoms)
        if (f.of == Freedom::Of::joint && locked.count({f.part, f.figures.lockGroup})) f.kept = true;
}

}  // namespace

ChainMade makeChain(const Mount& mount, const Situation& situation,
                    const std::function<std::shared_ptr<const Part>(const std::string&)>& find) {
    const Support* support = situation.support(mount.support);
    if (!support) return problem(mount.support.empty() ? "the mount is fixed to nothing" : "there is no support \"" + mount.support + "\"");
    const Attachment* attachment = support->attachment(mount.attachment);
    if (!attachment) {
        return problem(mount.attachment.empty() ? "the mount is not fixed to any rail, edge, face or cloth of support \"" + support->id + "\""
                                                : "support \"" + support->id + "\" has no attachment \"" + mount.attachment + "\"");
    }
    if (mount.parts.empty()) return problem("the mount has no parts");
    if (mount.parts.size() > mostPartsInMount) {
        return problem("the mount has " + std::to_string(mount.parts.size()) + " parts; at most " + std::to_string(mostPartsInMount) + " are allowed");
    }
    for (double v : {mount.place.along_m, mount.place.around_rad, mount.place.x_m, mount.place.y_m, mount.place.yaw_rad}) {
        if (!std::isfinite(v)) return problem("the mount's place on \"" + attachment->id + "\" is no number", 0);
    }

    Builder out;
    out.chain.mount = mount.id;
    out.chain.support = support->id;
    out.chain.attachment = attachment->id;
    out.chain.group = attachment->group;
    const Part* previous = nullptr;
    for (std::size_t i = 0; i < mount.parts.size(); ++i) {
        const MountPart& settings = mount.parts[i];
        out.part = static_cast<int>(i);
        out.element = -1;
        std::shared_ptr<const Part> part = find(settings.part);
        if (!part) return problem("there is no part \"" + settings.part + "\"", out.part);
        if (settings.reversed) {
            if (!part->reversible || part->bases.size() != 1 || !part->outlet || !part->keepFree.empty()) return problem("part \"" + part->id + "\" cannot be turned end for end", out.part);
            part = std::make_shared<const Part>(reversed(*part));
        }
        if (part->face && i + 1 < mount.parts.size()) return problem("part \"" + part->id + "\" is a switch: nothing can be fixed to it, so it must come last", out.part);
        if (const auto wrong = settingProblem(settings, *part)) return problem(*wrong, out.part);

        if (!previous) {
            const Grip* grip = gripFor(*part, *attachment);
            static const char* const kinds[] = {"a rail", "an edge", "a face", "cloth"};
            if (!grip) return problem("part \"" + part->id + "\" has no grip for " + kinds[static_cast<int>(attachment->kind)], 0);
            out.chain.grip = *grip;
            if (const auto wrong = addPlacement(out.chain, out.values, *attachment, groupPose_W(situation, support->id, attachment->group), *grip, mount.place, mount.placeKept)) {
                return problem(*wrong, 0);
            }
            for (const Solid& jaw : jawSolids(*grip, *attachment)) out.chain.solids.push_back({jaw, out.frame(), 0, true});
        } else {
            addMate(out, *previous, *part, settings);
        }
        out.chain.partFrame.push_back(out.frame());
        static const JointSetting atHome;
        for (std::size_t e = 0; e < part->elements.size(); ++e) {
            const Element& element = part->elements[e];
            const auto setting = settings.joints.find(element.name);
            out.element = static_cast<int>(e);
            std::visit(ElementAdder{out, element, setting == settings.joints.end() ? atHome : setting->second}, element.what);
        }
        out.chain.parts.push_back(part);
        previous = part.get();
    }
    out.chain.face = out.chain.parts.back()->face;
    if (out.chain.face) out.chain.operatingAxis = out.chain.face->operatingAxis.normalized();
    setWeights(out.chain);
    keepLockGroups(out.chain);

    ChainMade made;
    made.q = Eigen::Map<const Eigen::VectorXd>(out.values.data(), static_cast<Eigen::Index>(out.values.size()));
    made.chain = std::move(out.chain);
    return made;
}

Mount withValues(const Mount& mount, const Chain& chain, const Eigen::VectorXd& q) {
    Mount out = mount;
    for (int i = 0; i < chain.freedomCount(); ++i) {
        const Freedom& f = chain.freedoms[static_cast<std::size_t>(i)];
        MountPart& part = out.parts.at(static_cast<std::size_t>(f.part));
        switch (f.of) {
            case Freedom::Of::along: out.place.along_m = q[i]; break;
            case Freedom::Of::around: out.place.around_rad = q[i]; break;
            case Freedom::Of::x: out.place.x_m = q[i]; break;
            case Freedom::Of::y: out.place.y_m = q[i]; break;
            case Freedom::Of::yaw: out.place.yaw_rad = q[i]; break;
            case Freedom::Of::clocking: part.clocking_rad = q[i]; break;
            case Freedom::Of::joint: {
                std::vector<double>& values = part.joints[f.joint].q;
                const auto component = static_cast<std::size_t>(f.component);
                if (values.size() <= component) values.resize(component + 1, 0.0);
                values[component] = q[i];
                break;
            }
        }
    }
    return out;
}

}  // namespace hither
