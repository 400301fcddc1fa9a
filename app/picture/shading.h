#pragma once
#include "app/picture/picture_colours.h"
#include "app/picture/raster.h"

namespace hither {

/// Premultiplied ARGB of a colour at an opacity.
std::uint32_t premultiplied(const QColor& colour, double opacity);

/// The tints of a look from shade (0) through its own colour to highlight (255), mixed in linear light.
Tints tintsOf(const QColor& base, double opacity);

/// How light a surface is: a soft sky, a key light from above, a little light from the eye, and a
/// highlight on what shines. As an index into the tints.
class Lighting {
public:
    explicit Lighting(const Vec3& eye_W);
    float light(const Eigen::Vector3f& normal_W, const Eigen::Vector3f& point_W, float gloss) const;
    /// Toward the light, for shadows on the floor.
    static Vec3 toward();

private:
    Eigen::Vector3f eye_W_, key_, fill_;
};
/// How much a look shines, 0 to 1.
float glossOf(Look look);

}  // namespace hither
