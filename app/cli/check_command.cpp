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
    const std::vector<Ready> ready = readyOptions(plan, arguments.option, shipped, arguments.plan);  // before the first word is printed
    Json options = Json::array();
    bool missed = false;
    if (!arguments.json) out << (plan.title.empty() ? arguments.plan : plan.title) << ", revision " << plan.revision << "\n";
    for (const Ready& one : ready) {
        const PlanOption& option = plan.options[one.option];
        if (!one.setup) {
            missed = true;
            if (arguments.json) options.push_back({{"id", option.id}, {"name", option.name}, {"verdict", word(Verdict::unknown)}, {"problem", one.problem}, {"findings", Json::array()}});
            else out << "\n" << wrapped((option.name.empty() ? option.id : option.name) + " cannot be checked yet. " + one.problem, "", 100) << "\n";
            continue;
        }
        const std::vector<Finding> findings = checkAll(*one.setup, context);
        const Verdict verdict = worst(findings);
        missed = missed || verdict == Verdict::misses;
        const std::vector<AcceptedNote> accepted = acceptedOf(plan, option.id);
        if (arguments.json) {
            Json row = {{"id", option.id}, {"name", option.name}, {"verdict", word(verdict)}};
            Json list = Json::array();
            for (const Finding& f : findings) {
                Json finding = findingJson(f, system);
                for (const AcceptedNote& a : accepted)
                    if (a.finding == f.id) finding["accepted"] = {{"note", a.note}, {"who", a.who}, {"when_utc", a.when_utc}};
                list.push_back(finding);
            }
            row["findings"] = list;
            options.push_back(row);
            continue;
        }
        out << "\n" << wrapped((option.name.empty() ? option.id : option.name) + " " + (findings.empty() ? "has nothing to check yet." : outcome(verdict) + " (" + tally(findings) + ")."), "", 100) << "\n\n";
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
