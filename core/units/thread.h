#pragma once
#include <optional>
#include <string>
#include <string_view>
#include <vector>

#include "core/units/parsed.h"

namespace hither {

/// A 60-degree screw thread by its basic profile (ASME B1.1 for unified inch, ISO 68-1 / ISO 261
/// for metric coarse). Lengths in metres. The profile's formulas: H = 0.866025 P,
/// pitch diameter = D - 0.649519 P, internal minor diameter = D - 1.082532 P.
struct Thread {
    std::string name;         ///< canonical: "UNC 1/4-20", "UNS 5/8-27", "M5"
    double majorDiameter_m = 0;
    double pitch_m = 0;
    bool metric = false;

    double pitchDiameter_m() const;
    double internalMinorDiameter_m() const;
    /// Tensile stress area: inch pi/4 (D - 0.9743 P)^2, metric pi/4 (D - 0.938194 P)^2.
    double stressArea_m2() const;
    /// Area over which the external (stud) or internal (socket) thread would shear off along an
    /// engaged length, basic profile (FED-STD-H28 form with basic diameters).
    double externalShearArea_m2(double engaged_m) const;
    double internalShearArea_m2(double engaged_m) const;
    bool operator==(const Thread&) const = default;
};

/// Reads "1/4-20 UNC", "UNC 1/4-20", "1/4-20", "3/8-16", "#6-32", "6-32 UNC", "5/8-27", "M5", "m5 x 0.8".
Parsed<Thread> parseThread(std::string_view text);
/// The threads that the trade's gear uses: UNC 4-40, 6-32, 1/4-20, 3/8-16; UNS 5/8-27; M3 M4 M5 M6 M8.
const std::vector<Thread>& knownThreads();

/// A tube by the outside diameter that a clamp sees. "NPS 3/4" (pipe, 26.67 mm), "EMT 1/2"
/// (conduit, 17.9 mm), "7/8 in" or "22.2 mm" (tube: the size is the outside diameter).
struct TubeSize {
    std::string asTyped;
    double outside_m = 0;
};
Parsed<TubeSize> parseTube(std::string_view text);

}  // namespace hither
