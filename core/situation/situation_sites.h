#pragma once
#include <optional>
#include <string>
#include <vector>

#include "core/situation/situation.h"

namespace hither {

/// What can be said about a site's own numbers: finite, a direction, tolerances above zero, a known
/// control site. Problems are placed under `where`.
void checkSite(const SiteSpec& spec, const std::string& where, std::vector<SituationProblem>& problems);

/// Its place in W at the present settings and what carries it, among supports and body already made.
/// Nothing, with problems, when it needs a body part or a group that is not there.
std::optional<Site> placeSite(const SiteSpec& spec, const Situation& situation, const std::string& where, std::vector<SituationProblem>& problems);

}  // namespace hither
