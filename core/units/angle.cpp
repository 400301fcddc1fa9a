#include "core/units/quantity.h"

#include "core/units/amount.h"

namespace hither {

Parsed<double> parseAngle_rad(std::string_view text) {
    static const QuantityKind kind{
        "angle", {{"\xC2\xB0", radians(1)}, {"deg", radians(1)}, {"degree", radians(1)}, {"degrees", radians(1)}, {"rad", 1.0}, {"radian", 1.0}, {"radians", 1.0}},
        radians(1), radians(36000), "100 turns", true, false, 0, 0, "", false};
    return parseQuantity(text, kind);
}

}  // namespace hither
