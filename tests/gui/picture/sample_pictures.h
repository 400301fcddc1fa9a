#pragma once
#include <filesystem>
#include <string>
#include <vector>

#include <catch2/catch.hpp>

#include "app/shipped/shipped.h"
#include "core/plan/plan.h"
#include "core/storage/plan_json.h"

namespace hither {

/// The shipped sample plans, made ready; read once.
struct SamplePlan { std::string name; Plan plan; Setup setup; };
inline const std::vector<SamplePlan>& samplePlans() {
    static const std::vector<SamplePlan> samples = [] {
        std::vector<SamplePlan> out;
        const ShippedRead read = readShipped();
        REQUIRE(read.shipped);
        for (const auto& entry : std::filesystem::directory_iterator(samplesFolder())) {
            if (entry.path().extension() != ".json") continue;
            PlanJsonContext context;
            context.catalogue = &read.shipped->catalogue;
            const PlanRead plan = planFromJsonFile(entry.path().string(), context);
            INFO(entry.path().string());
            REQUIRE(plan.plan);
            for (std::size_t option = 0; option < plan.plan->options.size(); ++option) {
                SetupMade made = makeSetup(*plan.plan, option, read.shipped->body);
                REQUIRE(made.setup);
                out.push_back({entry.path().stem().string() + "/" + std::to_string(option), *plan.plan, std::move(*made.setup)});
            }
        }
        REQUIRE(out.size() >= 5);
        return out;
    }();
    return samples;
}

}  // namespace hither
