#include "app/picture/software_picture.h"

#include <algorithm>
#include <cmath>

#include <QPainter>

#include "app/picture/backdrop.h"
#include "app/picture/overlay.h"
#include "app/picture/painted_items.h"
#include "app/picture/raster.h"

namespace hither {

namespace {

constexpr int finer = 2;  // samples across a pixel, each way

/// The samples over what is in the image: four to a pixel.
void layOver(QImage& image, const Raster& raster) {
    const auto width = static_cast<std::size_t>(raster.width);
    for (int y = 0; y < image.height(); ++y) {
        auto* out = reinterpret_cast<QRgb*>(image.scanLine(y));
        const std::uint32_t* upper = &raster.colour[static_cast<std::size_t>(finer * y) * width];
        const std::uint32_t* lower = upper + width;
        for (int x = 0; x < image.width(); ++x, upper += 2, lower += 2) {
            const std::uint32_t a = upper[0], b = upper[1], c = lower[0], d = lower[1];
            if ((a | b | c | d) == 0) continue;
            constexpr std::uint32_t half = 0x00ff00ffU;
            const std::uint32_t rb = ((a & half) + (b & half) + (c & half) + (d & half) + 0x00020002U) >> 2 & half;
            const std::uint32_t ag = ((a >> 8 & half) + (b >> 8 & half) + (c >> 8 & half) + (d >> 8 & half) + 0x00020002U) >> 2 & half;
            out[x] = drawnOver(rb | ag << 8, out[x]) | 0xff000000U;
        }
    }
}

/// A line over everything: strong where it is seen, thin and pale where something hides it.
void paintLine(QPainter& painter, const PictureLine& line, const Raster& raster, const ToSamples& to, const QColor& colour, double pixels) {
    const Eigen::Vector3f a = (to.X_CW() * line.a_W).cast<float>(), b = (to.X_CW() * line.b_W).cast<float>();
    if (std::max(a.z(), b.z()) > -ToSamples::nearest_m) return;
    const Corner p = to.corner(a), q = to.corner(b);
    const float length = std::hypot(q.x - p.x, q.y - p.y);
    const int pieces = std::clamp(static_cast<int>(length / 4), 1, 2000);
    QColor pale = colour;
    pale.setAlphaF(0.5F);
    const auto seen = [&](float t) {
        const int x = static_cast<int>(p.x + t * (q.x - p.x)), y = static_cast<int>(p.y + t * (q.y - p.y));
        if (x < 0 || y < 0 || x >= raster.width || y >= raster.height) return true;
        return (p.w + t * (q.w - p.w)) * 1.002F >= raster.w[static_cast<std::size_t>(y) * static_cast<std::size_t>(raster.width) + static_cast<std::size_t>(x)];
    };
    const auto at = [&](float t) { return QPointF(p.x + t * (q.x - p.x), p.y + t * (q.y - p.y)) / finer; };
    const auto share = [&](int i) { return static_cast<float>(i) / static_cast<float>(pieces); };
    for (int from = 0; from < pieces;) {
        const bool visible = seen(share(from) + 0.5F / static_cast<float>(pieces));
        int until = from + 1;
        while (until < pieces && seen(share(until) + 0.5F / static_cast<float>(pieces)) == visible) ++until;
        painter.setPen(QPen(visible ? colour : pale, (visible ? 2.4 : 1.4) * pixels, Qt::SolidLine, Qt::RoundCap));
        painter.drawLine(at(share(from)), at(share(until)));
        from = until;
    }
    painter.setPen(Qt::NoPen);
    painter.setBrush(colour);
    for (const float t : {0.0F, 1.0F}) painter.drawEllipse(at(t), 3 * pixels, 3 * pixels);
}

}  // namespace

QImage softwarePicture(const Picture& picture, const Camera& camera, const PictureColours& colours, QSize size, double scale) {
    QImage image((QSizeF(size) * scale).toSize().expandedTo(QSize(1, 1)), QImage::Format_RGB32);
    paintBackdrop(image, picture, camera, colours, scale);

    static thread_local Raster raster;  // kept: several megabytes, needed again with every frame
    const bool outlines = std::any_of(picture.items.begin(), picture.items.end(), [](const PictureItem& item) { return item.outlined; });
    raster.clear(finer * image.width(), finer * image.height(), outlines);
    const ToSamples to(camera, raster.width, raster.height);
    paintItems(raster, picture, to, colours);
    layOver(image, raster);

    QPainter painter(&image);
    painter.setRenderHint(QPainter::Antialiasing);
    for (const PictureLine& line : picture.lines) paintLine(painter, line, raster, to, colours.of(line.look), scale);
    painter.scale(scale, scale);
    paintLabels(painter, picture, placeLabels(picture, camera, colours.labelFont, QSizeF(size)), colours);
    painter.end();
    image.setDevicePixelRatio(scale);
    return image;
}

}  // namespace hither
