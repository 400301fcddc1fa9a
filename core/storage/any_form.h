#pragma once
#include <string>

#include "core/storage/plan_json.h"

namespace hither {

/// Whether a file holds JSON text, by its first bytes; one that is not there yet, by its ending.
bool isJsonForm(const std::string& path);

/// A plan from its file or from its JSON form. `context.file` is filled in here.
PlanRead openAnyForm(const std::string& path, PlanJsonContext context = {});

}  // namespace hither
