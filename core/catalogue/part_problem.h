#pragma once
#include <string>

namespace hither {

/// One thing wrong in a catalogue file or in the parts of a plan. `key` is the path to the value
/// inside the part ("elements/1/min_deg"), `found` what stands there, `allowed` what may.
struct PartProblem {
    std::string file, part, key, found, allowed;
    bool operator==(const PartProblem&) const = default;
};
std::string describe(const PartProblem& problem);  ///< one line

}  // namespace hither
