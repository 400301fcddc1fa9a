#include <catch2/catch.hpp>

#include <random>

#include "core/chain/swing.h"
#include "tests/support/chain_builder.h"

using namespace hither;

TEST_CASE("a swing is the exponential map of its vector", "[chain]") {
    std::mt19937 random(1);
    std::uniform_real_distribution<double> angle(-3, 3), exponent(-12, 0);
    for (int n = 0; n < 200; ++n) {
        const double size = std::pow(10.0, exponent(random));
        const double a = size * angle(random), b = size * angle(random);
        CHECK((Swing(a, b).rotation() - rotationFromVector(Vec3(a, b, 0))).norm() < 1e-14);
    }
    CHECK(Swing(0, 0).rotation() == Mat3::Identity());
}

TEST_CASE("series and closed forms of a swing meet where one takes over from the other", "[chain]") {
    // The two sides of t = 0.5 differ by 1e-9 in t, so smooth values may differ by little more.
    const Swing below(0.3 - 1e-9, 0.4 - 1e-9), above(0.3 + 1e-9, 0.4 + 1e-9);
    CHECK(below.A == Approx(above.A).margin(2e-9));
    CHECK(below.B == Approx(above.B).margin(2e-9));
    CHECK(below.C == Approx(above.C).margin(2e-9));
    CHECK(below.dA == Approx(above.dA).margin(2e-9));
    CHECK(below.dB == Approx(above.dB).margin(2e-9));
}

TEST_CASE("an arc's end is the integral of its direction, by Simpson's rule", "[chain]") {
    for (const auto& [a, b] : {std::pair(0.0, 0.0), std::pair(1e-5, -3e-6), std::pair(0.2, -0.4), std::pair(-1.5, 2.0)}) {
        constexpr int intervals = 2000;
        Vec3 sum = Vec3::Zero();
        for (int i = 0; i <= intervals; ++i) {
            const double s = double(i) / intervals;
            const double share = i == 0 || i == intervals ? 1 : i % 2 ? 4 : 2;
            sum += share * rotationFromVector(Vec3(s * a, s * b, 0)).col(2);
        }
        CHECK((Swing(a, b).arcEnd() - sum / (3.0 * intervals)).norm() < 1e-12);
    }
}

TEST_CASE("what a unit of a swing turns and moves agrees with central differences", "[chain]") {
    constexpr double h = 1e-5;  // truncation error about h squared times a third derivative below 1
    for (const auto& [a, b] : {std::pair(0.0, 0.0), std::pair(1e-4, 2e-4), std::pair(0.3, -0.35), std::pair(1.2, 0.9), std::pair(-2.0, 1.0)}) {
        const Swing at(a, b), a2(a + h, b), a1(a - h, b), b2(a, b + h), b1(a, b - h);
        CHECK((at.arcEndByA() - (a2.arcEnd() - a1.arcEnd()) / (2 * h)).norm() < 1e-9);
        CHECK((at.arcEndByB() - (b2.arcEnd() - b1.arcEnd()) / (2 * h)).norm() < 1e-9);
        const auto turn = [&at](const Swing& from, const Swing& to) -> Vec3 {
            const Mat3 W = (to.rotation() - from.rotation()) / (2 * h) * at.rotation().transpose();
            return {W(2, 1), W(0, 2), W(1, 0)};
        };
        CHECK((at.turnByA() - turn(a1, a2)).norm() < 1e-9);
        CHECK((at.turnByB() - turn(b1, b2)).norm() < 1e-9);
    }
}
