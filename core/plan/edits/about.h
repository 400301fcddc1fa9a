#pragma once
#include "core/plan/edits/edited.h"

namespace hither {

/// Edits of what a plan says about itself.
Edited setTitle(const Plan& plan, const std::string& title);   ///< refused when empty
Edited setShows(const Plan& plan, const std::string& shows);   ///< one line
Edited setNotes(const Plan& plan, const std::string& notes);
Edited setDisplay(const Plan& plan, UnitSystem display);
Edited setCurrency(const Plan& plan, const std::string& currency);  ///< ISO 4217 code: three capital letters
Edited setLimits(const Plan& plan, const CheckLimits& limits);      ///< each a number that is not negative

}  // namespace hither
