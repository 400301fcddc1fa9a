#include "core/plan/edits/supports.h"

#include <set>

namespace hither {
namespace {

/// Why the support cannot stand in the plan, or nothing. `made` is left for more questions.
std::string cannotBe(const Plan& plan, const SupportSpec& spec, std::optional<Support>& made) {
    if (spec.id.empty()) return "a support needs an id";
    SupportMade result = makeSupport(spec);
    if (!result.support) {
        if (result.problems.empty()) return "the support cannot be made";
        const SupportProblem& p = result.problems.front();
        return "support \"" + spec.id + "\", " + p.key + ": found " + p.found + ", allowed " + p.allowed;
    }
    made = std::move(result.support);
    // Follow what carries it to the floor.
    std::set<std::string> seen{spec.id};
    for (std::string carrier = spec.carriedBy; !carrier.empty();) {
        if (!seen.insert(carrier).second) return "support \"" + spec.id + "\" would carry itself";
        const SupportSpec* next = nullptr;
        for (const SupportSpec& s : plan.supports) if (s.id == carrier) next = &s;
        if (next == nullptr) return "there is no support \"" + carrier + "\" that could carry it";
        carrier = next->carriedBy;
    }
    return {};
}

}  // namespace

Edited addSupport(const Plan& plan, const SupportSpec& support) {
    return edited(plan, [&](Plan& p) -> std::string {
        if (findSupport(p, support.id) != nullptr) return "there is a support \"" + support.id + "\" already";
        std::optional<Support> made;
        if (std::string why = cannotBe(p, support, made); !why.empty()) return why;
        p.supports.push_back(support);
        return {};
    });
}

Edited replaceSupport(const Plan& plan, const std::string& support, const SupportSpec& by) {
    return edited(plan, [&](Plan& p) -> std::string {
        SupportSpec* old = findSupport(p, support);
        if (old == nullptr) return "there is no support \"" + support + "\"";
        if (by.id != support && findSupport(p, by.id) != nullptr) return "there is a support \"" + by.id + "\" already";
        *old = by;
        const auto follow = [&](std::string& reference) { if (reference == support) reference = by.id; };
        for (SupportSpec& s : p.supports) follow(s.carriedBy);
        if (p.person) follow(p.person->on);
        for (SiteSpec& s : p.sites) follow(s.goesWithSupport);
        std::optional<Support> made;
        if (std::string why = cannotBe(p, *old, made); !why.empty()) return why;
        const auto hasGroup = [&](const std::string& group) { return group.empty() || made->group(group) != nullptr; };
        for (const SupportSpec& s : p.supports)
            if (s.carriedBy == by.id && !hasGroup(s.carriedByGroup)) return "support \"" + s.id + "\" goes with its moving group \"" + s.carriedByGroup + "\", which it would not have";
        for (const SiteSpec& s : p.sites)
            if (s.goesWithSupport == by.id && !hasGroup(s.goesWithGroup)) return "site \"" + s.id + "\" goes with its moving group \"" + s.goesWithGroup + "\", which it would not have";
        for (PlanOption& o : p.options) {
            for (KeepOut& k : o.keepOuts) {
                follow(k.support);
                if (k.support == by.id && !hasGroup(k.group)) return "keep-out \"" + k.id + "\" goes with its moving group \"" + k.group + "\", which it would not have";
            }
            for (Mount& m : o.mounts) {
                follow(m.support);
                if (m.support == by.id && made->attachment(m.attachment) == nullptr)
                    return "mount \"" + m.id + "\" of option \"" + o.id + "\" is fixed to \"" + m.attachment + "\", which it would not have";
            }
        }
        return {};
    });
}

Edited removeSupport(const Plan& plan, const std::string& support) {
    return edited(plan, [&](Plan& p) -> std::string {
        if (findSupport(p, support) == nullptr) return "there is no support \"" + support + "\"";
        for (const PlanOption& o : p.options) {
            for (const Mount& m : o.mounts) if (m.support == support) return "mount \"" + m.id + "\" of option \"" + o.id + "\" is fixed to it";
            for (const KeepOut& k : o.keepOuts) if (k.support == support) return "keep-out \"" + k.id + "\" of option \"" + o.id + "\" goes with it";
        }
        if (p.person && p.person->on == support) return "the person rests on it";
        for (const SupportSpec& s : p.supports) if (s.carriedBy == support) return "support \"" + s.id + "\" is carried by it";
        for (const SiteSpec& s : p.sites) if (s.goesWithSupport == support) return "site \"" + s.id + "\" goes with it";
        std::erase_if(p.supports, [&](const SupportSpec& s) { return s.id == support; });
        return {};
    });
}

Edited setPerson(const Plan& plan, const std::optional<PersonSpec>& person) {
    return edited(plan, [&](Plan& p) -> std::string {
        if (person && findSupport(p, person->on) == nullptr) return person->on.empty() ? "the person rests on nothing: name a support" : "there is no support \"" + person->on + "\"";
        if (!person) for (const SiteSpec& s : p.sites) if (s.given != SiteGiven::typed) return "site \"" + s.id + "\" is on the body";
        p.person = person;
        return {};
    });
}

}  // namespace hither
