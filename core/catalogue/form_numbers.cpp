#include <cmath>
#include <cstdio>
#include <cstdlib>
#include <sstream>

#include "core/catalogue/json_form.h"

namespace hither {

double toSI(double value, const FormUnit& unit) { return value * unit.times / unit.over; }

namespace {

std::optional<double> exactForm(double si, const FormUnit& unit) {
    const double straight = si * unit.over / unit.times;
    for (const int digits : {6, 10, 13, 15, 16}) {
        char text[40];
        std::snprintf(text, sizeof text, "%.*g", digits, straight);
        const double candidate = std::strtod(text, nullptr);
        if (toSI(candidate, unit) == si) return candidate;
    }
    double up = straight, down = straight;
    for (int step = 0; step < 4; ++step) {
        if (toSI(down, unit) == si) return down;
        if (toSI(up, unit) == si) return up;
        down = std::nextafter(down, -HUGE_VAL);
        up = std::nextafter(up, HUGE_VAL);
    }
    return std::nullopt;
}

std::string shortNumber(double value) {
    std::ostringstream out;
    out.precision(15);
    out << value;
    return out.str();
}

}  // namespace

double fromSI(double si, const FormUnit& unit) {
    if (si == 0) return 0;
    if (const auto form = exactForm(si, unit)) return *form;
    // No form value reads as this number: take the nearest that one does read as, so that the
    // text stays the same from then on.
    const double straight = si * unit.over / unit.times;
    return exactForm(toSI(straight, unit), unit).value_or(straight);
}

double fromSIRounded(double si, const FormUnit& unit) {
    const double value = std::round(si * unit.over / unit.times * 1e9) / 1e9;
    return value == 0 ? 0 : value;  // no minus zero
}

std::string FormRange::words(const FormUnit& unit) const {
    const double open = std::numeric_limits<double>::max();
    const std::string tail = *unit.word ? std::string(" ") + unit.word : std::string();
    if (min == -open && max == open) return "a number";
    std::string text = "a number ";
    if (min != -open) text += (above ? "above " : "from ") + shortNumber(min);
    if (max != open) text += (min != -open ? " " : "") + std::string(below ? "below " : (min != -open && !above ? "to " : "up to ")) + shortNumber(max);
    return text + tail;
}

}  // namespace hither
