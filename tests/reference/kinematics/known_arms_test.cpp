// Poses and Jacobians of arms in the literature.
#include <catch2/catch.hpp>

#include "core/solve/solve.h"
#include "core/units/tolerances.h"
#include "tests/support/known_arms.h"

using namespace hither;
using namespace hither::test;

namespace {

Eigen::VectorXd values(std::initializer_list<double> list) {
    Eigen::VectorXd q(static_cast<Eigen::Index>(list.size()));
    Eigen::Index i = 0;
    for (double v : list) q[i++] = v;
    return q;
}
Mat3 rows(std::initializer_list<double> list) {
    Mat3 R;
    int i = 0;
    for (double v : list) { R(i / 3, i % 3) = v; ++i; }
    return R;
}
Target poseOf(const Chain& chain, const Eigen::VectorXd& q) {
    const Pose X = forward(chain, q).last();
    Target target;
    target.p_W = X.translation();
    target.d_W = X.linear() * chain.operatingAxis;
    target.R_W = X.linear();
    return target;
}

}  // namespace

// Corke, Robotics Toolbox for Python: tests/test_DHRobot.py and docs/notebooks/kinematics.ipynb (reference-values 10.1).
TEST_CASE("Puma 560 stands where Corke's toolbox says", "[kinematics]") {
    const Chain arm = puma560();
    const Eigen::VectorXd qn = values({0, pi / 4, pi, 0, pi / 4, 0});
    const Pose Xn = forward(arm, qn).last();
    CHECK((Xn.linear() - rows({0, 0, 1, 0, 1, 0, -1, 0, 0})).norm() < 1e-12);
    CHECK((Xn.translation() - Vec3(0.596303, -0.15005, 0.657476)).norm() < 1e-6);
    const Pose Xlow = forward(puma560(false), qn).last();
    CHECK((Xlow.translation() - Vec3(0.596303, -0.15005, -0.014354)).norm() < 1e-6);

    const Pose X2 = forward(arm, values({0.1, 0.2, 0.3, 0.4, 0.5, 0.6})).last();
    CHECK((X2.linear() - rows({0.1217, -0.6067, -0.7856, 0.8184, 0.5092, -0.2665, 0.5617, -0.6105, 0.5584})).cwiseAbs().maxCoeff() < 6e-5);
    CHECK((X2.translation() - Vec3(0.2478, -0.1259, 1.146288)).cwiseAbs().maxCoeff() < 6e-5);

    CHECK((forward(arm, Eigen::VectorXd::Zero(6)).last().translation() - Vec3(0.4521, -0.15005, 1.10363)).norm() < 1e-6);
    CHECK((forward(arm, values({0, pi / 2, -pi / 2, 0, 0, 0})).last().translation() - Vec3(0.0203, -0.15005, 1.53543)).norm() < 1e-6);
}

TEST_CASE("Puma 560's Jacobian at its ready pose is Corke's jacob0", "[kinematics]") {
    const Chain arm = puma560();
    const Eigen::VectorXd qn = values({0, pi / 4, pi, 0, pi / 4, 0});
    Eigen::Matrix<double, 6, 6> expected;
    expected << 0.15005, 0.0143542677, 0.319682976, 0, 0, 0,
                0.596303149, 0, 0, 0, 0, 0,
                0, 0.596303149, 0.290974440, 0, 0, 0,
                0, 0, 0, 0.707106781, 0, 1,
                0, -1, -1, 0, -1, 0,
                1, 0, 0, -0.707106781, 0, 0;
    const Eigen::Matrix<double, 6, Eigen::Dynamic> J = jacobian(arm, qn, forward(arm, qn));
    CHECK((J - expected).cwiseAbs().maxCoeff() < 1e-8);
    // Yoshikawa's manipulability from the same notebook.
    CHECK(std::abs(Eigen::Matrix<double, 6, 6>(J).determinant()) == Approx(0.0786171653).epsilon(1e-7));
}

TEST_CASE("solving Puma 560 finds the setting it started from and the other branch that Corke's closed form gives", "[kinematics]") {
    const Chain arm = puma560();
    const Eigen::VectorXd q = values({0.1, 0.2, 0.3, 0.4, 0.5, 0.6});
    const Eigen::VectorXd leftUpNoFlip = values({2.10117673, 1.11634865, 0.3, 0.9527867, -1.65052534, -0.9859752});  // ikine_a "lun"
    CHECK((forward(arm, leftUpNoFlip).last().translation() - forward(arm, q).last().translation()).norm() < 1e-6);
    SolveOptions options;
    options.most = 64;
    options.restarts = 600;
    const SolveReport report = solve(arm, Eigen::VectorXd::Zero(6), poseOf(arm, q), options);
    REQUIRE(report.status == SolveReport::Status::solved);
    double nearestToStart = 1e9, nearestToBranch = 1e9;
    for (const Solution& s : report.solutions) {
        CHECK(s.position_m <= tolerance::solvePosition_m);
        CHECK(s.angle_rad <= tolerance::solveAngle_rad);
        for (int i = 0; i < 6; ++i) CHECK(outside(arm, s.q, i) <= 1e-12);
        nearestToStart = std::min(nearestToStart, (s.q - q).cwiseAbs().maxCoeff());
        nearestToBranch = std::min(nearestToBranch, (s.q - leftUpNoFlip).cwiseAbs().maxCoeff());
    }
    CHECK(nearestToStart < 1e-4);
    CHECK(nearestToBranch < 1e-4);
}

