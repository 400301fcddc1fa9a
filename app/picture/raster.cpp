#include "app/picture/raster.h"

#include <algorithm>
#include <cmath>

namespace hither {

namespace {

/// What a triangle's values change from one sample to the next on its right; `offset`: how much w changes
/// at most from a sample to its neighbours.
struct Steps { float w = 0, light = 0, offset = 0; };

/// Goes over the samples whose middle is inside a triangle, row by row: visit(first sample, count, w, light,
/// steps) with w and light at the first one. Neighbours that share an edge share no sample and leave none out.

template <class Visit>
void eachRow(const Raster& raster, const Corner& a, const Corner& b, const Corner& c, const Visit& visit) {
    const Corner *top = &a, *middle = &b, *bottom = &c;
    if (middle->y < top->y) std::swap(top, middle);
    if (bottom->y < middle->y) std::swap(middle, bottom);
    if (middle->y < top->y) std::swap(top, middle);
    const int y0 = std::max(0, static_cast<int>(std::ceil(top->y - 0.5F))), y1 = std::min(raster.height, static_cast<int>(std::ceil(bottom->y - 0.5F)));
    if (y0 >= y1) return;
    if (std::max({a.x, b.x, c.x}) < 0 || std::min({a.x, b.x, c.x}) > static_cast<float>(raster.width)) return;
    const float area = (b.x - a.x) * (c.y - a.y) - (b.y - a.y) * (c.x - a.x);
    if (std::abs(area) < 1e-6F) return;
    const auto slopeX = [&](float va, float vb, float vc) { return ((vb - va) * (c.y - a.y) - (vc - va) * (b.y - a.y)) / area; };
    const auto slopeY = [&](float va, float vb, float vc) { return ((vc - va) * (b.x - a.x) - (vb - va) * (c.x - a.x)) / area; };
    Steps step;
    step.w = slopeX(a.w, b.w, c.w);
    step.light = slopeX(a.light, b.light, c.light);
    const float wy = slopeY(a.w, b.w, c.w), lightY = slopeY(a.light, b.light, c.light);
    step.offset = std::abs(step.w) + std::abs(wy);
    const auto slope = [](const Corner& from, const Corner& to) { return to.y > from.y ? (to.x - from.x) / (to.y - from.y) : 0; };
    const float whole = slope(*top, *bottom), upper = slope(*top, *middle), lower = slope(*middle, *bottom);
    for (int y = y0; y < y1; ++y) {
        const float at = static_cast<float>(y) + 0.5F;
        float left = top->x + (at - top->y) * whole;
        float right = at < middle->y ? top->x + (at - top->y) * upper : middle->x + (at - middle->y) * lower;
        if (left > right) std::swap(left, right);
        const int x0 = std::max(0, static_cast<int>(std::ceil(left - 0.5F))), x1 = std::min(raster.width, static_cast<int>(std::ceil(right - 0.5F)));
        if (x0 >= x1) continue;
        const float dx = static_cast<float>(x0) + 0.5F - a.x, dy = at - a.y;
        visit(static_cast<std::size_t>(y) * static_cast<std::size_t>(raster.width) + static_cast<std::size_t>(x0), static_cast<std::size_t>(x1 - x0),
              a.w + dx * step.w + dy * wy, a.light + dx * step.light + dy * lightY, step);
    }
}

/// Surfaces are put back by 0.05 % of their depth and their slope, so that lines drawn on them are seen.
float putBack(float w, const Steps& step) { return w - 5e-4F * w - step.offset; }

/// Narrows the stretch first..last of a line to where one coordinate is within 0..size; false: nowhere.
bool cut(float from, float to, float size, float& first, float& last) {
    const float step = to - from;
    if (step == 0) return from >= 0 && from <= size;
    const float a = -from / step, b = (size - from) / step;
    first = std::max(first, std::min(a, b));
    last = std::min(last, std::max(a, b));
    return first < last;
}

std::size_t tint(float light) { return static_cast<std::size_t>(std::clamp(light, 0.0F, 255.0F)); }

}  // namespace

void Raster::clear(int newWidth, int newHeight, bool withMask) {
    width = newWidth;
    height = newHeight;
    const std::size_t count = static_cast<std::size_t>(width) * static_cast<std::size_t>(height);
    w.assign(count, 0.0F);
    colour.assign(count, 0U);
    piece.assign(count, std::uint16_t{0});
    mask.assign(withMask ? count : 0, std::uint8_t{0});
}

void Raster::fill(const Corner& a, const Corner& b, const Corner& c, const Tints& tints, std::uint16_t number) {
    eachRow(*this, a, b, c, [&](std::size_t first, std::size_t count, float at, float light, const Steps& step) {
        at = putBack(at, step);
        float* depth = &w[first];
        std::uint32_t* out = &colour[first];
        std::uint16_t* who = &piece[first];
        for (std::size_t i = 0; i < count; ++i, at += step.w, light += step.light) {
            if (at <= depth[i]) continue;
            depth[i] = at;
            out[i] = tints[tint(light)];
            who[i] = number;
        }
    });
}

void Raster::blend(const Corner& a, const Corner& b, const Corner& c, const Tints& tints) {
    eachRow(*this, a, b, c, [&](std::size_t first, std::size_t count, float at, float light, const Steps& step) {
        for (std::size_t i = 0; i < count; ++i, at += step.w, light += step.light)
            if (at > w[first + i]) colour[first + i] = drawnOver(tints[tint(light)], colour[first + i]);
    });
}

void Raster::markIn(const Corner& a, const Corner& b, const Corner& c) {
    eachRow(*this, a, b, c, [&](std::size_t first, std::size_t count, float at, float, const Steps& step) {
        for (std::size_t i = 0; i < count; ++i, at += step.w) {
            const std::uint8_t seen = at >= w[first + i] ? 2 : 1;
            mask[first + i] = std::max(mask[first + i], seen);
        }
    });
}

void Raster::line(const Corner& from, const Corner& to, std::uint32_t premultiplied) {
    float first = 0, last = 1;
    if (!cut(from.x, to.x, static_cast<float>(width), first, last) || !cut(from.y, to.y, static_cast<float>(height), first, last)) return;
    const auto between = [&](float t) { return Corner{from.x + t * (to.x - from.x), from.y + t * (to.y - from.y), from.w + t * (to.w - from.w), 0}; };
    const Corner a = between(first), b = between(last);
    const float dx = b.x - a.x, dy = b.y - a.y, longest = std::max(std::abs(dx), std::abs(dy));
    const int steps = std::max(1, static_cast<int>(longest));
    const bool level = std::abs(dx) > std::abs(dy);
    for (int i = 0; i <= steps; ++i) {
        const float t = static_cast<float>(i) / static_cast<float>(steps), at = a.w + t * (b.w - a.w);
        const int x = static_cast<int>(a.x + t * dx), y = static_cast<int>(a.y + t * dy);
        for (int side = 0; side < 2; ++side) {
            const int px = level ? x : x - side, py = level ? y - side : y;
            if (px < 0 || py < 0 || px >= width || py >= height) continue;
            const std::size_t n = static_cast<std::size_t>(py) * static_cast<std::size_t>(width) + static_cast<std::size_t>(px);
            if (at >= w[n]) colour[n] = drawnOver(premultiplied, colour[n]);
        }
    }
}

}  // namespace hither
