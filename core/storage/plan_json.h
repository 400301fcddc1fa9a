#pragma once
#include <functional>
#include <optional>
#include <string>
#include <string_view>
#include <vector>

#include "core/catalogue/catalogue.h"
#include "core/plan/plan.h"
#include "core/storage/storage_error.h"

namespace hither {

/// What reading gave. The plan is there only when there are no problems; every problem that one pass
/// can find is listed (100 at most). `log` tells what was done to an older format on the way in.
struct PlanRead {
    std::optional<Plan> plan;
    std::vector<StorageError> problems;
    std::vector<std::string> log;
};

/// What a plan's JSON form leaves out is taken from here. Empty functions mean a random UUID
/// (RFC 4122, version 4) and the computer's clock; tests pass their own.
struct PlanJsonContext {
    const Catalogue* catalogue = nullptr;        ///< parts that are used but not copied in the plan
    std::function<std::string()> newId;
    std::function<std::string()> now_utc;
    std::string file;                            ///< named in problems
};

/// The JSON form (resources/plan_format.md) -> Plan. `place` of a problem is the path to the value
/// ("options/0/mounts/1/parts/2/joints/elbow/angle_deg"); its facts are `found`, `allowed` and, for a
/// name that is not known, `nearest`.
PlanRead planFromJson(std::string_view text, const PlanJsonContext& context = {});
/// The same from a file: a regular file of at most 64 MB.
PlanRead planFromJsonFile(const std::string& path, PlanJsonContext context = {});

/// The complete JSON form. Keys stand in a fixed order, two equal plans give equal text, and
/// planFromJson gives back an equal plan: every double is the same, but solids that were worked out
/// of others (turned, mirrored) are written to 1e-9 mm and 1e-9 degrees.
std::string planToJson(const Plan& plan);

}  // namespace hither
