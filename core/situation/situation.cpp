#include "core/situation/situation.h"

#include <algorithm>
#include <cassert>

#include "core/situation/situation_sites.h"

namespace hither {

namespace {

/// How a support has moved in W, compared with all that carries it at zero.
Pose carriedBy_W(const Situation& situation, const Support& support, const GroupSettings& settings) {
    if (support.carriedBy.empty()) return Pose::Identity();
    const Support* carrier = situation.support(support.carriedBy);
    assert(carrier != nullptr);
    return groupPose_W(situation, support.carriedBy, support.carriedByGroup, settings) * carrier->X_WS.inverse();
}

std::string quoted(const std::string& text) { return "\"" + text + "\""; }

void makeSupports(const std::vector<SupportSpec>& specs, std::vector<Support>& supports, std::vector<SituationProblem>& problems) {
    for (std::size_t i = 0; i < specs.size(); ++i) {
        const std::string where = "supports/" + std::to_string(i);
        const SupportSpec& spec = specs[i];
        if (spec.id.empty()) problems.push_back({where + "/id", "a support needs an id of its own"});
        const bool twice = std::any_of(specs.begin(), specs.begin() + static_cast<std::ptrdiff_t>(i), [&](const SupportSpec& s) { return s.id == spec.id; });
        if (twice && !spec.id.empty()) problems.push_back({where + "/id", "there is another support " + quoted(spec.id)});
        SupportMade made = makeSupport(spec);
        for (const SupportProblem& p : made.problems) problems.push_back({where + "/" + p.key, "found " + p.found + "; allowed: " + p.allowed});
        if (made.support) supports.push_back(std::move(*made.support));
    }
}

void checkCarriers(const std::vector<SupportSpec>& specs, const std::vector<Support>& supports, std::vector<SituationProblem>& problems) {
    for (std::size_t i = 0; i < specs.size(); ++i) {
        const SupportSpec& spec = specs[i];
        const std::string where = "supports/" + std::to_string(i) + "/carried_by";
        if (spec.carriedBy.empty()) {
            if (!spec.carriedByGroup.empty()) problems.push_back({where, "a group " + quoted(spec.carriedByGroup) + " is named, but not the support it belongs to"});
            continue;
        }
        const auto known = std::find_if(specs.begin(), specs.end(), [&](const SupportSpec& s) { return s.id == spec.carriedBy; });
        if (known == specs.end()) { problems.push_back({where, "there is no support " + quoted(spec.carriedBy)}); continue; }
        // Followed from carrier to carrier it must end at one that stands on the floor.
        std::string next = spec.carriedBy;
        for (std::size_t steps = 0; !next.empty() && steps <= specs.size(); ++steps) {
            const auto carrier = std::find_if(specs.begin(), specs.end(), [&](const SupportSpec& s) { return s.id == next; });
            next = carrier == specs.end() ? std::string() : carrier->carriedBy;
        }
        if (!next.empty()) problems.push_back({where, quoted(spec.id) + " is carried by " + quoted(spec.carriedBy) + ", which in the end is carried by itself"});
        const auto made = std::find_if(supports.begin(), supports.end(), [&](const Support& s) { return s.id == spec.carriedBy; });
        if (made != supports.end() && !spec.carriedByGroup.empty() && !made->group(spec.carriedByGroup))
            problems.push_back({where, quoted(spec.carriedBy) + " has no moving group " + quoted(spec.carriedByGroup)});
    }
}

void putPerson(const PersonSpec& spec, const BodyData& data, Situation& situation, std::vector<SituationProblem>& problems) {
    const Support* on = nullptr;
    if (!spec.on.empty()) {
        on = situation.support(spec.on);
        if (!on) { problems.push_back({"person/on", "there is no support " + quoted(spec.on)}); return; }
    } else {
        const auto first = std::find_if(situation.supports.begin(), situation.supports.end(), [](const Support& s) { return s.resting.posture != Resting::Posture::none; });
        if (first == situation.supports.end()) { problems.push_back({"person/on", "there is no support that somebody can sit or lie on"}); return; }
        on = &*first;
    }
    PersonSpec placed = spec;
    placed.on = on->id;
    BodyMade made = makeBody(placed, *on, data);
    for (const std::string& p : made.problems) problems.push_back({"person", p});
    if (!made.body) {
        if (made.problems.empty()) problems.push_back({"person", "the body could not be put on " + quoted(on->id)});
        return;
    }
    // makeBody knows the support alone; what carries that support moves the body with it.
    const Pose D = carriedBy_W(situation, *on, {});
    for (auto& [segment, X_W] : made.body->X_WSegment) X_W = D * X_W;
    made.body->eyes_W = D * made.body->eyes_W;
    situation.body = std::move(made.body);
}

}  // namespace

const Support* Situation::support(const std::string& wanted) const {
    const auto found = std::find_if(supports.begin(), supports.end(), [&](const Support& s) { return s.id == wanted; });
    return found == supports.end() ? nullptr : &*found;
}

const Site* Situation::site(const std::string& wanted) const {
    const auto found = std::find_if(sites.begin(), sites.end(), [&](const Site& s) { return s.id == wanted; });
    return found == sites.end() ? nullptr : &*found;
}

SituationMade makeSituation(const std::vector<SupportSpec>& supports, const std::optional<PersonSpec>& person,
                            const std::vector<SiteSpec>& sites, const BodyData& data) {
    SituationMade made;
    Situation situation;
    makeSupports(supports, situation.supports, made.problems);
    checkCarriers(supports, situation.supports, made.problems);
    // With a support missing or going round in a ring, complaints about what stands on it would only mislead.
    const bool standing = made.problems.empty();
    if (standing && person) putPerson(*person, data, situation, made.problems);
    for (std::size_t i = 0; i < sites.size(); ++i) {
        const std::string where = "sites/" + std::to_string(i);
        const bool twice = std::any_of(sites.begin(), sites.begin() + static_cast<std::ptrdiff_t>(i), [&](const SiteSpec& s) { return s.id == sites[i].id; });
        if (sites[i].id.empty()) made.problems.push_back({where + "/id", "a site needs an id of its own"});
        else if (twice) made.problems.push_back({where + "/id", "there is another site " + quoted(sites[i].id)});
        const std::size_t before = made.problems.size();
        checkSite(sites[i], where, made.problems);
        if (made.problems.size() > before || !standing || (person && !situation.body)) continue;
        if (std::optional<Site> site = placeSite(sites[i], situation, where, made.problems)) situation.sites.push_back(std::move(*site));
    }
    if (made.problems.empty()) made.situation = std::move(situation);
    return made;
}

Pose groupPose_W(const Situation& situation, const std::string& supportId, const std::string& group, const GroupSettings& settings) {
    const Support* support = situation.support(supportId);
    assert(support != nullptr);
    return carriedBy_W(situation, *support, settings) * support->X_WS * groupPose_S(*support, group, settings);
}

Pose carriedFromNow_W(const Situation& situation, const std::string& support, const std::string& group, const GroupSettings& settings) {
    if (support.empty()) return Pose::Identity();
    return groupPose_W(situation, support, group, settings) * groupPose_W(situation, support, group).inverse();
}

}  // namespace hither
