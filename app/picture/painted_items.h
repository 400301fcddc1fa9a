#pragma once
#include "app/picture/camera.h"
#include "app/picture/picture_colours.h"
#include "app/picture/raster.h"

namespace hither {

/// From W to samples of a raster.
class ToSamples {
public:
    ToSamples(const Camera& camera, int width, int height);
    static constexpr float nearest_m = 0.02F;

    /// In the camera's frame: x right, y up, z behind.
    const Pose& X_CW() const { return X_CW_; }
    Corner corner(const Eigen::Vector3f& p_C, float light = 0) const {
        const float w = 1 / -p_C.z();
        return {middleX_ + focal_ * p_C.x() * w, middleY_ - focal_ * p_C.y() * w, w, light};
    }
    const Vec3& eye_W() const { return eye_W_; }

private:
    Pose X_CW_;
    Vec3 eye_W_;
    float focal_, middleX_, middleY_;
};

/// Draws the items: surfaces, feature edges and silhouettes, what is seen through, outlines.
void paintItems(Raster& raster, const Picture& picture, const ToSamples& to, const PictureColours& colours);

/// Where the opaque items shade the floor z = 0, in 0 to 255, `width` x `height` bytes, blurred.
std::vector<std::uint8_t> floorShadow(const Picture& picture, const Camera& camera, int width, int height);

}  // namespace hither
