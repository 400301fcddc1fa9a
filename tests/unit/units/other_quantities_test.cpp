#include <catch2/catch.hpp>

#include "core/units/quantity.h"

using namespace hither;

TEST_CASE("angles are read and printed", "[units]") {
    CHECK(*parseAngle_rad("180").value == Approx(pi));
    CHECK(*parseAngle_rad("-45\xC2\xB0").value == Approx(-pi / 4));
    CHECK(*parseAngle_rad("22,5 deg").value == Approx(pi / 8));
    CHECK(*parseAngle_rad("0.5 rad").value == Approx(0.5));
    CHECK(*parseAngle_rad("7 1/2 degrees").value == Approx(radians(7.5)));
    for (const char* wrong : {"", "-", "deg", "\xC2\xB0", "10 mm", "1e400", "nan", "36001", "10 20", "1/0"}) { INFO(wrong); CHECK_FALSE(parseAngle_rad(wrong)); }
    CHECK(printAngle(radians(35)) == "35\xC2\xB0");
    CHECK(printAngle(radians(-0.2)) == "0\xC2\xB0");
    CHECK(printAngle(radians(12.34), 1) == "12.3\xC2\xB0");
}

// 1 lb = 0.45359237 kg (international yard and pound agreement, 1959); g = 9.80665 m/s2 (CGPM 1901).
TEST_CASE("masses are read and printed", "[units]") {
    CHECK(*parseMass_kg("240").value == Approx(0.24));
    CHECK(*parseMass_kg("1,25 kg").value == Approx(1.25));
    CHECK(*parseMass_kg("8.5 oz").value == Approx(8.5 * 0.028349523125));
    CHECK(*parseMass_kg("2 lb").value == Approx(0.90718474));
    CHECK(*parseMass_kg("2 lb 3 oz").value == Approx(0.992233309375));
    for (const char* wrong : {"", "-5 g", "-", "5 mm", "11 t", "10001 kg", "inf", "5 kg 3 g"}) { INFO(wrong); CHECK_FALSE(parseMass_kg(wrong)); }
    CHECK(printMass(0.24, UnitSystem::metric) == "240 g");
    CHECK(printMass(0.0045, UnitSystem::metric) == "4.5 g");
    CHECK(printMass(0.9996, UnitSystem::metric) == "1 kg");
    CHECK(printMass(1.25, UnitSystem::metric) == "1.25 kg");
    CHECK(printMass(0, UnitSystem::metric) == "0 g");
    CHECK(printMass(8.5 * 0.028349523125, UnitSystem::inch) == "8.5 oz");
    CHECK(printMass(0.90718474, UnitSystem::inch) == "2 lb");
}

TEST_CASE("forces and moments are read and printed", "[units]") {
    CHECK(*parseForce_N("2,5").value == Approx(2.5));
    CHECK(*parseForce_N("100 gf").value == Approx(0.980665));
    CHECK(*parseForce_N("1 kgf").value == Approx(9.80665));
    CHECK(*parseForce_N("1 lbf").value == Approx(4.4482216152605));  // NIST SP 811, appendix B.8
    CHECK(*parseForce_N("16 ozf").value == Approx(4.4482216152605));
    for (const char* wrong : {"", "N", "5 kg", "5 MN", "5 mN", "200000", "5 N m"}) { INFO(wrong); CHECK_FALSE(parseForce_N(wrong)); }
    CHECK(printForce(2.5, UnitSystem::metric) == "2.5 N");
    CHECK(printForce(2.5, UnitSystem::inch) == "0.56 lbf");

    for (const char* same : {"1.5", "1.5 N m", "1.5 Nm", "1.5 N\xC2\xB7m", "1.5 N*m", "1.5 N.m", "1500 N mm", "150 N cm"}) { INFO(same); REQUIRE(parseMoment_Nm(same)); CHECK(*parseMoment_Nm(same).value == Approx(1.5)); }
    CHECK(*parseMoment_Nm("1 lbf in").value == Approx(0.1129848290276167));  // NIST SP 811, appendix B.8
    CHECK(*parseMoment_Nm("1 in lbf").value == Approx(0.1129848290276167));
    CHECK(*parseMoment_Nm("1 lbf\xC2\xB7" "ft").value == Approx(1.3558179483314004));  // NIST SP 811, appendix B.8
    for (const char* wrong : {"", "N m", "5 N", "5 m N", "5 Nm 3 Nm", "5 N\xC2\xB7", "1/0 Nm"}) { INFO(wrong); CHECK_FALSE(parseMoment_Nm(wrong)); }
    CHECK(printMoment(1.5, UnitSystem::metric) == "1.50 N\xC2\xB7m");
    CHECK(printMoment(1.5, UnitSystem::inch) == "13.3 lbf in");
}

TEST_CASE("money is read and printed in minor units", "[units]") {
    struct Row { const char* typed; std::int64_t minor; const char* currency; };
    for (const Row& row : {Row{"12.50", 1250, "EUR"}, {"12,50", 1250, "EUR"}, {"12", 1200, "EUR"}, {"12.5", 1250, "EUR"}, {".5", 50, "EUR"}, {"USD 12.50", 1250, "USD"}, {"12.50 usd", 1250, "USD"},
                           {"0", 0, "EUR"}, {"1500 JPY", 1500, "JPY"}, {"1.250 KWD", 1250, "KWD"}}) {
        const auto read = parseMoney(row.typed);
        INFO(row.typed << ": " << read.reason);
        REQUIRE(read);
        CHECK(*read.value == Money{row.minor, row.currency});
    }
    for (const char* wrong : {"", "EUR", "12.505", "1,234", "1.234,50", "1 234", "-5", "12 EU", "12 EUR USD", "$12", "\xE2\x82\xAC" "12", "12.5 JPY", "99999999999999999999", "1/2", "nan"}) { INFO(wrong); CHECK_FALSE(parseMoney(wrong)); }
    CHECK(parseMoney("$12").reason.find("three-letter code") != std::string::npos);
    CHECK(printMoney({1250, "EUR"}) == "12.50 EUR");
    CHECK(printMoney({5, "EUR"}) == "0.05 EUR");
    CHECK(printMoney({-5, "EUR"}) == "-0.05 EUR");
    CHECK(printMoney({1500, "JPY"}) == "1500 JPY");
    CHECK(printMoney({5, "KWD"}) == "0.005 KWD");
    CHECK(printAmount({123456, "EUR"}) == "1234.56");
}
