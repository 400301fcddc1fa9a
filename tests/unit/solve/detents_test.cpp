#include <catch2/catch.hpp>

#include "core/solve/solve.h"
#include "core/units/tolerances.h"
#include "tests/support/example_mounts.h"
#include "tests/support/mount_families.h"

using namespace hither;
using namespace hither::test;

namespace {

Target targetAt(const Chain& chain, const Eigen::VectorXd& q) {
    const Pose X = forward(chain, q).last();
    Target target;
    target.p_W = X.translation();
    target.d_W = X.linear() * chain.operatingAxis;
    return target;
}

void checkOnSteps(const Chain& chain, const Solution& s) {
    CHECK(s.snapped);
    for (int i = 0; i < chain.freedomCount(); ++i) {
        const Freedom& f = chain.freedoms[static_cast<std::size_t>(i)];
        if (!f.step) continue;
        CHECK(std::abs(s.q[i] - detentValue(f, nearestDetent(f, s.q[i]))) < 1e-12);
        CHECK(outside(chain, s.q, i) <= 1e-12);
    }
}

}  // namespace

TEST_CASE("detented joints stand on their steps and the free ones make up for it", "[solve]") {
    // Slide, turn, ball and post give freedom enough for two rosettes of 15 degrees.
    ChainBuilder b;
    b.slide(Vec3::UnitX(), 0, 0.4).turn(Vec3::UnitX()).fixed(Vec3(0, 0, 0.04)).turn(Vec3::UnitZ())
        .fixed(Vec3(0, 0, 0.1)).turn(Vec3::UnitX(), radians(-90), radians(90)).detent(radians(15))
        .fixed(Vec3(0, 0, 0.12)).turn(Vec3::UnitY(), radians(-90), radians(90)).detent(radians(15))
        .slide(Vec3::UnitZ(), 0.1, 0.3).ball(radians(60)).fixed(Vec3(0, 0, 0.05));
    const Chain chain = b.made();
    std::mt19937 random(31);
    int met = 0;
    for (int n = 0; n < 30; ++n) {
        const Target target = targetAt(chain, 0.5 * (randomValues(chain, random) + middleValues(chain)));
        const SolveReport report = solve(chain, middleValues(chain), target);
        REQUIRE(report.status == SolveReport::Status::solved);
        for (const Solution& s : report.solutions) checkOnSteps(chain, s);
        const Solution& best = report.solutions.front();
        if (best.position_m <= tolerance::solvePosition_m && best.angle_rad <= tolerance::solveAngle_rad) ++met;
        SolveOptions continuous;
        continuous.snapDetents = false;
        const SolveReport between = solve(chain, middleValues(chain), target, continuous);
        REQUIRE_FALSE(between.solutions.empty());
        CHECK_FALSE(between.solutions.front().snapped);
    }
    CHECK(met >= 29);
}

TEST_CASE("what the steps leave is reported", "[solve]") {
    // A rosette of 10 degrees carrying a 0.2 m arm: 14 degrees is 4 degrees from the nearest step.
    const Chain chain = ChainBuilder().turn(Vec3::UnitY(), radians(-90), radians(90)).detent(radians(10)).fixed(Vec3(0, 0, 0.2)).axis(Vec3::UnitZ()).made();
    const Target target = targetAt(chain, Eigen::VectorXd::Constant(1, radians(14)));
    const SolveReport report = solve(chain, Eigen::VectorXd::Zero(1), target);
    CHECK(report.status == SolveReport::Status::solved);
    REQUIRE(report.solutions.size() == 1);
    const Solution& s = report.solutions.front();
    CHECK(s.q[0] == Approx(radians(10)));
    CHECK(s.angle_rad == Approx(radians(4)));
    CHECK(s.position_m == Approx(2 * 0.2 * std::sin(radians(2))));
    CHECK(s.snapped);
}

TEST_CASE("steps of a post count from its shortest and end at its longest", "[solve]") {
    const Chain chain = ChainBuilder().slide(Vec3::UnitZ(), 0.05, 0.14).detent(0.02).axis(Vec3::UnitZ()).made();
    Target target;
    target.d_W = Vec3::UnitZ();
    target.p_W = Vec3(0, 0, 0.14);
    const SolveReport report = solve(chain, Eigen::VectorXd::Constant(1, 0.05), target);
    REQUIRE(report.solutions.size() == 1);
    CHECK(report.solutions.front().q[0] == Approx(0.13));
    CHECK(report.solutions.front().position_m == Approx(0.01));
}

TEST_CASE("the nearest setting out of reach stands on steps too", "[solve]") {
    const Chain chain = ChainBuilder().turn(Vec3::UnitY(), radians(-30), radians(30)).detent(radians(12)).slide(Vec3::UnitZ(), 0.1, 0.3).axis(Vec3::UnitZ()).made();
    Target target;
    target.d_W = Vec3(std::sin(radians(40)), 0, std::cos(radians(40)));
    target.p_W = 0.2 * target.d_W;
    const SolveReport report = solve(chain, Eigen::Vector2d(0, 0.2), target);
    CHECK(report.status == SolveReport::Status::nearOnly);
    REQUIRE(report.nearest);
    CHECK(report.nearest->q[0] == Approx(radians(24)));
    CHECK(report.nearest->q[1] == Approx(0.2 * std::cos(radians(16))).epsilon(1e-6));
    REQUIRE(report.stopped.size() == 1);
    CHECK(report.stopped[0].freedom == 0);
}

TEST_CASE("a mount of shipped kind: bolt pattern, square tube and rosette all end on steps", "[solve]") {
    const ExampleMounts example;
    const ChainMade made = example.make(ExampleMounts::mount("square", {"clamp", "post", "arm", "back", "button"}));
    REQUIRE(made.chain);
    std::mt19937 random(33);
    int met = 0;
    for (int n = 0; n < 10; ++n) {
        const Target target = targetAt(*made.chain, randomValues(*made.chain, random));
        const SolveReport report = solve(*made.chain, made.q, target);
        REQUIRE(report.status == SolveReport::Status::solved);
        for (const Solution& s : report.solutions) checkOnSteps(*made.chain, s);
        if (report.solutions.front().position_m <= tolerance::solvePosition_m && report.solutions.front().angle_rad <= tolerance::solveAngle_rad) ++met;
    }
    CHECK(met >= 8);
}
