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

/// Measured anew from the chain, not taken from the report.
void checkSolution(const Chain& chain, const Target& target, const Solution& s) {
    const Pose X = forward(chain, s.q).last();
    const Vec3 axis = X.linear() * chain.operatingAxis;
    const double position = (X.translation() - target.p_W).norm();
    const double angle = std::atan2(axis.cross(target.d_W).norm(), axis.dot(target.d_W));
    CHECK(position <= tolerance::solvePosition_m);
    CHECK(angle <= tolerance::solveAngle_rad);
    CHECK(s.position_m == Approx(position).margin(1e-12));
    for (int i = 0; i < chain.freedomCount(); ++i) CHECK(outside(chain, s.q, i) <= 1e-12);
}

bool distinct(const Chain& chain, const Eigen::VectorXd& a, const Eigen::VectorXd& b) {
    for (int i = 0; i < chain.freedomCount(); ++i) {
        const Freedom& f = chain.freedoms[static_cast<std::size_t>(i)];
        const double d = std::abs(f.fullTurn ? std::remainder(a[i] - b[i], 2 * pi) : a[i] - b[i]);
        if (d > (f.isAngle ? tolerance::sameSolutionAngle_rad : tolerance::sameSolutionSlide_m)) return true;
    }
    return false;
}

}  // namespace

TEST_CASE("reachable targets are solved within limits, by several distinct settings", "[solve]") {
    for (const Family& family : mountFamilies()) {
        std::mt19937 random(21);
        for (int n = 0; n < 40; ++n) {
            const Chain& chain = family.chain;
            const Target target = targetAt(chain, randomValues(chain, random));
            const SolveReport report = solve(chain, middleValues(chain), target);
            INFO(family.name << " target " << n);
            REQUIRE(report.status == SolveReport::Status::solved);
            CHECK(report.solutions.size() == 8);
            CHECK_FALSE(report.nearest);
            for (std::size_t a = 0; a < report.solutions.size(); ++a) {
                checkSolution(chain, target, report.solutions[a]);
                for (std::size_t b = a + 1; b < report.solutions.size(); ++b) CHECK(distinct(chain, report.solutions[a].q, report.solutions[b].q));
            }
        }
    }
}

TEST_CASE("the switch's operating axis ends along the person's movement", "[solve]") {
    const ExampleMounts example;
    const ChainMade made = example.make(ExampleMounts::mount("rail", {"clamp", "arm", "back", "button"}));
    REQUIRE(made.chain);
    std::mt19937 random(6);
    for (int n = 0; n < 20; ++n) {
        const Target target = targetAt(*made.chain, randomValues(*made.chain, random));
        SolveOptions options;
        options.snapDetents = false;
        const SolveReport report = solve(*made.chain, made.q, target, options);
        REQUIRE(report.status == SolveReport::Status::solved);
        for (const Solution& s : report.solutions) checkSolution(*made.chain, target, s);
    }
}

TEST_CASE("a present setting that meets the target is kept as it is", "[solve]") {
    for (const Family& family : mountFamilies()) {
        const Chain& chain = family.chain;
        const Eigen::VectorXd q = middleValues(chain);
        SolveOptions options;
        options.most = 1;
        const SolveReport report = solve(chain, q, targetAt(chain, q), options);
        REQUIRE(report.solutions.size() == 1);
        CHECK((report.solutions.front().q - q).norm() < 1e-9);
        CHECK(report.starts == 1);
    }
}

TEST_CASE("a small move of the target moves the joints a little", "[solve]") {
    // Parts must not jump: 1 mm at the face takes no joint further than 20 mm of movement at the far end.
    for (const Family& family : mountFamilies()) {
        const Chain& chain = family.chain;
        std::mt19937 random(8);
        int followed = 0;
        for (int n = 0; n < 50; ++n) {
            const Eigen::VectorXd q = 0.5 * (randomValues(chain, random) + middleValues(chain));
            Target target = targetAt(chain, q);
            target.p_W += 0.001 * unitVector(random);
            SolveOptions options;
            options.most = 1;
            const SolveReport report = solve(chain, q, target, options);
            if (report.solutions.empty()) continue;
            double moved = 0;
            for (int i = 0; i < chain.freedomCount(); ++i) {
                const Freedom& f = chain.freedoms[static_cast<std::size_t>(i)];
                const double d = report.solutions.front().q[i] - q[i];
                moved = std::max(moved, f.weight * std::abs(f.fullTurn ? std::remainder(d, 2 * pi) : d));
            }
            if (moved < 0.02) ++followed;
        }
        INFO(family.name);
        CHECK(followed >= 48);
    }
}

