#pragma once
#include <optional>
#include <string>

#include <nlohmann/json_fwd.hpp>

#include "core/catalogue/element.h"
#include "core/catalogue/json_form.h"

namespace hither {

/// The JSON form of an element (resources/parts/part_format.md). Nothing when there is a problem.
std::optional<Element> readElement(const nlohmann::json& json, const std::string& path, const Basis& byDefault, ProblemList& problems);
nlohmann::json writeElement(const Element& element, const Basis& byDefault);

/// Reads a solid into the caller's list, with its file and part.
std::optional<Solid> readSolidInto(const nlohmann::json& json, const std::string& path, ProblemList& problems);

}  // namespace hither
