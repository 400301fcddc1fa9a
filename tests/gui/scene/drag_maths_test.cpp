#include <catch2/catch.hpp>

#include <random>

#include "app/scene/drag_maths.h"
#include "core/units/quantity.h"
#include "scene_stand.h"

using namespace hither;

namespace {

Sight toward(const Vec3& eye, const Vec3& point) { return {eye, point - eye}; }

/// The first mount of a sample that has a joint of this kind, with the joint's first freedom and the step it is.
struct Found { SetupMount mount; int first = -1, step = -1, count = 0; };
Found jointOf(const std::string& sample, ChainStep::Kind kind, int count) {
    const Plan plan = samplePlan(sample);
    const SetupMade made = makeSetup(plan, 0, shippedForTests()->body);
    REQUIRE(made.setup);
    for (const SetupMount& m : made.setup->mounts)
        for (std::size_t k = 0; k < m.chain.steps.size(); ++k)
            if (m.chain.steps[k].kind == kind && m.chain.steps[k].element >= 0) return {m, m.chain.steps[k].q0, static_cast<int>(k), count};
    FAIL("no such joint in " << sample);
    return {};
}

}  // namespace

TEST_CASE("A pointer carried round an axis turns by the angle it went round") {
    std::mt19937 random(3);
    std::uniform_real_distribution<double> any(-1, 1);
    int compared = 0;
    for (int i = 0; i < 200; ++i) {
        const Vec3 pivot(any(random), any(random), any(random)), axis = Vec3(any(random), any(random), any(random)).normalized();
        const Vec3 out = axis.unitOrthogonal() * (0.05 + 0.2 * std::abs(any(random))), lift = axis * 0.3 * any(random);
        const double angle = 3 * any(random);
        const Vec3 from = pivot + lift + out, to = pivot + lift + Eigen::AngleAxisd(angle, axis) * out;
        const Vec3 eye(3 + any(random), any(random), any(random));
        const auto turn = turnBetween(toward(eye, from), toward(eye, to), pivot, axis, from);
        if (!turn) continue;  // edge-on
        ++compared;
        CHECK(*turn == Approx(angle).margin(1e-9));
    }
    CHECK(compared > 120);
}

TEST_CASE("A plane seen edge-on gives no turn and no point") {
    const Vec3 eye(2, 0, 0);
    CHECK_FALSE(onPlane(toward(eye, Vec3(0, 0.1, 0.01)), Vec3::Zero(), Vec3::UnitZ()));
    CHECK_FALSE(turnBetween(toward(eye, Vec3(0, 0.1, 0)), toward(eye, Vec3(0, -0.1, 0)), Vec3::Zero(), Vec3::UnitZ(), Vec3(0, 0.1, 0)));
    CHECK_FALSE(onPlane(toward(eye, Vec3(3, 0, 0)), Vec3::Zero(), Vec3::UnitX()));  // behind the eye
    const auto hit = onPlane(toward(eye, Vec3(0, 0.2, 0.3)), Vec3::Zero(), Vec3::UnitX());
    REQUIRE(hit);
    CHECK((*hit - Vec3(0, 0.2, 0.3)).norm() < 1e-12);
}

TEST_CASE("Along an axis the point nearest the line of sight is taken") {
    std::mt19937 random(5);
    std::uniform_real_distribution<double> any(-1, 1);
    for (int i = 0; i < 100; ++i) {
        const Vec3 P(any(random), any(random), any(random)), A = Vec3(any(random), any(random), any(random)).normalized();
        const Sight sight{Vec3(3, any(random), any(random)), Vec3(-1, 0.3 * any(random), 0.3 * any(random))};
        const auto s = alongAxis(sight, P, A);
        REQUIRE(s);
        // The line between the two nearest points stands square on both.
        const Vec3 on = P + *s * A, D = sight.direction_W.normalized(), on2 = sight.eye_W + D * D.dot(on - sight.eye_W);
        CHECK(std::abs((on - on2).dot(A)) < 1e-9);
    }
    CHECK_FALSE(alongAxis({Vec3(3, 0, 0), Vec3(-1, 0, 0)}, Vec3::Zero(), Vec3::UnitX()));
}

