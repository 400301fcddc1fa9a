#include "core/solve/residual.h"

#include <cassert>
#include <cmath>

#include "core/units/quantity.h"
#include "core/units/tolerances.h"

namespace hither {

Residual::Residual(const Target& target, const Vec3& operatingAxis)
    : p_W_(target.p_W), d_W_(target.d_W.normalized()), axis_(operatingAxis), R_W_(target.R_W) {
    assert(target.p_W.allFinite() && target.d_W.allFinite() && (target.R_W || target.d_W.norm() > 0));
    if (R_W_) {
        rows_W_ = Mat3::Identity();
    } else {
        rows_W_ = frameFromZ(Vec3::Zero(), d_W_, Vec3::UnitX()).linear().transpose();
    }
}

Residual::Value Residual::at(const FlatChain::State& state) const {
    Value value;
    const Vec3 missing = p_W_ - state.p;
    Vec3 turn;
    if (R_W_) {
        const Eigen::AngleAxisd aa(Mat3(*R_W_ * state.R.transpose()));
        turn = aa.angle() * aa.axis();
        value.angle_rad = aa.angle();
    } else {
        const Vec3 a = state.R * axis_;
        const Vec3 c = a.cross(d_W_);
        const double s = c.norm(), cosine = a.dot(d_W_);
        value.angle_rad = std::atan2(s, cosine);
        // Exactly the wrong way round any axis across will do.
        turn = s > 1e-12 ? Vec3(value.angle_rad / s * c) : cosine > 0 ? c : Vec3(pi * rows_W_.row(0).transpose());
    }
    value.position_m = missing.norm();
    value.e.head<3>() = missing;
    value.e.tail<3>() = angleLength_m * (rows_W_ * turn);
    if (!R_W_) value.e[5] = 0;
    return value;
}

void Residual::jacobian(const FlatChain& flat, const FlatChain::State& state, Mat6X& J) const {
    for (int i = 0; i < flat.size(); ++i) {
        const Vec3 w = state.w.col(i);
        const double scale = 1 / flat.weight(i);
        J.col(i).head<3>() = scale * (state.v.col(i) + w.cross(state.p));
        J.col(i).tail<3>() = scale * angleLength_m * (rows_W_ * w);
        if (!R_W_) J(5, i) = 0;
    }
}

bool Residual::met(const Value& value) const {
    return value.position_m <= tolerance::solvePosition_m && value.angle_rad <= tolerance::solveAngle_rad;
}

}  // namespace hither
