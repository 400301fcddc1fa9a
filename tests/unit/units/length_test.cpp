#include <catch2/catch.hpp>

#include <clocale>
#include <cmath>

#include "core/units/quantity.h"

using namespace hither;

// An inch is 25.4 mm and a foot 12 inches by definition (international yard and pound agreement, 1959).
TEST_CASE("lengths are read as people write them", "[units]") {
    struct Row { const char* typed; double mm; };
    for (const Row& row : {
             Row{"19 mm", 19}, {"19", 19}, {"19mm", 19}, {" 19  MM ", 19}, {"+19 mm", 19}, {"-19 mm", -19}, {"\xE2\x88\x92" "19 mm", -19},
             {"1.5 cm", 15}, {"1,5 cm", 15}, {"0.212 m", 212}, {"0,212 m", 212}, {".5 m", 500}, {"1,234 mm", 1.234},
             {"3/4 in", 19.05}, {"3/4\"", 19.05}, {"3 / 4 in", 19.05}, {"0.75\"", 19.05}, {"0,75 in", 19.05}, {"0,75in.", 19.05},
             {"1 1/2\"", 38.1}, {"1 1/2in", 38.1}, {"1-1/2 in", 38.1}, {"-1 1/2 in", -38.1}, {"1\xC2\xBD in", 38.1}, {"1 \xC2\xBD in", 38.1},
             {"\xC2\xBC in", 6.35}, {"\xC2\xBE\xE2\x80\xB3", 19.05}, {"\xE2\x85\x9E in", 22.225}, {"3\xE2\x81\x84" "4 in", 19.05},
             {"2 ft 3 in", 685.8}, {"2' 3\"", 685.8}, {"2'3\"", 685.8}, {"2\xE2\x80\xB2 3\xE2\x80\xB3", 685.8}, {"2' 3''", 685.8}, {"2'3", 685.8},
             {"2'3 1/2\"", 698.5}, {"2 ft 3 1/2 in", 698.5}, {"2'3 1/2", 698.5}, {"-2 ft 3 in", -685.8}, {"2 ft", 609.6}, {"1.5 ft", 457.2}, {"5/4 in", 31.75},
             {"12\xC2\xA0mm", 12}, {"2 feet 3 inches", 685.8}, {"0", 0}, {"-0 mm", 0}}) {
        const auto read = parseLength_m(row.typed);
        INFO(row.typed << ": " << read.reason);
        REQUIRE(read);
        CHECK(*read.value * 1000 == Approx(row.mm).epsilon(1e-14));
        CHECK_FALSE(std::signbit(*read.value) != (row.mm < 0));
    }
    CHECK(*parseLength_m("1 1/2", UnitSystem::inch).value == Approx(0.0381).epsilon(1e-14));
    CHECK(*parseLength_m("1 1/2 mm", UnitSystem::inch).value == Approx(0.0015).epsilon(1e-14));
}

TEST_CASE("what is no length is refused with the reason", "[units]") {
    struct Row { std::string typed; const char* saysSo; };
    for (const Row& row : {
             Row{"", "nothing was typed"}, {"   ", "nothing was typed"}, {"-", "a sign but no number"}, {"+", "a sign but no number"},
             {"mm", "no number before"}, {"- mm", "no number before"}, {"\"", "no number before"}, {"12 px", "not a unit of length"}, {"12 kg", "not a unit of length"},
             {"1/0 in", "zero"}, {"1 1/0 in", "zero"}, {"1/ in", "no lower number"}, {"/2 in", "where a number should be"}, {"1.5/2 in", "whole numbers"}, {"1.5 1/2 in", "decimal number and a fraction"},
             {"1 5/4 in", "less than one"}, {"nan", "not a number that can be used"}, {"inf", "not a number that can be used"}, {"-inf mm", "not a number that can be used"}, {"infinity", "not a number that can be used"},
             {"1,234.5 mm", "decimal sign"}, {"1.234,5 mm", "decimal sign"}, {"1,234,567 mm", "decimal sign"}, {"1 234 mm", "side by side"}, {"1'234 mm", "feet and inches"},
             {"2 ft -3 in", "sign"}, {"2'-3\"", "sign"}, {"2 -3/4 in", "sign"}, {"1 -1/2 in", "sign"}, {"2.5 ft 3 in", "whole number"}, {"3 in 2 ft", "feet and inches"}, {"1 m 20 cm", "feet and inches"}, {"1 ft 2 in 3", "feet and inches"}, {"5 mm 6 mm", "feet and inches"},
             {"1e3 mm", "not a unit"}, {"0x10 mm", "not a unit"}, {"12 mm!", "no meaning"}, {"12 mm /", "where a number should be"}, {"--5 mm", "where a number should be"}, {"1001 m", "more than 1 km"}, {"1000.001 m", "more than 1 km"},
             {std::string(400, '9') + " mm", "too large"}, {std::string(2000, '1'), "too long"}, {"\xFF\xFE", "no meaning"}, {"12 \xC2", "no meaning"}, {std::string("5\0mm", 4), "no meaning"}, {"12 m m", "where a number should be"}}) {
        const auto read = parseLength_m(row.typed);
        INFO(row.typed << ": " << read.reason);
        REQUIRE_FALSE(read);
        CHECK(read.reason.find(row.saysSo) != std::string::npos);
    }
    CHECK(parseLength_m("1000 m"));
}

TEST_CASE("lengths are printed metric or to the nearest sixteenth in reduced terms", "[units]") {
    CHECK(printLength(0.2124, UnitSystem::metric) == "212 mm");
    CHECK(printLength(0.2124, UnitSystem::metric, 1) == "212.4 mm");
    CHECK(printLength(-0.0000001, UnitSystem::metric) == "0 mm");
    struct Row { double sixteenths; const char* text; };
    for (const Row& row : {Row{0, "0 in"}, {0.49, "0 in"}, {1, "1/16 in"}, {2, "1/8 in"}, {4, "1/4 in"}, {8, "1/2 in"}, {12, "3/4 in"}, {16, "1 in"}, {24, "1 1/2 in"},
                           {15.6, "1 in"}, {31.4, "1 15/16 in"}, {-3, "-3/16 in"}, {-24, "-1 1/2 in"}, {134, "8 3/8 in"}})
        CHECK(printLength(row.sixteenths / 16 * 0.0254, UnitSystem::inch) == row.text);
    CHECK(printLength(std::nan(""), UnitSystem::inch) == "no number of in");
}

TEST_CASE("the locale changes neither reading nor printing", "[units]") {
    const std::string before = std::setlocale(LC_ALL, nullptr);
    // A machine without such a locale keeps "C": the values below hold either way.
    for (const char* name : {"de_DE.UTF-8", "fr_FR.UTF-8"}) {
        std::setlocale(LC_ALL, name);
        CHECK(*parseLength_m("1.5 mm").value == Approx(0.0015));
        CHECK(printLength(0.0015, UnitSystem::metric, 1) == "1.5 mm");
    }
    std::setlocale(LC_ALL, before.c_str());
}

TEST_CASE("millimetres and grams typed are the doubles that the same decimal has in SI", "[units]") {
    CHECK(*parseLength_m("9 mm").value == 0.009);
    CHECK(*parseLength_m("22.2 mm").value == 0.0222);
    CHECK(*parseLength_m("35").value == 0.035);
    CHECK(*parseMass_kg("57 g").value == 0.057);
    CHECK(*parseLength_m("1.9 cm").value == 0.019);
}