TEST_CASE("kept freedoms stay where they are, even beyond their limits", "[solve]") {
    Chain chain = mountFamilies().front().chain;
    std::mt19937 random(12);
    Eigen::VectorXd q = randomValues(chain, random);
    Eigen::VectorXd present = middleValues(chain);
    for (int i : {0, 1}) {
        chain.freedoms[static_cast<std::size_t>(i)].kept = true;
        present[i] = q[i] = i == 0 ? 0.5 : 0.7;  // 0.5 m is beyond the rail's end
    }
    const SolveReport report = solve(chain, present, targetAt(chain, q));
    REQUIRE(report.status == SolveReport::Status::solved);
    for (const Solution& s : report.solutions) {
        CHECK(s.q[0] == 0.5);
        CHECK(s.q[1] == 0.7);
    }
    for (Freedom& f : chain.freedoms) f.kept = true;
    const SolveReport frozen = solve(chain, q, targetAt(chain, q));
    REQUIRE(frozen.solutions.size() == 1);
    CHECK(frozen.solutions.front().q == q);
    const SolveReport elsewhere = solve(chain, present, targetAt(chain, q));
    CHECK(elsewhere.status == SolveReport::Status::nearOnly);
    REQUIRE(elsewhere.nearest);
    CHECK(elsewhere.nearest->q == present);
}

TEST_CASE("a turn without any say keeps its present value", "[solve]") {
    const Chain chain = mountFamilies().front().chain;
    std::mt19937 random(13);
    Eigen::VectorXd present = middleValues(chain);
    const int last = chain.freedomCount() - 1;  // the switch on its back, about its own middle
    present[last] = 0.4;
    const SolveReport report = solve(chain, present, targetAt(chain, randomValues(chain, random)));
    REQUIRE_FALSE(report.solutions.empty());
    for (const Solution& s : report.solutions) CHECK(s.q[last] == Approx(0.4));
}

TEST_CASE("a full pose is met with its roll", "[solve]") {
    for (const Family& family : mountFamilies()) {
        const Chain& chain = family.chain;
        std::mt19937 random(14);
        for (int n = 0; n < 20; ++n) {
            const Pose X = forward(chain, randomValues(chain, random)).last();
            Target target;
            target.p_W = X.translation();
            target.R_W = X.linear();
            SolveOptions options;
            options.most = 1;
            const SolveReport report = solve(chain, middleValues(chain), target, options);
            REQUIRE(report.solutions.size() == 1);
            const Pose Y = forward(chain, report.solutions.front().q).last();
            CHECK((Y.matrix() - X.matrix()).norm() < 5e-6);
        }
    }
}

