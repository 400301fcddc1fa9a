#include "app/panels/finding_bar.h"

#include <algorithm>
#include <cmath>

#include <QPainter>

#include "app/panels/finding_words.h"
#include "app/widgets/theme.h"

namespace hither {

FindingBar::FindingBar(QWidget* parent) : QWidget(parent) { setSizePolicy(QSizePolicy::Expanding, QSizePolicy::Fixed); }

bool FindingBar::says(const Finding& f) { return f.value && f.limit && (*f.value != 0 || *f.limit != 0); }

void FindingBar::show(const Finding& f, const QString& words) {
    value_ = f.value.value_or(0);
    limit_ = f.limit.value_or(0);
    mostIs_ = limitOf(f) == LimitIs::most;
    leastIs_ = limitOf(f) == LimitIs::least;
    verdict_ = f.verdict;
    setAccessibleName(words);
    update();
}

QSize FindingBar::sizeHint() const { return {fontMetrics().averageCharWidth() * 16, std::max(24, fontMetrics().height() + 6)}; }

void FindingBar::paintEvent(QPaintEvent*) {
    const Theme& theme = Theme::current();
    QPainter painter(this);
    painter.setRenderHint(QPainter::Antialiasing);
    // From the least of nothing, value and limit to the most, with some room beyond.
    double low = std::min({0.0, value_, limit_}), high = std::max({0.0, value_, limit_});
    const double room = 0.12 * (high - low);
    if (high > 0) high += room;
    if (low < 0) low -= room;
    const QRectF track = QRectF(rect()).adjusted(1, height() * 0.22, -1, -height() * 0.22);
    const auto x = [&](double v) { return track.left() + track.width() * (v - low) / (high - low); };
    painter.setPen(QPen(theme.strongBorder, 1));
    painter.setBrush(theme.surface);
    painter.drawRect(track);
    QRectF passes = track.adjusted(0.5, 0.5, -0.5, -0.5);
    if (mostIs_) passes.setRight(x(limit_));
    if (leastIs_) passes.setLeft(x(limit_));
    if (mostIs_ || leastIs_) {
        QColor tint = theme.meets;
        tint.setAlphaF(0.18f);
        painter.fillRect(passes, tint);
    }
    const QRectF bar(QPointF(std::min(x(0), x(value_)), track.top() + track.height() * 0.25), QPointF(std::max({x(0), x(value_), x(0) + 2}), track.bottom() - track.height() * 0.25));
    painter.fillRect(bar, theme.of(verdict_));
    painter.setPen(QPen(theme.text, 2));
    painter.drawLine(QPointF(x(limit_), 1), QPointF(x(limit_), height() - 1));
    if (low < 0 && limit_ != 0) {
        painter.setPen(QPen(theme.strongBorder, 1, Qt::DotLine));
        painter.drawLine(QPointF(x(0), track.top()), QPointF(x(0), track.bottom()));
    }
}

}  // namespace hither
