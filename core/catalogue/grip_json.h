#pragma once
#include <optional>
#include <string>

#include <nlohmann/json_fwd.hpp>

#include "core/catalogue/grip.h"
#include "core/catalogue/json_form.h"

namespace hither {

/// The JSON form of a grip (resources/parts/part_format.md). Nothing when there is a problem.
std::optional<Grip> readGrip(const nlohmann::json& json, const std::string& path, const Basis& byDefault, ProblemList& problems);
nlohmann::json writeGrip(const Grip& grip, const Basis& byDefault);

}  // namespace hither
