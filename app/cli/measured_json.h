#pragma once
#include <string>

#include <nlohmann/json.hpp>

#include "core/checks/finding.h"
#include "core/geometry/pose.h"

namespace hither::cli {

using Json = nlohmann::ordered_json;

/// Writes an SI value under a key that ends in its unit: "value" + length -> "value_mm". Values are
/// rounded to 1e-6 of that unit, so that the output is the same on every machine.
void put(Json& into, const std::string& key, double si, Measure measure);
/// The unit that `put` appends: "_mm", "_deg", "_g", "_N", "_Nm", or nothing.
const char* suffix(Measure measure);

Json millimetres(const Vec3& p);
Json plain(const Vec3& v);          ///< directions
Json rotation(const Mat3& R);       ///< three rows
double rounded(double value);

}  // namespace hither::cli
