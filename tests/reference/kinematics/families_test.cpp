// Ten thousand reachable targets on each of three families of mounts: every target comes from
// random values within the limits, so a setting exists; the protocol of the robotics literature (Beeson
// and Ames, TRAC-IK, Humanoids 2015: random reachable targets, starting from mid-range).
#include <catch2/catch.hpp>

#include "core/solve/solve.h"
#include "tests/support/mount_families.h"

using namespace hither;
using namespace hither::test;

TEST_CASE("10,000 reachable targets on each of three families of mounts are solved within limits", "[kinematics]") {
    constexpr int targets = 10000;
    for (const Family& family : mountFamilies()) {
        const Chain& chain = family.chain;
        std::mt19937 random(1);
        SolveOptions options;
        options.most = 1;
        const Eigen::VectorXd present = middleValues(chain);
        int solved = 0, outsideLimits = 0;
        for (int n = 0; n < targets; ++n) {
            const Pose X = forward(chain, randomValues(chain, random)).last();
            Target target;
            target.p_W = X.translation();
            target.d_W = X.linear() * chain.operatingAxis;
            const SolveReport report = solve(chain, present, target, options);
            if (report.solutions.empty()) continue;
            const Eigen::VectorXd& q = report.solutions.front().q;
            for (int i = 0; i < chain.freedomCount(); ++i) {
                if (outside(chain, q, i) > 1e-12) { ++outsideLimits; break; }
            }
            // Measured anew, not taken from the report: 0.01 mm and 0.01 degrees.
            const Pose reached = forward(chain, q).last();
            const Vec3 axis = reached.linear() * chain.operatingAxis;
            const double angle = std::atan2(axis.cross(target.d_W).norm(), axis.dot(target.d_W));
            if ((reached.translation() - target.p_W).norm() <= 1e-5 && angle <= radians(0.01)) ++solved;
        }
        INFO(family.name << ": " << solved << " of " << targets);
        CHECK(solved >= 9999);
        CHECK(outsideLimits == 0);
    }
}

TEST_CASE("the same target gives the same answers every run", "[kinematics]") {
    for (const Family& family : mountFamilies()) {
        const Chain& chain = family.chain;
        std::mt19937 random(5);
        for (int n = 0; n < 20; ++n) {
            const Pose X = forward(chain, randomValues(chain, random)).last();
            Target target;
            target.p_W = X.translation();
            target.d_W = X.linear() * chain.operatingAxis;
            const SolveReport a = solve(chain, middleValues(chain), target), b = solve(chain, middleValues(chain), target);
            REQUIRE(a.solutions.size() == b.solutions.size());
            CHECK(a.iterations == b.iterations);
            for (std::size_t s = 0; s < a.solutions.size(); ++s) CHECK(a.solutions[s].q == b.solutions[s].q);
        }
    }
}
