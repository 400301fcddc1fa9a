// The pieces of the solver: flat chain, starting points, straightened reach, margins.
#include <catch2/catch.hpp>

#include "core/solve/halton.h"
#include "core/solve/margin.h"
#include "core/solve/reach.h"
#include "core/solve/residual.h"
#include "core/solve/starts.h"
#include "tests/support/known_arms.h"
#include "tests/support/mount_families.h"

using namespace hither;
using namespace hither::test;

TEST_CASE("the flat chain goes where the chain goes, with the same Jacobian, also with freedoms fixed", "[solve]") {
    std::mt19937 random(41);
    std::vector<Chain> chains{puma560(), panda(), nineJointMount()};
    for (const Family& family : mountFamilies()) chains.push_back(family.chain);
    for (const Chain& chain : chains) {
        for (int n = 0; n < 10; ++n) {
            const Eigen::VectorXd q = randomValues(chain, random);
            std::vector<char> fixed(static_cast<std::size_t>(chain.freedomCount()), 0);
            for (const ChainStep& step : chain.steps) {
                if (n % 2 == 0 || step.q0 < 0 || random() % 2 == 0) continue;
                const int count = step.kind == ChainStep::Kind::ball ? 3 : step.kind == ChainStep::Kind::bend ? 2 : 1;
                for (int c = 0; c < count; ++c) fixed[static_cast<std::size_t>(step.q0 + c)] = 1;
            }
            const FlatChain flat(chain, q, fixed);
            FlatChain::State state = flat.makeState();
            flat.walk(flat.values(q), state);
            const ChainPoses poses = forward(chain, q);
            CHECK((state.R - poses.last().linear()).norm() < 1e-13);
            CHECK((state.p - poses.last().translation()).norm() < 1e-13);
            const Eigen::Matrix<double, 6, Eigen::Dynamic> J = jacobian(chain, q, poses);
            int free = 0;
            for (char f : fixed) free += f ? 0 : 1;
            REQUIRE(flat.size() == free);
            for (int v = 0; v < flat.size(); ++v) {
                const Vec3 w = state.w.col(v), speed = state.v.col(v) + w.cross(state.p);
                CHECK((speed - J.col(flat.freedom(v)).head<3>()).norm() < 1e-13);
                CHECK((w - J.col(flat.freedom(v)).tail<3>()).norm() < 1e-13);
            }
        }
    }
}

TEST_CASE("the residual is zero at the target and its slope is that of its square", "[solve]") {
    std::mt19937 random(42);
    const Chain chain = nineJointMount();
    const std::vector<char> fixed(9, 0);
    for (int n = 0; n < 20; ++n) {
        const Eigen::VectorXd q = randomValues(chain, random), goal = randomValues(chain, random);
        const Pose X = forward(chain, goal).last();
        Target target;
        target.p_W = X.translation();
        target.d_W = X.linear() * chain.operatingAxis;
        if (n % 2 == 0) target.R_W = X.linear();
        const Residual residual(target, chain.operatingAxis);
        const FlatChain flat(chain, q, fixed);
        FlatChain::State state = flat.makeState();
        flat.walk(flat.values(goal), state);
        CHECK(residual.at(state).cost() < 1e-20);
        CHECK(residual.met(residual.at(state)));
        flat.walk(flat.values(q), state);
        const Residual::Value value = residual.at(state);
        CHECK_FALSE(residual.met(value));
        Mat6X J(6, flat.size());
        residual.jacobian(flat, state, J);
        for (int i = 0; i < flat.size(); ++i) {
            constexpr double h = 1e-6;
            Eigen::VectorXd up = flat.values(q), down = up;
            up[i] += h;
            down[i] -= h;
            flat.walk(up, state);
            const double above = residual.at(state).cost();
            flat.walk(down, state);
            const double slope = (above - residual.at(state).cost()) / (2 * h);
            CHECK(slope == Approx(-2 * J.col(i).dot(value.e) * flat.weight(i)).epsilon(1e-5).margin(1e-8));
        }
    }
}

TEST_CASE("exactly the wrong way round still has a way out", "[solve]") {
    const Chain chain = ChainBuilder().turn(Vec3::UnitX()).turn(Vec3::UnitY()).axis(Vec3::UnitZ()).made();
    Target target;
    target.d_W = -Vec3::UnitZ();
    const SolveReport report = solve(chain, Eigen::Vector2d::Zero(), target);
    CHECK(report.status == SolveReport::Status::solved);
}

