#include "app/widgets/verdict_mark.h"

#include <algorithm>

#include <QCoreApplication>
#include <QPainterPath>

#include "app/widgets/theme.h"

namespace hither {
namespace {

QString tr(const char* text) { return QCoreApplication::translate("hither::VerdictMark", text); }

}  // namespace

void paintVerdict(QPainter& painter, const QRectF& box, Verdict verdict) {
    painter.save();
    painter.setRenderHint(QPainter::Antialiasing);
    const double size = std::min(box.width(), box.height());
    const QPointF middle = box.center();
    const double r = 0.42 * size;
    const QColor colour = Theme::current().of(verdict);
    painter.setPen(Qt::NoPen);
    painter.setBrush(colour);
    switch (verdict) {
        case Verdict::meets: painter.drawEllipse(middle, r, r); break;
        case Verdict::close: {
            QPainterPath path(middle + QPointF(0, -r));
            path.lineTo(middle + QPointF(1.08 * r, 0.86 * r));
            path.lineTo(middle + QPointF(-1.08 * r, 0.86 * r));
            path.closeSubpath();
            painter.drawPath(path);
            break;
        }
        case Verdict::misses: {
            QPainterPath path;
            path.addRect(QRectF(middle - QPointF(r, r), QSizeF(2 * r, 2 * r)).adjusted(0.06 * r, 0.06 * r, -0.06 * r, -0.06 * r));
            QPainterPath bar;
            bar.addRect(QRectF(middle - QPointF(0.62 * r, 0.18 * r), QSizeF(1.24 * r, 0.36 * r)));
            painter.drawPath(path.subtracted(bar));
            break;
        }
        case Verdict::unknown:
            painter.setBrush(Qt::NoBrush);
            painter.setPen(QPen(colour, 0.34 * r));
            painter.drawEllipse(middle, 0.83 * r, 0.83 * r);
            break;
    }
    painter.restore();
}

QIcon verdictIcon(Verdict verdict) {
    QIcon icon;
    for (const int size : {16, 24, 32, 48, 64}) {
        QPixmap picture(size, size);
        picture.fill(Qt::transparent);
        QPainter painter(&picture);
        paintVerdict(painter, QRectF(0, 0, size, size), verdict);
        painter.end();
        icon.addPixmap(picture);
    }
    return icon;
}

QString verdictWord(Verdict verdict) {
    switch (verdict) {
        case Verdict::meets: return tr("meets");
        case Verdict::close: return tr("close");
        case Verdict::misses: return tr("misses");
        case Verdict::unknown: break;
    }
    return tr("unknown");
}

QString checkWord(CheckKind check) {
    switch (check) {
        case CheckKind::fit: return tr("Fit");
        case CheckKind::reach: return tr("Reach");
        case CheckKind::aim: return tr("Aim");
        case CheckKind::clearance: return tr("Clearance");
        case CheckKind::personReach: return tr("Person reach");
        case CheckKind::hold: return tr("Hold");
        case CheckKind::give: return tr("Give");
        case CheckKind::press: return tr("Press");
        case CheckKind::steady: return tr("Steady");
        case CheckKind::returning: return tr("Return");
        case CheckKind::room: return tr("Room");
        case CheckKind::bedGaps: return tr("Bed gaps");
        case CheckKind::cords: break;
    }
    return tr("Cords");
}

VerdictMark::VerdictMark(QWidget* parent) : QWidget(parent) {
    setSizePolicy(QSizePolicy::Minimum, QSizePolicy::Fixed);
    setVerdict(std::nullopt);
}

void VerdictMark::setVerdict(std::optional<Verdict> verdict) {
    verdict_ = verdict;
    setAccessibleName(words());
    updateGeometry();
    update();
}

QString VerdictMark::words() const { return verdict_ ? verdictWord(*verdict_) : tr("not computed"); }

QSize VerdictMark::sizeHint() const {
    const QFontMetrics metrics = fontMetrics();
    const int mark = verdict_ ? metrics.height() + metrics.height() / 3 : 0;
    return {mark + metrics.horizontalAdvance(words()) + 4, metrics.height() + 4};
}

void VerdictMark::paintEvent(QPaintEvent*) {
    QPainter painter(this);
    const int size = fontMetrics().height();
    QRect rest = rect();
    if (verdict_) {
        const bool mirrored = layoutDirection() == Qt::RightToLeft;
        const int x = mirrored ? width() - size : 0;
        paintVerdict(painter, QRectF(x, 0.5 * (height() - size), size, size), *verdict_);
        if (mirrored) rest.setRight(rest.right() - size - size / 3);
        else rest.setLeft(size + size / 3);
    }
    painter.setPen(verdict_ ? Theme::current().of(*verdict_) : Theme::current().quietText);
    painter.drawText(rest, Qt::AlignVCenter | Qt::AlignLeading, words());
}

}  // namespace hither
