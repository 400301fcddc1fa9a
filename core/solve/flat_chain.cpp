#include "core/solve/flat_chain.h"

#include <cmath>

#include "core/chain/swing.h"
#include "core/units/quantity.h"

namespace hither {
namespace {

using Kind = ChainStep::Kind;

/// What a step does at given values, as one pose.
Pose poseOf(const ChainStep& step, const Eigen::VectorXd& q) {
    switch (step.kind) {
        case Kind::fixed: return step.X;
        case Kind::slide: return translation(q[step.q0] * step.axis);
        case Kind::turn: return pose(Eigen::AngleAxisd(q[step.q0], step.axis).toRotationMatrix(), Vec3::Zero());
        case Kind::ball:
            return pose(Swing(q[step.q0], q[step.q0 + 1]).rotation() * Eigen::AngleAxisd(q[step.q0 + 2], Vec3::UnitZ()).toRotationMatrix(), Vec3::Zero());
        case Kind::bend: {
            const Swing swing(step.arc * q[step.q0], step.arc * q[step.q0 + 1]);
            return pose(swing.rotation(), step.arc * swing.arcEnd());
        }
    }
    return Pose::Identity();
}

void turnAboutZ(Mat3& R, double angle) {
    const double c = std::cos(angle), s = std::sin(angle);
    const Vec3 x = R.col(0);
    R.col(0) = c * x + s * R.col(1);
    R.col(1) = c * R.col(1) - s * x;
}

}  // namespace

int freedomsOf(ChainStep::Kind kind) {
    switch (kind) {
        case ChainStep::Kind::fixed: return 0;
        case ChainStep::Kind::slide: case ChainStep::Kind::turn: return 1;
        case ChainStep::Kind::bend: return 2;
        case ChainStep::Kind::ball: return 3;
    }
    return 0;
}

FlatChain::FlatChain(const Chain& chain, const Eigen::VectorXd& q, const std::vector<char>& fixed) {
    Pose pending = Pose::Identity();
    for (const ChainStep& step : chain.steps) {
        const int count = freedomsOf(step.kind);
        if (count == 0 || fixed[static_cast<std::size_t>(step.q0)]) {
            pending = pending * poseOf(step, q);
            continue;
        }
        // Turns and slides are made to go about and along z: tilt before, tilt back after.
        Mat3 tilt = Mat3::Identity();
        if (step.kind == Kind::turn || step.kind == Kind::slide) tilt = frameFromZ(Vec3::Zero(), step.axis, Vec3::UnitX()).linear();
        Step flat;
        flat.kind = step.kind;
        flat.R = pending.linear() * tilt;
        flat.p = pending.translation();
        flat.arc = step.arc;
        flat.x0 = size();
        steps_.push_back(flat);
        pending = pose(tilt.transpose(), Vec3::Zero());
        for (int c = 0; c < count; ++c) {
            const Freedom& f = chain.freedoms[static_cast<std::size_t>(step.q0 + c)];
            freedom_.push_back(step.q0 + c);
            weight_.push_back(f.weight);
            turns_.push_back(step.kind == Kind::slide ? 0 : step.kind == Kind::bend ? step.arc : 1);
            wraps_.push_back(f.fullTurn ? 1 : 0);
            const bool inDisc = step.kind == Kind::bend || (step.kind == Kind::ball && c < 2);
            box_.push_back({f.min, f.max, !f.fullTurn && !inDisc});
        }
        if (step.kind == Kind::ball || step.kind == Kind::bend) {
            for (const DiscLimit& disc : chain.discs) if (disc.first == step.q0) disc_.push_back({flat.x0, disc.radius});
        }
    }
    lastR_ = pending.linear();
    lastP_ = pending.translation();
}

FlatChain::State FlatChain::makeState() const {
    State state;
    state.w.setZero(3, size());
    state.v.setZero(3, size());
    return state;
}

void FlatChain::walk(const Eigen::VectorXd& x, State& state) const {
    Mat3 R = Mat3::Identity();
    Vec3 p = Vec3::Zero();
    const auto turn = [&state](int i, const Vec3& w, const Vec3& pivot) {
        state.w.col(i) = w;
        state.v.col(i) = pivot.cross(w);
    };
    for (const Step& step : steps_) {
        p += R * step.p;
        R = (R * step.R).eval();
        switch (step.kind) {
            case Kind::fixed: break;
            case Kind::slide:
                state.w.col(step.x0).setZero();
                state.v.col(step.x0) = R.col(2);
                p += x[step.x0] * R.col(2);
                break;
            case Kind::turn:
                turn(step.x0, R.col(2), p);
                turnAboutZ(R, x[step.x0]);
                break;
            case Kind::ball: {
                const Swing swing(x[step.x0], x[step.x0 + 1]);
                turn(step.x0, R * swing.turnByA(), p);
                turn(step.x0 + 1, R * swing.turnByB(), p);
                R = (R * swing.rotation()).eval();
                turn(step.x0 + 2, R.col(2), p);
                turnAboutZ(R, x[step.x0 + 2]);
                break;
            }
            case Kind::bend: {
                const double s = step.arc;
                const Swing swing(s * x[step.x0], s * x[step.x0 + 1]);
                p += R * (s * swing.arcEnd());
                turn(step.x0, R * (s * swing.turnByA()), p);
                turn(step.x0 + 1, R * (s * swing.turnByB()), p);
                state.v.col(step.x0) += R * (s * s * swing.arcEndByA());
                state.v.col(step.x0 + 1) += R * (s * s * swing.arcEndByB());
                R = (R * swing.rotation()).eval();
                break;
            }
        }
    }
    state.p = p + R * lastP_;
    state.R = R * lastR_;
}

Eigen::VectorXd FlatChain::values(const Eigen::VectorXd& q) const {
    Eigen::VectorXd x(size());
    for (int i = 0; i < size(); ++i) x[i] = q[freedom(i)];
    return x;
}

void FlatChain::putValues(const Eigen::VectorXd& x, Eigen::VectorXd& q) const {
    for (int i = 0; i < size(); ++i) {
        double value = x[i];
        if (wraps_[static_cast<std::size_t>(i)]) {
            value = std::remainder(value, 2 * pi);
            if (value <= -pi) value += 2 * pi;
        }
        q[freedom(i)] = value;
    }
}

}  // namespace hither
