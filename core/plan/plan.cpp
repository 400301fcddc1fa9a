#include "core/plan/plan.h"

namespace hither {

const Part* Plan::part(const std::string& partId) const {
    for (const auto& p : parts) if (p->id == partId) return p.get();
    return nullptr;
}

const PlanOption* Plan::option(const std::string& optionId) const {
    for (const PlanOption& o : options) if (o.id == optionId) return &o;
    return nullptr;
}

}  // namespace hither
