#pragma once
#include <ostream>
#include <string>
#include <vector>

#include "app/cli/measured_json.h"
#include "core/checks/finding.h"

namespace hither::cli {

/// One finding for machines; the keys are listed in resources/command_line.md.
Json findingJson(const Finding& finding, UnitSystem system);

/// Findings for people, worst first: a word for the verdict, the check, the sentence, the remedy, the
/// basis when it is weaker than measured. `accepted` notes stand beside the findings they belong to.
struct AcceptedNote { std::string finding, note, who, when_utc; };
void printFindings(std::ostream& out, const std::vector<Finding>& findings, const std::vector<AcceptedNote>& accepted,
                   UnitSystem system, bool brief);
/// "1 misses, 2 unknown, 1 close, 12 met".
std::string tally(const std::vector<Finding>& findings);

}  // namespace hither::cli
