#include <nlohmann/json.hpp>

#include "core/plan/parts_list.h"

namespace hither {
namespace {

nlohmann::json json(const std::optional<Money>& money) {
    if (!money) return nullptr;
    return {{"amount", printAmount(*money)}, {"currency", money->currency}};
}

}  // namespace

nlohmann::json partsListJson(const PartsList& list) {
    nlohmann::json rows = nlohmann::json::array(), totals = nlohmann::json::array();
    for (const PartsRow& row : list.rows) {
        rows.push_back({{"item", row.id}, {"name", row.name}, {"kind", row.kind ? word(*row.kind) : "extra item"}, {"count", row.count},
                        {"price_each", json(row.each)}, {"line_total", json(row.total)}, {"price_basis", word(row.priceBasis.kind)}, {"price_source", row.priceBasis.source},
                        {"tools", row.tools}, {"used_in", row.usedIn}, {"where_to_buy", row.whereToBuy}, {"notes", row.notes}});
    }
    for (const Money& total : list.totals) totals.push_back(json(std::optional<Money>(total)));
    return {{"options", list.options}, {"items", rows}, {"totals", totals}, {"not_priced", list.notPriced},
            {"tools_needed", list.toolsNeeded}, {"price_basis", word(list.priceBasis)}};
}

}  // namespace hither
