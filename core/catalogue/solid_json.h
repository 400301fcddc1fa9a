#pragma once
#include <optional>
#include <string>
#include <vector>

#include <nlohmann/json_fwd.hpp>

#include "core/catalogue/part_problem.h"
#include "core/geometry/solid.h"

namespace hither {

/// The JSON form of a solid, the same for parts, supports and keep-outs: an object with one key,
///   {"sphere": {"centre_mm", "radius_mm"}}
///   {"capsule" | "cylinder": {"from_mm", "to_mm", "radius_mm"}}
///   {"box": {"centre_mm", "size_mm", "turn_deg"?}}, {"rounded_box": {the same, "radius_mm"}}
///   {"hull": {"points_mm"}}  4 to 256 points, not all in one plane
/// in the frame that carries it. `path` is put before the keys of problems; their file and part are
/// left empty for the caller to fill. Coordinates beyond `reach_m` are problems.
constexpr std::size_t mostHullPoints = 256;
std::optional<Solid> readSolid(const nlohmann::json& json, const std::string& path, std::vector<PartProblem>& problems,
                               double reach_m = 5.0);

/// Reads back as the same solid; the text is the same every time. Numbers that a solid keeps only
/// indirectly (the ends of a capsule, turns) are rounded to 1e-9 mm and 1e-9 degrees.
nlohmann::json writeSolid(const Solid& solid);

}  // namespace hither
