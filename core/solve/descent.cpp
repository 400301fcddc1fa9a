#include "core/solve/descent.h"

#include <algorithm>
#include <cmath>

#include <Eigen/Cholesky>

namespace hither {
namespace {

constexpr double costDone = 1e-18;      // a nanometre: rounding is all that is left
constexpr double firstDamping = 0.1;
constexpr double leastDamping = 1e-6;
constexpr double mostDamping = 1e9;     // no step, however short, gets nearer
constexpr double longestStep = 0.8;     // of the scaled step against each weight: a joint turns at most this (rad) at once
constexpr double atLimit = 1e-12;       // share of a limit within which a value stands at it
constexpr int stallWindow = 5;
constexpr double stallShare = 0.7;

double near(double limit) { return atLimit * std::max(1.0, std::abs(limit)); }

}  // namespace

Descent::Descent(const FlatChain& flat, const Residual& residual)
    : flat_(flat), residual_(residual), state_(flat.makeState()),
      J_(Mat6X::Zero(6, flat.size())), held_(J_), K_(J_),
      d_(Eigen::VectorXd::Zero(flat.size())), done_(d_), trial_(d_), free_(static_cast<std::size_t>(flat.size()), 1) {}

void Descent::bringInside(Eigen::VectorXd& x) const {
    for (int i = 0; i < flat_.size(); ++i) {
        const FlatChain::Box& box = flat_.boxes()[static_cast<std::size_t>(i)];
        if (box.bounded) x[i] = std::min(std::max(x[i], box.min), box.max);
    }
    for (const FlatChain::Disc& disc : flat_.discs()) {
        const double r = std::hypot(x[disc.first], x[disc.first + 1]);
        if (r > disc.radius) x.segment<2>(disc.first) *= disc.radius / r;
    }
}

Residual::Value Descent::valueAt(const Eigen::VectorXd& x) {
    flat_.walk(x, state_);
    return residual_.at(state_);
}

const Mat6X& Descent::jacobianAt(const Eigen::VectorXd& x) {
    flat_.walk(x, state_);
    residual_.jacobian(flat_, state_, J_);
    return J_;
}

/// held_ = J_ without what would push outward at a limit.
void Descent::holdPushed(const Eigen::VectorXd& x, const Vec6& e) {
    held_ = J_;
    for (int i = 0; i < flat_.size(); ++i) {
        const FlatChain::Box& box = flat_.boxes()[static_cast<std::size_t>(i)];
        free_[static_cast<std::size_t>(i)] = 1;
        if (!box.bounded) continue;
        const bool low = x[i] <= box.min + near(box.min), high = x[i] >= box.max - near(box.max);
        if (!low && !high) continue;
        const double push = J_.col(i).dot(e);
        if ((low && push <= 0) || (high && push >= 0)) {
            held_.col(i).setZero();
            free_[static_cast<std::size_t>(i)] = 0;
        }
    }
    for (const FlatChain::Disc& disc : flat_.discs()) {
        const Eigen::Vector2d v = x.segment<2>(disc.first);
        const double r = v.norm();
        if (r <= 0 || r < disc.radius - near(disc.radius)) continue;
        const Eigen::Vector2d out = v / r;
        const Vec6 outward = J_.middleCols<2>(disc.first) * out;
        if (outward.dot(e) >= 0) held_.middleCols<2>(disc.first) -= outward * out.transpose();
    }
}

/// d_ = the damped least-squares step of K_ for e.
void Descent::dampedStep(const Vec6& e, double damping) {
    int count = 0;
    for (char f : free_) count += f;
    if (count >= 6) {
        Eigen::Matrix<double, 6, 6> A = Eigen::Matrix<double, 6, 6>::Zero();
        for (int i = 0; i < flat_.size(); ++i) A.noalias() += K_.col(i) * K_.col(i).transpose();
        A.diagonal().array() += damping + 1e-15 * A.trace();
        const Vec6 y = A.llt().solve(e);
        d_.noalias() = K_.transpose() * y;
        return;
    }
    // Fewer freedoms than residuals: the same step by the normal equations of those that are free.
    Eigen::Matrix<double, 6, Eigen::Dynamic, 0, 6, 6> M(6, count);
    int k = 0;
    for (int i = 0; i < flat_.size(); ++i) if (free_[static_cast<std::size_t>(i)]) M.col(k++) = K_.col(i);
    Eigen::Matrix<double, Eigen::Dynamic, Eigen::Dynamic, 0, 6, 6> N = M.transpose() * M;
    N.diagonal().array() += damping + 1e-15 * N.trace() + 1e-300;
    const Eigen::Matrix<double, Eigen::Dynamic, 1, 0, 6, 1> s = N.llt().solve(M.transpose() * e);
    d_.setZero();
    k = 0;
    for (int i = 0; i < flat_.size(); ++i) if (free_[static_cast<std::size_t>(i)]) d_[i] = s[k++];
}

/// Freedoms that d_ carries over a limit stop there: done_ gets what they do, and what they achieve
/// is taken off `rest`. True when there were any.
bool Descent::stopAtLimits(const Eigen::VectorXd& x, Vec6& rest) {
    bool any = false;
    const auto stop = [this, &rest](int i, double scaled) {
        done_[i] = scaled;
        rest -= J_.col(i) * scaled;
        K_.col(i).setZero();
        free_[static_cast<std::size_t>(i)] = 0;
    };
    for (int i = 0; i < flat_.size(); ++i) {
        const FlatChain::Box& box = flat_.boxes()[static_cast<std::size_t>(i)];
        if (!box.bounded || !free_[static_cast<std::size_t>(i)]) continue;
        const double to = x[i] + d_[i] / flat_.weight(i);
        if (to >= box.min && to <= box.max) continue;
        stop(i, ((to < box.min ? box.min : box.max) - x[i]) * flat_.weight(i));
        any = true;
    }
    for (const FlatChain::Disc& disc : flat_.discs()) {
        const int i = disc.first;
        if (!free_[static_cast<std::size_t>(i)]) continue;
        const Eigen::Vector2d to(x[i] + d_[i] / flat_.weight(i), x[i + 1] + d_[i + 1] / flat_.weight(i + 1));
        const double r = to.norm();
        if (r <= disc.radius) continue;
        const Eigen::Vector2d rim = to * (disc.radius / r);
        stop(i, (rim[0] - x[i]) * flat_.weight(i));
        stop(i + 1, (rim[1] - x[i + 1]) * flat_.weight(i + 1));
        any = true;
    }
    return any;
}

void Descent::takeStep(const Eigen::VectorXd& x, const Vec6& e, double damping, Eigen::VectorXd& trial) {
    K_ = held_;
    for (int i = 0; i < flat_.size(); ++i) free_[static_cast<std::size_t>(i)] = K_.col(i).isZero(0) ? 0 : 1;
    done_.setZero();
    Vec6 rest = e;
    constexpr int passes = 6;
    for (int pass = 0; pass < passes; ++pass) {
        dampedStep(rest, damping);
        double longest = 0;
        for (int i = 0; i < flat_.size(); ++i) longest = std::max(longest, std::abs(d_[i]) / flat_.weight(i) * flat_.turnPerUnit(i));
        if (longest > longestStep) d_ *= longestStep / longest;
        if (!stopAtLimits(x, rest)) break;
    }
    for (int i = 0; i < flat_.size(); ++i) {
        const double scaled = free_[static_cast<std::size_t>(i)] ? d_[i] : done_[i];
        trial[i] = x[i] + scaled / flat_.weight(i);
    }
    bringInside(trial);
}

Descent::Outcome Descent::run(Eigen::VectorXd& x, int most, bool patient) {
    bringInside(x);
    Outcome out;
    out.value = valueAt(x);
    double mu = firstDamping;
    double before[stallWindow] = {};
    int metFor = 0, steps = 0;
    while (out.iterations < most) {
        const double cost = out.value.cost();
        if (cost <= costDone) break;
        if (residual_.met(out.value) && ++metFor > 2) break;
        double& old = before[steps % stallWindow];
        if (!patient && steps >= stallWindow && cost > stallShare * old) break;
        old = cost;
        ++steps;

        residual_.jacobian(flat_, state_, J_);
        holdPushed(x, out.value.e);
        double slope = 0;
        for (int i = 0; i < flat_.size(); ++i) slope = std::max(slope, std::abs(held_.col(i).dot(out.value.e)));
        if (slope * slope <= 1e-24 * cost) break;  // a bounded least: nothing free gets nearer

        bool nearer = false;
        while (!nearer && mu < mostDamping && out.iterations < most) {
            ++out.iterations;
            takeStep(x, out.value.e, mu * cost, trial_);
            const Residual::Value value = valueAt(trial_);
            if (value.cost() < cost) {
                nearer = true;
                // Gain: what was won against what the linear model promised.
                Vec6 left = out.value.e;
                for (int i = 0; i < flat_.size(); ++i) left -= J_.col(i) * ((trial_[i] - x[i]) * flat_.weight(i));
                const double gain = (cost - value.cost()) / (cost - left.squaredNorm());
                mu = std::max(gain > 0.75 ? mu * 0.2 : gain < 0.25 ? mu * 3 : mu, leastDamping);
                x.swap(trial_);
                out.value = value;
            } else {
                mu *= 8;
            }
        }
        if (!nearer) break;
    }
    valueAt(x);  // the workspace stands at x again
    return out;
}

}  // namespace hither
