#include "core/storage/plan_difference.h"

#include <algorithm>

#include "core/storage/json_value.h"
#include "core/storage/plan_json.h"

namespace hither {
namespace {

using Kind = JsonValue::Kind;

std::string shown(const JsonValue& v) {
    std::string text = printJsonValue(v);
    for (char& c : text) if (c == '\n') c = ' ';
    while (!text.empty() && text.back() == ' ') text.pop_back();
    if (text.size() > 200) {
        std::size_t end = 200;
        while (end > 0 && (static_cast<unsigned char>(text[end]) & 0xc0) == 0x80) --end;  // not inside a letter
        text = text.substr(0, end) + "...";
    }
    return text;
}

std::string idOf(const JsonValue& v) {
    const JsonValue* id = v.kind == Kind::object ? v.find("id") : nullptr;
    return id != nullptr && id->kind == Kind::text ? id->text : std::string();
}

bool haveIds(const JsonValue& list) {
    return !list.items.empty() && std::all_of(list.items.begin(), list.items.end(), [](const JsonValue& v) { return !idOf(v).empty(); });
}

std::string under(const std::string& place, const std::string& name) { return place.empty() ? name : place + "/" + name; }

void compare(const std::string& place, const JsonValue* a, const JsonValue* b, std::vector<PlanDifference>& out) {
    using D = PlanDifference::Kind;
    if (a == nullptr && b == nullptr) return;
    if (a == nullptr) return out.push_back({D::added, place, {}, shown(*b)});
    if (b == nullptr) return out.push_back({D::removed, place, shown(*a), {}});
    if (*a == *b) return;
    if (a->kind == Kind::object && b->kind == Kind::object) {
        for (const std::string& key : a->keys) compare(under(place, key), a->find(key), b->find(key), out);
        for (const std::string& key : b->keys) if (a->find(key) == nullptr) compare(under(place, key), nullptr, b->find(key), out);
        return;
    }
    if (a->kind == Kind::list && b->kind == Kind::list && (haveIds(*a) || haveIds(*b)) && (haveIds(*a) || a->items.empty()) && (haveIds(*b) || b->items.empty())) {
        const auto find = [](const JsonValue& list, const std::string& id) -> const JsonValue* {
            for (const JsonValue& v : list.items) if (idOf(v) == id) return &v;
            return nullptr;
        };
        std::vector<std::string> kept, keptAfter;
        for (const JsonValue& v : a->items) {
            compare(under(place, idOf(v)), &v, find(*b, idOf(v)), out);
            if (find(*b, idOf(v)) != nullptr) kept.push_back(idOf(v));
        }
        for (const JsonValue& v : b->items) {
            if (find(*a, idOf(v)) == nullptr) compare(under(place, idOf(v)), nullptr, &v, out);
            else keptAfter.push_back(idOf(v));
        }
        if (kept != keptAfter) out.push_back({D::moved, place, {}, "another order"});
        return;
    }
    // Lists of objects without ids (a mount's parts, history) item by item; numbers' lists as one value.
    const auto ofObjects = [](const JsonValue& v) { return v.kind == Kind::list && !v.items.empty() && v.items.front().kind == Kind::object; };
    if (a->kind == Kind::list && b->kind == Kind::list && (ofObjects(*a) || ofObjects(*b))) {
        for (std::size_t i = 0; i < std::max(a->items.size(), b->items.size()); ++i)
            compare(under(place, std::to_string(i)), i < a->items.size() ? &a->items[i] : nullptr, i < b->items.size() ? &b->items[i] : nullptr, out);
        return;
    }
    out.push_back({D::changed, place, shown(*a), shown(*b)});
}

}  // namespace

const char* word(PlanDifference::Kind kind) {
    switch (kind) {
        case PlanDifference::Kind::added: return "added";
        case PlanDifference::Kind::removed: return "removed";
        case PlanDifference::Kind::changed: return "changed";
        case PlanDifference::Kind::moved: return "moved";
    }
    return "changed";
}

std::vector<PlanDifference> planDifferences(const Plan& before, const Plan& after) {
    const JsonValueRead a = readJsonValue(planToJson(before)), b = readJsonValue(planToJson(after));
    std::vector<PlanDifference> out;
    if (a.value && b.value) compare({}, &*a.value, &*b.value, out);
    return out;
}

}  // namespace hither
