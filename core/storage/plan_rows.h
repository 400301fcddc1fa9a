#pragma once
#include <optional>
#include <vector>

#include "core/plan/plan.h"
#include "core/storage/database.h"

namespace hither {

/// The rows of a plan into the empty tables of format `planFormat`, but for the checksum. False with
/// the library's words when it refuses.
bool writeRows(const Plan& plan, Database& database, std::string& words);

/// The plan from the tables of that format. Every cell that is not what its column promises is a problem;
/// whether the values make a plan is for `planProblems` to say. The plan is there only without problems.
std::optional<Plan> readRows(Database& database, std::vector<StorageError>& problems);

}  // namespace hither
