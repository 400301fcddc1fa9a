#include "core/situation/situation_sites.h"

#include <algorithm>
#include <cmath>

#include "core/situation/support_typed.h"
#include "core/units/quantity.h"

namespace hither {

namespace {

constexpr double farthest_m = 100;  // a site farther than that from the origin of W is a slip of the hand

void checkFigure(const Figure& figure, double most, bool zeroToo, const std::string& where, const std::string& allowed, std::vector<SituationProblem>& problems) {
    if (!figure.known()) return;
    const double v = *figure.value;
    if (std::isfinite(v) && v <= most && (zeroToo ? v >= 0 : v > 0)) return;
    problems.push_back({where, std::string(std::isfinite(v) ? "" : "it is not a number; ") + allowed});
}

BasisKind basisOf(const BodySize& size) {
    BasisKind basis = BasisKind::measured;
    for (const auto& [name, dimension] : size.dimensions) basis = weakest(basis, dimension.basis);
    return basis;
}

/// The segment that a site goes with, and with it the group.
void goWithBody(const Body& body, SegmentId segment, Site& site) {
    site.segment = segment;
    site.support = body.support;
    const auto group = body.group.find(segment);
    site.group = group == body.group.end() ? std::string() : group->second;
}

}  // namespace

void checkSite(const SiteSpec& spec, const std::string& where, std::vector<SituationProblem>& problems) {
    if (!spec.point.allFinite() || spec.point.cwiseAbs().maxCoeff() > farthest_m) problems.push_back({where + "/point_mm", "the point must be three numbers within 100 m"});
    const bool directionUsed = spec.given != SiteGiven::fromPosture || spec.directionTyped;
    if (directionUsed && (!spec.direction.allFinite() || spec.direction.norm() < 1e-9))
        problems.push_back({where + "/direction", "the direction of the movement must be three numbers that are not all 0"});
    if (!(spec.tolerance_m > 0 && spec.tolerance_m <= 1))
        problems.push_back({where + "/tolerance_mm", "it is " + shownValue(spec.tolerance_m, false) + "; it must be above 0 mm and at most 1000 mm"});
    if (!(spec.angleTolerance_rad > 0 && spec.angleTolerance_rad <= pi / 2 + 1e-9))
        problems.push_back({where + "/angle_tolerance_deg", "it is " + shownValue(spec.angleTolerance_rad, true) + "; it must be above 0 and at most 90 degrees"});
    checkFigure(spec.movement_m, 2, false, where + "/movement_mm", "the movement must be above 0 mm and at most 2000 mm", problems);
    checkFigure(spec.force_N, 2000, true, where + "/force_N", "the force must be 0 N to 2000 N", problems);
    checkFigure(spec.spread_m, 1, true, where + "/spread_mm", "the spread must be 0 mm to 1000 mm", problems);
    const auto& known = controlSites();
    if (!spec.controlSite.empty() && std::none_of(known.begin(), known.end(), [&](const auto& site) { return site.first == spec.controlSite; })) {
        std::string all;
        for (const auto& [id, name] : known) all += (all.empty() ? "" : ", ") + id;
        problems.push_back({where + "/control_site", "there is no control site \"" + spec.controlSite + "\"; there are: " + all});
    }
    if (spec.given == SiteGiven::fromPosture && spec.controlSite.empty()) problems.push_back({where + "/control_site", "a site from the posture needs the control site it is at"});
    if (spec.goesWithSupport.empty() && !spec.goesWithGroup.empty())
        problems.push_back({where + "/goes_with", "a group \"" + spec.goesWithGroup + "\" is named, but not the support it belongs to"});
}

std::optional<Site> placeSite(const SiteSpec& spec, const Situation& situation, const std::string& where, std::vector<SituationProblem>& problems) {
    Site site;
    site.id = spec.id;
    site.name = spec.name.empty() ? spec.id : spec.name;
    site.controlSite = spec.controlSite;
    site.movement_m = spec.movement_m;
    site.tolerance_m = spec.tolerance_m;
    site.angleTolerance_rad = spec.angleTolerance_rad;
    site.force_N = spec.force_N;
    site.spread_m = spec.spread_m;

    if (!spec.goesWithSupport.empty()) {
        const Support* support = situation.support(spec.goesWithSupport);
        if (!support) { problems.push_back({where + "/goes_with", "there is no support \"" + spec.goesWithSupport + "\""}); return std::nullopt; }
        if (!spec.goesWithGroup.empty() && !support->group(spec.goesWithGroup)) {
            problems.push_back({where + "/goes_with", "\"" + spec.goesWithSupport + "\" has no moving group \"" + spec.goesWithGroup + "\""});
            return std::nullopt;
        }
        site.support = spec.goesWithSupport;
        site.group = spec.goesWithGroup;
    }
    const Body* body = situation.body ? &*situation.body : nullptr;
    const ControlSite* control = body && !spec.controlSite.empty() ? body->site(spec.controlSite) : nullptr;
    if (!body && spec.given != SiteGiven::typed) {
        problems.push_back({where + "/given", "a site on the body needs a person in the plan; without one, type its point and direction"});
        return std::nullopt;
    }
    if (body && !spec.controlSite.empty() && !control) {
        problems.push_back({where + "/control_site", "this body has no control site \"" + spec.controlSite + "\""});
        return std::nullopt;
    }
    if (control && !site.movement_m.known()) site.movement_m = {control->usual_m, {BasisKind::assumed, {}}};

    switch (spec.given) {
        case SiteGiven::typed:
            site.p_W = spec.point;
            site.d_W = spec.direction.normalized();
            site.basis = BasisKind::measured;
            if (control) goWithBody(*body, control->segment, site);
            return site;
        case SiteGiven::onBody: {
            const auto X_W = body->X_WSegment.find(spec.segment);
            if (X_W == body->X_WSegment.end()) {
                problems.push_back({where + "/segment", "the body has no segment \"" + word(spec.segment) + "\""});
                return std::nullopt;
            }
            site.p_W = X_W->second * spec.point;
            site.d_W = (X_W->second.linear() * spec.direction).normalized();
            goWithBody(*body, spec.segment, site);
            break;
        }
        case SiteGiven::fromPosture: {
            const Pose& X_W = body->X_WSegment.at(control->segment);
            site.p_W = X_W * (control->point + spec.point);
            site.d_W = (X_W.linear() * (spec.directionTyped ? spec.direction : control->movement)).normalized();
            goWithBody(*body, control->segment, site);
            break;
        }
    }
    site.basis = basisOf(body->size);
    return site;
}

}  // namespace hither
