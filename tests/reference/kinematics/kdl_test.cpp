// Forward kinematics and Jacobian against Orocos KDL 1.5 (Debian liborocos-kdl-dev), an
// independent library. KDL has turning and sliding joints only, so a ball and an arc are put
// together from those, exactly:
//   ball  exp([a, b, 0]) Rz(t) = Rz(alpha) Rx(rho) Rz(t - alpha), (a, b) = rho (cos alpha, sin alpha)
//   arc   Rz(alpha) Rx(theta/2) Tz(chord) Rx(theta/2) Rz(-alpha), theta = s rho, chord = 2 sin(theta/2) / rho
//         (Webster and Jones, Int. J. Robotics Research 29, 2010)
// and their columns follow by the chain rule.
#include <catch2/catch.hpp>

#include <kdl/chain.hpp>
#include <kdl/chainfksolverpos_recursive.hpp>
#include <kdl/chainjnttojacsolver.hpp>

#include "tests/support/chain_builder.h"

using namespace hither;
using namespace hither::test;

namespace {

KDL::Vector kdl(const Vec3& v) { return KDL::Vector(v.x(), v.y(), v.z()); }
KDL::Frame kdl(const Pose& X) {
    const Mat3 R = X.linear();
    return KDL::Frame(KDL::Rotation(R(0, 0), R(0, 1), R(0, 2), R(1, 0), R(1, 1), R(1, 2), R(2, 0), R(2, 1), R(2, 2)), kdl(Vec3(X.translation())));
}
Pose fromKdl(const KDL::Frame& F) {
    Pose X = Pose::Identity();
    for (int r = 0; r < 3; ++r) {
        for (int c = 0; c < 3; ++c) X.linear()(r, c) = F.M(r, c);
        X.translation()[r] = F.p(r);
    }
    return X;
}

/// A chain of KDL joints, the values to give them, and d(KDL value)/d(our freedom).
struct Twin {
    KDL::Chain chain;
    std::vector<double> values;
    struct Share { int joint; int freedom; double rate; };
    std::vector<Share> shares;

