#include <catch2/catch.hpp>

#include <cmath>
#include <cstring>
#include <random>

#include "core/storage/exact_number.h"
#include "core/units/quantity.h"

using namespace hither;

TEST_CASE("every double has a text in millimetres and degrees that reads back to it") {
    std::mt19937_64 random(20261125);
    for (const Scale scale : {Scale::one, Scale::milli, Scale::degree}) {
        for (int i = 0; i < 30000; ++i) {
            double value = std::uniform_real_distribution<double>(-10, 10)(random) * std::pow(10.0, std::uniform_int_distribution<int>(-9, 1)(random));
            if (i % 3 == 0) value = std::round(value * 1000) / 1000;
            if (i % 5 == 0) value = std::nextafter(value, 100.0);
            const std::string text = textFromSi(value, scale);
            CAPTURE(text, value);
            REQUIRE(siFromText(text, scale) == value);
        }
    }
}

TEST_CASE("numbers with few digits are written with few digits") {
    CHECK(textFromSi(0.2125, Scale::milli) == "212.5");
    CHECK(textFromSi(radians(35), Scale::degree) == "35");
    CHECK(textFromSi(radians(-22.5), Scale::degree) == "-22.5");
    CHECK(textFromSi(-0.0, Scale::degree) == "0");
    CHECK(textFromSi(1.5, Scale::one) == "1.5");
    CHECK(textFromSi(20000, Scale::one) == "20000");
}

TEST_CASE("a typed number is the same as the one that units gives") {
    for (const char* text : {"9", "26.67", "12.7", "33.4", "0.1", "19.05"}) {
        CAPTURE(text);
        CHECK(siFromText(text, Scale::degree) == parseAngle_rad(text).value);
        CHECK(*siFromText(text, Scale::milli) == Approx(*parseLength_m(text).value).epsilon(1e-15));
    }
}

TEST_CASE("what is no finite number is refused") {
    for (const char* text : {"", "-", "nan", "inf", "1e999", "1..2", "0x10", "1,5", "+1", "1e", " 1"}) {
        CAPTURE(text);
        CHECK_FALSE(siFromText(text, Scale::milli));
    }
    CHECK(siFromText("1e-999", Scale::one) == 0.0);
}
