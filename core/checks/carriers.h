#pragma once
#include <string>
#include <vector>

#include "core/situation/situation.h"

namespace hither {

/// One moving group of one support, as a step on the way from a thing up to W.
struct CarrierStep {
    std::string support, group;
    bool slides = false;
    double min = 0, max = 0, now = 0;
    Vec3 pivot_W = Vec3::Zero();  ///< at the present settings
    Vec3 axis_W = Vec3::UnitY();
};

/// The moving groups that carry a thing, innermost first: its group, that group's parents, then what
/// carries the support. Groups that cannot move (min = max) are left out.
std::vector<CarrierStep> carriers(const Situation& situation, const std::string& support, const std::string& group);

/// Moving groups that move the two things against each other: in one of the lists but not in both.
struct RelativeMotion { std::vector<CarrierStep> steps; std::vector<bool> movesFirst; };
RelativeMotion relativeMotion(const std::vector<CarrierStep>& first, const std::vector<CarrierStep>& second);

/// How far a point of any of the solids can move for a unit of group step `k` of its carriers (m/rad
/// for a turn, 1 for a slide), an upper bound for every setting of the groups in between: radii about
/// the pivots add up because each pivot is fixed in the next group out.
double motionBound(const std::vector<CarrierStep>& of, std::size_t k, const std::vector<Solid>& solids_W);

}  // namespace hither
