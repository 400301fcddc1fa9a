#pragma once
#include <string>

#include "core/plan/plan.h"

namespace hither {

/// What a save adds to a plan: the next revision, the time of the change and a line of history that says
/// what was done. Empty `now_utc`: the computer's clock.
Plan nextRevision(Plan plan, const std::string& what, const std::string& now_utc = {});
/// Gives a plan the revision, the time of change and the history of another: what belongs to its saves
/// and not to what is planned.
void takeSaves(Plan& plan, const Plan& from);
bool sameSaves(const Plan& a, const Plan& b);

}  // namespace hither
