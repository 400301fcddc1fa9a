#include "core/plan/edits/sites.h"

#include <cmath>

namespace hither {
namespace {

std::string cannotBe(Plan& plan, const SiteSpec& site) {
    if (site.id.empty()) return "a site needs an id";
    if (!site.point.allFinite() || !site.direction.allFinite()) return "the site's point or direction is no number";
    if ((site.given != SiteGiven::fromPosture || site.directionTyped) && !(site.direction.norm() > 1e-9)) return "the site's direction has no length";
    if (!std::isfinite(site.tolerance_m) || site.tolerance_m < 0 || !std::isfinite(site.angleTolerance_rad) || site.angleTolerance_rad < 0)
        return "the site's tolerances must be numbers that are not negative";
    for (const Figure* f : {&site.movement_m, &site.force_N, &site.spread_m})
        if (f->value && (!std::isfinite(*f->value) || *f->value < 0)) return "a figure of the site must be a number that is not negative";
    if (site.given != SiteGiven::typed && !plan.person) return "the site is on the body, but the plan has no person";
    if (site.given == SiteGiven::fromPosture && site.controlSite.empty()) return "a site taken from the posture needs a control site";
    if (!site.goesWithSupport.empty() && findSupport(plan, site.goesWithSupport) == nullptr) return "there is no support \"" + site.goesWithSupport + "\"";
    return {};
}

}  // namespace

Edited addSite(const Plan& plan, const SiteSpec& site) {
    return edited(plan, [&](Plan& p) -> std::string {
        if (findSite(p, site.id) != nullptr) return "there is a site \"" + site.id + "\" already";
        if (std::string why = cannotBe(p, site); !why.empty()) return why;
        p.sites.push_back(site);
        return {};
    });
}

Edited replaceSite(const Plan& plan, const std::string& site, const SiteSpec& by) {
    return edited(plan, [&](Plan& p) -> std::string {
        SiteSpec* old = findSite(p, site);
        if (old == nullptr) return "there is no site \"" + site + "\"";
        if (by.id != site && findSite(p, by.id) != nullptr) return "there is a site \"" + by.id + "\" already";
        if (std::string why = cannotBe(p, by); !why.empty()) return why;
        *old = by;
        for (PlanOption& o : p.options) for (Mount& m : o.mounts) if (m.site == site) m.site = by.id;
        return {};
    });
}

Edited removeSite(const Plan& plan, const std::string& site) {
    return edited(plan, [&](Plan& p) -> std::string {
        if (findSite(p, site) == nullptr) return "there is no site \"" + site + "\"";
        for (const PlanOption& o : p.options)
            for (const Mount& m : o.mounts) if (m.site == site) return "mount \"" + m.id + "\" of option \"" + o.id + "\" serves it";
        std::erase_if(p.sites, [&](const SiteSpec& s) { return s.id == site; });
        return {};
    });
}

}  // namespace hither
