#include "core/units/quantity.h"

#include <algorithm>
#include <array>
#include <charconv>
#include <cmath>
#include <cstdlib>
#include <numeric>

namespace hither {
namespace {

constexpr double inch = 0.0254;
constexpr double pound = 0.45359237;

/// Fixed decimals with a point whatever the locale is; never "-0".
std::string fixed(double value, int digits) {
    if (std::isnan(value)) return "no number of";
    if (std::isinf(value)) return value > 0 ? "infinitely many" : "minus infinitely many";
    std::array<char, 400> buffer{};
    const auto end = std::to_chars(buffer.data(), buffer.data() + buffer.size(), value, std::chars_format::fixed, std::clamp(digits, 0, 15)).ptr;
    std::string text(buffer.data(), end);
    if (text.front() == '-' && text.find_first_not_of("-0.") == std::string::npos) text.erase(0, 1);
    return text;
}

std::string withoutTrailingZeros(std::string text) {
    if (text.find('.') == std::string::npos) return text;
    text.erase(text.find_last_not_of('0') + 1);
    if (text.back() == '.') text.pop_back();
    return text;
}

}  // namespace

std::string printLength(double metres, UnitSystem system, int digits) {
    if (system == UnitSystem::metric) return fixed(metres * 1000, digits) + " mm";
    const double exact = metres / inch;
    if (!(std::abs(exact) < 1e9)) return fixed(exact, 0) + " in";
    const long long sixteenths = std::llround(exact * 16);
    const long long size = std::llabs(sixteenths), wholeInches = size / 16, over = size % 16;
    std::string text = sixteenths < 0 ? "-" : "";
    if (wholeInches > 0 || over == 0) text += std::to_string(wholeInches);
    if (over > 0) {
        const long long common = std::gcd(over, 16LL);
        if (wholeInches > 0) text += ' ';
        text += std::to_string(over / common) + "/" + std::to_string(16 / common);
    }
    return text + " in";
}

std::string printAngle(double rad, int digits) { return fixed(degrees(rad), digits) + "\xC2\xB0"; }

std::string printMass(double kg, UnitSystem system) {
    if (system == UnitSystem::inch) {
        const double ounces = kg / (pound / 16);
        if (std::abs(ounces) < 31.95) return withoutTrailingZeros(fixed(ounces, 1)) + " oz";
        return withoutTrailingZeros(fixed(kg / pound, 2)) + " lb";
    }
    const double grams = kg * 1000;
    if (std::abs(grams) < 9.95) return withoutTrailingZeros(fixed(grams, 1)) + " g";
    if (std::abs(grams) < 999.5) return fixed(grams, 0) + " g";
    return withoutTrailingZeros(fixed(kg, 2)) + " kg";
}

std::string printForce(double newton, UnitSystem system, int digits) {
    if (system == UnitSystem::metric) return fixed(newton, digits) + " N";
    return fixed(newton / (pound * standardGravity), digits + 1) + " lbf";  // 1 lbf is about 4.4 N: one decimal more shows as much
}

std::string printMoment(double newtonMetre, UnitSystem system, int digits) {
    if (system == UnitSystem::metric) return fixed(newtonMetre, digits) + " N\xC2\xB7m";
    return fixed(newtonMetre / (pound * standardGravity * inch), digits - 1) + " lbf in";  // 1 N·m is about 8.9 lbf in
}

}  // namespace hither
