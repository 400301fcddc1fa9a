#pragma once
#include <functional>
#include <optional>
#include <string>
#include <vector>

#include "core/chain/chain.h"

namespace hither {

/// Where the last frame should be: its origin at p_W and either its operating axis along d_W (roll
/// free) or, for a full pose, its axes along R_W.
struct Target {
    Vec3 p_W = Vec3::Zero();
    Vec3 d_W = Vec3::UnitX();
    std::optional<Mat3> R_W;
};

struct SolveOptions {
    int most = 8;                 ///< distinct solutions wanted; 1 stops at the first
    int restarts = 64;            ///< low-discrepancy starting points besides the present values
    int iterations = 60;          ///< per start
    bool snapDetents = true;      ///< report solutions whose detented joints stand on their steps
    /// Larger is better, metres: ranks solutions and pulls redundant joints (may be empty).
    std::function<double(const Eigen::VectorXd& q)> clearance;
    std::function<bool()> cancelled;
};

struct Solution {
    Eigen::VectorXd q;
    double position_m = 0;        ///< distance of the last frame's origin from the target
    double angle_rad = 0;         ///< between operating axis and d_W (or of the rotation, full pose)
    double limitMargin = 0;       ///< least distance to a limit as a share of that freedom's range, 0..0.5
    double clearance_m = 0;       ///< of `clearance`, when given
    bool snapped = false;         ///< detented joints stand on their steps
};

/// A freedom that stops the mount at the nearest pose.
struct Stopped { int freedom = -1; bool atMax = false; };

/// What solving gave. `solved`: at least one solution within tolerance::solvePosition_m and
/// solveAngle_rad (with detents: the best that the steps allow is reported in its residuals).
/// Otherwise `nearest` says how near it gets and which joints stop it.
struct SolveReport {
    enum class Status { solved, nearOnly, cancelled };
    Status status = Status::nearOnly;
    std::vector<Solution> solutions;    ///< distinct, best first: clearance, limit margin, nearness to the present values
    std::optional<Solution> nearest;
    std::vector<Stopped> stopped;
    double reachShort_m = 0;            ///< when even the straightened chain is too short: by how much
    int starts = 0, iterations = 0;
};

/// Damped least squares (Levenberg-Marquardt) on 3 position + 2 direction residuals (or 6), bounds as
/// boxes and discs handled inside each step, from the present values and then from Halton points.
/// Freedoms that are kept stay where they are. Deterministic.
SolveReport solve(const Chain& chain, const Eigen::VectorXd& present, const Target& target, const SolveOptions& options = {});

}  // namespace hither
