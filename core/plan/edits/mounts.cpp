#include "core/plan/edits/mounts.h"

#include <cmath>

#include "core/chain/placement.h"
#include "core/plan/edits/build_rules.h"

namespace hither {
namespace {

std::string cannotFix(Plan& plan, const Mount& mount) {
    if (mount.support.empty()) return "the mount is fixed to nothing";
    const SupportSpec* spec = findSupport(plan, mount.support);
    if (spec == nullptr) return "there is no support \"" + mount.support + "\"";
    const SupportMade made = makeSupport(*spec);
    if (!made.support) return "support \"" + mount.support + "\" cannot be made";
    const Attachment* attachment = made.support->attachment(mount.attachment);
    if (attachment == nullptr) return "support \"" + mount.support + "\" has no attachment \"" + mount.attachment + "\"";
    for (const double v : {mount.place.along_m, mount.place.around_rad, mount.place.x_m, mount.place.y_m, mount.place.yaw_rad})
        if (!std::isfinite(v)) return "the place is no number";
    const Part& first = *plan.part(mount.parts.front().part);
    static const char* const kinds[] = {"a rail", "an edge", "a face", "cloth"};
    if (gripFor(first, *attachment) == nullptr) return "\"" + first.name + "\" has no grip for " + kinds[static_cast<int>(attachment->kind)];
    return {};
}

}  // namespace

Edited addMount(const Plan& plan, const std::string& option, const Mount& mount, const std::vector<Part>& data) {
    return edited(plan, [&](Plan& p) -> std::string {
        PlanOption* o = findOption(p, option);
        if (o == nullptr) return noOption(option);
        if (mount.id.empty()) return "a mount needs an id";
        if (findMount(p, option, mount.id) != nullptr) return "there is a mount \"" + mount.id + "\" already";
        for (const Part& part : data) copyPart(p, part);
        if (std::string why = cannotBuild(p, mount.parts); !why.empty()) return why;
        if (std::string why = cannotFix(p, mount); !why.empty()) return why;
        if (!mount.site.empty() && findSite(p, mount.site) == nullptr) return "there is no site \"" + mount.site + "\"";
        o->mounts.push_back(mount);
        dropUnusedParts(p);
        return {};
    });
}

Edited removeMount(const Plan& plan, const std::string& option, const std::string& mount) {
    return edited(plan, [&](Plan& p) -> std::string {
        if (findOption(p, option) == nullptr) return noOption(option);
        if (findMount(p, option, mount) == nullptr) return noMount(option, mount);
        std::erase_if(findOption(p, option)->mounts, [&](const Mount& m) { return m.id == mount; });
        dropUnusedParts(p);
        return {};
    });
}

Edited renameMount(const Plan& plan, const std::string& option, const std::string& mount, const std::string& name) {
    return edited(plan, [&](Plan& p) -> std::string {
        Mount* m = findMount(p, option, mount);
        if (m == nullptr) return noMount(option, mount);
        if (name.empty()) return "a mount needs a name";
        m->name = name;
        return {};
    });
}

Edited retargetMount(const Plan& plan, const std::string& option, const std::string& mount, const std::string& site) {
    return edited(plan, [&](Plan& p) -> std::string {
        Mount* m = findMount(p, option, mount);
        if (m == nullptr) return noMount(option, mount);
        if (!site.empty() && findSite(p, site) == nullptr) return "there is no site \"" + site + "\"";
        m->site = site;
        return {};
    });
}

Edited setPlacement(const Plan& plan, const std::string& option, const std::string& mount, const std::string& support,
                    const std::string& attachment, const Placement& place) {
    return edited(plan, [&](Plan& p) -> std::string {
        Mount* m = findMount(p, option, mount);
        if (m == nullptr) return noMount(option, mount);
        m->support = support;
        m->attachment = attachment;
        m->place = place;
        if (std::string why = cannotBuild(p, m->parts); !why.empty()) return why;
        return cannotFix(p, *m);
    });
}

Edited setPlacementKept(const Plan& plan, const std::string& option, const std::string& mount, bool kept) {
    return edited(plan, [&](Plan& p) -> std::string {
        Mount* m = findMount(p, option, mount);
        if (m == nullptr) return noMount(option, mount);
        m->placeKept = kept;
        return {};
    });
}

}  // namespace hither
