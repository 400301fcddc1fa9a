#include "app/editor/step_button.h"

#include <QPainter>
#include <QPainterPath>

#include "app/widgets/theme.h"

namespace hither {
namespace {

QFont nameFont(QFont font) {
    font.setBold(true);
    return font;
}
QFont wordsFont(QFont font) {
    font.setPointSizeF(font.pointSizeF() * 0.9);
    return font;
}
constexpr int pad = 8;

}  // namespace

StepButton::StepButton(int number, const QString& name, QWidget* parent) : QAbstractButton(parent), number_(number) {
    setText(name);
    setCheckable(true);
    setAutoExclusive(true);
    setFocusPolicy(Qt::StrongFocus);
    setSizePolicy(QSizePolicy::Expanding, QSizePolicy::Fixed);
    setStatus(status_);
}

void StepButton::setStatus(const StepStatus& status) {
    status_ = status;
    const QString state = status.state == StepStatus::State::done ? tr("done") : status.state == StepStatus::State::attention ? tr("needs a look") : tr("missing");
    setAccessibleName(tr("Step %1, %2").arg(number_).arg(text()));
    setAccessibleDescription(tr("%1: %2").arg(state, status.words));
    setToolTip(status.words);
    update();
}

QSize StepButton::sizeHint() const {
    const QFontMetrics name(nameFont(font())), words(wordsFont(font()));
    const int ring = name.height() + 6;
    return {ring + 3 * pad + std::max(name.horizontalAdvance(text()), words.averageCharWidth() * 18), std::max(24, name.height() + words.height() + 2 * pad)};
}

QSize StepButton::minimumSizeHint() const {
    const QFontMetrics name(nameFont(font()));
    return {name.height() + 6 + 3 * pad + name.horizontalAdvance(text()), sizeHint().height()};
}

void StepButton::paintEvent(QPaintEvent*) {
    const Theme& t = Theme::current();
    QPainter p(this);
    p.setRenderHint(QPainter::Antialiasing);
    const QRectF box = QRectF(rect()).adjusted(1.5, 1.5, -1.5, -1.5);
    QPainterPath shape;
    shape.addRoundedRect(box, 5, 5);
    if (isChecked()) p.fillPath(shape, t.raised);
    else if (underMouse()) p.fillPath(shape, t.surface);
    if (hasFocus()) {
        p.setPen(QPen(t.focus, 2));
        p.drawPath(shape);
    } else if (isChecked()) {
        p.setPen(QPen(t.accent, 1.5));
        p.drawPath(shape);
    }

    const QFontMetrics nameSize(nameFont(font())), wordsSize(wordsFont(font()));
    const double ring = nameSize.height() + 4;
    const QRectF circle(pad, 0.5 * (height() - ring), ring, ring);
    const bool done = status_.state == StepStatus::State::done, attention = status_.state == StepStatus::State::attention;
    const QColor mark = done ? t.meets : attention ? t.close : t.quietText;
    p.setPen(QPen(mark, 1.8));
    p.setBrush(done ? QBrush(mark) : QBrush(Qt::NoBrush));
    p.drawEllipse(circle);
    if (attention) {
        p.save();
        p.setPen(Qt::NoPen);
        p.setBrush(QColor(mark.red(), mark.green(), mark.blue(), 60));
        p.drawPie(circle, 90 * 16, 180 * 16);
        p.restore();
    }
    p.setFont(nameFont(font()));
    p.setPen(done ? t.window : t.text);
    p.drawText(circle, Qt::AlignCenter, QString::number(number_));

    const double left = circle.right() + pad, width = this->width() - left - pad;
    const double top = 0.5 * (height() - nameSize.height() - wordsSize.height());
    p.setPen(t.text);
    p.drawText(QRectF(left, top, width, nameSize.height()), Qt::AlignLeft | Qt::AlignVCenter, text());
    p.setFont(wordsFont(font()));
    p.setPen(status_.state == StepStatus::State::attention ? t.close : t.quietText);
    p.drawText(QRectF(left, top + nameSize.height(), width, wordsSize.height()), Qt::AlignLeft | Qt::AlignVCenter,
               wordsSize.elidedText(status_.words, Qt::ElideRight, static_cast<int>(width)));
}

}  // namespace hither
