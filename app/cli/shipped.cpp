#include <cstdlib>
#include <ostream>

#include "app/cli/program.h"
#include "app/words/storage_words.h"

namespace hither::cli {
namespace {

std::filesystem::path fromEnvironment(const char* name) {
    const char* value = std::getenv(name);
    return value && *value ? std::filesystem::path(value) : std::filesystem::path();
}

}  // namespace

std::filesystem::path resourcesFolder() {
    if (auto given = fromEnvironment("HITHER_RESOURCES"); !given.empty()) return given;
    return std::filesystem::path(HITHER_SOURCE_DIR) / "resources";
}

std::filesystem::path ownPartsFolder() {
    if (auto given = fromEnvironment("HITHER_PARTS"); !given.empty()) return given;
    if (auto data = fromEnvironment("XDG_DATA_HOME"); !data.empty()) return data / "hither" / "parts";
    if (auto home = fromEnvironment("HOME"); !home.empty()) return home / ".local" / "share" / "hither" / "parts";
    return {};
}

Shipped loadShipped(std::ostream& warnings) {
    const std::filesystem::path folder = resourcesFolder();
    if (!std::filesystem::is_directory(folder / "parts"))
        throw Refused{folder.string() + ": the shipped data is not there (HITHER_RESOURCES names its folder)"};
    Shipped shipped;
    for (const PartProblem& problem : shipped.catalogue.addFolder(folder / "parts")) throw Refused{describe(problem)};
    if (const std::filesystem::path own = ownPartsFolder(); !own.empty())
        for (const PartProblem& problem : shipped.catalogue.addFolder(own)) warnings << "hither: left out: " << describe(problem) << "\n";
    std::vector<std::string> problems;
    shipped.materials = readMaterials(folder / "materials" / "materials.json", problems);
    std::optional<BodyData> body = BodyData::read(folder / "body", problems);
    if (!problems.empty()) throw Refused{problems.front()};
    if (!body) throw Refused{(folder / "body").string() + ": the body tables cannot be read"};
    shipped.body = std::move(*body);
    return shipped;
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

CheckContext contextFor(const Plan& plan, const Shipped& shipped) {
    CheckContext context;
    context.limits = plan.limits;
    context.catalogue = &shipped.catalogue;
    context.materials = &shipped.materials;
    return context;
}

UnitSystem unitsFor(const Plan& plan, Display display) {
    if (display == Display::metric) return UnitSystem::metric;
    if (display == Display::inch) return UnitSystem::inch;
    return plan.display;
}

}  // namespace hither::cli
