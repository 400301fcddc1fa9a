#pragma once
#include <cstdint>
#include <string>
#include <vector>

#include "core/plan/plan.h"
#include "core/storage/storage_error.h"

namespace hither {

/// What any plan must keep to be saved or read, whatever form it comes in. Values outside are slips
/// or damage, not plans: nothing on or around a person is 20 m away or weighs a tonne.
namespace planBounds {
constexpr double length_m = 20;           ///< any coordinate, dimension, range end
constexpr double angle_rad = 62.83185307179586477;  ///< ten turns, 3600 degrees
constexpr double curvature_per_m = 1000;
constexpr double force_N = 1e5;
constexpr double mass_kg = 1000;
constexpr double factor = 1000;
constexpr double bodyDimension_m = 3;
constexpr std::size_t supports = 20, sites = 100, options = 50, mountsInOption = 100, keepOutsInOption = 200;
constexpr std::size_t parts = 1000, groups = 50, attachments = 200, solids = 1000, landmarks = 500, blocked = 100;
constexpr std::size_t extraItems = 1000, accepted = 10000, history = 100000;
constexpr std::size_t idBytes = 100, lineBytes = 1000, textBytes = 100'000;
constexpr std::int64_t money_minor = 1'000'000'000'000;
constexpr int revision = 1'000'000'000, count = 100'000;
}  // namespace planBounds

/// Every rule that the plan breaks, placed as in the JSON form ("options/0/mounts/1/parts/2/joints/
/// elbow/angle_deg") with what was found and what is allowed: finite numbers in range; ids that are
/// there, unique and printable; every id that is named is known (an empty one means "not chosen yet");
/// joint values as many as the joint's freedoms; texts valid UTF-8 without control characters;
/// times "2026-11-25T09:00:00Z". At most `most` problems are listed. An empty list: may be saved.
std::vector<StorageError> planProblems(const Plan& plan, std::size_t most = 100);

/// The known name that is spelled most like `found` (fewest single-letter changes), when one is near.
std::string nearestName(const std::string& found, const std::vector<std::string>& known);
bool isPrintableText(const std::string& text, bool severalLines);
bool isUtcTime(const std::string& text);
bool isCurrencyCode(const std::string& text);   ///< three capital letters, as ISO 4217

}  // namespace hither
