#include <catch2/catch.hpp>

#include "app/widgets/number_words.h"

using namespace hither;

// Expected values: 1 in = 0.0254 m and 1 lb = 0.45359237 kg by definition; the sums are worked by hand.
TEST_CASE("Typed lengths, fractions and sums") {
    struct Row { const char* typed; UnitSystem units; double metres; };
    const auto row = GENERATE(Row{"430", UnitSystem::metric, 0.430}, Row{"430", UnitSystem::inch, 430 * 0.0254}, Row{"0,75\"", UnitSystem::metric, 0.01905}, Row{"3/4 in", UnitSystem::metric, 0.01905},
                              Row{"19 mm", UnitSystem::inch, 0.019}, Row{"12,5", UnitSystem::metric, 0.0125}, Row{"1 1/2 in", UnitSystem::metric, 0.0381}, Row{"1-1/2 in", UnitSystem::metric, 0.0381},
                              Row{"2 ft 3 in", UnitSystem::metric, 27 * 0.0254}, Row{"2' 3\"", UnitSystem::metric, 27 * 0.0254}, Row{"-3", UnitSystem::metric, -0.003}, Row{"\xE2\x88\x92" "3 mm", UnitSystem::metric, -0.003},
                              Row{"430 + 12 mm - 1/2 in", UnitSystem::metric, 0.4293}, Row{"430+12", UnitSystem::metric, 0.442}, Row{"430-12", UnitSystem::metric, 0.418},
                              Row{"2 ft 3 in - 1-1/2 in", UnitSystem::metric, 25.5 * 0.0254}, Row{"1 1/2 - 1/2", UnitSystem::inch, 0.0254}, Row{"5 - -3", UnitSystem::metric, 0.008}, Row{"-5 + 3 cm", UnitSystem::metric, 0.025},
                              Row{"430 mm-1/2 in", UnitSystem::metric, 0.4173}, Row{"1\xC2\xBD in", UnitSystem::metric, 0.0381}, Row{"2 ft - 3 in", UnitSystem::metric, 21 * 0.0254});
    CAPTURE(row.typed);
    const Parsed<double> read = readNumber(QString::fromUtf8(row.typed), {NumberOf::length, row.units, 0, false});
    CAPTURE(read.reason);
    REQUIRE(read);
    CHECK(*read.value == Approx(row.metres).margin(1e-12));
}

TEST_CASE("What cannot be read says why") {
    for (const char* typed : {"", "+", "-", "5 +", "5 - ", "12 apples", "1.234,5", "5 ++ 3 x", "1/0 in", "--3", "nan", "5 * 3", "2'-3\"", "2 ft-3 in", "1e400", "5 5", "400 km"}) {
        CAPTURE(typed);
        const Parsed<double> read = readNumber(typed, {});
        CHECK_FALSE(read);
        CHECK_FALSE(read.reason.empty());
    }
    CHECK_FALSE(readNumber("1.5", {NumberOf::count, UnitSystem::metric, 0, false}));
    CHECK_FALSE(readNumber("3 mm", {NumberOf::angle, UnitSystem::metric, 0, false}));
    CHECK(readNumber("5 +", {}).reason == "there is nothing after the plus");
}

TEST_CASE("Other kinds of numbers and their bare units") {
    const auto value = [](const char* typed, NumberForm form) { const auto read = readNumber(QString::fromUtf8(typed), form); CAPTURE(typed, read.reason); REQUIRE(read); return *read.value; };
    CHECK(value("62", {NumberOf::mass, UnitSystem::metric, 0, true}) == Approx(62));
    CHECK(value("62", {NumberOf::mass, UnitSystem::metric, 0, false}) == Approx(0.062));
    CHECK(value("150", {NumberOf::mass, UnitSystem::inch, 0, true}) == Approx(150 * 0.45359237));
    CHECK(value("8", {NumberOf::mass, UnitSystem::inch, 0, false}) == Approx(0.5 * 0.45359237));
    CHECK(value("500 g - 20 g", {NumberOf::mass, UnitSystem::metric, 0, false}) == Approx(0.48));
    CHECK(value("90 - 35\xC2\xB0", {NumberOf::angle, UnitSystem::metric, 0, false}) == Approx(radians(55)));
    CHECK(value("2,5", {NumberOf::force, UnitSystem::metric, 1, false}) == Approx(2.5));
    CHECK(value("1", {NumberOf::force, UnitSystem::inch, 1, false}) == Approx(4.4482216152605));      // lbf, NIST SP 811 B.8
    CHECK(value("1", {NumberOf::moment, UnitSystem::inch, 1, false}) == Approx(0.1129848290276167));  // lbf in, NIST SP 811 B.8
    CHECK(value("25 %", {NumberOf::ratio, UnitSystem::metric, 2, false}) == Approx(0.25));
    CHECK(value("3.5 /m", {NumberOf::perMetre, UnitSystem::metric, 2, false}) == Approx(3.5));
    CHECK(value("7", {NumberOf::count, UnitSystem::metric, 0, false}) == 7);
}

TEST_CASE("A print shows the value and can be typed again") {
    CHECK(printNumber(0.4125, {}) == "412.5 mm");          // what was typed is what is kept
    CHECK(printNumber(0.412333333, {}) == "412 mm");
    CHECK(printNumber(0.0381, {NumberOf::length, UnitSystem::inch, 0, false}) == "1 1/2 in");
    // 420 mm is 16.535 in; the nearest sixteenth above it would be refused when typed.
    const NumberForm inches{NumberOf::length, UnitSystem::inch, 0, false};
    CHECK(printLimit(0.420, true, inches) == "16 1/2 in");
    CHECK(printLimit(0.420, false, inches) == "16 9/16 in");
    CHECK(roundStep(0.005, inches) == Approx(0.0254 / 4));
    CHECK(roundStep(0.005, {}) == 0.005);
}
