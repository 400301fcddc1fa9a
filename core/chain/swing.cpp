#include "core/chain/swing.h"

#include <cmath>

namespace hither {

Swing::Swing(double swingA, double swingB) : a(swingA), b(swingB) {
    const double x = a * a + b * b;
    if (x < 0.25) {
        // Series in x = t^2; the first term left out is below 1e-18 of the sum.
        A = 1 - x / 6 * (1 - x / 20 * (1 - x / 42 * (1 - x / 72 * (1 - x / 110 * (1 - x / 156 * (1 - x / 210))))));
        B = 0.5 * (1 - x / 12 * (1 - x / 30 * (1 - x / 56 * (1 - x / 90 * (1 - x / 132 * (1 - x / 182))))));
        C = (1 - x / 20 * (1 - x / 42 * (1 - x / 72 * (1 - x / 110 * (1 - x / 156 * (1 - x / 210)))))) / 6;
        // dA = sum over k >= 1 of (-1)^k 2k x^(k-1) / (2k+1)!, dB the same over (2k+2)!.
        dA = -1.0 / 3 + x * (1.0 / 30 + x * (-1.0 / 840 + x * (1.0 / 45360 + x * (-1.0 / 3991680 + x * (1.0 / 518918400 - x / 93405312000.0)))));
        dB = -1.0 / 12 + x * (1.0 / 180 + x * (-1.0 / 6720 + x * (1.0 / 453600 + x * (-1.0 / 47900160 + x * (1.0 / 7264857600.0 - x / 1494484992000.0)))));
        return;
    }
    const double t = std::sqrt(x), s = std::sin(t), c = std::cos(t);
    A = s / t;
    B = (1 - c) / x;
    C = (t - s) / (t * x);
    dA = (c - A) / x;
    dB = (A - 2 * B) / x;
}

Mat3 Swing::rotation() const {
    Mat3 R;
    R << 1 - B * b * b, B * a * b, A * b,
         B * a * b, 1 - B * a * a, -A * a,
         -A * b, A * a, 1 - B * (a * a + b * b);
    return R;
}

}  // namespace hither
