#include "core/units/quantity.h"

#include "core/units/amount.h"

namespace hither {

Parsed<double> parseLength_m(std::string_view text, UnitSystem bare) {
    constexpr double inch = 0.0254, foot = 12 * inch;  // exact by definition (international inch, 1959)
    static const QuantityKind metric{
        "length",
        {{"mm", 1e-3}, {"millimetre", 1e-3}, {"millimetres", 1e-3}, {"millimeter", 1e-3}, {"millimeters", 1e-3},
         {"cm", 1e-2}, {"centimetre", 1e-2}, {"centimetres", 1e-2}, {"centimeter", 1e-2}, {"centimeters", 1e-2},
         {"m", 1.0}, {"metre", 1.0}, {"metres", 1.0}, {"meter", 1.0}, {"meters", 1.0},
         {"in", inch}, {"inch", inch}, {"inches", inch}, {"\"", inch}, {"ft", foot}, {"foot", foot}, {"feet", foot}, {"'", foot}},
        1e-3, 1000.0, "1 km", true, false, foot, inch, "feet and inches", true};
    static const QuantityKind inches = [] { QuantityKind k = metric; k.bare = inch; return k; }();
    return parseQuantity(text, bare == UnitSystem::metric ? metric : inches);
}

}  // namespace hither
