#include "app/editor/new_plan.h"

#include <QCoreApplication>

#include "core/storage/fresh.h"

namespace hither {

Plan newPlan(const std::string& supportKind, UnitSystem display, const std::string& currency) {
    Plan plan;
    plan.id = randomUuid();
    plan.title = QCoreApplication::translate("NewPlan", "New plan").toStdString();
    plan.made_utc = plan.changed_utc = utcNow();
    plan.display = display;
    plan.currency = currency;
    SupportSpec support;
    support.id = "support-1";
    support.kind = supportKind;
    for (const SupportKind& kind : supportKinds()) if (kind.kind == supportKind) support.name = kind.name;
    plan.supports.push_back(std::move(support));
    PlanOption option;
    option.id = "option-1";
    option.name = QCoreApplication::translate("NewPlan", "Option A").toStdString();
    plan.options.push_back(std::move(option));
    return plan;
}

}  // namespace hither
