#include "core/units/quantity.h"

#include "core/units/amount.h"

namespace hither {

Parsed<double> parseMass_kg(std::string_view text) {
    constexpr double pound = 0.45359237, ounce = pound / 16;  // exact by definition (international pound, 1959)
    static const QuantityKind kind{
        "mass",
        {{"g", 1e-3}, {"gram", 1e-3}, {"grams", 1e-3}, {"kg", 1.0}, {"kilogram", 1.0}, {"kilograms", 1.0},
         {"oz", ounce}, {"ounce", ounce}, {"ounces", ounce}, {"lb", pound}, {"lbs", pound}, {"pound", pound}, {"pounds", pound}},
        1e-3, 10000.0, "10 t", false, false, pound, ounce, "pounds and ounces", false};
    return parseQuantity(text, kind);
}

}  // namespace hither
