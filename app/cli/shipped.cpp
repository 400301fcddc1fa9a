#include <ostream>

#include "app/cli/program.h"
#include "app/words/storage_words.h"

namespace hither::cli {

Shipped loadShipped(std::ostream& warnings) {
    ShippedRead read = readShipped();
    if (!read.shipped) throw Refused{read.problem};
    for (const std::string& line : read.leftOut) warnings << "hither: left out: " << line << "\n";
    return std::move(*read.shipped);
}

std::vector<std::size_t> chosenOptions(const Plan& plan, const std::string& chosen, const std::string& path) {
    std::vector<std::size_t> found;
    for (std::size_t i = 0; i < plan.options.size(); ++i)
        if (chosen.empty() || plan.options[i].id == chosen || plan.options[i].name == chosen) found.push_back(i);
    if (found.empty())
        throw Refused{path + ": " + (chosen.empty() ? "the plan has no options yet" : "there is no option " + echoed(chosen))};
    return found;
}

Setup setupOf(const Plan& plan, std::size_t option, const Shipped& shipped, const std::string& path) {
    SetupMade made = makeSetup(plan, option, shipped.body);
    if (!made.setup)
        throw Refused{made.problems.empty() ? path + ": the option cannot be set up" : sentence(made.problems.front(), path)};
    return std::move(*made.setup);
}

std::vector<Ready> readyOptions(const Plan& plan, const std::string& chosen, const Shipped& shipped, const std::string& path) {
    std::vector<Ready> out;
    std::optional<Refused> first;
    bool any = false;
    for (const std::size_t option : chosenOptions(plan, chosen, path)) {
        try {
            out.push_back({option, setupOf(plan, option, shipped, path), {}});
            any = true;
        } catch (const Refused& refused) {
            if (!first) first = refused;
            out.push_back({option, std::nullopt, refused.line});
        }
    }
    if (!any) throw *first;
    return out;
}

UnitSystem unitsFor(const Plan& plan, Display display) {
    if (display == Display::metric) return UnitSystem::metric;
    if (display == Display::inch) return UnitSystem::inch;
    return plan.display;
}

}  // namespace hither::cli
