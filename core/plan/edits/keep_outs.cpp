#include "core/plan/edits/keep_outs.h"

#include <algorithm>
#include <cmath>

namespace hither {
namespace {

std::string cannotBe(Plan& plan, const KeepOut& k) {
    if (k.id.empty()) return "a keep-out needs an id";
    if (!std::isfinite(k.margin_m) || k.margin_m < 0) return "the margin must be a number that is not negative";
    if (!k.solid.X_FG.matrix().allFinite() || !k.solid.half.allFinite() || !std::isfinite(k.solid.radius)) return "the solid has a dimension that is no number";
    if (k.support.empty()) return k.group.empty() ? "" : "a moving group is named without its support";
    const SupportSpec* support = findSupport(plan, k.support);
    if (support == nullptr) return "there is no support \"" + k.support + "\"";
    const SupportMade made = makeSupport(*support);
    if (!k.group.empty() && (!made.support || made.support->group(k.group) == nullptr)) return "support \"" + k.support + "\" has no moving group \"" + k.group + "\"";
    return {};
}

KeepOut* find(PlanOption& option, const std::string& id) {
    for (KeepOut& k : option.keepOuts) if (k.id == id) return &k;
    return nullptr;
}
std::string none(const std::string& option, const std::string& id) { return "option \"" + option + "\" has no keep-out \"" + id + "\""; }

}  // namespace

Edited addKeepOut(const Plan& plan, const std::string& option, const KeepOut& keepOut) {
    return edited(plan, [&](Plan& p) -> std::string {
        PlanOption* o = findOption(p, option);
        if (o == nullptr) return noOption(option);
        if (find(*o, keepOut.id) != nullptr) return "there is a keep-out \"" + keepOut.id + "\" already";
        if (std::string why = cannotBe(p, keepOut); !why.empty()) return why;
        o->keepOuts.push_back(keepOut);
        return {};
    });
}

Edited replaceKeepOut(const Plan& plan, const std::string& option, const std::string& keepOut, const KeepOut& by) {
    return edited(plan, [&](Plan& p) -> std::string {
        PlanOption* o = findOption(p, option);
        if (o == nullptr) return noOption(option);
        KeepOut* old = find(*o, keepOut);
        if (old == nullptr) return none(option, keepOut);
        if (by.id != keepOut && find(*o, by.id) != nullptr) return "there is a keep-out \"" + by.id + "\" already";
        if (std::string why = cannotBe(p, by); !why.empty()) return why;
        *old = by;
        return {};
    });
}

Edited removeKeepOut(const Plan& plan, const std::string& option, const std::string& keepOut) {
    return edited(plan, [&](Plan& p) -> std::string {
        PlanOption* o = findOption(p, option);
        if (o == nullptr) return noOption(option);
        if (find(*o, keepOut) == nullptr) return none(option, keepOut);
        std::erase_if(o->keepOuts, [&](const KeepOut& k) { return k.id == keepOut; });
        return {};
    });
}

}  // namespace hither
