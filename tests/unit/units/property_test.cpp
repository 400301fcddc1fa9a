#include <catch2/catch.hpp>

#include <cmath>
#include <random>

#include "core/units/quantity.h"
#include "core/units/thread.h"

using namespace hither;

TEST_CASE("what is printed is read back within the print's own rounding", "[units]") {
    std::mt19937 random(1);
    std::uniform_real_distribution<double> size(-4, 4), power(-4, 2);
    for (int i = 0; i < 20000; ++i) {
        const double x = size(random) * std::pow(10.0, power(random));
        CHECK(std::abs(*parseLength_m(printLength(x, UnitSystem::metric, 2)).value - x) <= 0.51e-5);
        CHECK(std::abs(*parseLength_m(printLength(x, UnitSystem::inch)).value - x) <= 0.0254 / 32 * (1 + 1e-9));
        CHECK(std::abs(*parseAngle_rad(printAngle(x, 1)).value - x) <= radians(0.0501));
        for (const UnitSystem system : {UnitSystem::metric, UnitSystem::inch}) {
            CHECK(std::abs(*parseForce_N(printForce(x, system, 3)).value - x) <= 0.51e-3);
            CHECK(std::abs(*parseMoment_Nm(printMoment(x, system, 3)).value - x) <= 1e-3);
            const double kg = std::abs(x);
            CHECK(std::abs(*parseMass_kg(printMass(kg, system)).value - kg) <= 0.0051);
        }
        const Money money{static_cast<std::int64_t>(random()), i % 3 == 0 ? "EUR" : i % 3 == 1 ? "JPY" : "KWD"};
        CHECK(*parseMoney(printMoney(money)).value == money);
    }
}

TEST_CASE("a fraction of an inch printed to the sixteenth is read back exactly", "[units]") {
    for (int sixteenths = -2000; sixteenths <= 2000; ++sixteenths) {
        const double x = sixteenths * 0.0254 / 16;
        CHECK(*parseLength_m(printLength(x, UnitSystem::inch)).value == Approx(x).epsilon(1e-14).margin(1e-15));
    }
}

namespace {
template <class Read>
void eitherValueOrReason(const Read& read, const std::string& text) {
    const auto parsed = read(text);
    INFO(text);
    CHECK(parsed.value.has_value() == parsed.reason.empty());
}
}  // namespace

TEST_CASE("any bytes give a value or a reason", "[units]") {
    std::mt19937 random(2);
    // Pieces of what people type, so that random text gets deep into the grammar, and bare bytes.
    const std::vector<std::string> pieces{"1", "20", "0", ".", ",", "/", "-", "+", " ", "'", "\"", "in", "ft", "mm", "M", "x", "#", "UNC", "NPS", "EMT", "tube", "kg", "lb", "oz", "N", "m", "deg", "rad",
                                          "EUR", "\xC2\xBD", "\xC2\xB0", "\xC2\xB7", "\xE2\x80\xB3", "\xE2\x80", "nan", "e9", "99999999999999999999", "\xFF"};
    std::uniform_int_distribution<int> byte(0, 255), length(0, 12), which(0, static_cast<int>(pieces.size()) - 1);
    for (int i = 0; i < 20000; ++i) {
        std::string text;
        for (int n = length(random); n > 0; --n) {
            if (i % 4 == 0) text += static_cast<char>(byte(random));
            else text += pieces[static_cast<std::size_t>(which(random))];
        }
        eitherValueOrReason([](std::string_view t) { return parseLength_m(t); }, text);
        eitherValueOrReason([](std::string_view t) { return parseAngle_rad(t); }, text);
        eitherValueOrReason([](std::string_view t) { return parseMass_kg(t); }, text);
        eitherValueOrReason([](std::string_view t) { return parseForce_N(t); }, text);
        eitherValueOrReason([](std::string_view t) { return parseMoment_Nm(t); }, text);
        eitherValueOrReason([](std::string_view t) { return parseMoney(t); }, text);
        eitherValueOrReason([](std::string_view t) { return parseThread(t); }, text);
        eitherValueOrReason([](std::string_view t) { return parseTube(t); }, text);
        const auto metres = parseLength_m(text);
        if (metres) CHECK(std::abs(*metres.value) <= 1000);
    }
}