    int joint(const Vec3& axis, KDL::Joint::JointType type, double value) {
        chain.addSegment(KDL::Segment(KDL::Joint(KDL::Vector::Zero(), kdl(axis), type)));
        values.push_back(value);
        return static_cast<int>(values.size()) - 1;
    }
};

Twin makeTwin(const Chain& chain, const Eigen::VectorXd& q) {
    Twin twin;
    for (const ChainStep& step : chain.steps) {
        const int i = step.q0;
        switch (step.kind) {
            case ChainStep::Kind::fixed: twin.chain.addSegment(KDL::Segment(KDL::Joint(KDL::Joint::None), kdl(step.X))); break;
            case ChainStep::Kind::slide: twin.shares.push_back({twin.joint(step.axis, KDL::Joint::TransAxis, q[i]), i, 1}); break;
            case ChainStep::Kind::turn: twin.shares.push_back({twin.joint(step.axis, KDL::Joint::RotAxis, q[i]), i, 1}); break;
            case ChainStep::Kind::ball: case ChainStep::Kind::bend: {
                const double a = q[i], b = q[i + 1], rho = std::hypot(a, b), alpha = std::atan2(b, a);
                const double alphaBy[2] = {-b / (rho * rho), a / (rho * rho)}, rhoBy[2] = {a / rho, b / rho};
                const int first = twin.joint(Vec3::UnitZ(), KDL::Joint::RotAxis, alpha);
                std::vector<std::pair<int, double>> byRho;
                int last = 0;
                if (step.kind == ChainStep::Kind::ball) {
                    byRho = {{twin.joint(Vec3::UnitX(), KDL::Joint::RotAxis, rho), 1}};
                    last = twin.joint(Vec3::UnitZ(), KDL::Joint::RotAxis, q[i + 2] - alpha);
                    twin.shares.push_back({last, i + 2, 1});
                } else {
                    const double s = step.arc, half = s * rho / 2;
                    byRho.push_back({twin.joint(Vec3::UnitX(), KDL::Joint::RotAxis, half), s / 2});
                    byRho.push_back({twin.joint(Vec3::UnitZ(), KDL::Joint::TransAxis, 2 * std::sin(half) / rho),
                                     (s * rho * std::cos(half) - 2 * std::sin(half)) / (rho * rho)});
                    byRho.push_back({twin.joint(Vec3::UnitX(), KDL::Joint::RotAxis, half), s / 2});
                    last = twin.joint(Vec3::UnitZ(), KDL::Joint::RotAxis, -alpha);
                }
                for (int c = 0; c < 2; ++c) {
                    twin.shares.push_back({first, i + c, alphaBy[c]});
                    twin.shares.push_back({last, i + c, -alphaBy[c]});
                    for (const auto& [joint, rate] : byRho) twin.shares.push_back({joint, i + c, rate * rhoBy[c]});
                }
                break;
            }
        }
    }
    return twin;
}

Chain randomChain(std::mt19937& random) {
    std::uniform_real_distribution<double> metres(-0.3, 0.3), angle(-3, 3), unit(0, 1);
    std::uniform_int_distribution<int> length(3, 12), kind(0, 4);
    ChainBuilder b;
    for (int n = length(random); n > 0; --n) {
        switch (kind(random)) {
            case 0: b.fixed(pose(rotationFromVector(angle(random) * unitVector(random)), Vec3(metres(random), metres(random), metres(random)))); break;
            case 1: b.slide(unitVector(random), -0.2, 0.4); break;
            case 2: b.turn(unitVector(random)); break;
            case 3: b.ball(1.2); break;
            default: b.neck(0.15 + 0.45 * unit(random), 0.04); break;
        }
    }
    b.fixed(Vec3(metres(random), metres(random), metres(random)));
    return b.made();
}

}  // namespace

TEST_CASE("forward kinematics and Jacobian of 1,000 random chains agree with Orocos KDL to 1e-10", "[kinematics]") {
    std::mt19937 random(20261125);
    double worstPosition = 0, worstRotation = 0, worstColumn = 0;
    for (int n = 0; n < 1000; ++n) {
        const Chain chain = randomChain(random);
        const Eigen::VectorXd q = randomValues(chain, random);
        const Twin twin = makeTwin(chain, q);
        KDL::JntArray values(static_cast<unsigned>(twin.values.size()));
        for (std::size_t i = 0; i < twin.values.size(); ++i) values(static_cast<unsigned>(i)) = twin.values[i];
        KDL::Frame F;
        KDL::ChainFkSolverPos_recursive fk(twin.chain);
        REQUIRE(fk.JntToCart(values, F) >= 0);
        KDL::Jacobian JK(static_cast<unsigned>(twin.values.size()));
        KDL::ChainJntToJacSolver jac(twin.chain);
        REQUIRE(jac.JntToJac(values, JK) >= 0);
        Eigen::Matrix<double, 6, Eigen::Dynamic> expected = Eigen::Matrix<double, 6, Eigen::Dynamic>::Zero(6, chain.freedomCount());
        for (const Twin::Share& share : twin.shares) expected.col(share.freedom) += share.rate * JK.data.col(share.joint);

        const ChainPoses poses = forward(chain, q);
        const Pose X = fromKdl(F);
        worstPosition = std::max(worstPosition, (poses.last().translation() - X.translation()).norm());
        worstRotation = std::max(worstRotation, (poses.last().linear() - X.linear()).norm());
        if (chain.freedomCount() == 0) continue;
        worstColumn = std::max(worstColumn, (jacobian(chain, q, poses) - expected).cwiseAbs().maxCoeff());
    }
    CHECK(worstPosition < 1e-10);
    CHECK(worstRotation < 1e-10);
    CHECK(worstColumn < 1e-10);
}
