#include "app/widgets/picture_button.h"

#include <algorithm>

#include <QEvent>
#include <QPainter>

#include "app/widgets/theme.h"

namespace hither {
namespace {

constexpr int margin = 8;
constexpr Qt::Alignment leadingTop = Qt::AlignLeading | Qt::AlignTop;

QFont bold(QFont font) {
    font.setWeight(QFont::DemiBold);
    return font;
}

}  // namespace

PictureButton::PictureButton(const QString& name, const QString& about, QWidget* parent) : QAbstractButton(parent), about_(about) {
    setText(name);
    setAccessibleName(name);
    setAccessibleDescription(about);
    setFocusPolicy(Qt::StrongFocus);
    QSizePolicy policy(QSizePolicy::Preferred, QSizePolicy::Preferred);
    policy.setHeightForWidth(true);
    setSizePolicy(policy);
}

int PictureButton::pictureSize() const { return std::clamp(fontMetrics().height() * 4, 56, 96); }

int PictureButton::heightForWidth(int width) const {
    const int room = std::max(60, width - pictureSize() - 3 * margin);
    const QRect endless(0, 0, room, 10000);
    const int words = QFontMetrics(bold(font())).boundingRect(endless, Qt::TextWordWrap, text()).height() + fontMetrics().boundingRect(endless, Qt::TextWordWrap, about_).height() + 2;
    return std::max(words, pictureSize()) + 2 * margin;
}

QSize PictureButton::sizeHint() const { return {300, heightForWidth(300)}; }
QSize PictureButton::minimumSizeHint() const {
    const int least = pictureSize() + 3 * margin + fontMetrics().averageCharWidth() * 14;
    return {least, pictureSize() + 2 * margin};
}

void PictureButton::paintEvent(QPaintEvent*) {
    const Theme& theme = Theme::current();
    QPainter painter(this);
    painter.setRenderHint(QPainter::Antialiasing);
    const bool over = isEnabled() && (underMouse() || isDown());
    painter.setBrush(over ? theme.raised : theme.surface);
    const double pen = hasFocus() ? 2 : 1;
    painter.setPen(QPen(hasFocus() ? theme.focus : isEnabled() ? theme.strongBorder : theme.border, pen));
    painter.drawRoundedRect(QRectF(rect()).adjusted(pen / 2, pen / 2, -pen / 2, -pen / 2), 6, 6);
    const int picture = pictureSize();
    const bool mirrored = layoutDirection() == Qt::RightToLeft;
    painter.save();
    paintPicture(painter, QRectF(mirrored ? width() - margin - picture : margin, margin, picture, picture));
    painter.restore();
    QRect room(mirrored ? margin : picture + 2 * margin, margin, width() - picture - 3 * margin, height() - 2 * margin);
    painter.setPen(isEnabled() ? theme.text : theme.quietText);
    painter.setFont(bold(font()));
    QRect used;
    painter.drawText(room, Qt::TextWordWrap | leadingTop, text(), &used);
    painter.setFont(font());
    painter.setPen(theme.quietText);
    room.setTop(used.bottom() + 3);
    painter.drawText(room, Qt::TextWordWrap | leadingTop, about_);
}

bool PictureButton::event(QEvent* event) {
    if (event->type() == QEvent::HoverEnter || event->type() == QEvent::HoverLeave || event->type() == QEvent::Enter || event->type() == QEvent::Leave) update();
    return QAbstractButton::event(event);
}

}  // namespace hither
