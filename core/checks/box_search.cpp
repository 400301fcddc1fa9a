#include "core/checks/box_search.h"

#include <algorithm>
#include <limits>
#include <queue>

namespace hither {
namespace {

struct Box { double lower; std::vector<double> min, max; };
struct Later { bool operator()(const Box& a, const Box& b) const { return a.lower > b.lower; } };

double halfChange(const Box& box, const std::vector<double>& rate) {
    double sum = 0.0;
    for (std::size_t i = 0; i < rate.size(); ++i) sum += 0.5 * rate[i] * (box.max[i] - box.min[i]);
    return sum;
}

}  // namespace

BoxMinimum leastOverBox(const std::function<double(const std::vector<double>& x, double enough)>& f,
                        const std::vector<double>& min, const std::vector<double>& max, const std::vector<double>& rate,
                        const std::vector<double>& start, double accuracy, double ignoreAbove, int mostEvaluations) {
    BoxMinimum best;
    best.at = start;
    best.value = f(start, std::numeric_limits<double>::infinity());
    best.evaluations = 1;
    std::priority_queue<Box, std::vector<Box>, Later> open;

    // Looks at a box's middle; what may hold less than the best by more than the accuracy stays open.
    const auto consider = [&](Box box) {
        std::vector<double> middle(rate.size());
        for (std::size_t i = 0; i < rate.size(); ++i) middle[i] = 0.5 * (box.min[i] + box.max[i]);
        const double half = halfChange(box, rate);
        const double worth = std::min(best.value - accuracy, ignoreAbove);
        const double enough = worth + half;
        const double value = f(middle, enough);
        ++best.evaluations;
        // At or above `enough` it need not be the value there: only what is below was found.
        if (value < enough && value < best.value) { best.value = value; best.at = middle; }
        box.lower = value - half;
        if (box.lower < std::min(best.value - accuracy, ignoreAbove)) open.push(std::move(box));
    };
    consider({0.0, min, max});
    // The ends of each range alone: where movements usually bind.
    for (std::size_t i = 0; i < rate.size(); ++i) {
        for (double end : {min[i], max[i]}) {
            std::vector<double> x = start;
            x[i] = end;
            const double value = f(x, best.value);
            ++best.evaluations;
            if (value < best.value) { best.value = value; best.at = x; }
        }
    }
    double leastOpen = std::numeric_limits<double>::infinity();
    while (!open.empty()) {
        if (open.top().lower >= std::min(best.value - accuracy, ignoreAbove)) break;
        if (best.evaluations >= mostEvaluations) { leastOpen = open.top().lower; break; }
        const Box box = open.top();
        open.pop();
        std::size_t widest = 0;
        for (std::size_t i = 1; i < rate.size(); ++i)
            if (rate[i] * (box.max[i] - box.min[i]) > rate[widest] * (box.max[widest] - box.min[widest])) widest = i;
        const double cut = 0.5 * (box.min[widest] + box.max[widest]);
        Box low = box, high = box;
        low.max[widest] = cut;
        high.min[widest] = cut;
        consider(std::move(low));
        consider(std::move(high));
    }
    best.lowerBound = std::min({best.value, std::min(best.value - accuracy, ignoreAbove), leastOpen});
    best.certified = leastOpen == std::numeric_limits<double>::infinity();
    return best;
}

}  // namespace hither
