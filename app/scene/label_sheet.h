#pragma once
#include <map>
#include <utility>

#include <QImage>
#include <QRectF>
#include <QSizeF>
#include <QString>

#include "app/picture/picture_colours.h"

namespace hither {

/// How words look: in a box; in a box with a strong border (what is picked, what a finding says); bare.
enum class LabelLook { boxed, strong, bare };

/// All words of a picture drawn into one image, sharp at the screen's pixels. Words once drawn stay
/// until there are too many of them.
class LabelSheet {
public:
    /// Of a label: its size in the view's pixels and its place in the image as shares of 1.
    struct Word { QSizeF size; QRectF uv; };

    /// Starts anew when colours, font or screen are others.
    void setLook(const PictureColours& colours, double pixelRatio);
    const Word& word(const QString& words, LabelLook look);
    /// A place that is white all over, for lines.
    QPointF white() const { return {2.0 / width, 2.0 / height}; }
    const QImage& image() const { return image_; }
    /// Whether something was drawn since the last call.
    bool takeChanged() { return std::exchange(changed_, false); }

    /// How often it was begun anew: places given before the last time are void.
    int started() const { return started_; }

    static constexpr int width = 2048, height = 1024;

private:
    void clear();

    PictureColours colours_;
    double ratio_ = 1;
    QImage image_;
    std::map<std::pair<QString, LabelLook>, Word> words_;
    QPoint next_;
    int rowHeight_ = 0;
    bool changed_ = true;
    int started_ = 0;
};

}  // namespace hither
