#include "core/storage/plan_rules.h"

#include <algorithm>
#include <cmath>
#include <set>

#include "core/storage/exact_number.h"
#include "core/storage/plan_units.h"

namespace hither {
namespace {

std::string at(const std::string& place, const char* list, std::size_t i) { return place + (place.empty() ? "" : "/") + list + "/" + std::to_string(i); }

/// A text as it is quoted in a problem: short, on one line, never empty.
std::string shown(const std::string& text) {
    if (text.empty()) return "nothing";
    if (!isPrintableText(text, false)) return "control characters or text that is not UTF-8";
    std::size_t end = std::min<std::size_t>(text.size(), 100);
    while (end < text.size() && end > 0 && (static_cast<unsigned char>(text[end]) & 0xc0) == 0x80) --end;  // not inside a letter
    return text.substr(0, end);
}

class Rules {
public:
    explicit Rules(std::size_t most) : most_(most) {}
    std::vector<StorageError> problems;

    void add(std::string place, std::string found, std::string allowed, StorageError::Code code = StorageError::Code::badValue) {
        if (problems.size() < most_) problems.push_back({code, {}, std::move(place), {{"found", std::move(found)}, {"allowed", std::move(allowed)}}});
    }
    bool number(const std::string& place, double v, double low, double high, Scale scale) {
        if (std::isfinite(v) && v >= low && v <= high) return true;
        add(place, std::isfinite(v) ? textFromSi(v, scale) : "a number that is not finite", textFromSi(low, scale) + " to " + textFromSi(high, scale));
        return false;
    }
    void length(const std::string& place, double v) { number(place, v, -planBounds::length_m, planBounds::length_m, Scale::milli); }
    void size(const std::string& place, double v) { number(place, v, 0, planBounds::length_m, Scale::milli); }
    void angle(const std::string& place, double v) { number(place, v, -planBounds::angle_rad, planBounds::angle_rad, Scale::degree); }
    void point(const std::string& place, const Vec3& p) {
        for (int i = 0; i < 3; ++i) length(place + "/" + std::to_string(i), p[i]);
    }
    /// A direction: finite and long enough to have one.
    void direction(const std::string& place, const Vec3& d) {
        for (int i = 0; i < 3; ++i)
            if (!number(place + "/" + std::to_string(i), d[i], -1e6, 1e6, Scale::one)) return;
        if (d.norm() < 1e-9) add(place, "a direction of no length", "a vector that is not zero");
    }
    void figure(const std::string& place, const Figure& f, double low, double high, Scale scale) {
        if (f.value) {
            number(place, *f.value, low, high, scale);
            if (f.basis.kind == BasisKind::unknown) add(place + "/basis", "unknown", "measured, published or assumed for a figure that has a value");
        } else if (f.basis.kind != BasisKind::unknown) {
            add(place + "/basis", word(f.basis.kind), "unknown for a figure without a value");
        }
        line(place + "/source", f.basis.source);
    }
    void line(const std::string& place, const std::string& text) {
        if (text.size() > planBounds::lineBytes) add(place, std::to_string(text.size()) + " bytes of text", "at most " + std::to_string(planBounds::lineBytes));
        else if (!isPrintableText(text, false)) add(place, "control characters or text that is not UTF-8", "one line of UTF-8");
    }
    void text(const std::string& place, const std::string& value) {
        if (value.size() > planBounds::textBytes) add(place, std::to_string(value.size()) + " bytes of text", "at most " + std::to_string(planBounds::textBytes));
        else if (!isPrintableText(value, true)) add(place, "control characters or text that is not UTF-8", "lines of UTF-8");
    }
    void id(const std::string& place, const std::string& value) {
        if (value.empty() || value.size() > planBounds::idBytes || !isPrintableText(value, false) || value.find('/') != std::string::npos)
            add(place, shown(value),
                "an id of 1 to " + std::to_string(planBounds::idBytes) + " bytes without \"/\"");
    }
    void time(const std::string& place, const std::string& value, bool mayBeEmpty) {
        if (!(mayBeEmpty && value.empty()) && !isUtcTime(value)) add(place, shown(value), "a time such as 2026-11-25T09:00:00Z");
    }
    void money(const std::string& place, const Money& m) {
        if (m.minor < 0 || m.minor > planBounds::money_minor) add(place + "/amount", std::to_string(m.minor), "an amount that is not negative, up to ten thousand million");
        if (!isCurrencyCode(m.currency)) add(place + "/currency", shown(m.currency), "three capital letters (ISO 4217)");
    }
    void count(const std::string& place, std::size_t found, std::size_t allowed) {
        if (found > allowed) add(place, std::to_string(found) + " entries", "at most " + std::to_string(allowed));
    }
    void known(const std::string& place, const std::string& found, const std::vector<std::string>& ids, const char* what) {
        if (std::find(ids.begin(), ids.end(), found) != ids.end()) return;
        add(place, shown(found), std::string("the id of a ") + what + " of the plan");
        if (!problems.empty()) {
            const std::string near = nearestName(found, ids);
            if (!near.empty()) problems.back().facts["nearest"] = near;
        }
    }
    template <class List, class Of>
    void unique(const std::string& place, const List& list, Of idOf) {
        std::set<std::string> seen;
        std::size_t i = 0;
        for (const auto& item : list) {
            if (!seen.insert(idOf(item)).second) add(place + "/" + std::to_string(i) + "/id", idOf(item) + " a second time", "ids that differ");
            ++i;
        }
    }

private:
    std::size_t most_;
};

void checkSolid(Rules& r, const std::string& place, const Solid& s) {
    r.point(place + "/centre_mm", s.X_FG.translation());
    const Mat3 R = s.X_FG.linear();
    if (!R.allFinite() || (R * R.transpose() - Mat3::Identity()).cwiseAbs().maxCoeff() > 1e-6 || R.determinant() < 0)
        r.add(place + "/turn_deg", "a frame that is not a rotation", "a rotation");
    for (int i = 0; i < 3; ++i) r.size(place + "/size_mm/" + std::to_string(i), s.half[i]);
    r.size(place + "/radius_mm", s.radius);
    if (s.kind == SolidKind::hull) {
        if (!s.hull) r.add(place + "/hull", "no points", "at least four points");
        else {
            r.count(place + "/hull/points_mm", s.hull->points.size(), 10'000);
            for (std::size_t i = 0; i < s.hull->points.size() && i < 10'000; ++i) r.point(at(place, "hull/points_mm", i), s.hull->points[i]);
        }
    }
}

void checkSupport(Rules& r, const std::string& p, const SupportSpec& s, const std::vector<std::string>& supportIds, const Plan& plan) {
    r.id(p + "/id", s.id);
    r.line(p + "/name", s.name);
    const auto& kinds = supportKinds();
    const auto kind = std::find_if(kinds.begin(), kinds.end(), [&](const SupportKind& k) { return k.kind == s.kind; });
    if (kind == kinds.end()) {
        std::vector<std::string> names;
        for (const SupportKind& k : kinds) names.push_back(k.kind);
        std::string all;
        for (const std::string& n : names) all += (all.empty() ? "" : ", ") + n;
        r.add(p + "/kind", shown(s.kind), all);
    } else {
        for (const auto& [key, value] : s.dimensions) {
            const auto d = std::find_if(kind->dimensions.begin(), kind->dimensions.end(), [&, &k = key](const SupportDimension& x) { return x.key == k; });
            const bool angle = d != kind->dimensions.end() && d->angle;
            const std::string place = p + "/dimensions/" + key + (angle ? "_deg" : "_mm");
            if (d == kind->dimensions.end()) r.add(place, "a dimension that " + s.kind + " does not have", dimensionKeys(*kind), StorageError::Code::unknownKey);
            else if (angle) r.number(place, value, d->min, d->max, Scale::degree);
            else r.number(place, value, d->min, d->max, Scale::milli);
        }
    }
    for (const auto& [rail, size] : s.tubes) {
        r.id(p + "/tubes", rail);
        r.line(p + "/tubes/" + rail, size);
        const auto tube = parseTube(size);
        if (!tube) r.add(p + "/tubes/" + rail, shown(size), "a tube such as 7/8 in, NPS 3/4, EMT 1/2 or 22.2 mm");
    }
    for (const auto& [group, value] : s.settings) {
        r.id(p + "/settings", group);
        if (groupSlides(s, group)) r.length(p + "/settings/" + group + "_mm", value);
        else r.angle(p + "/settings/" + group + "_deg", value);
    }
    r.point(p + "/at_mm", s.at_m);
    r.angle(p + "/yaw_deg", s.yaw_rad);
    if (!s.carriedBy.empty()) {
        r.known(p + "/carried_by/support", s.carriedBy, supportIds, "support");
        // Following what carries what must end on the floor.
        std::string next = s.carriedBy;
        for (std::size_t steps = 0; !next.empty(); ++steps) {
            if (next == s.id || steps > plan.supports.size()) {
                r.add(p + "/carried_by/support", s.carriedBy, "a support that is not carried by this one");
                break;
            }
            const auto carrier = std::find_if(plan.supports.begin(), plan.supports.end(), [&](const SupportSpec& x) { return x.id == next; });
            next = carrier == plan.supports.end() ? std::string() : carrier->carriedBy;
        }
    }
    r.line(p + "/carried_by/group", s.carriedByGroup);

    r.count(p + "/groups", s.groups.size(), planBounds::groups);
    r.unique(p + "/groups", s.groups, [](const MovingGroup& g) { return g.id; });
    for (std::size_t i = 0; i < s.groups.size(); ++i) {
        const MovingGroup& g = s.groups[i];
        const std::string q = at(p, "groups", i);
        r.id(q + "/id", g.id);
        r.line(q + "/name", g.name);
        r.line(q + "/parent", g.parent);
        if (g.parent == g.id) r.add(q + "/parent", g.parent, "another group");
        r.point(q + "/pivot_mm", g.pivot);
        r.direction(q + "/axis", g.axis);
        const char* unit = g.slides ? "_mm" : "_deg";
        for (const auto& [key, value] : {std::pair{"min", g.min}, std::pair{"max", g.max}, std::pair{"value", g.value}}) {
            if (g.slides) r.length(q + "/" + key + unit, value);
            else r.angle(q + "/" + key + unit, value);
        }
        if (g.min > g.max) r.add(q + "/min" + unit, "more than the maximum", "at most the maximum");
    }
    r.count(p + "/attachments", s.attachments.size(), planBounds::attachments);
    std::map<AttachmentKind, std::size_t> index;
    std::set<std::string> attachmentIds;
    for (const Attachment& a : s.attachments) {
        const std::string q = at(p, attachmentList(a.kind), index[a.kind]++);
        r.id(q + "/id", a.id);
        if (!attachmentIds.insert(a.id).second) r.add(q + "/id", a.id + " a second time", "ids that differ among rails, edges, faces and cloths");
        r.line(q + "/name", a.name);
        r.line(q + "/group", a.group);
        r.point(q + (a.kind == AttachmentKind::face ? "/middle_mm" : "/from_mm"), a.a);
        r.point(q + "/to_mm", a.b);
        if (a.kind != AttachmentKind::face && a.length_m() < 1e-6) r.add(q + "/to_mm", "the same point as from_mm", "a line of some length");
        r.direction(q + (a.kind == AttachmentKind::face ? "/x_axis" : "/reference"), a.reference);
        r.direction(q + "/up", a.up);
        r.line(q + "/size", a.tubeAsTyped);
        r.figure(q + "/outside_mm", a.outside_m, 0, planBounds::length_m, Scale::milli);
        r.figure(q + "/thickness_mm", a.thickness_m, 0, planBounds::length_m, Scale::milli);
        r.size(q + "/depth_mm", a.depth_m);
        r.size(q + "/size_mm/0", a.sizeX_m);
        r.size(q + "/size_mm/1", a.sizeY_m);
        r.count(q + "/blocked", a.blocked.size(), planBounds::blocked);
        for (std::size_t b = 0; b < a.blocked.size() && b < planBounds::blocked; ++b) {
            const Blocked& x = a.blocked[b];
            const std::string qb = at(q, "blocked", b);
            r.length(qb + "/from_mm", x.from_m);
            r.length(qb + "/to_mm", x.to_m);
            r.angle(qb + "/around_from_deg", x.sectorFrom_rad);
            r.angle(qb + "/around_to_deg", x.sectorTo_rad);
            r.line(qb + "/why", x.why);
        }
        r.count(q + "/touches", a.solids.size(), planBounds::solids);
        for (const std::string& name : a.solids) r.line(q + "/touches", name);
    }
    r.count(p + "/landmarks", s.landmarks.size(), planBounds::landmarks);
    r.unique(p + "/landmarks", s.landmarks, [](const Landmark& l) { return l.id; });
    for (std::size_t i = 0; i < s.landmarks.size(); ++i) {
        const std::string q = at(p, "landmarks", i);
        r.id(q + "/id", s.landmarks[i].id);
        r.line(q + "/name", s.landmarks[i].name);
        r.line(q + "/group", s.landmarks[i].group);
        r.point(q + "/at_mm", s.landmarks[i].p_S);
    }
    r.count(p + "/solids", s.solids.size(), planBounds::solids);
    for (std::size_t i = 0; i < s.solids.size() && i < planBounds::solids; ++i) {
        const std::string q = at(p, "solids", i);
        r.line(q + "/name", s.solids[i].name);
        r.line(q + "/group", s.solids[i].group);
        checkSolid(r, q + "/solid", s.solids[i].solid);
    }
}

void checkPerson(Rules& r, const PersonSpec& person, const std::vector<std::string>& supportIds) {
    const std::string p = "person";
    r.line(p + "/name", person.name);
    if (person.body.percentile) r.number(p + "/body/percentile", *person.body.percentile, 1, 99, Scale::one);
    const auto& names = bodyDimensionNames();
    for (const auto& [name, value] : person.body.typed) {
        if (name == "weightkg") {
            r.number(p + "/body/weight_kg", value, 0.5, 500, Scale::one);
        } else if (std::find(names.begin(), names.end(), name) == names.end()) {
            r.add(p + "/body/dimensions_mm/" + name, "a name that is no body dimension", "names as in resources/plan_format.md", StorageError::Code::unknownKey);
            const std::string near = nearestName(name, names);
            if (!near.empty()) r.problems.back().facts["nearest"] = near;
        } else {
            r.number(p + "/body/dimensions_mm/" + name, value, 0.001, planBounds::bodyDimension_m, Scale::milli);
        }
    }
    if (!person.on.empty()) r.known(p + "/on", person.on, supportIds, "support");
    const auto& ranges = publishedRanges();
    std::vector<std::string> joints;
    for (const auto& [name, range] : ranges) joints.push_back(name);
    const auto joint = [&](const std::string& place, const std::string& name) {
        if (ranges.count(name) > 0) return;
        r.add(place, "a joint that is not known", "joint names as in resources/plan_format.md", StorageError::Code::unknownKey);
        const std::string near = nearestName(name, joints);
        if (!near.empty()) r.problems.back().facts["nearest"] = near;
    };
    for (const auto& [name, value] : person.posture) {
        joint(p + "/posture_deg/" + name, name);
        r.angle(p + "/posture_deg/" + name, value);
    }
    for (const auto& [name, range] : person.activeRanges) {
        const std::string q = p + "/active_ranges_deg/" + name;
        joint(q, name);
        r.angle(q + "/0", range.min);
        r.angle(q + "/1", range.max);
        if (range.min > range.max) r.add(q, "a least angle above the largest", "[least, largest]");
        r.line(q + "/2", range.source);
    }
    r.number(p + "/cushion_mm", person.cushion_m, 0, 1, Scale::milli);
}

void checkSite(Rules& r, const std::string& p, const SiteSpec& s, const std::vector<std::string>& supportIds) {
    r.id(p + "/id", s.id);
    r.line(p + "/name", s.name);
    if (!s.controlSite.empty()) {
        std::vector<std::string> ids;
        for (const auto& [id, name] : controlSites()) ids.push_back(id);
        if (std::find(ids.begin(), ids.end(), s.controlSite) == ids.end()) {
            r.add(p + "/control_site", shown(s.controlSite), "a control site as in resources/plan_format.md");
            const std::string near = nearestName(s.controlSite, ids);
            if (!near.empty()) r.problems.back().facts["nearest"] = near;
        }
    } else if (s.given == SiteGiven::fromPosture) {
        r.add(p + "/control_site", "nothing", "a control site, for a site taken from the posture", StorageError::Code::missingKey);
    }
    r.point(p + "/point_mm", s.point);
    r.direction(p + "/direction", s.direction);
    r.figure(p + "/movement_mm", s.movement_m, 0, 2, Scale::milli);
    r.number(p + "/tolerance_mm", s.tolerance_m, 0, 1, Scale::milli);
    r.number(p + "/angle_tolerance_deg", s.angleTolerance_rad, 0, 3.14159265358979323846, Scale::degree);
    r.figure(p + "/force_N", s.force_N, 0, planBounds::force_N, Scale::one);
    r.figure(p + "/spread_mm", s.spread_m, 0, 1, Scale::milli);
    if (!s.goesWithSupport.empty()) r.known(p + "/goes_with/support", s.goesWithSupport, supportIds, "support");
    r.line(p + "/goes_with/group", s.goesWithGroup);
}

void checkMountPart(Rules& r, const std::string& p, const MountPart& m, const Plan& plan, const std::vector<std::string>& partIds) {
    r.angle(p + "/clocking_deg", m.clocking_rad);
    const Part* part = plan.part(m.part);
    if (part == nullptr) {
        r.known(p + "/part", m.part, partIds, "part");
        return;
    }
    std::vector<std::string> names;
    for (const Element& e : part->elements) if (e.freedoms() > 0) names.push_back(e.name);
    for (const auto& [name, setting] : m.joints) {
        const std::string q = p + "/joints/" + name;
        const auto e = std::find_if(part->elements.begin(), part->elements.end(), [&, &n = name](const Element& x) { return x.freedoms() > 0 && x.name == n; });
        if (e == part->elements.end()) {
            std::string all;
            for (const std::string& n : names) all += (all.empty() ? "" : ", ") + n;
            r.add(q, "a joint that part " + m.part + " does not have", all.empty() ? "no joints" : all, StorageError::Code::unknownKey);
            continue;
        }
        if (static_cast<int>(setting.q.size()) != e->freedoms()) {
            r.add(q, std::to_string(setting.q.size()) + " values", std::to_string(e->freedoms()) + " values");
            continue;
        }
        const JointForm form = jointForm(*e);
        for (std::size_t i = 0; i < setting.q.size(); ++i) {
            if (form == JointForm::curvature) r.number(q + "/curvature_per_m/" + std::to_string(i / 2) + "/" + std::to_string(i % 2), setting.q[i], -planBounds::curvature_per_m, planBounds::curvature_per_m, Scale::one);
            else if (form == JointForm::slide) r.length(q + "/slide_mm", setting.q[i]);
            else if (form == JointForm::angle) r.angle(q + "/angle_deg", setting.q[i]);
            else r.angle(q + (i < 2 ? "/swing_deg/" + std::to_string(i) : std::string("/twist_deg")), setting.q[i]);
        }
    }
}

void checkOption(Rules& r, const std::string& p, const PlanOption& o, const Plan& plan, const std::vector<std::string>& supportIds,
                 const std::vector<std::string>& siteIds, const std::vector<std::string>& partIds) {
    r.id(p + "/id", o.id);
    r.line(p + "/name", o.name);
    r.text(p + "/notes", o.notes);
    r.count(p + "/mounts", o.mounts.size(), planBounds::mountsInOption);
    r.unique(p + "/mounts", o.mounts, [](const Mount& m) { return m.id; });
    for (std::size_t i = 0; i < o.mounts.size() && i < planBounds::mountsInOption; ++i) {
        const Mount& m = o.mounts[i];
        const std::string q = at(p, "mounts", i);
        r.id(q + "/id", m.id);
        r.line(q + "/name", m.name);
        if (!m.site.empty()) r.known(q + "/site", m.site, siteIds, "site");
        if (!m.support.empty()) r.known(q + "/fixed_to/support", m.support, supportIds, "support");
        if (!m.attachment.empty()) r.id(q + "/fixed_to/attachment", m.attachment);
        r.length(q + "/fixed_to/along_mm", m.place.along_m);
        r.angle(q + "/fixed_to/around_deg", m.place.around_rad);
        r.length(q + "/fixed_to/x_mm", m.place.x_m);
        r.length(q + "/fixed_to/y_mm", m.place.y_m);
        r.angle(q + "/fixed_to/yaw_deg", m.place.yaw_rad);
        r.count(q + "/parts", m.parts.size(), mostPartsInMount);
        for (std::size_t k = 0; k < m.parts.size() && k < mostPartsInMount; ++k) checkMountPart(r, at(q, "parts", k), m.parts[k], plan, partIds);
    }
    r.count(p + "/keep_outs", o.keepOuts.size(), planBounds::keepOutsInOption);
    r.unique(p + "/keep_outs", o.keepOuts, [](const KeepOut& k) { return k.id; });
    for (std::size_t i = 0; i < o.keepOuts.size() && i < planBounds::keepOutsInOption; ++i) {
        const KeepOut& k = o.keepOuts[i];
        const std::string q = at(p, "keep_outs", i);
        r.id(q + "/id", k.id);
        r.line(q + "/name", k.name);
        checkSolid(r, q + "/solid", k.solid);
        r.number(q + "/margin_mm", k.margin_m, 0, planBounds::length_m, Scale::milli);
        if (!k.support.empty()) r.known(q + "/goes_with/support", k.support, supportIds, "support");
        r.line(q + "/goes_with/group", k.group);
    }
}

}  // namespace

std::vector<StorageError> planProblems(const Plan& plan, std::size_t most) {
    Rules r(most);
    r.id("id", plan.id);
    r.line("title", plan.title);
    r.line("shows", plan.shows);
    r.text("notes", plan.notes);
    if (plan.revision < 0 || plan.revision > planBounds::revision) r.add("revision", std::to_string(plan.revision), "0 to " + std::to_string(planBounds::revision));
    r.time("made_utc", plan.made_utc, false);
    r.time("changed_utc", plan.changed_utc, false);
    if (!isCurrencyCode(plan.currency)) r.add("currency", shown(plan.currency), "three capital letters (ISO 4217)");
    r.number("limits/clearance_body_mm", plan.limits.clearanceBody_m, 0, 1, Scale::milli);
    r.number("limits/clearance_support_mm", plan.limits.clearanceSupport_m, 0, 1, Scale::milli);
    r.number("limits/clearance_mount_mm", plan.limits.clearanceMount_m, 0, 1, Scale::milli);
    r.number("limits/press_factor", plan.limits.pressFactor, 0, planBounds::factor, Scale::one);
    r.number("limits/knock_N", plan.limits.knock_N, 0, planBounds::force_N, Scale::one);
    r.number("limits/thread_turns", plan.limits.threadTurns, 0, planBounds::factor, Scale::one);
    r.number("limits/thread_factor", plan.limits.threadFactor, 0, planBounds::factor, Scale::one);

    r.count("supports", plan.supports.size(), planBounds::supports);
    r.unique("supports", plan.supports, [](const SupportSpec& s) { return s.id; });
    std::vector<std::string> supportIds, siteIds, partIds;
    for (const SupportSpec& s : plan.supports) supportIds.push_back(s.id);
    for (const SiteSpec& s : plan.sites) siteIds.push_back(s.id);
    for (const auto& part : plan.parts) partIds.push_back(part->id);
    for (std::size_t i = 0; i < plan.supports.size() && i < planBounds::supports; ++i) checkSupport(r, at("", "supports", i), plan.supports[i], supportIds, plan);
    if (plan.person) checkPerson(r, *plan.person, supportIds);
    r.count("sites", plan.sites.size(), planBounds::sites);
    r.unique("sites", plan.sites, [](const SiteSpec& s) { return s.id; });
    for (std::size_t i = 0; i < plan.sites.size() && i < planBounds::sites; ++i) checkSite(r, at("", "sites", i), plan.sites[i], supportIds);
    r.count("parts", plan.parts.size(), planBounds::parts);
    r.unique("parts", plan.parts, [](const std::shared_ptr<const Part>& part) { return part->id; });
    r.count("options", plan.options.size(), planBounds::options);
    r.unique("options", plan.options, [](const PlanOption& o) { return o.id; });
    for (std::size_t i = 0; i < plan.options.size() && i < planBounds::options; ++i)
        checkOption(r, at("", "options", i), plan.options[i], plan, supportIds, siteIds, partIds);

    r.count("extra_items", plan.extraItems.size(), planBounds::extraItems);
    r.unique("extra_items", plan.extraItems, [](const ExtraItem& e) { return e.id; });
    for (std::size_t i = 0; i < plan.extraItems.size(); ++i) {
        const ExtraItem& e = plan.extraItems[i];
        const std::string q = at("", "extra_items", i);
        r.id(q + "/id", e.id);
        r.line(q + "/name", e.name);
        r.text(q + "/notes", e.notes);
        if (e.count < 0 || e.count > planBounds::count) r.add(q + "/count", std::to_string(e.count), "0 to " + std::to_string(planBounds::count));
        if (e.price) r.money(q + "/price", *e.price);
    }
    r.count("accepted", plan.accepted.size(), planBounds::accepted);
    for (std::size_t i = 0; i < plan.accepted.size(); ++i) {
        const AcceptedFinding& a = plan.accepted[i];
        const std::string q = at("", "accepted", i);
        r.line(q + "/option", a.option);
        r.line(q + "/finding", a.finding);
        r.text(q + "/note", a.note);
        r.line(q + "/who", a.who);
        r.time(q + "/when_utc", a.when_utc, true);
    }
    r.count("history", plan.history.size(), planBounds::history);
    for (std::size_t i = 0; i < plan.history.size(); ++i) {
        const HistoryEntry& h = plan.history[i];
        const std::string q = at("", "history", i);
        if (h.revision < 0 || h.revision > planBounds::revision) r.add(q + "/revision", std::to_string(h.revision), "0 to " + std::to_string(planBounds::revision));
        r.time(q + "/when_utc", h.when_utc, true);
        r.line(q + "/who", h.who);
        r.text(q + "/what", h.what);
    }
    for (StorageError& p : r.problems) p = printable(std::move(p));
    return std::move(r.problems);
}

std::string nearestName(const std::string& found, const std::vector<std::string>& known) {
    std::string best;
    std::size_t least = std::string::npos;
    if (found.size() > 200) return best;
    for (const std::string& name : known) {
        if (name.size() > 200) continue;
        // Levenshtein distance, one row at a time.
        std::vector<std::size_t> row(name.size() + 1);
        for (std::size_t j = 0; j <= name.size(); ++j) row[j] = j;
        for (std::size_t i = 1; i <= found.size(); ++i) {
            std::size_t diagonal = row[0];
            row[0] = i;
            for (std::size_t j = 1; j <= name.size(); ++j) {
                const std::size_t above = row[j];
                row[j] = std::min({above + 1, row[j - 1] + 1, diagonal + (found[i - 1] == name[j - 1] ? 0u : 1u)});
                diagonal = above;
            }
        }
        if (row.back() < least) {
            least = row.back();
            best = name;
        }
    }
    return least <= std::max<std::size_t>(2, found.size() / 2) ? best : std::string();
}

bool isPrintableText(const std::string& text, bool severalLines) {
    for (std::size_t i = 0; i < text.size();) {
        const auto c = static_cast<unsigned char>(text[i]);
        if (c < 0x80) {
            if (c == 0x7f || (c < 0x20 && !(severalLines && (c == '\n' || c == '\t' || c == '\r')))) return false;
            ++i;
            continue;
        }
        // UTF-8 as RFC 3629: no overlong forms, no surrogates, up to U+10FFFF.
        const int more = c >= 0xc2 && c <= 0xdf ? 1 : c >= 0xe0 && c <= 0xef ? 2 : c >= 0xf0 && c <= 0xf4 ? 3 : 0;
        if (more == 0 || i + static_cast<std::size_t>(more) >= text.size()) return false;
        unsigned point = c & (more == 1 ? 0x1fu : more == 2 ? 0x0fu : 0x07u);
        for (int k = 1; k <= more; ++k) {
            const auto d = static_cast<unsigned char>(text[i + static_cast<std::size_t>(k)]);
            if ((d & 0xc0) != 0x80) return false;
            point = point << 6 | (d & 0x3fu);
        }
        if ((more == 2 && point < 0x800) || (more == 3 && (point < 0x10000 || point > 0x10ffff)) || (point >= 0xd800 && point <= 0xdfff) || (point >= 0x80 && point < 0xa0)) return false;
        i += static_cast<std::size_t>(more) + 1;
    }
    return true;
}

bool isUtcTime(const std::string& text) {
    static const std::string form = "dddd-dd-ddTdd:dd:ddZ";
    if (text.size() != form.size()) return false;
    for (std::size_t i = 0; i < form.size(); ++i)
        if (form[i] == 'd' ? text[i] < '0' || text[i] > '9' : text[i] != form[i]) return false;
    const auto two = [&](std::size_t i) { return (text[i] - '0') * 10 + (text[i + 1] - '0'); };
    const int year = two(0) * 100 + two(2), month = two(5), day = two(8);
    if (month < 1 || month > 12 || two(11) > 23 || two(14) > 59 || two(17) > 60) return false;
    static const int days[] = {31, 28, 31, 30, 31, 30, 31, 31, 30, 31, 30, 31};
    const bool leap = (year % 4 == 0 && year % 100 != 0) || year % 400 == 0;
    return day >= 1 && day <= days[month - 1] + (month == 2 && leap ? 1 : 0);
}

bool isCurrencyCode(const std::string& text) {
    return text.size() == 3 && std::all_of(text.begin(), text.end(), [](char c) { return c >= 'A' && c <= 'Z'; });
}

}  // namespace hither
