#pragma once
#include <memory>
#include <string>

#include <catch2/catch.hpp>

#include "app/shipped/shipped.h"
#include "core/plan/plan.h"
#include "core/storage/plan_json.h"

namespace hither {

/// The shipped data, read once.
inline std::shared_ptr<const Shipped> shippedForTests() {
    static const std::shared_ptr<const Shipped> shipped = [] {
        ShippedRead read = readShipped();
        REQUIRE(read.shipped);
        return std::make_shared<const Shipped>(std::move(*read.shipped));
    }();
    return shipped;
}

/// A shipped sample plan by its file's name.
inline Plan samplePlan(const std::string& name) {
    PlanJsonContext context;
    context.catalogue = &shippedForTests()->catalogue;
    const PlanRead read = planFromJsonFile((samplesFolder() / (name + ".json")).string(), context);
    REQUIRE(read.plan);
    return *read.plan;
}

}  // namespace hither
