#pragma once
#include <QString>

#include "core/plan/plan.h"
#include "core/storage/plan_difference.h"

namespace hither {

/// One difference between two plans in plain words: "Option “A”, mount “Main”, part 3 (Elbow arm), elbow:
/// angle 20° → 35°". Things are called by their names in `after`, or in `before` when they are only there.
QString differenceWords(const PlanDifference& difference, const Plan& before, const Plan& after, UnitSystem units);

/// Whether it is only about a save: revision, time, history.
bool isOfSaves(const PlanDifference& difference);

}  // namespace hither
