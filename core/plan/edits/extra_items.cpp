#include "core/plan/edits/extra_items.h"

#include <algorithm>

namespace hither {
namespace {

constexpr int mostOfOne = 10000;

std::string cannotBe(const ExtraItem& item) {
    if (item.id.empty()) return "an extra item needs an id";
    if (item.name.empty()) return "an extra item needs a name";
    if (item.count < 1 || item.count > mostOfOne) return "the count must be from 1 to " + std::to_string(mostOfOne);
    if (item.price && item.price->minor < 0) return "a price cannot be negative";
    return {};
}
ExtraItem* find(Plan& plan, const std::string& id) {
    for (ExtraItem& e : plan.extraItems) if (e.id == id) return &e;
    return nullptr;
}

}  // namespace

Edited addExtraItem(const Plan& plan, const ExtraItem& item) {
    return edited(plan, [&](Plan& p) -> std::string {
        if (find(p, item.id) != nullptr) return "there is an extra item \"" + item.id + "\" already";
        if (std::string why = cannotBe(item); !why.empty()) return why;
        p.extraItems.push_back(item);
        return {};
    });
}

Edited replaceExtraItem(const Plan& plan, const std::string& item, const ExtraItem& by) {
    return edited(plan, [&](Plan& p) -> std::string {
        ExtraItem* old = find(p, item);
        if (old == nullptr) return "there is no extra item \"" + item + "\"";
        if (by.id != item && find(p, by.id) != nullptr) return "there is an extra item \"" + by.id + "\" already";
        if (std::string why = cannotBe(by); !why.empty()) return why;
        *old = by;
        return {};
    });
}

Edited removeExtraItem(const Plan& plan, const std::string& item) {
    return edited(plan, [&](Plan& p) -> std::string {
        if (find(p, item) == nullptr) return "there is no extra item \"" + item + "\"";
        std::erase_if(p.extraItems, [&](const ExtraItem& e) { return e.id == item; });
        return {};
    });
}

}  // namespace hither
