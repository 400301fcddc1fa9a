#include "app/dialogs/row_button.h"

#include <algorithm>

#include <QKeyEvent>
#include <QPainter>
#include <QPainterPath>
#include <QScrollArea>

#include "app/dialogs/dialog_text.h"
#include "app/widgets/theme.h"

namespace hither {

RowButton::RowButton(const QString& name, const QString& more, QWidget* parent) : QAbstractButton(parent), more_(more) {
    setText(name);
    setAccessibleName(name);
    setAccessibleDescription(more);
    setFocusPolicy(Qt::StrongFocus);
    setCursor(Qt::PointingHandCursor);
    setAttribute(Qt::WA_Hover);
    QSizePolicy policy(QSizePolicy::Expanding, QSizePolicy::Minimum);
    policy.setHeightForWidth(true);
    setSizePolicy(policy);
}

int RowButton::textWidth(int width) const { return std::max(40, width - 4 * pad()); }

int RowButton::heightForWidth(int width) const {
    const QRect room(0, 0, textWidth(width), 10000);
    const int name = QFontMetrics(boldFont(font())).boundingRect(room, Qt::TextWordWrap, text()).height();
    const int more = more_.isEmpty() ? 0 : fontMetrics().boundingRect(room, Qt::TextWordWrap, more_).height();
    return std::max(24, name + more + 2 * pad());
}

QSize RowButton::sizeHint() const {
    const int width = fontMetrics().averageCharWidth() * 44;
    return {width, heightForWidth(width)};
}

QSize RowButton::minimumSizeHint() const { return {fontMetrics().averageCharWidth() * 20, heightForWidth(std::max(width(), fontMetrics().averageCharWidth() * 20))}; }

void RowButton::paintEvent(QPaintEvent*) {
    const Theme& t = Theme::current();
    QPainter p(this);
    p.setRenderHint(QPainter::Antialiasing);
    const QRectF box = QRectF(rect()).adjusted(1.5, 1.5, -1.5, -1.5);
    QPainterPath shape;
    shape.addRoundedRect(box, 5, 5);
    p.fillPath(shape, isEnabled() && (underMouse() || hasFocus() || isDown()) ? t.raised : isEnabled() ? t.surface : t.window);
    if (hasFocus()) p.setPen(QPen(t.focus, 2));
    else p.setPen(QPen(isEnabled() ? t.strongBorder : t.border, 1));
    p.drawPath(shape);

    const QFont name = boldFont(font());
    const int wide = textWidth(width());
    const QRect nameBox = QFontMetrics(name).boundingRect(QRect(pad(), pad(), wide, 10000), Qt::TextWordWrap, text());
    p.setFont(name);
    p.setPen(isEnabled() ? t.text : t.quietText);
    p.drawText(QRect(pad(), pad(), wide, nameBox.height()), Qt::TextWordWrap, text());
    p.setFont(font());
    p.setPen(t.quietText);
    p.drawText(QRect(pad(), pad() + nameBox.height(), wide, height()), Qt::TextWordWrap, more_);
    if (!isEnabled()) return;
    const double size = fontMetrics().height() * 0.28, x = width() - 1.6 * pad(), y = height() * 0.5;
    p.setPen(QPen(t.accent, std::max(2.0, size * 0.35), Qt::SolidLine, Qt::RoundCap, Qt::RoundJoin));
    p.drawPolyline(QPolygonF({QPointF(x - size, y - size), QPointF(x, y), QPointF(x - size, y + size)}));
}

void RowButton::keyPressEvent(QKeyEvent* event) {
    const int by = event->key() == Qt::Key_Down ? 1 : event->key() == Qt::Key_Up ? -1 : 0;
    if (event->key() == Qt::Key_Return || event->key() == Qt::Key_Enter) return click();
    if (by == 0) return QAbstractButton::keyPressEvent(event);
    const QList<RowButton*> rows = parentWidget()->findChildren<RowButton*>(Qt::FindDirectChildrenOnly);
    for (auto i = rows.indexOf(this) + by; i >= 0 && i < rows.size(); i += by) {
        if (!rows[i]->isEnabled()) continue;
        rows[i]->setFocus(Qt::TabFocusReason);
        return;
    }
}

void RowButton::focusInEvent(QFocusEvent* event) {
    QAbstractButton::focusInEvent(event);
    for (QWidget* w = parentWidget(); w; w = w->parentWidget())
        if (auto* area = qobject_cast<QScrollArea*>(w)) {
            area->ensureWidgetVisible(this);
            return;
        }
}

}  // namespace hither