TEST_CASE("out of reach: nearest pose, the joints at their stops, and how much is missing", "[solve]") {
    // A post of 0.1 to 0.3 m on a hinge of +-30 degrees about y at the origin, pointing up.
    const Chain chain = ChainBuilder().turn(Vec3::UnitY(), radians(-30), radians(30)).slide(Vec3::UnitZ(), 0.1, 0.3).axis(Vec3::UnitZ()).made();
    Target far;
    far.p_W = Vec3(0, 0, 1);
    far.d_W = Vec3::UnitZ();
    const SolveReport up = solve(chain, Eigen::Vector2d(0.1, 0.2), far);
    CHECK(up.status == SolveReport::Status::nearOnly);
    REQUIRE(up.nearest);
    CHECK(up.nearest->q[0] == Approx(0).margin(1e-6));
    CHECK(up.nearest->q[1] == Approx(0.3));
    CHECK(up.nearest->position_m == Approx(0.7));
    CHECK(up.nearest->angle_rad == Approx(0).margin(1e-6));
    CHECK(up.reachShort_m == Approx(0.7));
    REQUIRE(up.stopped.size() == 1);
    CHECK(up.stopped[0].freedom == 1);
    CHECK(up.stopped[0].atMax);

    Target aside;  // 60 degrees over: the hinge stops at 30, and the post is long enough
    aside.p_W = 0.25 * Vec3(std::sin(radians(60)), 0, std::cos(radians(60)));
    aside.d_W = Vec3(std::sin(radians(60)), 0, std::cos(radians(60)));
    const SolveReport over = solve(chain, Eigen::Vector2d(0, 0.2), aside);
    CHECK(over.status == SolveReport::Status::nearOnly);
    REQUIRE(over.nearest);
    CHECK(over.nearest->q[0] == Approx(radians(30)));
    CHECK(over.nearest->q[1] == Approx(0.25 * std::cos(radians(30))));
    CHECK(over.nearest->angle_rad == Approx(radians(30)));
    CHECK(over.reachShort_m == 0);
    REQUIRE(over.stopped.size() == 1);
    CHECK(over.stopped[0].freedom == 0);
    CHECK(over.stopped[0].atMax);

    Target below = aside;  // the same on the other side
    below.p_W.x() *= -1;
    below.d_W.x() *= -1;
    const SolveReport under = solve(chain, Eigen::Vector2d(0, 0.2), below);
    REQUIRE(under.stopped.size() == 1);
    CHECK_FALSE(under.stopped[0].atMax);
}

TEST_CASE("a joint that rests at its limit without holding anything back is not blamed", "[solve]") {
    // The hinge stands at its maximum, exactly where it should; only the post is too short.
    const Chain chain = ChainBuilder().turn(Vec3::UnitY(), 0, radians(30)).slide(Vec3::UnitZ(), 0.1, 0.3).axis(Vec3::UnitZ()).made();
    const Vec3 along(std::sin(radians(30)), 0, std::cos(radians(30)));
    Target target;
    target.p_W = 0.5 * along;
    target.d_W = along;
    const SolveReport report = solve(chain, Eigen::Vector2d(0.1, 0.2), target);
    REQUIRE(report.nearest);
    CHECK(report.nearest->q[0] == Approx(radians(30)).margin(1e-6));
    REQUIRE(report.stopped.size() == 1);
    CHECK(report.stopped[0].freedom == 1);
}

TEST_CASE("a ball at its cone is a stop", "[solve]") {
    const Chain chain = ChainBuilder().ball(radians(40)).fixed(Vec3(0, 0, 0.2)).axis(Vec3::UnitZ()).made();
    Target target;
    const double over = radians(70);
    target.d_W = Vec3(std::sin(over) * std::cos(1.0), std::sin(over) * std::sin(1.0), std::cos(over));
    target.p_W = 0.2 * target.d_W;
    const SolveReport report = solve(chain, Eigen::Vector3d::Zero(), target);
    CHECK(report.status == SolveReport::Status::nearOnly);
    REQUIRE(report.nearest);
    CHECK(std::hypot(report.nearest->q[0], report.nearest->q[1]) == Approx(radians(40)));
    CHECK(report.nearest->angle_rad == Approx(radians(30)).margin(1e-6));
    REQUIRE(report.stopped.size() == 1);
    CHECK(report.stopped[0].freedom == 0);
}

TEST_CASE("a target exactly at a limit is met", "[solve]") {
    std::mt19937 random(15);
    for (const Family& family : mountFamilies()) {
        const Chain& chain = family.chain;
        Eigen::VectorXd q = randomValues(chain, random);
        q[0] = chain.freedoms[0].max;
        const Target target = targetAt(chain, q);
        const SolveReport report = solve(chain, middleValues(chain), target);
        REQUIRE(report.status == SolveReport::Status::solved);
        checkSolution(chain, target, report.solutions.front());
    }
    // And at full stretch of a two-link arm.
    const Chain arm = ChainBuilder().turn(Vec3::UnitZ()).fixed(Vec3(0.2, 0, 0)).turn(Vec3::UnitZ()).fixed(Vec3(0.1, 0, 0)).turn(Vec3::UnitZ()).axis(Vec3::UnitX()).made();
    Target stretched;
    stretched.p_W = Vec3(0, 0.3, 0);
    stretched.d_W = Vec3::UnitX();
    CHECK(solve(arm, Eigen::Vector3d(0.3, 0.4, 0.1), stretched).status == SolveReport::Status::solved);
}

