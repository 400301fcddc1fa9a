#include "core/remedy/remedy.h"

#include "core/plan/edits/joints.h"
#include "core/plan/edits/parts.h"
#include "core/ways/ways.h"

namespace hither {
namespace {

Edited refuse(std::string why) { return {std::nullopt, std::move(why)}; }

Edited insertAll(const Plan& plan, const std::string& option, const Remedy& remedy) {
    if (remedy.part < 0 || remedy.insert.empty() || remedy.insert.size() != remedy.partData.size()) return refuse("the remedy does not say which parts to put in");
    Edited now{plan, {}};
    for (std::size_t i = 0; i < remedy.insert.size() && now; ++i)
        now = insertPart(*now.plan, option, remedy.mount, static_cast<std::size_t>(remedy.part) + i, remedy.partData[i], remedy.insert[i].reversed);
    return now;
}

Edited replace(const Plan& plan, const std::string& option, const Remedy& remedy) {
    if (remedy.part < 0 || remedy.partData.size() != 1) return refuse("the remedy does not say which part to take instead");
    return replacePart(plan, option, remedy.mount, static_cast<std::size_t>(remedy.part), remedy.partData.front());
}

Edited moveJoints(const Plan& plan, const std::string& option, const Remedy& remedy) {
    if (remedy.part < 0 || remedy.insert.size() != 1 || remedy.insert.front().joints.empty()) return refuse("the remedy does not say which joint to move");
    Edited now{plan, {}};
    for (const auto& [joint, setting] : remedy.insert.front().joints) {
        if (!now) break;
        now = setJoint(*now.plan, option, remedy.mount, static_cast<std::size_t>(remedy.part), joint, setting.q);
    }
    return now;
}

Edited solveMount(const Plan& plan, const std::string& option, const Remedy& remedy, const BodyData& body, const CheckContext& context) {
    std::size_t index = 0;
    while (index < plan.options.size() && plan.options[index].id != option) ++index;
    if (index == plan.options.size()) return refuse(noOption(option));
    const SetupMade made = makeSetup(plan, index, body);
    if (!made.setup) return refuse(made.problems.empty() ? "the option cannot be set up" : made.problems.front().what);
    for (std::size_t m = 0; m < made.setup->mounts.size(); ++m) {
        const SetupMount& mount = made.setup->mounts[m];
        if (mount.mount.id != remedy.mount) continue;
        if (!canBringToSite(*made.setup, m)) return refuse("the mount needs a switch and a site before it can be set");
        const Ways ways = findWays(*made.setup, m, context);
        if (ways.report.solutions.empty()) return refuse("the mount cannot bring its switch to the site; Build shows how near it gets and which joint stops it");
        return applySolved(plan, option, remedy.mount, mount.chain, ways.report.solutions.front().q);
    }
    return refuse(noMount(option, remedy.mount));
}

}  // namespace

bool changesPlan(Remedy::Kind kind) { return kind != Remedy::Kind::measure && kind != Remedy::Kind::chooseGroup; }

Edited applyRemedy(const Plan& plan, const std::string& option, const Finding& finding, const BodyData& body, const CheckContext& context) {
    if (!finding.remedy) return refuse("nothing is known that would mend it");
    const Remedy& remedy = *finding.remedy;
    switch (remedy.kind) {
        case Remedy::Kind::insertParts: return insertAll(plan, option, remedy);
        case Remedy::Kind::replacePart: return replace(plan, option, remedy);
        case Remedy::Kind::moveJoint: return moveJoints(plan, option, remedy);
        case Remedy::Kind::solve: return solveMount(plan, option, remedy, body, context);
        case Remedy::Kind::measure:
        case Remedy::Kind::chooseGroup: break;
    }
    return refuse("that is for a person to say, not for the program to change");
}

}  // namespace hither
