#pragma once
#include <QImage>
#include <QRectF>

#include "app/picture/picture.h"

namespace hither {

/// The soft shadow that a picture's opaque things throw on the floor (z = 0), by the key light: sharper
/// under low things than under high ones. `strength`: 0..255 in the image, row 0 at the box's least y.
struct FloorShadow {
    QImage strength;     ///< Format_Grayscale8
    QRectF box_W;        ///< metres: x, y, sizes
};
FloorShadow floorShadow(const Picture& picture);

/// The way the key light goes, unit.
Vec3 keyLight_W();

}  // namespace hither
