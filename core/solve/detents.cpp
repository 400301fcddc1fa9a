#include "core/solve/detents.h"

#include <algorithm>
#include <cmath>

namespace hither {
namespace {

constexpr double limitSlack = 1e-9;

bool inside(const Freedom& f, double value) {
    return f.fullTurn || (value >= f.min - limitSlack && value <= f.max + limitSlack);
}

struct Choice { int freedom = 0; double nearest = 0, other = 0, extra = 0; bool hasOther = false; };

Choice choiceFor(const Freedom& f, int freedom, double value) {
    Choice choice;
    choice.freedom = freedom;
    const int n = nearestDetent(f, value);
    choice.nearest = detentValue(f, n);
    choice.other = detentValue(f, value >= choice.nearest ? n + 1 : n - 1);
    choice.hasOther = inside(f, choice.other);
    choice.extra = f.weight * (std::abs(choice.other - value) - std::abs(choice.nearest - value));
    return choice;
}

}  // namespace

std::vector<int> detentedFreedoms(const Search& search) {
    std::vector<int> found;
    for (int i = 0; i < search.chain.freedomCount(); ++i) {
        const Freedom& f = search.chain.freedoms[static_cast<std::size_t>(i)];
        if (search.fixed[static_cast<std::size_t>(i)] || !f.step || !(*f.step > 0)) continue;
        if (inside(f, detentValue(f, nearestDetent(f, f.min)))) found.push_back(i);
    }
    return found;
}

Snapped snapToDetents(const Search& search, const std::vector<int>& detented, const Eigen::VectorXd& q) {
    std::vector<Choice> choices;
    for (int i : detented) choices.push_back(choiceFor(search.chain.freedoms[static_cast<std::size_t>(i)], i, q[i]));
    std::stable_sort(choices.begin(), choices.end(), [](const Choice& a, const Choice& b) {
        return a.hasOther != b.hasOther ? a.hasOther : a.extra < b.extra;
    });
    unsigned open = 0;
    constexpr unsigned mostOpen = 4;
    while (open < mostOpen && open < choices.size() && choices[open].hasOther) ++open;

    struct Pick { unsigned bits = 0; double extra = 0; };
    std::vector<Pick> picks;
    for (unsigned bits = 0; bits < (1u << open); ++bits) {
        Pick pick{bits, 0};
        for (unsigned b = 0; b < open; ++b) if ((bits >> b) & 1u) pick.extra += choices[b].extra;
        picks.push_back(pick);
    }
    std::stable_sort(picks.begin(), picks.end(), [](const Pick& a, const Pick& b) { return a.extra < b.extra; });

    std::vector<char> fixed = search.fixed;
    for (int i : detented) fixed[static_cast<std::size_t>(i)] = 1;
    Snapped best;
    int iterations = 0;
    for (const Pick& pick : picks) {
        Snapped tried;
        tried.q = q;
        for (std::size_t c = 0; c < choices.size(); ++c) {
            const Freedom& f = search.chain.freedoms[static_cast<std::size_t>(choices[c].freedom)];
            const double value = c < open && ((pick.bits >> c) & 1u) ? choices[c].other : choices[c].nearest;
            tried.q[choices[c].freedom] = f.fullTurn ? differenceOf(f, 0, value) : std::clamp(value, f.min, f.max);
        }
        const FlatChain flat(search.chain, tried.q, fixed);
        Descent descent(flat, search.residual);
        Eigen::VectorXd x = flat.values(tried.q);
        const Descent::Outcome outcome = descent.run(x, search.options.iterations, true);
        iterations += outcome.iterations;
        flat.putValues(x, tried.q);
        tried.value = outcome.value;
        if (best.q.size() == 0 || tried.value.cost() < best.value.cost()) best = tried;
        if (search.residual.met(best.value)) break;
    }
    best.iterations = iterations;
    return best;
}

}  // namespace hither
