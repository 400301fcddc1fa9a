#pragma once
#include <optional>
#include <string>
#include <utility>

#include "core/plan/plan.h"

namespace hither {

/// What an edit gave: the new plan, or one plain sentence that says why it was not made. An edit never
/// changes the plan it is given, and everything that it does not speak of stays as it was.
struct Edited {
    std::optional<Plan> plan;
    std::string whyNot;
    explicit operator bool() const { return plan.has_value(); }
};

/// Applies `change` to a copy; it returns why it cannot be done, or an empty text.
template <class Change>
Edited edited(const Plan& plan, Change change) {
    Plan copy = plan;
    std::string whyNot = change(copy);
    if (!whyNot.empty()) return {std::nullopt, std::move(whyNot)};
    return {std::move(copy), {}};
}

PlanOption* findOption(Plan& plan, const std::string& option);
Mount* findMount(Plan& plan, const std::string& option, const std::string& mount);
SupportSpec* findSupport(Plan& plan, const std::string& support);
SiteSpec* findSite(Plan& plan, const std::string& site);
std::string noOption(const std::string& option);
std::string noMount(const std::string& option, const std::string& mount);

/// Drops the copies of parts that no option uses any more.
void dropUnusedParts(Plan& plan);
/// `base` or `base-2`, `base-3` ...: the first that `taken` does not know.
template <class Taken>
std::string freeId(const std::string& base, Taken taken) {
    if (!base.empty() && !taken(base)) return base;
    for (int n = 2;; ++n) {
        const std::string id = base + "-" + std::to_string(n);
        if (!taken(id)) return id;
    }
}

}  // namespace hither
