#include "core/plan/edits/build_rules.h"

#include <cmath>

namespace hither {

std::string cannotBuild(const Plan& plan, const std::vector<MountPart>& parts) {
    if (parts.empty()) return "a mount has at least one part";
    if (parts.size() > mostPartsInMount) return "a mount has at most " + std::to_string(mostPartsInMount) + " parts";
    for (std::size_t i = 0; i < parts.size(); ++i) {
        const Part* part = plan.part(parts[i].part);
        if (part == nullptr) return parts[i].part.empty() ? "the part has no id" : "there is no part \"" + parts[i].part + "\"";
        if (i == 0 && part->grips.empty()) return "\"" + part->name + "\" cannot come first: it has no grip for a support";
        if (i > 0 && part->bases.empty()) return "\"" + part->name + "\" can only come first: it has no end toward the support but its grip";
        if (i + 1 < parts.size() && part->face) return "\"" + part->name + "\" is a switch: it must come last";
        if (i + 1 < parts.size() && !part->outlet) return "\"" + part->name + "\" must come last: nothing can be fixed to it";
        if (parts[i].reversed && (!part->reversible || part->bases.size() != 1 || !part->outlet)) return "\"" + part->name + "\" cannot be turned end for end";
        if (!std::isfinite(parts[i].clocking_rad)) return "the clocking is no number";
        for (const auto& [name, setting] : parts[i].joints)
            for (const double q : setting.q) if (!std::isfinite(q)) return "a value of joint \"" + name + "\" is no number";
    }
    return {};
}

void copyPart(Plan& plan, const Part& part) {
    if (plan.part(part.id) == nullptr) plan.parts.push_back(std::make_shared<const Part>(part));
}

}  // namespace hither
