#include "core/plan/edits/edited.h"

#include <algorithm>
#include <set>

namespace hither {
namespace {

template <class List>
auto* byId(List& list, const std::string& id) {
    const auto found = std::find_if(list.begin(), list.end(), [&](const auto& item) { return item.id == id; });
    return found == list.end() ? nullptr : &*found;
}

}  // namespace

PlanOption* findOption(Plan& plan, const std::string& option) { return byId(plan.options, option); }
Mount* findMount(Plan& plan, const std::string& option, const std::string& mount) {
    PlanOption* o = findOption(plan, option);
    return o == nullptr ? nullptr : byId(o->mounts, mount);
}
SupportSpec* findSupport(Plan& plan, const std::string& support) { return byId(plan.supports, support); }
SiteSpec* findSite(Plan& plan, const std::string& site) { return byId(plan.sites, site); }

std::string noOption(const std::string& option) { return "there is no option \"" + option + "\""; }
std::string noMount(const std::string& option, const std::string& mount) { return "option \"" + option + "\" has no mount \"" + mount + "\""; }

void dropUnusedParts(Plan& plan) {
    std::set<std::string> used;
    for (const PlanOption& o : plan.options) for (const Mount& m : o.mounts) for (const MountPart& p : m.parts) used.insert(p.part);
    std::erase_if(plan.parts, [&](const std::shared_ptr<const Part>& p) { return used.count(p->id) == 0; });
}

}  // namespace hither
