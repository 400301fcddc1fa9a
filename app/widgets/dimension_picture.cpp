#include "app/widgets/dimension_picture.h"

#include <algorithm>

#include <QPainter>

#include "app/widgets/support_drawing.h"
#include "app/widgets/theme.h"

namespace hither {
namespace {

constexpr int margin = 8;   // px round the words

}  // namespace

DimensionPicture::DimensionPicture(QWidget* parent) : QWidget(parent) {
    QSizePolicy policy(QSizePolicy::Preferred, QSizePolicy::Preferred);
    policy.setHeightForWidth(true);
    setSizePolicy(policy);
    setAccessibleName(tr("Picture of the dimensions"));
    follow();
}

void DimensionPicture::setSupport(std::shared_ptr<const Support> support) {
    support_ = std::move(support);
    follow();
}

void DimensionPicture::setDimension(const std::string& key, const QString& value, const QString& means) {
    if (key == key_ && value == value_ && means == means_) return;
    key_ = key;
    value_ = value;
    means_ = means;
    follow();
}

void DimensionPicture::follow() {
    mark_ = support_ && !key_.empty() ? dimensionMark(*support_, key_) : std::nullopt;
    setAccessibleDescription(words());
    updateGeometry();
    update();
}

QString DimensionPicture::words() const {
    if (key_.empty()) return tr("Go to a dimension: this picture shows what it measures.");
    QString from;
    if (mark_) from = mark_->drawnFrom == DrawnFrom::side ? tr("From the side") : mark_->drawnFrom == DrawnFrom::front ? tr("From the front") : tr("From above");
    return from.isEmpty() ? means_ : tr("%1: %2").arg(from, means_);
}

int DimensionPicture::wordsHeight(int width) const {
    return fontMetrics().boundingRect(QRect(0, 0, std::max(40, width - 2 * margin), 10000), Qt::TextWordWrap, words()).height();
}

int DimensionPicture::heightForWidth(int width) const {
    // Room for two lines at least, so that the form below does not jump from one dimension to the next.
    return std::min(width * 55 / 100, 230) + std::max(wordsHeight(width), 2 * fontMetrics().lineSpacing()) + 2 * margin;
}

QSize DimensionPicture::sizeHint() const { return {300, heightForWidth(300)}; }
QSize DimensionPicture::minimumSizeHint() const { return {180, 60}; }

void DimensionPicture::paintEvent(QPaintEvent*) {
    const Theme& theme = Theme::current();
    QPainter painter(this);
    painter.setRenderHint(QPainter::Antialiasing);
    painter.setBrush(theme.surface);
    painter.setPen(QPen(theme.border, 1));
    painter.drawRoundedRect(QRectF(rect()).adjusted(0.5, 0.5, -0.5, -0.5), 6, 6);
    const int below = std::max(wordsHeight(width()), 2 * fontMetrics().lineSpacing()) + margin;
    if (support_) {
        const double around = fontMetrics().height() * 1.1;
        const SupportDrawing drawing(*support_, drawnFrom(), QRectF(around, around, width() - 2 * around, height() - below - 1.6 * around));
        drawing.paint(painter);
        if (mark_) drawing.paintMark(painter, *mark_, value_);
    }
    painter.setPen(key_.empty() ? theme.quietText : theme.text);
    painter.drawText(QRect(margin, height() - below, width() - 2 * margin, below - margin / 2), Qt::TextWordWrap | Qt::AlignLeading | Qt::AlignTop, words());
}

}  // namespace hither
