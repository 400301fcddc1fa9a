#pragma once

namespace hither {

/// Margins and load assumptions; a plan may change them. Defaults: common practice, no source.
struct CheckLimits {
    double clearanceBody_m = 0.010;
    double clearanceSupport_m = 0.005;
    double clearanceMount_m = 0.005;
    double pressFactor = 3;       ///< press force = this times the activation force
    double knock_N = 20;
    double threadTurns = 3;       ///< least engaged full turns
    double threadFactor = 4;      ///< thread shear strength over axial load
    bool operator==(const CheckLimits&) const = default;
};

}  // namespace hither
