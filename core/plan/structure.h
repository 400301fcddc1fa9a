#pragma once
#include <vector>

#include "core/plan/plan.h"

namespace hither {

/// What is wrong with a plan's content as far as it can be said without making its geometry: ids that
/// are empty or used twice, references to something that is not there, numbers that are none, mounts
/// without parts or with too many. `where` is the place in the plan's JSON form.
std::vector<PlanProblem> structureProblems(const Plan& plan);

/// The same for what one option needs: the givens and the option itself.
std::vector<PlanProblem> structureProblems(const Plan& plan, std::size_t option);

}  // namespace hither
