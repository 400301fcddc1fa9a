#pragma once
#include "core/geometry/pose.h"

namespace hither {

/// The rotation exp([a, b, 0]) of a ball's swing and of a bent neck: about a line in the xy plane,
/// by the angle |(a, b)|. With the angle t, these even functions of it carry everything:
///   A = sin t / t, B = (1 - cos t) / t^2, C = (t - sin t) / t^3, dA = A'(t) / t, dB = B'(t) / t.
/// Near zero their power series are used, so that nothing cancels. All for rotations up to a few
/// turns, exact to about 1e-15.
struct Swing {
    double a = 0, b = 0;
    double A = 1, B = 0.5, C = 1.0 / 6.0, dA = -1.0 / 3.0, dB = -1.0 / 12.0;

    Swing(double a, double b);

    Mat3 rotation() const;
    /// Columns 0 and 1 of the left Jacobian of SO(3): the rotation vector, in the frame before the
    /// swing, that a unit of a (of b) adds.
    Vec3 turnByA() const { return {1 - C * b * b, C * a * b, -B * b}; }
    Vec3 turnByB() const { return {C * a * b, 1 - C * a * a, B * a}; }
    /// End of an arc of unit length that starts along z and turns evenly to the swing: the
    /// integral of exp(s [a, b, 0]) z over s from 0 to 1.
    Vec3 arcEnd() const { return {B * b, -B * a, A}; }
    /// What a unit of a (of b) moves that end.
    Vec3 arcEndByA() const { return {dB * a * b, -B - dB * a * a, dA * a}; }
    Vec3 arcEndByB() const { return {B + dB * b * b, -dB * a * b, dA * b}; }
};

}  // namespace hither
