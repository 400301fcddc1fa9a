#include "core/plan/parts_list.h"

#include <algorithm>
#include <limits>
#include <map>
#include <set>

namespace hither {
namespace {

/// Price of `count`; empty when it would not fit a number.
std::optional<Money> times(const std::optional<Money>& each, int count) {
    if (!each || count < 0 || (count > 0 && std::abs(each->minor) > std::numeric_limits<std::int64_t>::max() / 1000000 / count)) return std::nullopt;
    return Money{each->minor * count, each->currency};
}

PartsRow rowOf(const Plan& plan, const std::string& id) {
    PartsRow row;
    row.id = id;
    row.name = id;
    const Part* part = plan.part(id);
    if (part == nullptr) return row;  // a plan with such a hole is no setup; its list still names what is missing
    row.name = part->name;
    row.kind = part->kind;
    row.each = part->price;
    if (part->price) row.priceBasis = part->priceBasis;
    row.tools = part->tools;
    row.whereToBuy = part->whereToBuy;
    row.notes = part->notes;
    return row;
}

}  // namespace

PartsList partsList(const Plan& plan, const std::vector<std::string>& options, BuiltAs builtAs) {
    PartsList list;
    std::map<std::string, PartsRow> rows;
    for (const PlanOption& option : plan.options) {
        if (!options.empty() && std::find(options.begin(), options.end(), option.id) == options.end()) continue;
        list.options.push_back(option.id);
        std::map<std::string, int> counts;
        for (const Mount& mount : option.mounts) {
            for (const MountPart& mounted : mount.parts) {
                ++counts[mounted.part];
                PartsRow& row = rows.try_emplace(mounted.part, rowOf(plan, mounted.part)).first->second;
                const std::string use = option.id + "/" + mount.id;
                if (row.usedIn.empty() || row.usedIn.back() != use) row.usedIn.push_back(use);
            }
        }
        for (const auto& [id, count] : counts) {
            int& total = rows.at(id).count;
            total = builtAs == BuiltAs::allAtOnce ? total + count : std::max(total, count);
        }
    }
    for (auto& [id, row] : rows) list.rows.push_back(std::move(row));
    const auto order = [](const PartsRow& r) { return r.kind ? static_cast<int>(*r.kind) : 100; };
    std::sort(list.rows.begin(), list.rows.end(), [&](const PartsRow& a, const PartsRow& b) {
        return std::make_tuple(order(a), std::cref(a.name), std::cref(a.id)) < std::make_tuple(order(b), std::cref(b.name), std::cref(b.id));
    });
    for (const ExtraItem& item : plan.extraItems) {
        PartsRow row;
        row.id = item.id;
        row.name = item.name;
        row.count = item.count;
        row.each = item.price;
        if (item.price) row.priceBasis = {BasisKind::assumed, {}};
        row.notes = item.notes;
        list.rows.push_back(std::move(row));
    }
    std::map<std::string, std::int64_t> totals;
    std::set<std::string> tools;
    for (PartsRow& row : list.rows) {
        row.total = times(row.each, row.count);
        tools.insert(row.tools.begin(), row.tools.end());
        if (!row.total) {
            list.notPriced.push_back(row.name);
            list.priceBasis = BasisKind::unknown;
            continue;
        }
        totals[row.total->currency] += row.total->minor;
        list.priceBasis = weakest(list.priceBasis, row.priceBasis.kind);
    }
    for (const auto& [currency, minor] : totals) list.totals.push_back({minor, currency});
    list.toolsNeeded.assign(tools.begin(), tools.end());
    return list;
}

}  // namespace hither
