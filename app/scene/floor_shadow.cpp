#include "app/scene/floor_shadow.h"

#include <algorithm>
#include <cmath>

namespace hither {
namespace {

constexpr int cellsAlong = 288;               // along the longer side
constexpr double border_m = 0.30;
constexpr double snap_m = 0.25;          // the box grows in steps: no shimmer while something moves
constexpr double low_m = 0.30;           // below: the sharper layer
constexpr int darkest = 84;                 // of 255

struct Layer {
    int width = 0, height = 0;
    std::vector<float> cell;
    Layer(int w, int h) : width(w), height(h), cell(static_cast<std::size_t>(w) * static_cast<std::size_t>(h), 0.0f) {}
    float* row(int y) { return cell.data() + static_cast<std::size_t>(y) * static_cast<std::size_t>(width); }
};

void fill(Layer& layer, const Eigen::Vector2f& a, const Eigen::Vector2f& b, const Eigen::Vector2f& c) {
    const int y0 = std::max(0, static_cast<int>(std::floor(std::min({a.y(), b.y(), c.y()})))), y1 = std::min(layer.height - 1, static_cast<int>(std::ceil(std::max({a.y(), b.y(), c.y()}))));
    const Eigen::Vector2f* corner[3] = {&a, &b, &c};
    for (int y = y0; y <= y1; ++y) {
        const float at = static_cast<float>(y) + 0.5f;
        float from = 1e9f, to = -1e9f;
        for (int i = 0; i < 3; ++i) {
            const Eigen::Vector2f &p = *corner[i], &q = *corner[(i + 1) % 3];
            if ((p.y() <= at) == (q.y() <= at)) continue;
            const float x = p.x() + (q.x() - p.x()) * (at - p.y()) / (q.y() - p.y());
            from = std::min(from, x);
            to = std::max(to, x);
        }
        const int x0 = std::max(0, static_cast<int>(std::ceil(from - 0.5f))), x1 = std::min(layer.width - 1, static_cast<int>(std::floor(to - 0.5f)));
        float* row = layer.row(y);
        for (int x = x0; x <= x1; ++x) row[x] = 1;
    }
}

/// Three running means one after the other are nearly a bell.
void blur(Layer& layer, int half) {
    std::vector<float> line(static_cast<std::size_t>(std::max(layer.width, layer.height)));
    const auto mean = [&](float* at, int count, int stride) {
        for (int i = 0; i < count; ++i) line[static_cast<std::size_t>(i)] = at[i * stride];
        float sum = 0;
        const float share = 1.0f / static_cast<float>(2 * half + 1);
        for (int i = 0; i < half && i < count; ++i) sum += line[static_cast<std::size_t>(i)];
        for (int i = 0; i < count; ++i) {
            if (i + half < count) sum += line[static_cast<std::size_t>(i + half)];
            if (i - half - 1 >= 0) sum -= line[static_cast<std::size_t>(i - half - 1)];
            at[i * stride] = std::max(0.0f, sum) * share;
        }
    };
    for (int pass = 0; pass < 3; ++pass) {
        for (int y = 0; y < layer.height; ++y) mean(layer.row(y), layer.width, 1);
        for (int x = 0; x < layer.width; ++x) mean(layer.cell.data() + x, layer.height, layer.width);
    }
}

}  // namespace

Vec3 keyLight_W() { return Vec3(-0.42, -0.34, -0.84).normalized(); }

FloorShadow floorShadow(const Picture& picture) {
    const Vec3 light = keyLight_W();
    const Eigen::Vector2f slant(static_cast<float>(light.x() / -light.z()), static_cast<float>(light.y() / -light.z()));
    FloorShadow out;
    if (picture.bounds_W.isEmpty()) {
        out.strength = QImage(4, 4, QImage::Format_Grayscale8);
        out.strength.fill(0);
        out.box_W = QRectF(0, 0, 1, 1);
        return out;
    }
    const double top = std::max(0.0, picture.bounds_W.max().z());
    const auto down = [](double v) { return std::floor(v / snap_m) * snap_m; };
    const auto up = [](double v) { return std::ceil(v / snap_m) * snap_m; };
    const double x0 = down(picture.bounds_W.min().x() - border_m + std::min(0.0, top * static_cast<double>(slant.x())));
    const double x1 = up(picture.bounds_W.max().x() + border_m + std::max(0.0, top * static_cast<double>(slant.x())));
    const double y0 = down(picture.bounds_W.min().y() - border_m + std::min(0.0, top * static_cast<double>(slant.y())));
    const double y1 = up(picture.bounds_W.max().y() + border_m + std::max(0.0, top * static_cast<double>(slant.y())));
    out.box_W = QRectF(x0, y0, x1 - x0, y1 - y0);
    const double cell_m = std::max(x1 - x0, y1 - y0) / cellsAlong;
    const int width = std::max(4, static_cast<int>(std::lround((x1 - x0) / cell_m))), height = std::max(4, static_cast<int>(std::lround((y1 - y0) / cell_m)));
    Layer low(width, height), high(width, height);
    const float per = static_cast<float>(1 / cell_m), fromX = static_cast<float>(x0), fromY = static_cast<float>(y0);
    std::vector<Eigen::Vector2f> on;
    std::vector<float> above;
    for (const PictureItem& item : picture.items) {
        if (!item.castsShadow || item.opacity < 0.99 || !item.mesh) continue;
        const Eigen::Matrix3f R = item.X_W.linear().cast<float>();
        const Eigen::Vector3f p = item.X_W.translation().cast<float>();
        on.clear();
        above.clear();
        for (const Eigen::Vector3f& point : item.mesh->points) {
            const Eigen::Vector3f w = R * point + p;
            on.emplace_back((w.x() + slant.x() * w.z() - fromX) * per, (w.y() + slant.y() * w.z() - fromY) * per);
            above.push_back(w.z());
        }
        for (const auto& t : item.mesh->triangles) {
            const Eigen::Vector2f &a = on[t[0]], &b = on[t[1]], &c = on[t[2]];
            const Eigen::Vector2f ab = b - a, ac = c - a;
            if (ab.x() * ac.y() - ab.y() * ac.x() <= 0) continue;  // turned away from the light: its front covers the same
            fill((above[t[0]] + above[t[1]] + above[t[2]]) / 3 < static_cast<float>(low_m) ? low : high, a, b, c);
        }
    }
    blur(low, std::max(1, static_cast<int>(std::lround(0.008 / cell_m))));
    blur(high, std::max(1, static_cast<int>(std::lround(0.022 / cell_m))));
    out.strength = QImage(width, height, QImage::Format_Grayscale8);
    for (int y = 0; y < height; ++y) {
        uchar* line = out.strength.scanLine(y);
        const float *a = low.row(y), *b = high.row(y);
        for (int x = 0; x < width; ++x) line[x] = static_cast<uchar>(std::lround(darkest * (1 - (1 - std::min(1.0f, a[x])) * (1 - std::min(1.0f, b[x])))));
    }
    return out;
}

}  // namespace hither
