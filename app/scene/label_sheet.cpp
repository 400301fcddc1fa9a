#include "app/scene/label_sheet.h"

#include <algorithm>
#include <cmath>

#include <QFontMetricsF>
#include <QPainter>

namespace hither {

void LabelSheet::setLook(const PictureColours& colours, double pixelRatio) {
    const bool same = !image_.isNull() && ratio_ == pixelRatio && colours_.labelBack == colours.labelBack && colours_.labelText == colours.labelText &&
                      colours_.labelBorder == colours.labelBorder && colours_.outline == colours.outline && colours_.labelFont == colours.labelFont;
    colours_ = colours;
    ratio_ = pixelRatio;
    if (!same) clear();
}

void LabelSheet::clear() {
    image_ = QImage(width, height, QImage::Format_RGBA8888);
    image_.fill(Qt::transparent);
    QPainter painter(&image_);
    painter.fillRect(0, 0, 4, 4, Qt::white);
    words_.clear();
    ++started_;
    next_ = QPoint(6, 0);
    rowHeight_ = 6;
    changed_ = true;
}

const LabelSheet::Word& LabelSheet::word(const QString& words, LabelLook look) {
    if (image_.isNull()) clear();
    const auto key = std::pair(words, look);
    if (const auto found = words_.find(key); found != words_.end()) return found->second;
    QFont font = colours_.labelFont;
    if (look == LabelLook::strong) font.setBold(true);
    const QFontMetricsF metrics(font);
    const double padX = look == LabelLook::bare ? 2 : std::round(metrics.height() * 0.4), padY = look == LabelLook::bare ? 1 : std::round(metrics.height() * 0.18);
    const QString shown = metrics.elidedText(words, Qt::ElideRight, width / ratio_ - 2 * padX - 8);
    const QSizeF size(std::ceil(metrics.horizontalAdvance(shown) + 2 * padX + 2), std::ceil(metrics.height() + 2 * padY + 2));
    const QSize pixels(static_cast<int>(std::ceil(size.width() * ratio_)), static_cast<int>(std::ceil(size.height() * ratio_)));
    if (next_.x() + pixels.width() + 2 > width) {
        next_ = QPoint(0, next_.y() + rowHeight_ + 2);
        rowHeight_ = 0;
    }
    if (next_.y() + pixels.height() + 2 > height) {
        clear();
        return word(words, look);
    }
    QPainter painter(&image_);
    painter.setRenderHint(QPainter::Antialiasing);
    painter.translate(next_);
    painter.scale(ratio_, ratio_);
    painter.setFont(font);
    const QRectF box(QPointF(0, 0), size);
    if (look != LabelLook::bare) {
        painter.setBrush(colours_.labelBack);
        painter.setPen(look == LabelLook::strong ? QPen(colours_.outline, 2) : QPen(colours_.labelBorder, 1));
        painter.drawRoundedRect(box.adjusted(1, 1, -1, -1), 4, 4);
    }
    painter.setPen(colours_.labelText);
    painter.drawText(box, Qt::AlignCenter, shown);
    painter.end();
    Word w;
    w.size = size;
    w.uv = QRectF(next_.x() / double(width), next_.y() / double(height), pixels.width() / double(width), pixels.height() / double(height));
    next_.rx() += pixels.width() + 2;
    rowHeight_ = std::max(rowHeight_, pixels.height());
    changed_ = true;
    return words_.emplace(key, w).first->second;
}

}  // namespace hither
