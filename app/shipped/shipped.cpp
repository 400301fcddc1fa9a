#include "app/shipped/shipped.h"

#include <cstdlib>
#include <utility>

namespace hither {
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

std::filesystem::path samplesFolder() { return resourcesFolder().parent_path() / "sample_plans"; }

std::filesystem::path ownDataFolder() {
    if (auto data = fromEnvironment("XDG_DATA_HOME"); !data.empty()) return data / "hither";
    if (auto home = fromEnvironment("HOME"); !home.empty()) return home / ".local" / "share" / "hither";
    return {};
}

std::filesystem::path ownPartsFolder() {
    if (auto given = fromEnvironment("HITHER_PARTS"); !given.empty()) return given;
    const std::filesystem::path own = ownDataFolder();
    return own.empty() ? own : own / "parts";
}

ShippedRead readShipped() {
    const std::filesystem::path folder = resourcesFolder();
    ShippedRead read;
    if (!std::filesystem::is_directory(folder / "parts")) {
        read.problem = folder.string() + ": the shipped data is not there (HITHER_RESOURCES names its folder)";
        return read;
    }
    Shipped shipped;
    for (const PartProblem& problem : shipped.catalogue.addFolder(folder / "parts")) {
        read.problem = describe(problem);
        return read;
    }
    if (const std::filesystem::path own = ownPartsFolder(); !own.empty())
        for (const PartProblem& problem : shipped.catalogue.addFolder(own)) read.leftOut.push_back(describe(problem));
    std::vector<std::string> problems;
    shipped.materials = readMaterials(folder / "materials" / "materials.json", problems);
    std::optional<BodyData> body = BodyData::read(folder / "body", problems);
    if (!problems.empty()) {
        read.problem = problems.front();
        return read;
    }
    if (!body) {
        read.problem = (folder / "body").string() + ": the body tables cannot be read";
        return read;
    }
    shipped.body = std::move(*body);
    read.shipped = std::move(shipped);
    return read;
}

std::vector<std::string> readPartsAgain(Shipped& shipped, std::vector<Catalogue>& retired) {
    Catalogue fresh;
    std::vector<std::string> leftOut;
    for (const std::filesystem::path& folder : {resourcesFolder() / "parts", ownPartsFolder()})
        if (!folder.empty()) for (const PartProblem& problem : fresh.addFolder(folder)) leftOut.push_back(describe(problem));
    retired.push_back(std::exchange(shipped.catalogue, std::move(fresh)));
    return leftOut;
}

CheckContext contextFor(const Plan& plan, const Shipped& shipped) {
    CheckContext context;
    context.limits = plan.limits;
    context.catalogue = &shipped.catalogue;
    context.materials = &shipped.materials;
    return context;
}

}  // namespace hither
