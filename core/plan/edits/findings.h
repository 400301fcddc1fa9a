#pragma once
#include "core/plan/edits/edited.h"

namespace hither {

/// Accepts a finding of an option by its identity with who, when (ISO 8601 UTC) and why; again: the
/// later one counts. It stays a finding with its verdict.
Edited acceptFinding(const Plan& plan, const AcceptedFinding& accepted);
Edited withdrawAcceptance(const Plan& plan, const std::string& option, const std::string& finding);

}  // namespace hither
