#include <catch2/catch.hpp>

#include <cmath>
#include <string>

#include "core/units/quantity.h"

using namespace hither;

// 2010 ADA Standards for Accessible Design, chapters 3 and 4, as published by the U.S. Access Board: the
// document prints each limit in inches (which govern) and in millimetres, rounded to 5 mm.
TEST_CASE("lengths typed as the ADA Standards print them agree with their millimetres", "[reference][ada]") {
    struct Row { const char* section; const char* inches; double mm; };
    const Row rows[] = {
        {"404.2.3 door clear width", "32 in", 815},          {"404.2.3 deep openings", "36 in", 915},
        {"404.2.3 projections from", "34 in", 865},          {"404.2.3 projections", "4 in", 100},
        {"403.5.1 route", "36\"", 915},                      {"304.3.1 turning space", "5 ft", 1525},
        {"305.3 floor space, length", "4 ft", 1220},         {"305.3 floor space, width", "2' 6\"", 760},
        {"308.2.1 forward reach, high", "48 in", 1220},      {"308.2.1 forward reach, low", "15 in", 380},
        {"308.2.2 obstructed", "3 ft 8 in", 1120},           {"308.2.2 depth", "20 in", 510},
        {"308.3.1 side reach, high", "4'", 1220},            {"308.3.2 obstructed", "46 in", 1170},
        {"308.3.2 obstruction height", "34 in", 865},        {"308.3.2 depth", "24 in", 610},
        {"306.3 knee clearance", "27 in", 685},              {"306.2 toe clearance", "9 in", 230},
    };
    for (const Row& row : rows) {
        INFO(row.section);
        const Parsed<double> typed = parseLength_m(row.inches);
        REQUIRE(typed);
        CHECK(std::abs(*typed.value * 1000.0 - row.mm) <= 3.01);  // the document rounds by up to 3 mm
        // And back: the inch display gives the inches that govern.
        const Parsed<double> again = parseLength_m(printLength(*typed.value, UnitSystem::inch));
        REQUIRE(again);
        CHECK(*again.value == Approx(*typed.value).margin(1e-12));
    }
    // 404.2.3 exception 1: 5/8 in, printed as 16 mm.
    CHECK(std::round(*parseLength_m("5/8 in").value * 1000.0) == 16.0);
    CHECK(printLength(0.016, UnitSystem::inch) == "5/8 in");
    // 309.4 operable parts: 5 lbf, printed as 22.2 N.
    CHECK(std::round(*parseForce_N("5 lbf").value * 10.0) / 10.0 == Approx(22.2));
}
