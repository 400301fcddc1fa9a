#pragma once
#include <QSize>

#include "app/picture/camera.h"
#include "core/situation/situation.h"

namespace hither {

/// The camera for a named view of what is within `bounds_W`. "Whole" keeps the direction of `now`. The
/// person's own view stands at their eyes and looks at `lookAt_W`; without a person it is the one from behind.
Camera namedCamera(NamedView view, const Camera& now, const Eigen::AlignedBox3d& bounds_W, QSize size, const std::optional<Vec3>& eyes_W, const Vec3& lookAt_W);

/// Between two cameras, share 0..1: turned the short way round.
Camera between(const Camera& a, const Camera& b, double share);

}  // namespace hither
