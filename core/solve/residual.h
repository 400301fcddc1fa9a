#pragma once
#include "core/solve/flat_chain.h"
#include "core/solve/solve.h"

namespace hither {

/// An angle counts as much as this length times it: turning a switch by an angle moves points this
/// far from the middle of its face as much. It only weighs aim against place while searching and
/// for the nearest pose; what is reported keeps metres and radians apart.
constexpr double angleLength_m = 0.1;

using Vec6 = Eigen::Matrix<double, 6, 1>;
using Mat6X = Eigen::Matrix<double, 6, Eigen::Dynamic>;

/// How far a pose is from a target, as a vector to be driven to zero: rows 0-2 what is missing in
/// position, rows 3-5 what is missing in rotation times angleLength_m, along axes of which the last
/// is d_W; for a target by direction, roll is free and row 5 is zero.
class Residual {
public:
    Residual(const Target& target, const Vec3& operatingAxis);

    struct Value { Vec6 e = Vec6::Zero(); double position_m = 0, angle_rad = 0; double cost() const { return e.squaredNorm(); } };
    Value at(const FlatChain::State& state) const;
    /// d(pose)/dx in the same rows, column i divided by weight i, so that e - J dx is left after a scaled step dx.
    void jacobian(const FlatChain& flat, const FlatChain::State& state, Mat6X& J) const;
    bool met(const Value& value) const;

private:
    Vec3 p_W_, d_W_, axis_;
    Mat3 rows_W_;  ///< two directions across d_W, then d_W
    std::optional<Mat3> R_W_;
};

}  // namespace hither
