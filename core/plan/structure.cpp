#include "core/plan/structure.h"

#include <cmath>
#include <set>
#include <string>

namespace hither {
namespace {

std::string place(const std::string& list, std::size_t i) { return list + "/" + std::to_string(i); }

struct Finder {
    const Plan& plan;
    std::vector<PlanProblem> problems;

    void add(const std::string& where, const std::string& what) { problems.push_back({where, what}); }

    template <class List, class Id>
    void ids(const std::string& list, const List& items, const char* what, Id idOf) {
        std::set<std::string> seen;
        for (std::size_t i = 0; i < items.size(); ++i) {
            const std::string& id = idOf(items[i]);
            if (id.empty()) add(place(list, i), std::string("the ") + what + " has no id");
            else if (!seen.insert(id).second) add(place(list, i), std::string("the id \"") + id + "\" is used by another " + what);
        }
    }
    bool hasSupport(const std::string& id) const {
        for (const SupportSpec& s : plan.supports) if (s.id == id) return true;
        return false;
    }
    bool hasSite(const std::string& id) const {
        for (const SiteSpec& s : plan.sites) if (s.id == id) return true;
        return false;
    }
    void limits() {
        const CheckLimits& l = plan.limits;
        const std::pair<const char*, double> all[] = {{"clearance_body_mm", l.clearanceBody_m}, {"clearance_support_mm", l.clearanceSupport_m}, {"clearance_mount_mm", l.clearanceMount_m},
                                                      {"press_factor", l.pressFactor}, {"knock_N", l.knock_N}, {"thread_turns", l.threadTurns}, {"thread_factor", l.threadFactor}};
        for (const auto& [key, value] : all)
            if (!std::isfinite(value) || value < 0) add(std::string("limits/") + key, "a limit must be a number that is not negative");
    }
    void site(const std::string& where, const SiteSpec& s) {
        if (!s.point.allFinite() || !s.direction.allFinite()) add(where, "the site's point or direction is no number");
        else if (s.directionTyped && !(s.direction.norm() > 1e-9)) add(where, "the site's direction has no length");
        if (!std::isfinite(s.tolerance_m) || s.tolerance_m < 0 || !std::isfinite(s.angleTolerance_rad) || s.angleTolerance_rad < 0)
            add(where, "the site's tolerances must be numbers that are not negative");
        for (const Figure* f : {&s.movement_m, &s.force_N, &s.spread_m})
            if (f->value && (!std::isfinite(*f->value) || *f->value < 0)) add(where, "a figure of the site must be a number that is not negative");
    }
    void givens() {
        ids("supports", plan.supports, "support", [](const SupportSpec& s) -> const std::string& { return s.id; });
        ids("sites", plan.sites, "site", [](const SiteSpec& s) -> const std::string& { return s.id; });
        static const std::string none;
        ids("parts", plan.parts, "part", [](const std::shared_ptr<const Part>& p) -> const std::string& { return p ? p->id : none; });
        limits();
        for (std::size_t i = 0; i < plan.sites.size(); ++i) site(place("sites", i), plan.sites[i]);
    }
    void part(const std::string& where, const MountPart& p) {
        if (plan.part(p.part) == nullptr) add(where, p.part.empty() ? "the part has no id" : "there is no part \"" + p.part + "\"");
        bool finite = std::isfinite(p.clocking_rad);
        for (const auto& [name, setting] : p.joints) for (const double q : setting.q) finite = finite && std::isfinite(q);
        if (!finite) add(where, "a joint value or the clocking is no number");
    }
    void mount(const std::string& where, const Mount& m) {
        if (m.support.empty()) add(where, "the mount is fixed to nothing");
        else if (!hasSupport(m.support)) add(where + "/fixed_to", "there is no support \"" + m.support + "\"");
        else if (m.attachment.empty()) add(where + "/fixed_to", "the mount is not fixed to any rail, edge, face or cloth of support \"" + m.support + "\"");
        for (const double v : {m.place.along_m, m.place.around_rad, m.place.x_m, m.place.y_m, m.place.yaw_rad})
            if (!std::isfinite(v)) { add(where + "/fixed_to", "the mount's place is no number"); break; }
        if (!m.site.empty() && !hasSite(m.site)) add(where + "/site", "there is no site \"" + m.site + "\"");
        if (m.parts.empty()) add(where + "/parts", "the mount has no parts");
        if (m.parts.size() > mostPartsInMount) {
            add(where + "/parts", "the mount has " + std::to_string(m.parts.size()) + " parts; at most " + std::to_string(mostPartsInMount) + " are allowed");
            return;
        }
        for (std::size_t k = 0; k < m.parts.size(); ++k) part(place(where + "/parts", k), m.parts[k]);
    }
    void option(std::size_t i) {
        const PlanOption& o = plan.options[i];
        const std::string where = place("options", i);
        ids(where + "/mounts", o.mounts, "mount", [](const Mount& m) -> const std::string& { return m.id; });
        ids(where + "/keep_outs", o.keepOuts, "keep-out", [](const KeepOut& k) -> const std::string& { return k.id; });
        for (std::size_t j = 0; j < o.mounts.size(); ++j) mount(place(where + "/mounts", j), o.mounts[j]);
        for (std::size_t j = 0; j < o.keepOuts.size(); ++j) {
            const KeepOut& k = o.keepOuts[j];
            if (!std::isfinite(k.margin_m) || k.margin_m < 0) add(place(where + "/keep_outs", j), "the margin must be a number that is not negative");
            if (!k.support.empty() && !hasSupport(k.support)) add(place(where + "/keep_outs", j), "there is no support \"" + k.support + "\"");
        }
    }
};

}  // namespace

std::vector<PlanProblem> structureProblems(const Plan& plan, std::size_t option) {
    Finder finder{plan, {}};
    finder.givens();
    if (option < plan.options.size()) finder.option(option);
    else finder.add("options", "there is no option number " + std::to_string(option + 1));
    return finder.problems;
}

std::vector<PlanProblem> structureProblems(const Plan& plan) {
    Finder finder{plan, {}};
    finder.givens();
    finder.ids("options", plan.options, "option", [](const PlanOption& o) -> const std::string& { return o.id; });
    for (std::size_t i = 0; i < plan.options.size(); ++i) finder.option(i);
    finder.ids("extra_items", plan.extraItems, "extra item", [](const ExtraItem& e) -> const std::string& { return e.id; });
    for (std::size_t i = 0; i < plan.extraItems.size(); ++i)
        if (plan.extraItems[i].count < 1) finder.add(place("extra_items", i), "the count must be at least 1");
    for (std::size_t i = 0; i < plan.accepted.size(); ++i)
        if (plan.option(plan.accepted[i].option) == nullptr) finder.add(place("accepted", i), "there is no option \"" + plan.accepted[i].option + "\"");
    return finder.problems;
}

}  // namespace hither
