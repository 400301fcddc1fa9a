#include "app/picture/overlay.h"

#include <algorithm>
#include <cmath>

#include <QFontMetricsF>

namespace hither {

namespace {

constexpr double gap = 4;  // between labels, and to the border of the view

QFont fontOf(const PictureLabel& label, QFont font) {
    if (label.rank != PictureLabel::Rank::plain) font.setBold(true);
    return font;
}

bool meets(const QRectF& box, const std::vector<PlacedLabel>& placed) {
    return std::any_of(placed.begin(), placed.end(), [&](const PlacedLabel& other) { return other.box.adjusted(-gap, -gap, gap, gap).intersects(box); });
}

}  // namespace

std::vector<PlacedLabel> placeLabels(const Picture& picture, const Camera& camera, const QFont& font, QSizeF view) {
    std::vector<PlacedLabel> wanted, placed;
    const int width = static_cast<int>(view.width()), height = static_cast<int>(view.height());
    for (const PictureLabel& label : picture.labels) {
        const Vec3 at = camera.project(label.at_W, width, height);
        const QPointF point(at.x(), at.y());
        if (at.z() < 0.02 || !QRectF(QPointF(), view).contains(point)) continue;
        const QFontMetricsF metrics(fontOf(label, font));
        const double pad = 0.35 * metrics.height();
        const QString words = metrics.elidedText(QString::fromStdString(label.words), Qt::ElideRight, std::max(40.0, 0.5 * view.width()));
        wanted.push_back({&label, QRectF(0, 0, metrics.horizontalAdvance(words) + 2.4 * pad, metrics.height() + 1.2 * pad), point});
    }
    std::stable_sort(wanted.begin(), wanted.end(), [](const PlacedLabel& a, const PlacedLabel& b) { return a.label->rank < b.label->rank; });
    const QRectF inner(gap, gap, view.width() - 2 * gap, view.height() - 2 * gap);
    for (PlacedLabel label : wanted) {
        const double away = 1.1 * label.box.height();
        bool done = false;
        // Round the point, first to the upper right, then farther and farther out.
        for (int ring = 1; ring <= 6 && !done; ++ring)
            for (const auto& [x, y] : {QPointF(1, -1), QPointF(-1, -1), QPointF(1, 1), QPointF(-1, 1), QPointF(0, -1.2), QPointF(0, 1.2)}) {
                const double reach = away * ring;
                label.box.moveCenter(label.point + QPointF(x * (reach + 0.5 * label.box.width()), y * (reach + 0.5 * label.box.height())));
                if (!inner.contains(label.box) || meets(label.box, placed)) continue;
                done = true;
                break;
            }
        if (done) placed.push_back(label);
    }
    return placed;
}

void paintLabels(QPainter& painter, const Picture& picture, const std::vector<PlacedLabel>& labels, const PictureColours& colours) {
    painter.setRenderHint(QPainter::Antialiasing);
    for (auto it = labels.rbegin(); it != labels.rend(); ++it) {
        const PlacedLabel& placed = *it;
        QColor border = colours.labelBorder;
        if (placed.label->rank == PictureLabel::Rank::picked) border = colours.outline;
        for (const PictureLine& line : picture.lines)
            if (line.key == placed.label->key) border = colours.of(line.look);
        // The leader ends at the nearest point of the box.
        const QPointF end(std::clamp(placed.point.x(), placed.box.left(), placed.box.right()), std::clamp(placed.point.y(), placed.box.top(), placed.box.bottom()));
        painter.setPen(QPen(border, 1.2));
        painter.drawLine(placed.point, end);
        painter.setBrush(border);
        painter.drawEllipse(placed.point, 2.2, 2.2);
        painter.setPen(QPen(border, placed.label->rank == PictureLabel::Rank::plain ? 1 : 1.6));
        painter.setBrush(colours.labelBack);
        painter.drawRoundedRect(placed.box, 4, 4);
        const QFont font = fontOf(*placed.label, colours.labelFont);
        painter.setFont(font);
        painter.setPen(colours.labelText);
        const double pad = 0.35 * QFontMetricsF(font).height();
        painter.drawText(placed.box, Qt::AlignCenter,
                         QFontMetricsF(font).elidedText(QString::fromStdString(placed.label->words), Qt::ElideRight, placed.box.width() - 2 * pad));
    }
}

}  // namespace hither
