#pragma once
#include <QImage>

#include "app/picture/camera.h"
#include "app/picture/picture.h"
#include "app/picture/picture_colours.h"

namespace hither {

/// What everything stands before: the ground's tone, the floor's lines fading out with the numbers of
/// its scale, and soft shadows. `scale`: pixels of the image to one of the view.
void paintBackdrop(QImage& image, const Picture& picture, const Camera& camera, const PictureColours& colours, double scale);

}  // namespace hither