// Corke's notebook: SE3(0.5, 0.2, 0.5) * OA([0 0 1], [1 0 0]): y axis along z, z axis along x.
TEST_CASE("solving Puma 560 for the notebook's task reaches it within limits", "[kinematics]") {
    const Chain arm = puma560();
    Target target;
    target.p_W = Vec3(0.5, 0.2, 0.5);
    target.d_W = Vec3::UnitX();
    target.R_W = rows({0, 0, 1, 1, 0, 0, 0, 1, 0});
    const Pose printed = forward(arm, values({0.6629, -1.21, 0.2528, -0.9351, -0.8707, 2.289})).last();
    CHECK((printed.translation() - target.p_W).norm() < 1e-3);  // printed to four digits
    CHECK((printed.linear() - *target.R_W).norm() < 2e-3);
    const SolveReport report = solve(arm, Eigen::VectorXd::Zero(6), target);
    REQUIRE(report.status == SolveReport::Status::solved);
    const Pose X = forward(arm, report.solutions.front().q).last();
    CHECK((X.translation() - target.p_W).norm() < 1e-6);
    CHECK((X.linear() - *target.R_W).norm() < 2e-6);
}

// Corke, Robotics Toolbox for Python: test_fkine_panda (reference-values 10.2); the second pose computed there.
TEST_CASE("Panda stands where Corke's toolbox says", "[kinematics]") {
    const Chain arm = panda();
    const Pose X = forward(arm, values({1, 2, 3, 4, 5, 6, 7})).last();
    CHECK((X.linear() - rows({-0.8583, 0.1178, 0.4994, 0.1980, 0.9739, 0.1106, -0.4734, 0.1938, -0.8593})).cwiseAbs().maxCoeff() < 6e-5);
    CHECK((X.translation() - Vec3(0.1372, 0.3246, 0.4436)).cwiseAbs().maxCoeff() < 6e-5);
    const Pose Xr = forward(arm, values({0, -0.3, 0, -2.2, 0, 2, pi / 4})).last();
    CHECK((Xr.linear() - rows({0.995004, 0, 0.099833, 0, -1, 0, 0.099833, 0, -0.995004})).cwiseAbs().maxCoeff() < 1e-6);
    CHECK((Xr.translation() - Vec3(0.484007, 0, 0.413028)).cwiseAbs().maxCoeff() < 1e-6);
}

// Lynch and Park, Modern Robotics, FKinSpace and FKinBody examples (reference-values 10.4). A screw of
// pitch h is a turn and a slide on one axis, the slide set to h times the turn.
TEST_CASE("the screw example of Modern Robotics in its space and its body form", "[kinematics]") {
    const Mat3 Rm = rows({-1, 0, 0, 0, 1, 0, 0, 0, -1});
    const Pose M = pose(Rm, Vec3(0, 6, 2));
    const Pose T = pose(rows({0, 1, 0, 1, 0, 0, 0, 0, -1}), Vec3(-5, 4, 1.68584073));
    const auto screw = [](ChainBuilder& b, const Vec3& w, const Vec3& v) {
        const Vec3 point = w.cross(v);
        b.fixed(point).turn(w).slide(w, -10, 10).fixed(Vec3(-point));
    };
    const Eigen::VectorXd q = values({pi / 2, 0, 3, pi, 0.1 * pi});
    ChainBuilder space;
    screw(space, Vec3(0, 0, 1), Vec3(4, 0, 0));
    space.slide(Vec3(0, 1, 0), -10, 10);
    screw(space, Vec3(0, 0, -1), Vec3(-6, 0, -0.1));
    const Pose Xs = forward(space.fixed(M).made(), q).last();
    CHECK((Xs.linear() - T.linear()).norm() < 1e-8);
    CHECK((Xs.translation() - T.translation()).norm() < 1e-8);

    ChainBuilder body;
    body.fixed(M);
    screw(body, Vec3(0, 0, -1), Vec3(2, 0, 0));
    body.slide(Vec3(0, 1, 0), -10, 10);
    screw(body, Vec3(0, 0, 1), Vec3(0, 0, 0.1));
    const Pose Xb = forward(body.made(), q).last();
    CHECK((Xb.linear() - T.linear()).norm() < 1e-8);
    CHECK((Xb.translation() - T.translation()).norm() < 1e-8);

    // Its IKinSpace answer, asked for within 0.01 rad and 0.001 m.
    const Pose Xi = forward(space.made(), values({1.57073783, 0, 2.99966384, 3.1415342, 0.1 * 3.1415342})).last();
    CHECK(Eigen::AngleAxisd(Mat3(Xi.linear().transpose() * T.linear())).angle() < 0.01);
    CHECK((Xi.translation() - T.translation()).norm() < 0.001);
}
