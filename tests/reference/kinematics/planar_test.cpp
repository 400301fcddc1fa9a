// Planar arm of three links 4, 3, 2: Craig, Introduction to Robotics, MATLAB exercise; inputs as
// restated at quesba.com, answers computed from the closed form (reference-values 10.5).
#include <catch2/catch.hpp>

#include "core/solve/solve.h"
#include "tests/support/known_arms.h"

using namespace hither;
using namespace hither::test;

namespace {

Target planarTarget(double x, double y, double phi_deg) {
    Target target;
    target.p_W = Vec3(x, y, 0);
    target.d_W = Vec3(std::cos(radians(phi_deg)), std::sin(radians(phi_deg)), 0);
    return target;
}
Eigen::VectorXd degreesOf(double a, double b, double c) { return Eigen::Vector3d(radians(a), radians(b), radians(c)); }

double worstAngle_deg(const Eigen::VectorXd& q, const Eigen::VectorXd& expected) {
    double worst = 0;
    for (int i = 0; i < 3; ++i) worst = std::max(worst, std::abs(std::remainder(q[i] - expected[i], 2 * pi)));
    return degrees(worst);
}
bool has(const SolveReport& report, const Eigen::VectorXd& expected, double within_deg) {
    for (const Solution& s : report.solutions) if (worstAngle_deg(s.q, expected) < within_deg) return true;
    return false;
}

}  // namespace

TEST_CASE("planar arm: forward kinematics of Craig's exercise", "[kinematics]") {
    const Chain arm = planar3R();
    CHECK((forward(arm, degreesOf(0, 0, 0)).last().translation() - Vec3(9, 0, 0)).norm() < 1e-12);
    CHECK((forward(arm, degreesOf(10, 20, 30)).last().translation() - Vec3(7.537307, 3.926644, 0)).norm() < 1e-6);
    CHECK((forward(arm, degreesOf(90, 90, 90)).last().translation() - Vec3(-3, 2, 0)).norm() < 1e-12);
}

TEST_CASE("planar arm: both solutions are found, and no others", "[kinematics]") {
    const Chain arm = planar3R();
    const SolveReport ii = solve(arm, degreesOf(5, 5, 5), planarTarget(7.5373, 3.9266, 60));
    CHECK(ii.status == SolveReport::Status::solved);
    CHECK(ii.solutions.size() == 2);
    CHECK(has(ii, degreesOf(9.9988, 20.0020, 29.9992), 1e-3));
    CHECK(has(ii, degreesOf(27.1146, -20.0020, 52.8874), 1e-3));
    const SolveReport iii = solve(arm, degreesOf(5, 5, 5), planarTarget(-3, 2, -90));
    CHECK(iii.solutions.size() == 2);
    CHECK(has(iii, degreesOf(90, 90, 90), 1e-3));
    CHECK(has(iii, degreesOf(163.7398, -90, -163.7398), 1e-3));
}

TEST_CASE("planar arm: the stretched pose is one solution", "[kinematics]") {
    const SolveReport report = solve(planar3R(), degreesOf(20, -30, 10), planarTarget(9, 0, 0));
    CHECK(report.status == SolveReport::Status::solved);
    CHECK(report.solutions.size() == 1);
    CHECK(has(report, degreesOf(0, 0, 0), 0.2));  // a double root: a micrometre short leaves a tenth of a degree
}

TEST_CASE("planar arm: the pose out of reach has no solution and says by how much the arm is too short", "[kinematics]") {
    const SolveReport report = solve(planar3R(), degreesOf(0, 0, 0), planarTarget(-3.1245, 9.1674, -30));
    CHECK(report.status == SolveReport::Status::nearOnly);
    CHECK(report.solutions.empty());
    CHECK(report.reachShort_m == Approx(std::hypot(3.1245, 9.1674) - 9).epsilon(1e-9));
    REQUIRE(report.nearest);
    CHECK(report.nearest->position_m >= report.reachShort_m - 1e-9);
    CHECK(report.stopped.empty());  // full turns: nothing is at a limit
}

TEST_CASE("the nearest pose of limited planar arms is the one that a dense search over all angles finds", "[kinematics]") {
    // Two links of 0.2 and 0.15 m, each joint within its limits; targets far out, too near, and behind
    // the limits. The search walks a grid of 0.25 degrees with formulas of its own.
    const double limit1[2] = {radians(-40), radians(100)}, limit2[2] = {radians(-30), radians(120)};
    ChainBuilder b;
    b.turn(Vec3::UnitZ(), limit1[0], limit1[1]).fixed(Vec3(0.2, 0, 0)).turn(Vec3::UnitZ(), limit2[0], limit2[1]).fixed(Vec3(0.15, 0, 0));
    const Chain arm = b.axis(Vec3::UnitX()).made();
    std::mt19937 random(7);
    std::uniform_real_distribution<double> place(-0.5, 0.5), heading(-pi, pi);
    constexpr double angleLength = 0.1;  // how solve weighs a radian against a metre
    int unreachable = 0;
    for (int n = 0; n < 40; ++n) {
        const Vec3 p(place(random), place(random), 0);
        const double phi = heading(random);
        Target target;
        target.p_W = p;
        target.d_W = Vec3(std::cos(phi), std::sin(phi), 0);
        const SolveReport report = solve(arm, Eigen::Vector2d(0.1, 0.1), target);
        if (report.status == SolveReport::Status::solved) continue;
        ++unreachable;
        double least = 1e9;
        constexpr int cells = 600;
        for (int i = 0; i <= cells; ++i) {
            for (int j = 0; j <= cells; ++j) {
                const double q1 = limit1[0] + (limit1[1] - limit1[0]) * i / cells, q2 = limit2[0] + (limit2[1] - limit2[0]) * j / cells;
                const double x = 0.2 * std::cos(q1) + 0.15 * std::cos(q1 + q2), y = 0.2 * std::sin(q1) + 0.15 * std::sin(q1 + q2);
                const double turn = std::remainder(phi - q1 - q2, 2 * pi);
                least = std::min(least, std::hypot(std::hypot(p.x() - x, p.y() - y), angleLength * turn));
            }
        }
        REQUIRE(report.nearest);
        const double found = std::hypot(report.nearest->position_m, angleLength * report.nearest->angle_rad);
        CHECK(found <= least + 1e-9);
        // Within half a cell of the best point the residual changes by at most (reach + angleLength) times its turns.
        CHECK(found >= least - (0.35 + 0.15 + 2 * angleLength) * radians(150) / cells / 2);
        for (const Stopped& stop : report.stopped) {
            const Freedom& f = arm.freedoms[static_cast<std::size_t>(stop.freedom)];
            CHECK(report.nearest->q[stop.freedom] == Approx(stop.atMax ? f.max : f.min).margin(1e-9));
        }
    }
    CHECK(unreachable >= 35);
}
