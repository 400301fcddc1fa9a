#include "app/panels/finding_button.h"

#include <algorithm>

#include <QStyleOptionButton>
#include <QStylePainter>

namespace hither {

WrappedButton::WrappedButton(QWidget* parent) : QPushButton(parent) {
    QSizePolicy policy(QSizePolicy::Expanding, QSizePolicy::Minimum, QSizePolicy::PushButton);
    policy.setHeightForWidth(true);
    setSizePolicy(policy);
}

int WrappedButton::edge() const { return std::max(6, fontMetrics().height() / 2); }

int WrappedButton::heightForWidth(int width) const {
    const QRect words = fontMetrics().boundingRect(QRect(0, 0, std::max(1, width - 2 * edge()), 100000), Qt::TextWordWrap, text());
    return std::max(24, words.height() + edge());
}

QSize WrappedButton::sizeHint() const {
    const int width = fontMetrics().averageCharWidth() * 30;
    return {width, heightForWidth(width)};
}

QSize WrappedButton::minimumSizeHint() const { return {fontMetrics().averageCharWidth() * 16, std::max(24, fontMetrics().height() + edge())}; }

void WrappedButton::paintEvent(QPaintEvent*) {
    QStylePainter painter(this);
    QStyleOptionButton option;
    initStyleOption(&option);
    option.text.clear();
    painter.drawControl(QStyle::CE_PushButton, option);
    painter.setPen(palette().color(isEnabled() ? QPalette::Active : QPalette::Disabled, QPalette::ButtonText));
    painter.drawText(rect().adjusted(edge(), 0, -edge(), 0), Qt::AlignCenter | Qt::TextWordWrap, text());
}

}  // namespace hither
