#include "app/widgets/support_drawing.h"

#include <algorithm>
#include <cmath>

#include "app/widgets/theme.h"

namespace hither {
namespace {

constexpr int roundSteps = 28;

/// To the drawing's right and up, and toward the one who looks.
struct Seen { double right, up, near; };
Seen seen(const Vec3& p, DrawnFrom from) {
    switch (from) {
        case DrawnFrom::side: return {p.x(), p.z(), -p.y()};
        case DrawnFrom::front: return {p.y(), p.z(), p.x()};
        case DrawnFrom::above: break;
    }
    return {p.x(), p.y(), p.z()};
}

/// Points whose hull, widened by `radius`, is the solid's.
struct Cloud { std::vector<Vec3> points; double radius = 0; };
Cloud cloudOf(const Solid& s) {
    Cloud cloud;
    const auto add = [&](const Vec3& p) { cloud.points.push_back(s.X_FG * p); };
    switch (s.kind) {
        case SolidKind::sphere: add(Vec3::Zero()); cloud.radius = s.radius; break;
        case SolidKind::capsule:
            for (const double z : {s.half.z(), -s.half.z()}) add(Vec3(0, 0, z));
            cloud.radius = s.radius;
            break;
        case SolidKind::cylinder:
            for (const double z : {s.half.z(), -s.half.z()})
                for (int i = 0; i < roundSteps; ++i) {
                    const double turn = 2 * pi * i / roundSteps;
                    add(Vec3(s.radius * std::cos(turn), s.radius * std::sin(turn), z));
                }
            break;
        case SolidKind::box:
        case SolidKind::roundedBox: {
            const double r = s.kind == SolidKind::box ? 0 : s.radius;
            for (int corner = 0; corner < 8; ++corner)
                add(Vec3((corner & 1 ? 1 : -1) * (s.half.x() - r), (corner & 2 ? 1 : -1) * (s.half.y() - r), (corner & 4 ? 1 : -1) * (s.half.z() - r)));
            cloud.radius = r;
            break;
        }
        case SolidKind::hull:
            if (s.hull) for (const Vec3& p : s.hull->points) add(p);
            break;
    }
    return cloud;
}

/// Convex hull of points in the plane (Andrew's monotone chain).
QPolygonF hullOf(std::vector<QPointF> points) {
    std::sort(points.begin(), points.end(), [](const QPointF& a, const QPointF& b) { return a.x() < b.x() || (a.x() == b.x() && a.y() < b.y()); });
    const auto left = [](const QPointF& o, const QPointF& a, const QPointF& b) { return (a.x() - o.x()) * (b.y() - o.y()) - (a.y() - o.y()) * (b.x() - o.x()); };
    QPolygonF hull;
    for (int pass = 0; pass < 2; ++pass) {
        const qsizetype least = hull.size() + 1;
        for (const QPointF& p : points) {
            while (hull.size() > least && left(hull[hull.size() - 2], hull.back(), p) <= 0) hull.pop_back();
            hull.push_back(p);
        }
        hull.pop_back();
        std::reverse(points.begin(), points.end());
    }
    return hull;
}

void paintArrow(QPainter& painter, const QPointF& tip, const QPointF& direction, double size) {
    const QPointF across(-direction.y(), direction.x());
    const QPolygonF head({tip, tip - size * direction + 0.38 * size * across, tip - size * direction - 0.38 * size * across});
    painter.drawPolygon(head);
}

}  // namespace

SupportDrawing::SupportDrawing(const Support& support, DrawnFrom drawnFrom, const QRectF& box) : drawnFrom_(drawnFrom), box_(box) {
    QRectF all;
    for (const SupportSolid& solid : support.solids) {
        const Cloud cloud = cloudOf(solid.solid);
        if (cloud.points.empty()) continue;
        std::vector<QPointF> points;
        Outline outline;
        outline.depth = -1e9;
        for (const Vec3& p : cloud.points) {
            const Seen at = seen(p, drawnFrom);
            outline.depth = std::max(outline.depth, at.near + cloud.radius);
            for (int i = 0; i < (cloud.radius > 0 ? roundSteps : 1); ++i) {
                const double turn = 2 * pi * i / roundSteps;
                points.emplace_back(at.right + cloud.radius * std::cos(turn), at.up + cloud.radius * std::sin(turn));
            }
        }
        outline.shape = hullOf(std::move(points));
        all = all.isNull() ? outline.shape.boundingRect() : all.united(outline.shape.boundingRect());
        outlines_.push_back(std::move(outline));
    }
    std::stable_sort(outlines_.begin(), outlines_.end(), [](const Outline& a, const Outline& b) { return a.depth < b.depth; });
    if (drawnFrom != DrawnFrom::above && !all.isNull()) all.setTop(std::min(0.0, all.top()));
    scale_ = all.isNull() ? 1 : std::min(box.width() / std::max(all.width(), 0.1), box.height() / std::max(all.height(), 0.1));
    const QPointF middle = all.center();
    shift_ = QPointF(box.center().x() - scale_ * middle.x(), box.center().y() + scale_ * middle.y());
}

QPointF SupportDrawing::at(const Vec3& p_S) const {
    const Seen s = seen(p_S, drawnFrom_);
    return {shift_.x() + scale_ * s.right, shift_.y() - scale_ * s.up};
}

void SupportDrawing::paint(QPainter& painter) const {
    const Theme& theme = Theme::current();
    painter.save();
    painter.setRenderHint(QPainter::Antialiasing);
    if (drawnFrom_ != DrawnFrom::above) {
        painter.setPen(QPen(theme.border, 1.5));
        const double floor = at(Vec3::Zero()).y();
        painter.drawLine(QPointF(box_.left(), floor), QPointF(box_.right(), floor));
    }
    QColor fill = theme.dark ? theme.strongBorder : theme.border, line = theme.quietText;
    fill.setAlphaF(0.42F);
    line.setAlphaF(0.85F);
    painter.setBrush(fill);
    painter.setPen(QPen(line, 1.1));
    for (const Outline& outline : outlines_) {
        QPolygonF shape;
        for (const QPointF& p : outline.shape) shape.push_back({shift_.x() + scale_ * p.x(), shift_.y() - scale_ * p.y()});
        painter.drawPolygon(shape);
    }
    painter.restore();
}

void SupportDrawing::paintMark(QPainter& painter, const DimensionMark& mark, const QString& words) const {
    const Theme& theme = Theme::current();
    const double size = painter.fontMetrics().height() * 0.62;
    painter.save();
    painter.setRenderHint(QPainter::Antialiasing);
    const QPointF a = at(mark.a);
    QPointF wordsAt;
    if (mark.angle) {
        const auto flat = [&](const Vec3& d) { return at(mark.a + d) - a; };
        const QPointF from = flat(mark.from), to = flat(mark.to);
        const double start = std::atan2(-from.y(), from.x()), sweep = std::remainder(std::atan2(-to.y(), to.x()) - start, 2 * pi);
        const double radius = std::min(0.32 * std::min(box_.width(), box_.height()), scale_ * 0.35);
        const auto on = [&](double turn, double r) { return a + r * QPointF(std::cos(turn), -std::sin(turn)); };
        painter.setPen(QPen(theme.focus, 1.4, Qt::DashLine));
        painter.drawLine(a, on(start, 1.15 * radius));
        painter.drawLine(a, on(start + sweep, 1.15 * radius));
        painter.setPen(QPen(theme.focus, 2.2));
        painter.drawArc(QRectF(a.x() - radius, a.y() - radius, 2 * radius, 2 * radius), static_cast<int>(std::lround(degrees(start) * 16)), static_cast<int>(std::lround(degrees(sweep) * 16)));
        painter.setBrush(theme.focus);
        painter.setPen(Qt::NoPen);
        if (std::abs(sweep) * radius > 2 * size) {
            const double turn = start + sweep, way = sweep > 0 ? 1 : -1;
            paintArrow(painter, on(turn, radius), way * QPointF(-std::sin(turn), -std::cos(turn)), size);
        }
        wordsAt = on(start + 0.5 * sweep, radius + 2.2 * size);
    } else {
        const QPointF b = at(mark.b);
        const double long_px = std::hypot(b.x() - a.x(), b.y() - a.y());
        const QPointF along = long_px > 1e-6 ? (b - a) / long_px : QPointF(1, 0);
        const QPointF across(-along.y(), along.x());
        const double stroke = 0.7 * size;
        painter.setPen(QPen(theme.focus, 1.4));
        painter.drawLine(a - stroke * across, a + stroke * across);
        painter.drawLine(b - stroke * across, b + stroke * across);
        painter.setPen(QPen(theme.focus, 2.2));
        const bool inside = long_px > 2.6 * size;
        if (inside) {
            painter.drawLine(a + 0.8 * size * along, b - 0.8 * size * along);
        } else {   // too short for arrows inside: they point at it from outside
            painter.drawLine(a - 0.8 * size * along, a - 2.2 * size * along);
            painter.drawLine(b + 0.8 * size * along, b + 2.2 * size * along);
        }
        painter.setBrush(theme.focus);
        painter.setPen(Qt::NoPen);
        paintArrow(painter, a, inside ? -along : along, size);
        paintArrow(painter, b, inside ? along : -along, size);
        const QPointF middle = 0.5 * (a + b);
        const double wide = painter.fontMetrics().horizontalAdvance(words);
        const bool level = std::abs(along.x()) > std::abs(along.y());
        wordsAt = level ? middle + QPointF(0, -1.6 * size) : middle + QPointF(0.5 * wide + 1.5 * size, 0);
    }
    // The words stay inside the picture and stand on their own ground, so that lines do not cross them.
    const QFontMetricsF metrics(painter.font());
    QRectF ground = metrics.boundingRect(words).adjusted(-5, -2, 5, 2);
    ground.moveCenter(wordsAt);
    const QRect device = painter.viewport();
    ground.moveLeft(std::clamp(ground.left(), 2.0, std::max(2.0, device.width() - ground.width() - 2)));
    ground.moveTop(std::clamp(ground.top(), 2.0, std::max(2.0, device.height() - ground.height() - 2)));
    painter.setBrush(theme.surface);
    painter.setPen(QPen(theme.focus, 1));
    painter.drawRoundedRect(ground, 4, 4);
    painter.setPen(theme.text);
    painter.drawText(ground, Qt::AlignCenter, words);
    painter.restore();
}

}  // namespace hither
