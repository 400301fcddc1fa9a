#pragma once
#include <algorithm>

#include "app/picture/camera.h"

namespace hither {

/// Depth range of the OpenGL picture, metres before the eye.
inline double nearPlane_m(const Camera& camera) { return std::clamp(0.04 * camera.distance, 0.02, 0.2); }
inline double farPlane_m(const Camera& camera) { return camera.distance + 30; }

}  // namespace hither
