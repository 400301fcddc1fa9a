#pragma once
#include <set>
#include <vector>

#include "core/checks/obstacles.h"
#include "core/geometry/solid_tree.h"

namespace hither {

/// How much room a mount has beyond the margins that the Clearance check asks, in the tightest place
/// and at most `enoughRoom_m`: what makes one way better than another. Refers to the setup, which must outlive it.
class Room {
public:
    Room(const Setup& setup, std::size_t index, const CheckLimits& limits);
    /// Metres, at these joint values of the mount; negative: too near.
    double operator()(const Eigen::VectorXd& q) const;

private:
    const Setup& setup_;
    std::size_t index_;
    CheckLimits limits_;
    std::vector<Obstacle> obstacles_;
    std::set<double> margins_;
    SolidTree tree_;
};

}  // namespace hither
