#pragma once
#include <vector>

#include "core/catalogue/part.h"

namespace hither {

/// The values that give an element of a part turned end for end (core/catalogue/part.h, reversed)
/// the pose that `q` gives it the right way round. With X the element's pose, incoming to outgoing
/// frame, and F = Rx(180 deg), which turns z about: X_rev = F X^-1 F. `q` in the element's own
/// order, SI; applied twice it gives `q` back.
///   rigid none; hinge, swivel, slide the same value (the axis is mirrored instead);
///   ball (a, b, t) -> (-a cos t - b sin t, -a sin t + b cos t, t);
///   bend its three arcs in the other order, each (kx, ky) -> (-kx, ky).
std::vector<double> reversedValues(const Element& element, const std::vector<double>& q);

}  // namespace hither
