#include "app/scene/label_layout.h"

#include <algorithm>
#include <array>
#include <numeric>

namespace hither {
namespace {

/// Where a label stands against its point: direction (-1, 0, 1 each way) and how far off, in pixels.
struct LabelSide { double x, y, off; };
constexpr std::array<LabelSide, 14> sides = {{{1, -1, 18}, {-1, -1, 18}, {1, 1, 18}, {-1, 1, 18}, {0, -1, 24}, {0, 1, 24}, {1, 0, 30}, {-1, 0, 30},
                                         {1, -1, 48}, {-1, -1, 48}, {1, 1, 48}, {-1, 1, 48}, {1, -1, 84}, {-1, -1, 84}}};
constexpr double labelGap = 4;

QRectF boxAt(const LabelWish& wish, const LabelSide& side) {
    const QPointF middle(wish.at.x() + side.x * (side.off + wish.size.width() / 2), wish.at.y() + side.y * (side.off + wish.size.height() / 2));
    return QRectF(QPointF(middle.x() - wish.size.width() / 2, middle.y() - wish.size.height() / 2), wish.size);
}

double overlap(const QRectF& box, const std::vector<LabelPlace>& taken) {
    double sum = 0;
    for (const LabelPlace& t : taken) {
        const QRectF both = box.intersected(t.box.adjusted(-labelGap, -labelGap, labelGap, labelGap));
        if (!both.isEmpty()) sum += both.width() * both.height();
    }
    return sum;
}

}  // namespace

std::vector<LabelPlace> LabelLayout::place(const std::vector<LabelWish>& wishes, QSizeF view) {
    std::vector<std::size_t> order(wishes.size());
    std::iota(order.begin(), order.end(), std::size_t{0});
    std::stable_sort(order.begin(), order.end(), [&](std::size_t a, std::size_t b) { return wishes[a].rank < wishes[b].rank; });
    const QRectF room(QPointF(0, 0), view);
    std::vector<LabelPlace> placed;
    for (const std::size_t w : order) {
        const LabelWish& wish = wishes[w];
        if (wish.optional && !room.contains(wish.at)) continue;
        const auto fit = [&](int s) {
            QRectF box = boxAt(wish, sides[static_cast<std::size_t>(s)]);
            // What must be seen is pushed back into the view; the rest has to fit as it is.
            if (!wish.optional) {
                box.moveLeft(std::clamp(box.left(), 2.0, std::max(2.0, view.width() - box.width() - 2)));
                box.moveTop(std::clamp(box.top(), 2.0, std::max(2.0, view.height() - box.height() - 2)));
            }
            return box;
        };
        // Pushed back into the view a label must not come to lie over what it speaks of.
        const auto covers = [&](const QRectF& box) { return box.adjusted(-labelGap, -labelGap, labelGap, labelGap).contains(wish.at); };
        const auto fine = [&](const QRectF& box) { return room.contains(box) && overlap(box, placed) <= 0 && !covers(box); };
        const auto last = sides_.find(wish.key);
        int chosen = last != sides_.end() && fine(fit(last->second)) ? last->second : -1;
        for (int s = 0; chosen < 0 && s < static_cast<int>(sides.size()); ++s) if (fine(fit(s))) chosen = s;
        if (chosen < 0) {
            if (wish.optional) continue;
            chosen = 0;
            for (int s = 1; s < static_cast<int>(sides.size()); ++s) if (overlap(fit(s), placed) < overlap(fit(chosen), placed)) chosen = s;
        }
        sides_[wish.key] = chosen;
        placed.push_back({w, fit(chosen)});
    }
    return placed;
}

}  // namespace hither
