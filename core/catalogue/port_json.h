#pragma once
#include <optional>
#include <string>

#include <nlohmann/json_fwd.hpp>

#include "core/catalogue/json_form.h"
#include "core/catalogue/port.h"

namespace hither {

/// The JSON form of a port (resources/parts/part_format.md). Nothing when there is a problem.
std::optional<Port> readPort(const nlohmann::json& json, const std::string& path, const Basis& byDefault, ProblemList& problems);
nlohmann::json writePort(const Port& port, const Basis& byDefault);

/// Ids are stable and go into file names and commands: lower case letters, digits and hyphens.
bool isId(const std::string& text);

}  // namespace hither
