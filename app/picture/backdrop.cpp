#include "app/picture/backdrop.h"

#include <algorithm>
#include <cmath>

#include <QLineF>
#include <QPainter>
#include <QRadialGradient>
#include <QVector>

#include "app/picture/painted_items.h"

namespace hither {

namespace {

void paintGround(QImage& image, const PictureColours& colours) {
    for (int y = 0; y < image.height(); ++y) {
        const float t = static_cast<float>(y) / static_cast<float>(std::max(1, image.height() - 1));
        const auto mix = [t](float a, float b) { return a + t * (b - a); };
        const QColor &a = colours.skyTop, &b = colours.skyBottom;
        const QRgb tone = QColor::fromRgbF(mix(a.redF(), b.redF()), mix(a.greenF(), b.greenF()), mix(a.blueF(), b.blueF())).rgb();
        auto* line = reinterpret_cast<QRgb*>(image.scanLine(y));
        std::fill(line, line + image.width(), tone);
    }
}

void paintShadow(QImage& image, const Picture& picture, const Camera& camera, bool dark) {
    const int width = std::max(1, image.width() / 2), height = std::max(1, image.height() / 2);
    const std::vector<std::uint8_t> shadow = floorShadow(picture, camera, width, height);
    const int depth = dark ? 110 : 56;
    for (int y = 0; y < image.height(); ++y) {
        auto* line = reinterpret_cast<QRgb*>(image.scanLine(y));
        const std::uint8_t* row = &shadow[static_cast<std::size_t>(std::min(height - 1, y / 2)) * static_cast<std::size_t>(width)];
        for (int x = 0; x < image.width(); ++x) {
            const int s = row[std::min(width - 1, x / 2)];
            if (s == 0) continue;
            const int left = 255 - s * depth / 255;
            line[x] = qRgb(qRed(line[x]) * left / 255, qGreen(line[x]) * left / 255, qBlue(line[x]) * left / 255);
        }
    }
}

/// The floor's lines: where they run and how they fade away from the middle.
class Floor {
public:
    Floor(const QImage& image, const Picture& picture, const Camera& camera, double scale)
        : camera_(camera), width_(image.width()), height_(image.height()), scale_(scale), step_(picture.floorStep_m),
          each_(std::abs(step_ - 0.1) < 1e-9 ? 10 : 3), middle_(camera.target_W.x(), camera.target_W.y(), 0), box_(picture.bounds_W) {
        if (!box_.isEmpty()) middle_ = Vec3(box_.center().x(), box_.center().y(), 0);
        reach_ = std::max({1.6, box_.isEmpty() ? 0 : 1.3 * box_.diagonal().norm(), 0.6 * camera.distance});
        // Far out the fine lines would run together.
        fine_ = step_ / std::max(1e-9, camera.metresPerPixel(middle_, height_)) * std::max(0.1, std::sin(std::abs(camera.elevation))) > 5 * scale;
    }

    QVector<QLineF> lines(bool strong) const {
        QVector<QLineF> out;
        if (!strong && !fine_) return out;
        const int count = static_cast<int>(std::ceil(reach_ / step_));
        const auto first = [&](double at) { return static_cast<int>(std::round(at / step_)); };
        for (int axis = 0; axis < 2; ++axis)
            for (int k = first(middle_[axis]) - count; k <= first(middle_[axis]) + count; ++k) {
                if ((k % each_ == 0) != strong) continue;
                Vec3 a = middle_, b = middle_;
                a[axis] = b[axis] = k * step_;
                const double off = std::abs(k * step_ - middle_[axis]), half = std::sqrt(std::max(0.0, reach_ * reach_ - off * off));
                a[1 - axis] -= half;
                b[1 - axis] += half;
                cut(a, b, out);
            }
        return out;
    }

