#include "core/situation/support_typed.h"

#include <algorithm>
#include <cmath>
#include <set>

#include "core/geometry/distance.h"
#include "core/units/quantity.h"
#include "core/units/thread.h"

namespace hither {

namespace {

constexpr double leastLength_m = 0.001;   // a rail, edge or cloth line shorter than a millimetre is a slip of the hand
constexpr double farthest_m = 20;         // nothing of a placement is that far from its support
constexpr double onIt_m = 0.001;          // an attachment lies on a solid when it is this near to its surface
constexpr double plate_m = 0.010;         // thickness of a face's own plate when no edge says otherwise; assumed

bool inReach(const Vec3& p) { return p.allFinite() && p.cwiseAbs().maxCoeff() <= farthest_m; }

std::string shownPoint(const Vec3& p) {
    if (!p.allFinite()) return "not a number";
    std::string text = "[";
    for (int i = 0; i < 3; ++i) text += (i ? ", " : "") + printLength(p[i], UnitSystem::metric, 1);
    return text + "]";
}

const char* listName(AttachmentKind kind) {
    switch (kind) {
        case AttachmentKind::rail: return "rails/";
        case AttachmentKind::edge: return "edges/";
        case AttachmentKind::face: return "faces/";
        case AttachmentKind::cloth: return "cloths/";
    }
    return "";
}

std::string groupNames(const Support& support) {
    std::string text;
    for (const MovingGroup& g : support.groups) text += (text.empty() ? "" : ", ") + g.id;
    return text.empty() ? "nothing: this support has no moving groups" : text;
}

/// Adds problems under one place of the support.
struct Reporter {
    const SupportSpec& spec;
    std::vector<SupportProblem>& problems;
    std::string place;
    bool fine = true;
    void operator()(const std::string& key, const std::string& found, const std::string& allowed) {
        fine = false;
        problems.push_back({spec.id, place + (key.empty() ? "" : "/" + key), found, allowed});
    }
};

bool knownGroup(const Support& support, const std::string& group) { return group.empty() || support.group(group) != nullptr; }

double distanceTo(const Solid& solid, const Vec3& p) { return distance(Solid::sphere(p, 1e-5), solid).distance + 1e-5; }

bool validSolid(const Solid& s) {
    if (!s.X_FG.matrix().allFinite() || !s.half.allFinite() || !std::isfinite(s.radius)) return false;
    if (s.X_FG.translation().cwiseAbs().maxCoeff() > farthest_m) return false;
    switch (s.kind) {
        case SolidKind::sphere: return s.radius > 0 && s.radius <= farthest_m;
        case SolidKind::capsule: return s.radius > 0 && s.half.z() >= 0 && s.radius <= farthest_m && s.half.z() <= farthest_m;
        case SolidKind::cylinder: return s.radius > 0 && s.half.z() > 0 && s.radius <= farthest_m && s.half.z() <= farthest_m;
        case SolidKind::box: return s.half.minCoeff() > 0 && s.half.maxCoeff() <= farthest_m;
        case SolidKind::roundedBox: return s.half.minCoeff() > 0 && s.half.maxCoeff() <= farthest_m && s.radius >= 0 && s.radius <= s.half.minCoeff();
        case SolidKind::hull:
            return s.hull && s.hull->points.size() >= 4 && std::all_of(s.hull->points.begin(), s.hull->points.end(), inReach);
    }
    return false;
}

void checkBlocked(const Attachment& a, Reporter& report) {
    for (std::size_t i = 0; i < a.blocked.size(); ++i) {
        const Blocked& b = a.blocked[i];
        const std::string key = "blocked/" + std::to_string(i);
        const double slack = 1e-6;
        if (!(b.from_m >= -slack && b.to_m <= a.length_m() + slack && b.from_m < b.to_m))
            report(key, shownValue(b.from_m, false) + " to " + shownValue(b.to_m, false), "from below to, both within 0 mm to " + shownValue(a.length_m(), false));
        if (!b.wholeTurn && a.kind != AttachmentKind::rail) report(key, "a sector", "only a rail has sectors round it");
        if (!b.wholeTurn && !(b.sectorFrom_rad < b.sectorTo_rad && b.sectorTo_rad - b.sectorFrom_rad <= 2 * pi + slack))
            report(key, shownValue(b.sectorFrom_rad, true) + " to " + shownValue(b.sectorTo_rad, true), "from below to, at most one turn");
    }
}

void checkLine(const Attachment& a, Reporter& report) {
    if (!inReach(a.a)) report("from_mm", shownPoint(a.a), "three numbers within 20 m");
    if (!inReach(a.b)) report("to_mm", shownPoint(a.b), "three numbers within 20 m");
    if (report.fine && a.length_m() < leastLength_m) report("to_mm", "the same point as from_mm", "another point, at least 1 mm away");
}

/// A direction that has a part square to the line (or plane normal) it goes with.
void checkDirection(const char* key, const Vec3& direction, const Vec3& line, const char* allowed, Reporter& report) {
    if (!direction.allFinite() || direction.norm() < 1e-9) report(key, "no direction", "three numbers that are not all 0");
    else if (line.norm() > 0 && direction.normalized().cross(line.normalized()).norm() < 1e-3) report(key, "a direction along the line itself", allowed);
}

bool lies(const Attachment& a, const Solid& solid) {
    switch (a.kind) {
        case AttachmentKind::rail:  // its line runs inside
            return distanceTo(solid, a.a) < onIt_m && distanceTo(solid, a.b) < onIt_m && distanceTo(solid, 0.5 * (a.a + a.b)) < onIt_m;
        case AttachmentKind::face: return std::abs(distanceTo(solid, a.a)) < onIt_m;
        case AttachmentKind::edge:
        case AttachmentKind::cloth:
            return std::abs(distanceTo(solid, a.a)) < onIt_m && std::abs(distanceTo(solid, a.b)) < onIt_m && std::abs(distanceTo(solid, 0.5 * (a.a + a.b))) < onIt_m;
    }
    return false;
}

Solid plate(const Attachment& a, double thickness_m) {
    if (a.kind == AttachmentKind::face)
        return Solid::box(frameFromZ(a.a - 0.5 * thickness_m * a.up, a.up, a.reference), 0.5 * Vec3(a.sizeX_m, a.sizeY_m, thickness_m));
    const Vec3 x = (a.b - a.a).normalized(), inward = a.up.cross(x);
    return Solid::box(frameFromZ(0.5 * (a.a + a.b) + 0.5 * a.depth_m * inward - 0.5 * thickness_m * a.up, a.up, x), 0.5 * Vec3(a.length_m(), a.depth_m, thickness_m));
}

bool inPlane(const Attachment& edge, const Attachment& face) {
    return edge.kind == AttachmentKind::edge && edge.group == face.group && edge.thickness_m.known() && edge.up.dot(face.up) > 0.999 &&
           std::abs((edge.a - face.a).dot(face.up)) < onIt_m && std::abs((edge.b - face.a).dot(face.up)) < onIt_m;
}

void readRail(const SupportSpec& spec, Attachment& a, Reporter& report) {
    checkLine(a, report);
    if (report.fine) checkDirection("reference", a.reference, a.b - a.a, "a direction across the rail", report);
    const auto typedTube = spec.tubes.find(a.id);
    if (typedTube != spec.tubes.end()) { a.tubeAsTyped = typedTube->second; a.outside_m = {}; }
    if (!a.outside_m.known() && !a.tubeAsTyped.empty()) {
        const Parsed<double> outside_m = tubeOutside_m(a.tubeAsTyped);
        if (!outside_m) report("size", a.tubeAsTyped, outside_m.reason);
        else a.outside_m = {*outside_m.value, {a.outside_m.basis.kind == BasisKind::unknown ? BasisKind::measured : a.outside_m.basis.kind, a.outside_m.basis.source}};
    } else if (a.outside_m.known() && !(*a.outside_m.value >= 0.003 && *a.outside_m.value <= 0.150)) {
        report("size", shownValue(*a.outside_m.value, false), "3 mm to 150 mm");
    }
    if (report.fine) {
        const Vec3 x = (a.b - a.a).normalized();
        a.reference = (a.reference - a.reference.dot(x) * x).normalized();
    }
}

void readEdge(Attachment& a, Reporter& report) {
    checkLine(a, report);
    if (report.fine) checkDirection("up", a.up, a.b - a.a, "a direction across the edge", report);
    if (a.thickness_m.known() && !(*a.thickness_m.value > 0 && *a.thickness_m.value <= 0.5)) report("thickness_mm", shownValue(*a.thickness_m.value, false), "above 0 mm, at most 500 mm");
    if (!(a.depth_m > 0 && a.depth_m <= farthest_m)) report("depth_mm", shownValue(a.depth_m, false), "above 0 mm: how far in the plate is free above and below");
    if (report.fine) {
        const Vec3 x = (a.b - a.a).normalized();
        a.up = (a.up - a.up.dot(x) * x).normalized();
    }
}

void readFace(Attachment& a, Reporter& report) {
    if (!inReach(a.a)) report("middle_mm", shownPoint(a.a), "three numbers within 20 m");
    checkDirection("up", a.up, Vec3::Zero(), "", report);
    if (report.fine) checkDirection("x_axis", a.reference, a.up, "a direction in the face, not along up", report);
    if (!(a.sizeX_m > 0 && a.sizeX_m <= farthest_m && a.sizeY_m > 0 && a.sizeY_m <= farthest_m))
        report("size_mm", shownValue(a.sizeX_m, false) + " by " + shownValue(a.sizeY_m, false), "two lengths above 0 mm");
    if (report.fine) {
        a.b = a.a;
        a.up.normalize();
        a.reference = (a.reference - a.reference.dot(a.up) * a.up).normalized();
    }
}

void readCloth(Attachment& a, Reporter& report) {
    checkLine(a, report);
    if (report.fine) checkDirection("up", a.up, a.b - a.a, "a direction across the line", report);
    if (a.thickness_m.known() && !(*a.thickness_m.value > 0 && *a.thickness_m.value <= 0.1)) report("thickness_mm", shownValue(*a.thickness_m.value, false), "above 0 mm, at most 100 mm");
    if (report.fine) a.up.normalize();
}

}  // namespace

std::string shownValue(double value, bool angle) {
    if (!std::isfinite(value)) return "not a number";
    const double shown = angle ? degrees(value) : 1000 * value;
    const int digits = std::abs(shown - std::round(shown)) < 0.05 ? 0 : 1;
    return angle ? printAngle(value, digits) : printLength(value, UnitSystem::metric, digits);
}
std::string shownRange(double min, double max, bool angle) { return shownValue(min, angle) + " to " + shownValue(max, angle); }

Parsed<double> tubeOutside_m(const std::string& text) {
    const Parsed<TubeSize> size = parseTube(text);
    if (!size) return Parsed<double>::refused("a tube such as 7/8 in, NPS 3/4, EMT 1/2 or 22.2 mm (" + size.reason + ")");
    if (!(size.value->outside_m >= 0.003 && size.value->outside_m <= 0.150)) return Parsed<double>::refused("3 mm to 150 mm outside");
    return Parsed<double>::of(size.value->outside_m);
}

Solid railSolid(const Attachment& rail) {
    const double radius = 0.5 * rail.outside_m.value.value_or(0.02);
    if (rail.section == Section::round) return Solid::capsule(rail.a, rail.b, radius);
    return Solid::box(frameFromZ(0.5 * (rail.a + rail.b), rail.reference, rail.b - rail.a), Vec3(0.5 * rail.length_m(), radius, radius));
}

void checkTubes(const SupportSpec& spec, const Support& support, std::vector<SupportProblem>& problems) {
    for (const auto& [id, text] : spec.tubes) {
        // A typed rail takes its size when it is read, and says there what is wrong with it.
        if (std::any_of(spec.attachments.begin(), spec.attachments.end(), [&i = id](const Attachment& a) { return a.kind == AttachmentKind::rail && a.id == i; })) continue;
        const Attachment* rail = support.attachment(id);
        if (!rail || rail->kind != AttachmentKind::rail) {
            std::string rails;
            for (const Attachment& a : support.attachments)
                if (a.kind == AttachmentKind::rail) rails += (rails.empty() ? "" : ", ") + a.id;
            problems.push_back({spec.id, "tubes/" + id, "no rail of that name", rails.empty() ? "nothing: this support has no rails" : rails});
            continue;
        }
        const Parsed<double> outside_m = tubeOutside_m(text);
        if (!outside_m) problems.push_back({spec.id, "tubes/" + id, text.empty() ? "nothing" : text, outside_m.reason});
    }
}

void addTypedGroups(const SupportSpec& spec, Support& support, std::vector<SupportProblem>& problems) {
    std::set<const MovingGroup*> ring;  // typed groups whose parents go round without end
    for (const MovingGroup& typed : spec.groups) {
        const MovingGroup* g = &typed;
        for (std::size_t steps = 0; g && steps <= spec.groups.size(); ++steps) {
            const auto parent = std::find_if(spec.groups.begin(), spec.groups.end(), [&](const MovingGroup& p) { return !p.id.empty() && p.id == g->parent; });
            g = parent == spec.groups.end() ? nullptr : &*parent;
        }
        if (g) ring.insert(&typed);
    }
    for (std::size_t i = 0; i < spec.groups.size(); ++i) {
        MovingGroup g = spec.groups[i];
        Reporter report{spec, problems, "groups/" + (g.id.empty() ? std::to_string(i) : g.id)};
        if (g.id.empty()) report("id", "nothing", "a word of its own");
        else if (support.group(g.id) || std::count_if(spec.groups.begin(), spec.groups.end(), [&](const MovingGroup& o) { return o.id == g.id; }) > 1) report("id", g.id, "a word that no other group of this support has");
        const bool parentTyped = std::any_of(spec.groups.begin(), spec.groups.end(), [&](const MovingGroup& p) { return p.id == g.parent; });
        if (!g.parent.empty() && !parentTyped && !support.group(g.parent)) report("parent", g.parent, groupNames(support));
        if (ring.count(&spec.groups[i])) report("parent", g.parent, "a group that does not itself go with " + g.id);
        if (!inReach(g.pivot)) report("pivot_mm", shownPoint(g.pivot), "three numbers within 20 m");
        if (!g.axis.allFinite() || g.axis.norm() < 1e-9) report("axis", "no direction", "three numbers that are not all 0");
        const double most = g.slides ? farthest_m : 2 * pi;
        if (!(g.min >= -most - 1e-9 && g.max <= most + 1e-9 && g.min <= g.max))
            report(g.slides ? "min_mm" : "min_deg", shownRange(g.min, g.max, !g.slides), "min not above max, within " + shownRange(-most, most, !g.slides));
        if (!report.fine) continue;
        g.axis.normalize();
        g.value = std::clamp(std::isfinite(g.value) ? g.value : 0.0, g.min, g.max);
        if (g.name.empty()) g.name = g.id;
        support.groups.push_back(std::move(g));
    }
}

void addTypedSolids(const SupportSpec& spec, Support& support, std::vector<SupportProblem>& problems) {
    for (std::size_t i = 0; i < spec.solids.size(); ++i) {
        const SupportSolid& s = spec.solids[i];
        Reporter report{spec, problems, "solids/" + (s.name.empty() ? std::to_string(i) : s.name)};
        if (s.name.empty()) report("name", "nothing", "a name of its own");
        else if (std::any_of(support.solids.begin(), support.solids.end(), [&](const SupportSolid& o) { return o.name == s.name; }))
            report("name", s.name, "a name that no other solid of this support has");
        if (!knownGroup(support, s.group)) report("group", s.group, groupNames(support));
        if (!validSolid(s.solid)) report("solid", "a size that is not above 0, or a place that is not a number", "sizes above 0 mm, within 20 m");
        if (report.fine) support.solids.push_back(s);
    }
}

void addTypedAttachments(const SupportSpec& spec, Support& support, std::vector<SupportProblem>& problems) {
    std::vector<Attachment> read;
    std::set<std::string> ids;
    for (const Attachment& a : support.attachments) ids.insert(a.id);
    for (std::size_t i = 0; i < spec.attachments.size(); ++i) {
        Attachment a = spec.attachments[i];
        Reporter report{spec, problems, listName(a.kind) + (a.id.empty() ? std::to_string(i) : a.id)};
        if (a.kind == AttachmentKind::rail) readRail(spec, a, report);
        else if (a.kind == AttachmentKind::edge) readEdge(a, report);
        else if (a.kind == AttachmentKind::face) readFace(a, report);
        else readCloth(a, report);
        if (a.id.empty()) report("id", "nothing", "a word of its own");
        else if (!ids.insert(a.id).second) report("id", a.id, "a word that no other rail, edge, face or cloth of this support has");
        if (!knownGroup(support, a.group)) report("group", a.group, groupNames(support));
        for (const std::string& name : a.solids)
            if (std::none_of(support.solids.begin(), support.solids.end(), [&](const SupportSolid& s) { return s.name == name; }))
                report("touches", name, "the name of a solid of this support");
        if (report.fine) checkBlocked(a, report);
        if (a.name.empty()) a.name = a.id;
        if (report.fine) read.push_back(std::move(a));
    }
    // Solids for those that name none and lie on none: tubes and edges first, since an edge says how thick its plate is.
    const auto wants = [&](const Attachment& a) {
        return a.solids.empty() && std::none_of(support.solids.begin(), support.solids.end(), [&](const SupportSolid& s) { return s.group == a.group && lies(a, s.solid); });
    };
    const auto give = [&](const Attachment& a, const Solid& solid) {
        std::string name = a.id;
        while (std::any_of(support.solids.begin(), support.solids.end(), [&](const SupportSolid& s) { return s.name == name; })) name += "_own";
        support.solids.push_back({name, solid, a.group});
    };
    for (const Attachment& a : read)
        if (a.kind == AttachmentKind::rail && wants(a)) give(a, railSolid(a));
    for (const Attachment& a : read) {
        if (a.kind != AttachmentKind::face || !wants(a)) continue;
        const auto edge = std::find_if(read.begin(), read.end(), [&](const Attachment& e) { return inPlane(e, a); });
        give(a, plate(a, edge == read.end() ? plate_m : *edge->thickness_m.value));
    }
    for (const Attachment& a : read)
        if (a.kind == AttachmentKind::edge && wants(a)) give(a, plate(a, a.thickness_m.value.value_or(plate_m)));
    for (Attachment& a : read) {
        if (a.solids.empty())
            for (const SupportSolid& s : support.solids)
                if (s.group == a.group && lies(a, s.solid)) a.solids.push_back(s.name);
        support.attachments.push_back(std::move(a));
    }
}

void addTypedLandmarks(const SupportSpec& spec, Support& support, std::vector<SupportProblem>& problems) {
    for (std::size_t i = 0; i < spec.landmarks.size(); ++i) {
        Landmark l = spec.landmarks[i];
        Reporter report{spec, problems, "landmarks/" + (l.id.empty() ? std::to_string(i) : l.id)};
        if (l.id.empty()) report("id", "nothing", "a word of its own");
        else if (std::any_of(support.landmarks.begin(), support.landmarks.end(), [&](const Landmark& o) { return o.id == l.id; }))
            report("id", l.id, "a word that no other landmark of this support has");
        if (!inReach(l.p_S)) report("at_mm", shownPoint(l.p_S), "three numbers within 20 m");
        if (!knownGroup(support, l.group)) report("group", l.group, groupNames(support));
        if (l.name.empty()) l.name = l.id;
        if (report.fine) support.landmarks.push_back(std::move(l));
    }
}

void applySettings(const SupportSpec& spec, Support& support, std::vector<SupportProblem>& problems) {
    for (const auto& [id, value] : spec.settings) {
        const auto g = std::find_if(support.groups.begin(), support.groups.end(), [&i = id](const MovingGroup& o) { return o.id == i; });
        if (g == support.groups.end()) {
            problems.push_back({spec.id, "settings/" + id, "no moving group of that name", groupNames(support)});
            continue;
        }
        const double slack = 1e-9;
        if (!(value >= g->min - slack && value <= g->max + slack))
            problems.push_back({spec.id, "settings/" + id + (g->slides ? "_mm" : "_deg"), shownValue(value, !g->slides), shownRange(g->min, g->max, !g->slides)});
        else
            g->value = std::clamp(value, g->min, g->max);
    }
}

}  // namespace hither
