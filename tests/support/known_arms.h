#pragma once
#include <array>

#include "tests/support/chain_builder.h"

namespace hither::test {

/// Puma 560 by standard Denavit-Hartenberg rows (reference-values section 10.1: Corke's robotics toolbox for
/// Python, models/DH/Puma560.py), on its pedestal of 26.45 in unless said. Each row is
/// Rz(q) Tz(d) Tx(a) Rx(alpha).
inline Chain puma560(bool pedestal = true) {
    struct Row { double d, a, alpha_deg, limit_deg; };
    const std::array<Row, 6> rows{{{pedestal ? 0.67183 : 0.0, 0, 90, 160}, {0, 0.4318, 0, 110}, {0.15005, 0.0203, -90, 135},
                                   {0.4318, 0, 90, 266}, {0, 0, -90, 100}, {0, 0, 0, 266}}};
    ChainBuilder arm;
    for (const Row& row : rows) {
        arm.turn(Vec3::UnitZ(), -radians(row.limit_deg), radians(row.limit_deg));
        arm.fixed(pose(Eigen::AngleAxisd(radians(row.alpha_deg), Vec3::UnitX()).toRotationMatrix(), Vec3(row.a, 0, row.d)));
    }
    return arm.axis(Vec3::UnitZ()).made();
}

/// Franka Panda by modified (Craig) rows (reference-values section 10.2: Corke's robotics toolbox for Python,
/// models/DH/Panda.py). Each row is Rx(alpha) Tx(a) Rz(q) Tz(d); then the tool Tz(0.103) Rz(-45 degrees).
inline Chain panda() {
    struct Row { double a, d, alpha, min, max; };
    const std::array<Row, 7> rows{{{0, 0.333, 0, -2.8973, 2.8973}, {0, 0, -pi / 2, -1.7628, 1.7628}, {0, 0.316, pi / 2, -2.8973, 2.8973},
                                   {0.0825, 0, pi / 2, -3.0718, -0.0698}, {-0.0825, 0.384, -pi / 2, -2.8973, 2.8973},
                                   {0, 0, pi / 2, -0.0175, 3.7525}, {0.088, 0.107, pi / 2, -2.8973, 2.8973}}};
    ChainBuilder arm;
    for (const Row& row : rows) {
        const Mat3 R = Eigen::AngleAxisd(row.alpha, Vec3::UnitX()).toRotationMatrix();
        arm.fixed(pose(R, Vec3(row.a, 0, 0))).turn(Vec3::UnitZ(), row.min, row.max).fixed(Vec3(0, 0, row.d));
    }
    arm.fixed(pose(Eigen::AngleAxisd(-pi / 4, Vec3::UnitZ()).toRotationMatrix(), Vec3(0, 0, 0.103)));
    return arm.axis(Vec3::UnitZ()).made();
}

/// Planar arm of three links 4, 3, 2 m (Craig, Introduction to Robotics, MATLAB exercise; reference-values
/// section 10.5), its last x axis as the operating axis.
inline Chain planar3R() {
    ChainBuilder arm;
    for (double length : {4.0, 3.0, 2.0}) arm.turn(Vec3::UnitZ()).fixed(Vec3(length, 0, 0));
    return arm.axis(Vec3::UnitX()).made();
}

}  // namespace hither::test
