#include "tests/gui/document/random_edits.h"

#include <algorithm>
#include <numbers>

#include "core/plan/edits/about.h"
#include "core/plan/edits/extra_items.h"
#include "core/plan/edits/findings.h"
#include "core/plan/edits/joints.h"
#include "core/plan/edits/keep_outs.h"
#include "core/plan/edits/mirror.h"
#include "core/plan/edits/mounts.h"
#include "core/plan/edits/options.h"
#include "core/plan/edits/part_figures.h"
#include "core/plan/edits/parts.h"
#include "core/plan/edits/sites.h"
#include "core/plan/edits/supports.h"
#include "tests/unit/plan/fixture.h"

namespace hither::test {
namespace {

Part turnableArm() {
    Part arm = armPart();
    arm.id = "turnable-arm";
    arm.reversible = true;
    return arm;
}

}  // namespace

const Part& RandomEdits::anyPart() {
    const auto& parts = shipped_.catalogue.parts();
    return *parts[below(parts.size())];
}

std::string RandomEdits::removable(const Plan& plan) {
    const std::string id = idOf(plan.supports);
    return id == frameSpec().id ? "nobody" : id;
}

Edited RandomEdits::joint(const Plan& plan, const std::string& option, const std::string& mount, std::size_t at, const std::string& joint) {
    const PlanOption* o = plan.option(option);
    const Mount* m = nullptr;
    if (o) for (const Mount& one : o->mounts) if (one.id == mount) m = &one;
    std::size_t values = 1;
    if (m && at < m->parts.size())
        if (const Part* part = plan.part(m->parts[at].part))
            for (const Element& e : part->elements) if (e.name == joint) values = static_cast<std::size_t>(e.freedoms());
    std::vector<double> q;
    for (std::size_t i = 0; i < values; ++i) q.push_back(number(-1, 1));
    return setJoint(plan, option, mount, at, joint, q);
}

RandomEdits::Drawn RandomEdits::next(const Plan& plan) {
    Drawn drawn;
    int kind = static_cast<int>(below(kinds));
    drawn.edited = draw(kind, plan, drawn.name);
    return drawn;
}

Edited RandomEdits::draw(int kind, const Plan& plan, std::string& name) {
    std::string option = idOf(plan.options);
    for (int tries = 0; tries < 6 && (!plan.option(option) || plan.option(option)->mounts.empty()); ++tries) option = idOf(plan.options);
    const PlanOption* o = plan.option(option);
    const std::string mount = o ? idOf(o->mounts) : "nobody";
    const Mount* m = nullptr;
    if (o) for (const Mount& one : o->mounts) if (one.id == mount) m = &one;
    const std::size_t at = m ? below(m->parts.size() + (oneIn(10) ? 1u : 0u)) : 0;
    std::string jointName = "nobody";
    if (m && at < m->parts.size())
        if (const Part* part = plan.part(m->parts[at].part))
            for (const Element& e : part->elements) if (e.freedoms() > 0 && (jointName == "nobody" || oneIn(2))) jointName = e.name;
    SiteSpec site;
    if (!plan.sites.empty()) site = plan.sites[below(plan.sites.size())];
    site.point = Vec3(number(-1, 1), number(-1, 1), number(0, 1));
    SupportSpec support;
    support.id = word();
    support.kind = supportKinds()[below(supportKinds().size())].kind;
    KeepOut keepOut{word(), "Space", Solid::box(pose(Mat3::Identity(), Vec3(number(0, 1), 0, 1)), Vec3(0.1, number(0.05, 0.2), 0.1)), 0.01, {}, {}};
    // Growing and shrinking go at the same pace, so that the plan stays of a size.
    const bool tooMany = plan.options.size() > 4 || plan.supports.size() > 5 || plan.sites.size() > 6;
    switch (kind) {
        case 0: name = "setTitle"; return setTitle(plan, oneIn(8) ? "" : word());
        case 1: name = "setShows"; return setShows(plan, oneIn(8) ? "two\nlines" : word());
        case 2: name = "setNotes"; return setNotes(plan, word() + "\n" + word());
        case 3: name = "setDisplay"; return setDisplay(plan, plan.display == UnitSystem::metric ? UnitSystem::inch : UnitSystem::metric);
        case 4: name = "setCurrency"; return setCurrency(plan, std::vector<std::string>{"EUR", "USD", "CHF", "eur"}[below(4)]);
        case 5: {
            CheckLimits limits;
            limits.knock_N = number(-2, 30);
            name = "setLimits";
            return setLimits(plan, limits);
        }
        case 6: name = "addExtraItem"; return addExtraItem(plan, {oneIn(6) ? idOf(plan.extraItems) : word(), "Strap", static_cast<int>(below(4)), Money{static_cast<std::int64_t>(below(900)), "EUR"}, word()});
        case 7: name = "replaceExtraItem"; return replaceExtraItem(plan, idOf(plan.extraItems), {word(), "Tape", 1, {}, {}});
        case 8: name = "removeExtraItem"; return removeExtraItem(plan, idOf(plan.extraItems));
        case 9: name = "acceptFinding"; return acceptFinding(plan, {option, "aim:" + word(), oneIn(6) ? "" : "good enough", "kl", "2026-05-01T08:00:00Z"});
        case 10: name = "withdrawAcceptance"; return plan.accepted.empty() ? withdrawAcceptance(plan, option, "nobody") : withdrawAcceptance(plan, plan.accepted[below(plan.accepted.size())].option, plan.accepted[below(plan.accepted.size())].finding);
        case 11: name = "setJoint"; return joint(plan, option, mount, at, jointName);
        case 12: name = "setJointKept"; return setJointKept(plan, option, mount, at, jointName, oneIn(2));
        case 13: name = "setClocking"; return setClocking(plan, option, mount, at, number(-3, 3));
        case 14: name = "setClockingKept"; return setClockingKept(plan, option, mount, at, oneIn(2));
        case 15: {
            name = "applySolved";
            for (std::size_t i = 0; i < plan.options.size(); ++i) {
                if (plan.options[i].id != option) continue;
                SetupMade made = makeSetup(plan, i, shipped_.body);
                if (!made.setup || made.setup->mounts.empty()) break;
                const SetupMount& s = made.setup->mounts[below(made.setup->mounts.size())];
                return applySolved(plan, option, s.mount.id, s.chain, clamped(s.chain, s.q + Eigen::VectorXd::Constant(s.q.size(), number(-0.2, 0.2))));
            }
            return setTitle(plan, "");  // nothing to solve: a refusal
        }
        case 16: name = "addKeepOut"; return addKeepOut(plan, option, keepOut);
        case 17: name = "replaceKeepOut"; return replaceKeepOut(plan, option, o ? idOf(o->keepOuts) : "", keepOut);
        case 18: name = "removeKeepOut"; return removeKeepOut(plan, option, o ? idOf(o->keepOuts) : "");
        case 19: name = "mirrorOption"; return tooMany ? removeOption(plan, option) : mirrorOption(plan, option, word(), "Mirrored");
        case 20: name = "addMount"; return addMount(plan, option, mountOf(word(), {"tube-clamp", "arm", "round-switch"}), {clampPart(), armPart(), switchPart()});
        case 21: name = "removeMount"; return o && o->mounts.size() < 3 ? removeMount(plan, option, "nobody") : removeMount(plan, option, mount);
        case 22: name = "renameMount"; return renameMount(plan, option, mount, word());
        case 23: name = "retargetMount"; return retargetMount(plan, option, mount, oneIn(4) ? "" : idOf(plan.sites));
        case 24: {
            name = "setPlacement";
            Placement place;
            place.along_m = number(0, 0.6);
            place.around_rad = number(-3, 3);
            return setPlacement(plan, option, mount, m ? m->support : "", m ? m->attachment : "", place);
        }
        case 25: name = "setPlacementKept"; return setPlacementKept(plan, option, mount, oneIn(2));
        case 26: name = "addOption"; return tooMany ? removeOption(plan, option) : addOption(plan, oneIn(6) ? option : word(), "Another");
        case 27: name = "renameOption"; return renameOption(plan, option, word());
        case 28: name = "setOptionNotes"; return setOptionNotes(plan, option, word());
        case 29: name = "copyOption"; return tooMany ? removeOption(plan, option) : copyOption(plan, option, word(), "Copy");
        case 30: name = "removeOption"; return plan.options.size() < 3 ? removeOption(plan, "nobody") : removeOption(plan, option);
        case 31: {
            name = "useMeasuredFigure";
            if (plan.parts.empty()) return useMeasuredFigure(plan, "nobody", "mass", 1, "kl");
            const Part& part = *plan.parts[below(plan.parts.size())];
            const std::vector<NamedFigure> figures = figuresOf(part);
            return useMeasuredFigure(plan, part.id, figures.empty() || oneIn(8) ? "nothing" : figures[below(figures.size())].place, number(-0.1, 0.5), "kl, 2026-05-01");
        }
        case 32: {
            name = "replacePartData";
            Part part = plan.parts.empty() ? anyPart() : *plan.parts[below(plan.parts.size())];
            if (oneIn(4)) part = anyPart();
            part.price = Money{static_cast<std::int64_t>(below(9000)), "EUR"};
            return replacePartData(plan, part);
        }
        case 33: name = "insertPart"; {
            const bool own = oneIn(2);
            return insertPart(plan, option, mount, own ? 1 : at, own ? turnableArm() : anyPart(), oneIn(3));
        }
        case 34: name = "replacePart"; return replacePart(plan, option, mount, at, oneIn(2) ? neckPart() : anyPart());
        case 35: name = "removePart"; return removePart(plan, option, mount, at);
        case 36: {
            name = "reversePart";
            std::size_t turned = at;
            if (m) for (std::size_t i = 0; i < m->parts.size(); ++i) if (const Part* part = plan.part(m->parts[i].part); part && part->reversible) turned = i;
            return reversePart(plan, option, mount, turned);
        }
        case 37: site.id = tooMany || oneIn(6) ? site.id : word(); name = "addSite"; return addSite(plan, site);
        case 38: name = "replaceSite"; return replaceSite(plan, site.id, site);
        case 39: name = "removeSite"; return removeSite(plan, idOf(plan.sites));
        case 40: name = "addSupport"; return tooMany ? removeSupport(plan, removable(plan)) : addSupport(plan, support);
        case 41: {
            name = "replaceSupport";
            if (plan.supports.empty()) return replaceSupport(plan, "nobody", support);
            SupportSpec by = plan.supports[below(plan.supports.size())];
            const std::string was = by.id;
            if (oneIn(3) && was != frameSpec().id) by.id = word();  // mounts are added to that one
            by.at_m.x() = number(-0.5, 0.5);
            by.yaw_rad = number(-std::numbers::pi, std::numbers::pi);
            return replaceSupport(plan, was, by);
        }
        case 42: name = "removeSupport"; return removeSupport(plan, removable(plan));
        case 43: break;
    }
    name = "setPerson";
    if (oneIn(4)) return setPerson(plan, std::nullopt);
    PersonSpec person;
    person.name = word();
    person.on = idOf(plan.supports);
    person.posture["elbow_flexion_right"] = number(0, 1.5);
    return setPerson(plan, person);
}

}  // namespace hither::test
