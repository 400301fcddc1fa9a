#pragma once
#include "core/checks/checks.h"
#include "core/plan/edits/edited.h"
#include "core/situation/body_table.h"

namespace hither {

/// Whether a remedy is an edit of the plan. The others (measuring a figure, choosing what a mount goes
/// with) ask for something that only a person can say.
bool changesPlan(Remedy::Kind kind);

/// Applies the remedy that a finding of an option offers. Parts are put in or replaced with every other part
/// keeping its settings; joints take the values that the remedy's first part names; `solve` sets the
/// mount the best way that brings its switch to its site. Refused with the reason when the finding offers
/// none, when it is no edit, when the mount has changed since, or when no way leads to the site.
/// The finding must have been made for this plan: numbers of parts are taken as they stand.
Edited applyRemedy(const Plan& plan, const std::string& option, const Finding& finding, const BodyData& body, const CheckContext& context);

}  // namespace hither
