#pragma once
#include <vector>

#include "core/solve/residual.h"

namespace hither {

/// Damped least squares (Levenberg 1944, Marquardt 1963; damping in proportion to the squared
/// residual as Sugihara 2011) within limits. In each step a freedom that stands at its limit and is
/// pushed outward is held, a disc's along its rim only; one that the step would carry over its
/// limit stops there and the others take over what is left of the residual. Holds its own workspace:
/// iterations allocate nothing.
class Descent {
public:
    Descent(const FlatChain& flat, const Residual& residual);

    struct Outcome { Residual::Value value; int iterations = 0; };
    /// Moves x (brought inside its limits first) downhill until the target is met, a bounded least is
    /// reached or `most` iterations are spent. Not `patient`: also gives up when it hardly gets nearer.
    Outcome run(Eigen::VectorXd& x, int most, bool patient);

    void bringInside(Eigen::VectorXd& x) const;
    Residual::Value valueAt(const Eigen::VectorXd& x);
    /// The scaled Jacobian at x (see Residual::jacobian).
    const Mat6X& jacobianAt(const Eigen::VectorXd& x);

private:
    void holdPushed(const Eigen::VectorXd& x, const Vec6& e);
    void takeStep(const Eigen::VectorXd& x, const Vec6& e, double damping, Eigen::VectorXd& trial);
    void dampedStep(const Vec6& e, double damping);
    bool stopAtLimits(const Eigen::VectorXd& x, Vec6& rest);

    const FlatChain& flat_;
    const Residual& residual_;
    FlatChain::State state_;
    Mat6X J_, held_, K_;          // all columns; those held zeroed; those stopped in this step zeroed too
    Eigen::VectorXd d_, done_, trial_;
    std::vector<char> free_;
};

}  // namespace hither