TEST_CASE("ranking: clearance first, then margin, then nearness to the present setting", "[solve]") {
    const Chain chain = mountFamilies()[2].chain;
    std::mt19937 random(16);
    const Eigen::VectorXd present = middleValues(chain);
    const Target target = targetAt(chain, randomValues(chain, random));
    const SolveReport plain = solve(chain, present, target);
    REQUIRE(plain.solutions.size() > 2);
    for (std::size_t i = 1; i < plain.solutions.size(); ++i) {
        CHECK(plain.solutions[i - 1].limitMargin >= plain.solutions[i].limitMargin - 0.05);
        CHECK(plain.solutions[i].limitMargin >= 0);
        CHECK(plain.solutions[i].limitMargin <= 0.5);
    }
    SolveOptions options;
    options.clearance = [](const Eigen::VectorXd& q) { return 0.5 * q[0]; };  // the farther along the rail the better
    const SolveReport cleared = solve(chain, present, target, options);
    REQUIRE(cleared.solutions.size() > 2);
    for (std::size_t i = 1; i < cleared.solutions.size(); ++i) {
        CHECK(cleared.solutions[i - 1].clearance_m >= cleared.solutions[i].clearance_m - 0.001);
        CHECK(cleared.solutions[i].clearance_m == Approx(0.5 * cleared.solutions[i].q[0]));
    }
}

TEST_CASE("freedoms to spare are used for clearance, the face stays where it is", "[solve]") {
    const Chain chain = mountFamilies()[1].chain;  // gooseneck
    SolveOptions plain, cleared;
    plain.most = cleared.most = 1;
    cleared.clearance = [](const Eigen::VectorXd& q) { return 0.1 * (q[0] - 0.05); };
    int better = 0;
    std::mt19937 random(17);
    for (int n = 0; n < 20; ++n) {
        Eigen::VectorXd q = 0.5 * (randomValues(chain, random) + middleValues(chain));
        q[0] = 0.1;
        const Target target = targetAt(chain, q);
        const SolveReport a = solve(chain, q, target, plain), b = solve(chain, q, target, cleared);
        REQUIRE(a.solutions.size() == 1);
        REQUIRE(b.solutions.size() == 1);
        checkSolution(chain, target, b.solutions.front());
        CHECK(b.solutions.front().clearance_m >= cleared.clearance(a.solutions.front().q) - 1e-9);
        if (b.solutions.front().clearance_m > cleared.clearance(a.solutions.front().q) + 0.002) ++better;
    }
    CHECK(better >= 15);
}

TEST_CASE("cancelling stops at once and says so", "[solve]") {
    const Chain chain = mountFamilies().front().chain;
    Target far;
    far.p_W = Vec3(5, 5, 5);
    SolveOptions options;
    int asked = 0;
    options.cancelled = [&asked] { return ++asked > 3; };
    const SolveReport report = solve(chain, middleValues(chain), far, options);
    CHECK(report.status == SolveReport::Status::cancelled);
    CHECK(report.starts == 3);
}

TEST_CASE("the longest mount allowed is solved too", "[solve]") {
    const ExampleMounts example;
    Mount mount = ExampleMounts::mount("rail", {"clamp"});
    MountPart arm;
    arm.part = "arm";
    mount.parts.resize(mostPartsInMount, arm);
    const ChainMade made = example.make(mount);
    REQUIRE(made.chain);
    CHECK(made.chain->freedomCount() > 400);
    std::mt19937 random(18);
    const Target target = targetAt(*made.chain, randomValues(*made.chain, random));
    SolveOptions options;
    options.most = 1;
    const SolveReport report = solve(*made.chain, made.q, target, options);
    REQUIRE(report.solutions.size() == 1);
    checkSolution(*made.chain, target, report.solutions.front());
}
