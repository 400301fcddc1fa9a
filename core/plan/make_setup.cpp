#include <string>

#include "core/plan/plan.h"
#include "core/plan/structure.h"

namespace hither {

SetupMade makeSetup(const Plan& plan, std::size_t option, const BodyData& data) {
    SetupMade made;
    made.problems = structureProblems(plan, option);
    if (!made.problems.empty()) return made;

    SituationMade situation = makeSituation(plan.supports, plan.person, plan.sites, data);
    for (const SituationProblem& p : situation.problems) made.problems.push_back({p.where, p.what});
    if (!situation.situation) {
        if (made.problems.empty()) made.problems.push_back({"supports", "the supports, the person and the sites do not go together"});
        return made;
    }
    if (!made.problems.empty()) return made;

    const PlanOption& from = plan.options[option];
    const std::string where = "options/" + std::to_string(option);
    Setup setup;
    setup.option = from.id;
    setup.situation = std::move(*situation.situation);
    setup.keepOuts = from.keepOuts;
    for (std::size_t j = 0; j < from.keepOuts.size(); ++j) {
        const KeepOut& keepOut = from.keepOuts[j];
        if (keepOut.support.empty() || keepOut.group.empty()) continue;
        const Support* support = setup.situation.support(keepOut.support);
        if (support == nullptr || support->group(keepOut.group) == nullptr)
            made.problems.push_back({where + "/keep_outs/" + std::to_string(j), "support \"" + keepOut.support + "\" has no moving group \"" + keepOut.group + "\""});
    }
    const auto find = [&plan](const std::string& id) -> std::shared_ptr<const Part> {
        for (const auto& part : plan.parts) if (part->id == id) return part;
        return nullptr;
    };
    for (std::size_t j = 0; j < from.mounts.size(); ++j) {
        ChainMade chain = makeChain(from.mounts[j], setup.situation, find);
        if (chain.chain) {
            setup.mounts.push_back({from.mounts[j], std::move(*chain.chain), std::move(chain.q)});
            continue;
        }
        std::string place = where + "/mounts/" + std::to_string(j);
        if (chain.part >= 0) place += "/parts/" + std::to_string(chain.part);
        made.problems.push_back({place, chain.problem});
    }
    if (made.problems.empty()) made.setup = std::move(setup);
    return made;
}

}  // namespace hither