    /// Fades out toward the reach, as an ellipse on the picture.
    QBrush fading(const QColor& colour) const {
        const Vec3 at = camera_.project(middle_, width_, height_);
        if (at.z() < 0.05) return colour;
        const Vec3 eye = camera_.eye_W();
        const double radius = reach_ / camera_.metresPerPixel(middle_, height_), rise = std::abs(eye.z()) / (eye - middle_).norm();
        QRadialGradient gradient(0, 0, radius);
        QColor none = colour;
        none.setAlpha(0);
        gradient.setColorAt(0, colour);
        gradient.setColorAt(0.5, colour);
        gradient.setColorAt(1, none);
        QBrush brush(gradient);
        brush.setTransform(QTransform(1, 0, 0, std::max(0.15, rise), at.x(), at.y()));
        return brush;
    }

    struct Number { QPointF at; QString words; };
    /// Along the two sides of the floor that are nearer to the eye.
    std::vector<Number> numbers() const {
        std::vector<Number> out;
        if (box_.isEmpty()) return out;
        const Vec3 eye = camera_.eye_W();
        const double unit = each_ * step_;
        for (int axis = 0; axis < 2; ++axis) {
            const int across = 1 - axis;
            const double side = eye[across] > middle_[across] ? box_.max()[across] : box_.min()[across];
            const double line = eye[across] > middle_[across] ? std::ceil(side / unit + 0.2) : std::floor(side / unit - 0.2);
            const int from = static_cast<int>(std::ceil((middle_[axis] - 0.75 * reach_) / unit)), to = static_cast<int>(std::floor((middle_[axis] + 0.75 * reach_) / unit));
            for (int k = from; k <= to; ++k) {
                Vec3 p = Vec3::Zero();
                p[axis] = k * unit;
                p[across] = line * unit;
                if ((p - middle_).norm() > 0.85 * reach_) continue;
                const Vec3 at = camera_.project(p, width_, height_);
                if (at.z() < 0.1) continue;
                out.push_back({QPointF(at.x(), at.y()) / scale_, QString::number(k) + (each_ == 10 ? QStringLiteral(" m") : QStringLiteral(" ft"))});
            }
        }
        return out;
    }

private:
    void cut(Vec3 a, Vec3 b, QVector<QLineF>& out) const {
        const Pose X = camera_.X_CW();
        const double near = 0.1, da = -(X * a).z() - near, db = -(X * b).z() - near;
        if (da < 0 && db < 0) return;
        if (da < 0) a += da / (da - db) * (b - a);
        else if (db < 0) b = a + da / (da - db) * (b - a);
        const Vec3 p = camera_.project(a, width_, height_), q = camera_.project(b, width_, height_);
        out.push_back(QLineF(p.x(), p.y(), q.x(), q.y()));
    }

    const Camera& camera_;
    int width_, height_;
    double scale_, step_;
    int each_;
    Vec3 middle_;
    Eigen::AlignedBox3d box_;
    double reach_ = 0;
    bool fine_ = true;
};

}  // namespace

void paintBackdrop(QImage& image, const Picture& picture, const Camera& camera, const PictureColours& colours, double scale) {
    paintGround(image, colours);
    if (camera.eye_W().z() < 0.01) return;  // from below there is no floor to see
    paintShadow(image, picture, camera, colours.dark);
    const Floor floor(image, picture, camera, scale);
    QPainter painter(&image);
    painter.setRenderHint(QPainter::Antialiasing);
    for (const bool strong : {false, true}) {
        const QVector<QLineF> lines = floor.lines(strong);
        if (lines.isEmpty()) continue;
        painter.setPen(QPen(floor.fading(strong ? colours.floorLineStrong : colours.floorLine), scale));
        painter.drawLines(lines);
    }
    painter.resetTransform();
    painter.scale(scale, scale);
    QFont font = colours.labelFont;
    if (font.pointSizeF() > 0) font.setPointSizeF(0.9 * font.pointSizeF());
    painter.setFont(font);
    QColor ink = colours.floorLineStrong;
    ink.setAlpha(std::min(255, 2 * ink.alpha()));
    painter.setPen(ink);
    for (const Floor::Number& number : floor.numbers()) painter.drawText(number.at + QPointF(4, -4), number.words);
}

}  // namespace hither
