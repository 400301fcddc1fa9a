#pragma once

/// Every tolerance of the program, with its meaning and its reason. A value exactly at a limit
/// passes: comparisons against limits add `limitSlack` of the limit's unit.
namespace hither::tolerance {

/// Relative slack when a value is compared with a limit, so that a figure computed to be exactly
/// at its limit is not failed by rounding. 1e-9 of a metre is a thousandth of a micrometre.
constexpr double limitSlack = 1e-9;

/// A verdict is `close` when less than this share of the limit is left.
constexpr double closeShare = 0.20;

/// The solver calls a target met within this distance and angle: a hundredth of what a hand can set.
constexpr double solvePosition_m = 1e-6;
constexpr double solveAngle_rad = 1e-6;

/// Two solutions nearer than this in every joint are one solution to a person at the bench.
constexpr double sameSolutionAngle_rad = 0.05;
constexpr double sameSolutionSlide_m = 0.005;

/// Largest gap between a gooseneck's true curve and the straight capsules standing for it.
constexpr double bendSagitta_m = 0.00025;

/// A distance over movement is reported within this of the true minimum.
constexpr double sweptDistance_m = 0.0005;

/// Hole circles agree when their diameters do within this (a screw's clearance in its hole).
constexpr double boltCircle_m = 0.0005;

}  // namespace hither::tolerance
