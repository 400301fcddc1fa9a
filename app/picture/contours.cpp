#include "app/picture/contours.h"

#include <algorithm>
#include <cmath>

namespace hither {

namespace {

constexpr float jump_m = 0.010F;  // a piece's own depth must jump by more than this for a line

/// Whether the depth jumps between sample i and i + step by more than the slopes beside it explain.
bool jumps(const std::vector<float>& w, std::size_t i, std::size_t step) {
    const float here = w[i], next = w[i + step], gap = std::abs(next - here), least = jump_m * here * next;
    if (gap < least) return false;
    return gap > 3 * (std::abs(here - w[i - step]) + std::abs(w[i + 2 * step] - next)) + least;
}

}  // namespace

void paintContours(Raster& r, const std::vector<Contour>& contours) {
    const auto width = static_cast<std::size_t>(r.width), height = static_cast<std::size_t>(r.height);
    if (width < 4 || height < 4) return;
    const auto mark = [&](std::size_t at, std::uint16_t of) {
        if (r.piece[at] == of && contours[of].colour) r.colour[at] = drawnOver(contours[of].colour, r.colour[at]);
    };
    const auto look = [&](std::size_t i, std::size_t step) {
        const std::uint16_t a = r.piece[i], b = r.piece[i + step];
        if (a == b && (a == 0 || !jumps(r.w, i, step))) return;
        // The line belongs to the nearer one; two samples where there is nothing behind or far behind.
        const bool first = r.w[i] >= r.w[i + step];
        const std::size_t near = first ? i : i + step;
        const bool gap = std::abs(r.w[i] - r.w[i + step]) > jump_m * r.w[near] * r.w[near];
        if (!gap && contours[a].kind == contours[b].kind) return;
        mark(near, r.piece[near]);
        if (gap) mark(first ? i - step : i + 2 * step, r.piece[near]);
    };
    for (std::size_t y = 2; y + 2 < height; ++y)
        for (std::size_t x = 2, i = y * width + 2; x + 2 < width; ++x, ++i) {
            if (r.piece[i] == 0 && r.piece[i + 1] == 0 && r.piece[i + width] == 0) continue;
            look(i, 1);
            look(i, width);
        }
}

void paintOutline(Raster& r, std::uint32_t strong, std::uint32_t pale) {
    constexpr int reach = 4;
    int x0 = r.width, x1 = -1, y0 = r.height, y1 = -1;
    for (int y = 0, i = 0; y < r.height; ++y)
        for (int x = 0; x < r.width; ++x, ++i)
            if (r.mask[static_cast<std::size_t>(i)]) { x0 = std::min(x0, x); x1 = std::max(x1, x); y0 = std::min(y0, y); y1 = y; }
    if (x1 < 0) return;
    x0 = std::max(0, x0 - reach); y0 = std::max(0, y0 - reach);
    x1 = std::min(r.width - 1, x1 + reach); y1 = std::min(r.height - 1, y1 + reach);
    const auto at = [&](int x, int y) { return static_cast<std::size_t>(y) * static_cast<std::size_t>(r.width) + static_cast<std::size_t>(x); };
    for (int y = y0; y <= y1; ++y)
        for (int x = x0; x <= x1; ++x) {
            if (r.mask[at(x, y)]) continue;
            std::uint8_t most = 0;
            for (int dy = std::max(-reach, y0 - y); dy <= std::min(reach, y1 - y) && most < 2; ++dy) {
                const int half = std::abs(dy) <= 2 ? reach : std::abs(dy) == 3 ? reach - 1 : 2;
                for (int dx = std::max(-half, x0 - x); dx <= std::min(half, x1 - x); ++dx) most = std::max(most, r.mask[at(x + dx, y + dy)]);
            }
            if (most) r.colour[at(x, y)] = drawnOver(most == 2 ? strong : pale, r.colour[at(x, y)]);
        }
}

void blur(std::vector<std::uint8_t>& bytes, int width, int height, int radius) {
    std::vector<std::uint8_t> line;
    const auto run = [&](std::size_t first, std::size_t step, int count) {
        line.resize(static_cast<std::size_t>(count));
        int sum = 0;
        const auto get = [&](int i) { return static_cast<int>(bytes[first + step * static_cast<std::size_t>(std::clamp(i, 0, count - 1))]); };
        for (int i = -radius; i <= radius; ++i) sum += get(i);
        for (int i = 0; i < count; ++i) {
            line[static_cast<std::size_t>(i)] = static_cast<std::uint8_t>(sum / (2 * radius + 1));
            sum += get(i + radius + 1) - get(i - radius);
        }
        for (int i = 0; i < count; ++i) bytes[first + step * static_cast<std::size_t>(i)] = line[static_cast<std::size_t>(i)];
    };
    for (int pass = 0; pass < 2; ++pass) {
        for (int y = 0; y < height; ++y) run(static_cast<std::size_t>(y) * static_cast<std::size_t>(width), 1, width);
        for (int x = 0; x < width; ++x) run(static_cast<std::size_t>(x), static_cast<std::size_t>(width), height);
    }
}

}  // namespace hither