TEST_CASE("starting points lie inside the limits, fill them evenly and never change", "[solve]") {
    const Chain chain = mountFamilies()[1].chain;
    const FlatChain flat(chain, middleValues(chain), std::vector<char>(static_cast<std::size_t>(chain.freedomCount()), 0));
    constexpr unsigned count = 256;
    Eigen::VectorXd sum = Eigen::VectorXd::Zero(flat.size());
    int inner = 0;
    for (unsigned k = 1; k <= count; ++k) {
        const Eigen::VectorXd x = startingPoint(flat, k);
        Eigen::VectorXd q(chain.freedomCount());
        flat.putValues(x, q);
        for (int i = 0; i < chain.freedomCount(); ++i) CHECK(outside(chain, q, i) <= 1e-12);
        sum += x;
        const DiscLimit& disc = chain.discs[1];
        if (std::hypot(q[disc.first], q[disc.first + 1]) < disc.radius / std::sqrt(2.0)) ++inner;
        CHECK(x == startingPoint(flat, k));
    }
    CHECK(inner == Approx(count / 2).margin(10));  // half of a disc's area is within r / sqrt 2
    for (int i = 0; i < flat.size(); ++i) {
        const Freedom& f = chain.freedoms[static_cast<std::size_t>(i)];
        CHECK(std::abs(sum[i] / count - (f.min + f.max) / 2) < 0.05 * (f.max - f.min));
    }
    // Halton 1960: base 2 runs 1/2, 1/4, 3/4, 1/8 ...; base 3 runs 1/3, 2/3, 1/9.
    CHECK(halton(1, 2) == 0.5);
    CHECK(halton(3, 2) == 0.75);
    CHECK(halton(4, 2) == 0.125);
    CHECK(halton(3, 3) == Approx(1.0 / 9));
    CHECK(primeOf(0) == 2);
    CHECK(primeOf(24) == 97);
}

TEST_CASE("the straightened reach is never less than what the chain reaches, and tight for plain arms", "[solve]") {
    std::mt19937 random(43);
    std::uniform_real_distribution<double> metres(-1, 1);
    for (const Family& family : mountFamilies()) {
        const Chain& chain = family.chain;
        const std::vector<char> none(static_cast<std::size_t>(chain.freedomCount()), 0);
        for (int n = 0; n < 200; ++n) {
            const Eigen::VectorXd q = randomValues(chain, random);
            const Vec3 face = forward(chain, q).last().translation();
            CHECK(reachShort_m(chain, q, none, face) <= 1e-12);
            const Vec3 wanted(metres(random), metres(random), metres(random));
            CHECK(reachShort_m(chain, q, none, wanted) <= (wanted - face).norm() + 1e-12);
            const std::vector<char> all(none.size(), 1);
            CHECK(reachShort_m(chain, q, all, wanted) == Approx((wanted - face).norm()));
        }
    }
    const Chain arm = planar3R();
    CHECK(reachShort_m(arm, Eigen::Vector3d::Zero(), {0, 0, 0}, Vec3(10, 0, 0)) == Approx(1));
    // On a rail 0 to 0.4 m along x, a 0.1 m stub: from 1 m along it is 0.5 m short.
    const Chain stub = ChainBuilder().slide(Vec3::UnitX(), 0, 0.4).turn(Vec3::UnitX()).fixed(Vec3(0, 0, 0.1)).made();
    CHECK(reachShort_m(stub, Eigen::Vector2d::Zero(), {0, 0}, Vec3(1, 0, 0)) == Approx(0.5));
}

TEST_CASE("margins: shares of ranges, discs by their diameter, full turns without a say", "[solve]") {
    const Chain chain = ChainBuilder().slide(Vec3::UnitX(), 0, 0.4).turn(Vec3::UnitX()).ball(1.0).made();
    const std::vector<char> none(5, 0);
    Eigen::VectorXd q(5);
    q << 0.1, 3.1, 0.3, 0.4, 3.1;
    CHECK(limitMargin(chain, q, none) == Approx(0.25));
    q[0] = 0.2;
    CHECK(limitMargin(chain, q, none) == Approx(0.25));  // the ball: (1 - 0.5) / 2
    q[2] = q[3] = 0;
    CHECK(limitMargin(chain, q, none) == Approx(0.5));
    q[0] = 0.5;
    CHECK(limitMargin(chain, q, none) == 0);
    CHECK(limitMargin(chain, q, {1, 0, 0, 0, 0}) == Approx(0.5));
    q[0] = 0.4;
    CHECK(limitPressure(chain, q, none, 0.05) == Approx(1));
    q[0] = 0.39;
    CHECK(limitPressure(chain, q, none, 0.05) == Approx(0.25));
    q[0] = 0.2;
    CHECK(limitPressure(chain, q, none, 0.05) == 0);
}
