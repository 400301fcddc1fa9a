#include <algorithm>

#include "core/plan/plan.h"

namespace hither {

bool operator==(const Plan& a, const Plan& b) {
    const auto sameParts = [&] {
        return std::equal(a.parts.begin(), a.parts.end(), b.parts.begin(), b.parts.end(),
                          [](const auto& p, const auto& q) { return p == q || (p && q && *p == *q); });
    };
    return a.id == b.id && a.title == b.title && a.shows == b.shows && a.notes == b.notes && a.revision == b.revision && a.made_utc == b.made_utc &&
           a.changed_utc == b.changed_utc && a.display == b.display && a.currency == b.currency && a.limits == b.limits && a.supports == b.supports &&
           a.person == b.person && a.sites == b.sites && sameParts() && a.options == b.options && a.extraItems == b.extraItems &&
           a.accepted == b.accepted && a.history == b.history;
}

}  // namespace hither
