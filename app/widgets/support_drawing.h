#pragma once
#include <QPainter>

#include "app/widgets/dimension_marks.h"

namespace hither {

/// A support drawn flat from its own solids, every moving group at zero, in the theme's colours: thin
/// outlines on a light tint, far things first. Scaled to fit `box`, standing on a floor line.
class SupportDrawing {
public:
    SupportDrawing(const Support& support, DrawnFrom drawnFrom, const QRectF& box);

    void paint(QPainter& painter) const;
    /// A dimension's line with arrows and extension lines, or its arc, with the words at it.
    void paintMark(QPainter& painter, const DimensionMark& mark, const QString& words) const;
    QPointF at(const Vec3& p_S) const;

private:
    struct Outline { QPolygonF shape; double depth = 0; };
    std::vector<Outline> outlines_;
    DrawnFrom drawnFrom_;
    QRectF box_;
    double scale_ = 1;
    QPointF shift_;
};

}  // namespace hither
