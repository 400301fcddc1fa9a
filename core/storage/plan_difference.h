#pragma once
#include <string>
#include <vector>

#include "core/plan/plan.h"

namespace hither {

/// One thing in which two plans differ. `place` is the path in the JSON form, lists of things with ids
/// by id ("options/option-1/mounts/mount-1/parts/2/joints/elbow/angle_deg"); `before` and `after` are
/// the values there as the JSON form writes them, cut at 200 bytes, empty for what is not there.
struct PlanDifference {
    enum class Kind { added, removed, changed, moved };
    Kind kind = Kind::changed;
    std::string place, before, after;
    bool operator==(const PlanDifference&) const = default;
};
const char* word(PlanDifference::Kind kind);

/// Every difference between two plans in the order of the JSON form; empty exactly when they are written
/// alike. A thing that is only in one plan is one difference, not one for each of its values.
std::vector<PlanDifference> planDifferences(const Plan& before, const Plan& after);

}  // namespace hither
