#include <ostream>

#include "app/cli/findings_out.h"
#include "app/cli/program.h"
#include "app/words/cautions.h"
#include "app/words/text.h"

namespace hither::cli {
namespace {

std::vector<AcceptedNote> acceptedOf(const Plan& plan, const std::string& option) {
    std::vector<AcceptedNote> notes;
    for (const AcceptedFinding& a : plan.accepted) if (a.option == option) notes.push_back({a.finding, a.note, a.who, a.when_utc});
    return notes;
}

/// What the option's verdict comes to, in words that promise nothing more.
std::string outcome(Verdict verdict) {
    switch (verdict) {
        case Verdict::meets: return "passes these checks";
        case Verdict::close: return "passes these checks, closely";
        case Verdict::unknown: return "cannot be judged yet: something is missing";
        case Verdict::misses: return "misses at least one check";
    }
    return {};
}

}  // namespace

int runCheck(const CheckArguments& arguments, std::ostream& out, std::ostream& err) {
    const Shipped shipped = loadShipped(err);
    const Plan plan = openPlan(arguments.plan, shipped);
    const UnitSystem system = unitsFor(plan, arguments.display);
    const CheckContext context = contextFor(plan, shipped);
    const std::vector<std::size_t> chosen = chosenOptions(plan, arguments.option, arguments.plan);
    std::vector<Setup> setups;  // all of them before the first word is printed
    for (const std::size_t index : chosen) setups.push_back(setupOf(plan, index, shipped, arguments.plan));
    Json options = Json::array();
    bool missed = false;
    if (!arguments.json) out << (plan.title.empty() ? arguments.plan : plan.title) << ", revision " << plan.revision << "\n";
    for (std::size_t i = 0; i < chosen.size(); ++i) {
        const PlanOption& option = plan.options[chosen[i]];
        const std::vector<Finding> findings = checkAll(setups[i], context);
        const Verdict verdict = worst(findings);
        missed = missed || verdict == Verdict::misses;
        const std::vector<AcceptedNote> accepted = acceptedOf(plan, option.id);
        if (arguments.json) {
            Json one = {{"id", option.id}, {"name", option.name}, {"verdict", word(verdict)}};
            Json list = Json::array();
            for (const Finding& f : findings) {
                Json row = findingJson(f, system);
                for (const AcceptedNote& a : accepted)
                    if (a.finding == f.id) row["accepted"] = {{"note", a.note}, {"who", a.who}, {"when_utc", a.when_utc}};
                list.push_back(row);
            }
            one["findings"] = list;
            options.push_back(one);
            continue;
        }
        out << "\n" << wrapped((option.name.empty() ? option.id : option.name) + " " + outcome(verdict) + " (" + tally(findings) + ").", "", 100) << "\n\n";
        printFindings(out, findings, accepted, system, arguments.brief);
    }
    if (arguments.json) {
        Json document = {{"hither_check", 1},
                         {"plan", {{"id", plan.id}, {"title", plan.title}, {"revision", plan.revision}}},
                         {"options", options},
                         {"cautions", cautions()}};
        document["cautions"].insert(document["cautions"].begin(), planningAidOnly());
        out << document.dump(2) << "\n";
    } else {
        out << "\n" << wrapped(planningAidOnly(), "", 100) << "\n";
        for (const std::string& caution : cautions()) out << wrapped("  - " + caution, "    ", 100) << "\n";
    }
    return missed ? checkMisses : fine;
}

}  // namespace hither::cli
