#include <benchmark/benchmark.h>

#include <filesystem>

#include "core/catalogue/catalogue.h"
#include "core/catalogue/materials.h"
#include "core/checks/checks.h"
#include "core/storage/plan_file.h"

using namespace hither;

namespace {

const std::string source = HITHER_SOURCE_DIR;

/// The whole check of one sample: every option, from the plan as read; what the editor does after
/// each change. Target: under 16 ms.
void wholeCheck(benchmark::State& state, const std::string& path) {
    std::vector<std::string> problems;
    const std::optional<BodyData> body = BodyData::read(source + "/resources/body", problems);
    const MaterialTable materials = readMaterials(source + "/resources/materials/materials.json", problems);
    Catalogue catalogue;
    catalogue.addFolder(source + "/resources/parts");
    const PlanRead read = openPlanFile(path);
    if (!body || !read.plan) { state.SkipWithError("the sample cannot be read"); return; }
    CheckContext context;
    context.limits = read.plan->limits;
    context.catalogue = &catalogue;
    context.materials = &materials;
    std::vector<Setup> setups;
    for (std::size_t i = 0; i < read.plan->options.size(); ++i) setups.push_back(*makeSetup(*read.plan, i, *body).setup);
    std::size_t findings = 0;
    for (auto _ : state) {
        findings = 0;
        for (const Setup& setup : setups) findings += checkAll(setup, context).size();
    }
    state.counters["findings"] = static_cast<double>(findings);
}

/// The same with the setup made anew: supports, body, chains.
void setupAndCheck(benchmark::State& state, const std::string& path) {
    std::vector<std::string> problems;
    const std::optional<BodyData> body = BodyData::read(source + "/resources/body", problems);
    const PlanRead read = openPlanFile(path);
    if (!body || !read.plan) { state.SkipWithError("the sample cannot be read"); return; }
    for (auto _ : state)
        for (std::size_t i = 0; i < read.plan->options.size(); ++i) benchmark::DoNotOptimize(makeSetup(*read.plan, i, *body));
}

const bool registered = [] {
    for (const auto& entry : std::filesystem::directory_iterator(source + "/sample_plans")) {
        if (entry.path().extension() != ".hither") continue;
        const std::string path = entry.path().string(), name = entry.path().stem().string();
        benchmark::RegisterBenchmark(("whole_check/" + name).c_str(), [path](benchmark::State& s) { wholeCheck(s, path); })->Unit(benchmark::kMillisecond);
        benchmark::RegisterBenchmark(("make_setup/" + name).c_str(), [path](benchmark::State& s) { setupAndCheck(s, path); })->Unit(benchmark::kMillisecond);
    }
    return true;
}();

}  // namespace
