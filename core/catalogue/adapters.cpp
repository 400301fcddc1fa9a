#include <algorithm>
#include <tuple>

#include "core/catalogue/mating.h"

namespace hither {

namespace {

/// An adapter in one of the ways it can be built in.
struct Way { const Part* part = nullptr; bool reversed = false; };

bool enters(const Port& outlet, const Way& way) {
    if (way.reversed) return mate(outlet, *way.part->outlet).goesTogether();
    return mateWith(outlet, *way.part).mate.goesTogether() && !way.part->bases.empty();
}
const Port& leaves(const Way& way) { return way.reversed ? way.part->bases.front() : *way.part->outlet; }

/// What a chain costs, dearest matter first: adapters without a price, the sum of the others, how
/// many, and which, so that equal costs are settled the same way every time.
struct Cost {
    int unpriced = 0;
    std::int64_t minor = 0;
    std::vector<std::size_t> ways;  ///< in the order of (id, reversed)
    bool operator<(const Cost& other) const {
        return std::make_tuple(unpriced, minor, ways.size(), std::cref(ways)) <
               std::make_tuple(other.unpriced, other.minor, other.ways.size(), std::cref(other.ways));
    }
};

}  // namespace

std::vector<AdapterStep> cheapestAdapters(const Port& outlet, const Part& next, const Catalogue& catalogue, int atMost) {
    const auto ends = [&next](const Port& port) { return !next.bases.empty() && mateWith(port, next).mate.goesTogether(); };
    if (ends(outlet)) return {};

    std::vector<Way> ways;
    std::vector<const Part*> adapters;
    for (const auto& part : catalogue.parts())
        if (part->kind == PartKind::adapter && part->outlet && !part->bases.empty()) adapters.push_back(part.get());
    std::sort(adapters.begin(), adapters.end(), [](const Part* a, const Part* b) { return a->id < b->id; });
    for (const Part* part : adapters) {
        ways.push_back({part, false});
        if (part->reversible && part->bases.size() == 1) ways.push_back({part, true});
    }
    // Amounts of different currencies do not compare: the first currency counts, others are as good as unknown.
    const auto priced = std::find_if(adapters.begin(), adapters.end(), [](const Part* p) { return p->price.has_value(); });
    const std::string currency = priced == adapters.end() ? std::string() : (*priced)->price->currency;

    const auto with = [&](Cost cost, std::size_t way) {
        const auto& price = ways[way].part->price;
        if (price && price->currency == currency) cost.minor += price->minor;
        else ++cost.unpriced;
        cost.ways.push_back(way);
        return cost;
    };
    // Shortest paths, one adapter at a time: the best chain of k adapters ending in a given one is
    // the best of k - 1 that its entry fits, because costs only add up (Bellman 1958).
    std::optional<Cost> best;
    std::vector<std::optional<Cost>> last(ways.size());
    for (int count = 1; count <= atMost; ++count) {
        std::vector<std::optional<Cost>> now(ways.size());
        for (std::size_t to = 0; to < ways.size(); ++to) {
            const auto offer = [&](const Cost& before) {
                Cost cost = with(before, to);
                if (!now[to] || cost < *now[to]) now[to] = std::move(cost);
            };
            if (count == 1) {
                if (enters(outlet, ways[to])) offer({});
            } else {
                for (std::size_t from = 0; from < ways.size(); ++from)
                    if (last[from] && enters(leaves(ways[from]), ways[to])) offer(*last[from]);
            }
            if (now[to] && ends(leaves(ways[to])) && (!best || *now[to] < *best)) best = now[to];
        }
        last = std::move(now);
    }
    std::vector<AdapterStep> chain;
    if (best)
        for (const std::size_t way : best->ways) chain.push_back({ways[way].part, ways[way].reversed});
    return chain;
}

}  // namespace hither
