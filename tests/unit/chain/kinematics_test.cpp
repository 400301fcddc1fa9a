#include <catch2/catch.hpp>

#include "core/units/tolerances.h"
#include "tests/support/chain_builder.h"
#include "tests/support/example_mounts.h"
#include "tests/support/mount_families.h"

using namespace hither;
using namespace hither::test;

namespace {

/// Turning vector of B against A.
Vec3 turnBetween(const Mat3& A, const Mat3& B) {
    const Eigen::AngleAxisd aa(Mat3(B * A.transpose()));
    return aa.angle() * aa.axis();
}

void checkJacobian(const Chain& chain, const Eigen::VectorXd& q) {
    const Eigen::Matrix<double, 6, Eigen::Dynamic> J = jacobian(chain, q, forward(chain, q));
    for (int i = 0; i < chain.freedomCount(); ++i) {
        const bool bend = !chain.freedoms[static_cast<std::size_t>(i)].isAngle && chain.freedoms[static_cast<std::size_t>(i)].min < -1;
        const double h = bend ? 1e-4 : 1e-5;
        Eigen::VectorXd up = q, down = q;
        up[i] += h;
        down[i] -= h;
        const Pose X2 = forward(chain, up).last(), X1 = forward(chain, down).last();
        CHECK((J.col(i).head<3>() - (X2.translation() - X1.translation()) / (2 * h)).norm() < 1e-8);
        CHECK((J.col(i).tail<3>() - turnBetween(X1.linear(), X2.linear()) / (2 * h)).norm() < 1e-8);
    }
}

}  // namespace

TEST_CASE("the Jacobian agrees with central differences for every element", "[chain]") {
    const ExampleMounts example;
    std::mt19937 random(2);
    for (const char* attachment : {"rail", "edge", "face", "cloth"}) {
        const ChainMade made = example.make(ExampleMounts::mount(attachment, {"clamp", "arm", "post", "neck", "back", "button"}));
        REQUIRE(made.chain);
        for (int n = 0; n < 5; ++n) checkJacobian(*made.chain, randomValues(*made.chain, random));
        checkJacobian(*made.chain, made.q);  // home: straight neck, balls upright
    }
    for (const Family& family : mountFamilies()) checkJacobian(family.chain, randomValues(family.chain, random));
}

TEST_CASE("bends shown as capsules stay within the promised distance of the neck", "[chain]") {
    std::mt19937 random(4);
    const double radius = 0.007;
    for (int n = 0; n < 20; ++n) {
        const Chain chain = ChainBuilder().neck(0.5, 0.04, radius).made();
        Eigen::VectorXd q = randomValues(chain, random);
        if (n == 0) q.setZero();
        if (n == 1) q *= 1e-9;
        if (n == 2) { q.setZero(); q[0] = q[2] = q[4] = 25; }  // three times round as tight as it goes
        const ChainPoses poses = forward(chain, q);
        const std::vector<PlacedSolid> placed = placedSolids(chain, q, poses);
        if (n < 2) CHECK(placed.size() == 3);
        // Walk the true middle line with the chain itself, cut short.
        for (int arc = 0; arc < 3; ++arc) {
            for (int i = 0; i <= 200; ++i) {
                ChainStep cut = chain.steps[static_cast<std::size_t>(arc)];
                cut.arc *= i / 200.0;
                Chain part;
                part.steps = {cut};
                part.steps[0].q0 = 0;
                const Vec3 p = poses.X_WF[static_cast<std::size_t>(arc)] * Vec3(forward(part, q.segment(2 * arc, 2)).last().translation());
                double least = 1e9;
                for (const PlacedSolid& s : placed) {
                    CHECK(s.solid_W.radius == radius);
                    const Vec3 z = s.solid_W.X_FG.linear().col(2), c = s.solid_W.X_FG.translation();
                    const double along = std::clamp(z.dot(p - c), -s.solid_W.half.z(), s.solid_W.half.z());
                    least = std::min(least, (c + along * z - p).norm());
                }
                if (least > tolerance::bendSagitta_m + 1e-12) FAIL("a point of the neck is " << least << " m from its capsules");
            }
        }
        CHECK(placed.size() < 200);
    }
}

TEST_CASE("values are brought inside boxes and discs, full turns are wrapped", "[chain]") {
    const Chain chain = ChainBuilder().slide(Vec3::UnitX(), 0, 0.4).turn(Vec3::UnitX()).ball(0.5).turn(Vec3::UnitY(), -1, 2).made();
    Eigen::VectorXd q(6);
    q << 0.6, 3 * pi + 0.25, 0.6, -0.8, -3 * pi, -1.5;
    CHECK(outside(chain, q, 0) == Approx(0.2));
    CHECK(outside(chain, q, 1) == 0);
    CHECK(outside(chain, q, 2) == Approx(0.5));
    CHECK(outside(chain, q, 3) == 0);
    CHECK(outside(chain, q, 5) == Approx(0.5));
    const Eigen::VectorXd inside = clamped(chain, q);
    CHECK(inside[0] == 0.4);
    CHECK(inside[1] == Approx(-pi + 0.25));
    CHECK(inside[2] == Approx(0.3));
    CHECK(inside[3] == Approx(-0.4));
    CHECK(inside[4] == Approx(pi));
    CHECK(inside[5] == -1);
    for (int i = 0; i < 6; ++i) CHECK(outside(chain, inside, i) < 1e-15);
}

TEST_CASE("detents: angles count from zero, slides from their shortest, none beyond the limits", "[chain]") {
    Freedom hinge;
    hinge.min = radians(-50);
    hinge.max = radians(96);
    hinge.step = radians(12);
    CHECK(nearestDetent(hinge, radians(17)) == 1);
    CHECK(nearestDetent(hinge, radians(19)) == 2);
    CHECK(nearestDetent(hinge, radians(-50)) == -4);  // -48, not -60
    CHECK(nearestDetent(hinge, radians(96)) == 8);    // exactly at the limit counts
    CHECK(detentValue(hinge, -4) == Approx(radians(-48)));
    Freedom post;
    post.isAngle = false;
    post.min = 0.05;
    post.max = 0.15;
    post.step = 0.02;
    CHECK(nearestDetent(post, 0.085) == 2);
    CHECK(detentValue(post, 2) == Approx(0.09));
    CHECK(nearestDetent(post, 9) == 5);
    Freedom turn;
    turn.min = -pi;
    turn.max = pi;
    turn.fullTurn = true;
    turn.step = pi / 2;
    CHECK(nearestDetent(turn, 3) == 2);
}
