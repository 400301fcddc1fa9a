#pragma once
#include <string>
#include <vector>

#include "core/plan/plan.h"
#include "core/storage/storage_error.h"

namespace hither {

/// One clear line: file, place, cause, and what is allowed where that helps.
std::string sentence(const StorageError& error);
/// The problem that tells most, and how many more there are; `path` when there is none.
std::string sentence(const std::vector<StorageError>& problems, const std::string& path);
std::string sentence(const PlanProblem& problem, const std::string& file);

/// The text on one line and within `most` bytes, control characters replaced, for echoing what a file holds.
std::string echoed(const std::string& text, std::size_t most = 80);

}  // namespace hither