TEST_CASE("A value clicks onto the nearest step and stays within its limits") {
    Freedom hinge;
    hinge.min = radians(-50);
    hinge.max = radians(100);
    CHECK(clicked(hinge, radians(33)) == Approx(radians(33)));
    CHECK(clicked(hinge, radians(140)) == Approx(radians(100)));
    hinge.step = radians(15);
    CHECK(clicked(hinge, radians(33)) == Approx(radians(30)));
    CHECK(clicked(hinge, radians(140)) == Approx(radians(90)));   // the last step before the stop
    CHECK(clicked(hinge, radians(-49)) == Approx(radians(-45)));
    Freedom round;
    round.fullTurn = true;
    CHECK(clicked(round, radians(190)) == Approx(radians(-170)));
    Freedom post;
    post.isAngle = false;
    post.min = 0.1;
    post.max = 0.3;
    post.step = 0.025;
    CHECK(clicked(post, 0.163) == Approx(0.175));
}

TEST_CASE("How a point of a mount moves agrees with moving it a little") {
    for (const char* sample : {"elbow_switch_on_chair", "two_switches_on_tray", "head_switch_on_bed"}) {
        const SetupMade made = makeSetup(samplePlan(sample), 0, shippedForTests()->body);
        REQUIRE(made.setup);
        for (const SetupMount& m : made.setup->mounts) {
            const ChainPoses poses = forward(m.chain, m.q);
            const Vec3 p_F(0.02, -0.03, 0.05);
            for (const int frame : {static_cast<int>(m.chain.steps.size()), m.chain.partFrame.back(), m.chain.partFrame[1]}) {
                const auto at = [&](const Eigen::VectorXd& q) { return Vec3(forward(m.chain, q).X_WF[static_cast<std::size_t>(frame)] * p_F); };
                const int n = m.chain.freedomCount();
                const Eigen::Matrix3Xd J = pointJacobian(m.chain, m.q, poses, frame, at(m.q), 0, n);
                for (int i = 0; i < n; ++i) {
                    const double h = 1e-6;
                    Eigen::VectorXd more = m.q, less = m.q;
                    more[i] += h;
                    less[i] -= h;
                    const Vec3 slope = (at(more) - at(less)) / (2 * h);
                    CHECK((J.col(i) - slope).norm() < 1e-6 * std::max(1.0, slope.norm()));
                }
            }
        }
    }
}

TEST_CASE("A ball pulled by its far end follows within its cone and no other joint moves") {
    const Found f = jointOf("elbow_switch_on_chair", ChainStep::Kind::ball, 3);
    const Chain& chain = f.mount.chain;
    const int frame = static_cast<int>(chain.steps.size());
    const Vec3 sight = Vec3(-1, 0.4, -0.3).normalized();
    const Vec3 end = forward(chain, f.mount.q).last().translation();
    const Vec3 across = sight.unitOrthogonal();
    // Somewhere it can be: where a small swing takes it, plus anything along the sight.
    Eigen::VectorXd other = f.mount.q;
    other[f.first] += 0.08;
    other[f.first + 1] -= 0.06;
    other = clamped(chain, other);
    const Vec3 goal = forward(chain, other).last().translation() + 0.2 * sight;
    const Eigen::VectorXd q = pulled(chain, f.mount.q, frame, Vec3::Zero(), f.first, f.count, goal, sight);
    const Vec3 left = goal - forward(chain, q).last().translation();
    CHECK((left - sight * sight.dot(left)).norm() < 1e-5);
    for (int i = 0; i < chain.freedomCount(); ++i)
        if (i < f.first || i >= f.first + f.count) CHECK(q[i] == f.mount.q[i]);
    // Far out of reach it stops at the rim of its cone.
    const Eigen::VectorXd far = pulled(chain, f.mount.q, frame, Vec3::Zero(), f.first, f.count, end + 5 * across, sight);
    for (int i = 0; i < chain.freedomCount(); ++i) CHECK(outside(chain, far, i) < 1e-9);
}
