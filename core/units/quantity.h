#pragma once
#include <cstdint>
#include <string>
#include <string_view>

#include "core/units/parsed.h"

namespace hither {

/// The display a person chose. It changes how values are printed and which unit a bare typed
/// number has (mm or in, degrees always), never a stored value or a verdict.
enum class UnitSystem { metric, inch };

/// Text typed by a person -> SI. Accepted: a decimal point or comma (never a thousands
/// separator: "1,234.5" and "1.234,5" are refused), inch fractions ("3/4 in", "1 1/2\"",
/// "1-1/2 in"), feet and inches ("2 ft 3 in", "2' 3\""), a sign, spaces anywhere between tokens.
/// Refused with the reason: empty text, a bare sign, no number, an unknown unit, a zero
/// denominator, overflow, "nan" and "inf", anything left over.
Parsed<double> parseLength_m(std::string_view text, UnitSystem bare = UnitSystem::metric);
Parsed<double> parseAngle_rad(std::string_view text);   ///< °, deg, rad; bare = degrees
Parsed<double> parseMass_kg(std::string_view text);     ///< g, kg, oz, lb, "2 lb 3 oz"; bare = g; not negative
Parsed<double> parseForce_N(std::string_view text);     ///< N, gf, kgf, lbf, ozf; bare = N
Parsed<double> parseMoment_Nm(std::string_view text);   ///< N m, Nm, N·m, N mm, lbf in, lbf ft; bare = N·m

/// SI -> the words shown. `digits` counts decimals of the metric print; inch prints of a length
/// are to the nearest 1/16 in as a reduced mixed fraction ("1 1/2 in", "0 in", "-3/16 in").
std::string printLength(double metres, UnitSystem system, int digits = 0);   ///< "212 mm" or "8 3/8 in"
std::string printAngle(double radians, int digits = 0);                      ///< "35°"
std::string printMass(double kg, UnitSystem system);                         ///< "240 g", "1.25 kg" or "8.5 oz"
std::string printForce(double newton, UnitSystem system, int digits = 1);    ///< "2.5 N" or "0.56 lbf"
std::string printMoment(double newtonMetre, UnitSystem system, int digits = 2);

/// Money is counted in minor units of one currency (cents); it is never a floating number.
struct Money {
    std::int64_t minor = 0;
    std::string currency = "EUR";  ///< ISO 4217 code
    bool operator==(const Money&) const = default;
};
/// "12.50", "12,50", "12", optionally with an ISO 4217 code before or after; at most as many
/// decimals as the currency has (two for most). Never negative.
Parsed<Money> parseMoney(std::string_view text, const std::string& defaultCurrency = "EUR");
std::string printMoney(const Money& money);   ///< "12.50 EUR"
std::string printAmount(const Money& money);  ///< "12.50": as the plan's JSON form has it
int minorDigits(const std::string& currency); ///< decimals of a currency by ISO 4217

constexpr double pi = 3.14159265358979323846;
constexpr double degrees(double rad) { return rad * (180.0 / pi); }
constexpr double radians(double deg) { return deg * (pi / 180.0); }
constexpr double standardGravity = 9.80665;  ///< m/s2, exact by definition (CGPM 1901)

}  // namespace hither
