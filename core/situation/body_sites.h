#pragma once
#include "core/situation/body_shape.h"

namespace hither {

/// The control sites of a body: each point is where a line from outside toward the body part meets
/// its solids, so it lies on the surface. Left and right are mirror images.
std::vector<ControlSite> sitesOn(const BodyShape& shape);

}  // namespace hither
