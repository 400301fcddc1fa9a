#include "core/units/quantity.h"

#include "core/units/amount.h"

namespace hither {
namespace {

constexpr double gramForce = standardGravity * 1e-3;
constexpr double poundForce = 0.45359237 * standardGravity;
constexpr double ounceForce = poundForce / 16;
constexpr double inch = 0.0254;

}  // namespace

Parsed<double> parseForce_N(std::string_view text) {
    static const QuantityKind kind{
        "force",
        {{"n", 1.0}, {"newton", 1.0}, {"newtons", 1.0}, {"gf", gramForce}, {"kgf", 1000 * gramForce}, {"lbf", poundForce}, {"ozf", ounceForce}},
        1.0, 1e5, "100 kN", true, false, 0, 0, "", false};
    return parseQuantity(text, kind);
}

Parsed<double> parseMoment_Nm(std::string_view text) {
    static const QuantityKind kind{
        "moment",
        {{"nm", 1.0}, {"ncm", 1e-2}, {"nmm", 1e-3}, {"kgfcm", 10 * gramForce}, {"kgfm", 1000 * gramForce},
         {"lbfin", poundForce * inch}, {"inlbf", poundForce * inch}, {"lbfft", poundForce * 12 * inch}, {"ftlbf", poundForce * 12 * inch},
         {"ozfin", ounceForce * inch}, {"inozf", ounceForce * inch}},
        1.0, 1e5, "100 kN\xC2\xB7m", true, true, 0, 0, "", false};
    return parseQuantity(text, kind);
}

}  // namespace hither
