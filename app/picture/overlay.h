#pragma once
#include <vector>

#include <QPainter>
#include <QRectF>

#include "app/picture/camera.h"
#include "app/picture/picture.h"
#include "app/picture/picture_colours.h"

namespace hither {

/// Where a label's words stand and the point they belong to, in pixels of the view.
struct PlacedLabel { const PictureLabel* label = nullptr; QRectF box; QPointF point; };

/// Puts the labels beside their points, within the view, so that none covers another; of labels for
/// which there is no room the less important ones are left out. What is behind the eye has no label.
std::vector<PlacedLabel> placeLabels(const Picture& picture, const Camera& camera, const QFont& font, QSizeF view);

/// Draws the labels with their leaders.
void paintLabels(QPainter& painter, const Picture& picture, const std::vector<PlacedLabel>& labels, const PictureColours& colours);

}  // namespace hither
