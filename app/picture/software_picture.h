#pragma once
#include <QImage>

#include "app/picture/camera.h"
#include "app/picture/picture.h"
#include "app/picture/picture_colours.h"

namespace hither {

/// Draws a picture without OpenGL or a display: flat tints with a depth buffer, feature edges and
/// silhouettes with hidden lines left out, translucent things over it, then lines and labels.
QImage softwarePicture(const Picture& picture, const Camera& camera, const PictureColours& colours, QSize size, double scale = 1);

}  // namespace hither
