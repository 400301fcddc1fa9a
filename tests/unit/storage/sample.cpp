#include "sample.h"

#include <cstdlib>
#include <filesystem>
#include <fstream>
#include <sstream>

#include "core/storage/plan_units.h"

namespace hither::test {

const Catalogue& shippedParts() {
    static const Catalogue catalogue = [] {
        Catalogue c;
        c.addFolder(HITHER_SOURCE_DIR "/resources/parts");
        return c;
    }();
    return catalogue;
}

PlanRead readPlan(const std::string& json) {
    PlanJsonContext context;
    context.catalogue = &shippedParts();
    context.newId = [] { return std::string("00000000-0000-4000-8000-000000000001"); };
    context.now_utc = [] { return std::string("2026-11-25T09:00:00Z"); };
    context.file = "plan.json";
    return planFromJson(json, context);
}

std::string told(const std::vector<StorageError>& problems) {
    std::string out;
    for (const StorageError& p : problems) {
        out += std::string(word(p.code)) + " at " + p.place;
        for (const auto& [key, value] : p.facts) out += "; " + key + ": " + value;
        out += "\n";
    }
    return out;
}

const char* const smallest = R"json({
 "hither_plan": 1,
 "supports": [{"kind": "table"}],
 "sites": [{"point_mm": [100, 0, 800], "direction": [0, 0, -1]}],
 "options": [{"mounts": [{"fixed_to": {"attachment": "near_edge"}, "parts": ["desk-clamp-50", "gooseneck-300"]}]}]
})json";

const char* const everyKey = R"json({
 "hither_plan": 1, "id": "plan-7", "title": "All that a plan can say", "shows": "every key", "notes": "two\nlines",
 "revision": 4, "made_utc": "2026-05-01T08:00:00Z", "changed_utc": "2026-05-02T08:30:00Z", "display": "inch", "currency": "USD",
 "limits": {"clearance_body_mm": 12, "clearance_support_mm": 6, "clearance_mount_mm": 7.5, "press_factor": 4, "knock_N": 15, "thread_turns": 3.5, "thread_factor": 5},
 "supports": [
  {"id": "chair", "kind": "chair-manual", "name": "The blue chair", "dimensions": {"seat_width_mm": 430, "recline_range_deg": 40},
   "tubes": {"seat_rail_left": "1 in"}, "settings": {"recline_deg": 12.5}, "at_mm": [0, 0, 0], "yaw_deg": 0},
  {"id": "shelf", "kind": "custom", "name": "A shelf of its own", "at_mm": [500, -20.5, 0], "yaw_deg": 90, "carried_by": {"support": "chair", "group": "recline"},
   "settings": {"lift_mm": 30, "flap_deg": 5},
   "groups": [{"id": "flap", "name": "Flap", "pivot_mm": [0, 0, 700], "axis": [0, 1, 0], "kind": "turn", "min_deg": 0, "max_deg": 90, "value_deg": 10},
              {"id": "lift", "name": "Lift", "parent": "flap", "axis": [0, 0, 1], "kind": "slide", "min_mm": 0, "max_mm": 100, "value_mm": 20}],
   "rails": [{"id": "bar", "name": "Bar", "group": "flap", "from_mm": [0, 0, 700], "to_mm": [0, 400, 700], "size": "7/8 in", "section": "square",
              "reference": [1, 0, 0], "basis": {"kind": "measured", "source": "KL, 2026-05-01"}, "touches": ["tube"],
              "blocked": [{"from_mm": 0, "to_mm": 50, "why": "weld"}, {"from_mm": 100, "to_mm": 120, "around_from_deg": -30, "around_to_deg": 30, "whole_turn": true}]},
             {"id": "stub", "from_mm": [0, 0, 0], "to_mm": [0, 0, 300], "outside_mm": {"value": 25.4, "basis": "published", "source": "a list"}}],
   "edges": [{"id": "front", "from_mm": [0, 0, 720], "to_mm": [0, 300, 720], "up": [0, 0, 1], "thickness_mm": {"value": 18, "basis": "measured"}, "depth_mm": 60, "group": "flap", "touches": ["block"],
              "blocked": [{"why": "hinge"}]}],
   "faces": [{"id": "top", "middle_mm": [100, 150, 720], "x_axis": [0, 1, 0], "up": [0, 0, 1], "size_mm": [200, 300], "group": "flap", "touches": ["block", "tube"]}],
   "cloths": [{"id": "cover", "from_mm": [0, 0, 600], "to_mm": [0, 200, 600], "up": [0, 0, 1], "thickness_mm": 4, "group": "flap", "touches": ["block"], "blocked": [{"from_mm": 10, "to_mm": 20}]}],
   "attachment_order": ["top", "bar", "front", "cover", "stub"],
   "landmarks": [{"id": "corner", "name": "Front corner", "at_mm": [0, 0, 720], "group": "flap"}],
   "solids": [{"name": "tube", "group": "flap", "solid": {"capsule": {"from_mm": [0, 0, 700], "to_mm": [0, 400, 700], "radius_mm": 11.1125}}},
              {"name": "block", "solid": {"box": {"centre_mm": [0, 0, 100], "size_mm": [50, 60, 70], "turn_deg": [0, 0, 30]}}}]}],
 "person": {"name": "K.", "body": {"table": "woman", "percentile": 40, "dimensions_mm": {"stature": 1612}, "weight_kg": 58.5}, "on": "chair", "lying": "on_left",
   "posture_deg": {"elbow_flexion_right": 85}, "active_ranges_deg": {"elbow_flexion_right": [20, 110], "neck_rotation": [-40, 35, "physiotherapist"]}, "cushion_mm": 45},
 "sites": [
  {"id": "elbow", "name": "Right elbow", "control_site": "elbow_right", "given": "from_posture", "point_mm": [0, 5, 0], "direction": [0, -1, 0], "direction_typed": false,
   "movement_mm": 40, "tolerance_mm": 12, "angle_tolerance_deg": 25, "force_N": {"value": 4, "basis": "measured", "source": "KL"}, "spread_mm": 8},
  {"id": "typed", "name": "Typed", "given": "typed", "point_mm": [300, 200, 900], "direction": [0.6, 0, -0.8], "goes_with": {"support": "chair", "group": "recline"}},
  {"id": "picked", "name": "Picked", "given": "on_body", "point_mm": [10, 40, -120], "direction": [0, 1, 0], "segment": "forearm_left"}],
 "options": [
  {"id": "a", "name": "First", "notes": "note", "mounts": [
    {"id": "m", "name": "Mount", "site": "elbow", "fixed_to": {"support": "shelf", "attachment": "bar", "along_mm": 210, "around_deg": 45, "side": "below", "x_mm": 1, "y_mm": 2, "yaw_deg": 3, "kept": true},
     "parts": [{"part": "screw-clamp-7-8-in", "clocking_deg": 15, "clocking_kept": true},
               {"part": "arm-single-lock-200", "joints": {"ball1": {"swing_deg": [10, -20], "twist_deg": 30, "kept": true}, "elbow": {"angle_deg": 35, "kept": true}}},
               {"part": "post-telescopic-220-380", "reversed": true, "joints": {"post": {"slide_mm": 40, "kept": true}}},
               {"part": "gooseneck-300", "joints": {"neck": {"curvature_per_m": [[1, 2], [-3, 0.5], [0, 0]], "kept": true}}}]},
    {"id": "n", "name": "Not fixed yet", "site": "", "fixed_to": null, "parts": []}],
   "keep_outs": [{"id": "k", "name": "Transfer side", "solid": {"sphere": {"centre_mm": [0, 600, 500], "radius_mm": 150}}, "margin_mm": 20, "goes_with": {"support": "chair", "group": "recline"}},
                 {"id": "h", "name": "Wedge", "solid": {"hull": {"points_mm": [[0, 0, 0], [100, 0, 0], [0, 100, 0], [0, 0, 100], [100, 100, 0]]}}, "margin_mm": 0}]},
  {"id": "b", "name": "Second", "mounts": []}],
 "extra_items": [{"id": "tape", "name": "Tape", "count": 2, "price": {"amount": "3.50", "currency": "USD"}, "notes": "white"}],
 "accepted": [{"option": "a", "finding": "reach:m", "note": "tried", "who": "KL", "when_utc": "2026-05-02T09:00:00Z"}],
 "history": [{"revision": 3, "when_utc": "2026-05-01T08:00:00Z", "who": "KL", "what": "made"}]
})json";

Plan everyKeyPlan() {
    PlanRead read = readPlan(everyKey);
    if (!read.plan) throw std::runtime_error(told(read.problems));
    return *read.plan;
}

namespace {

/// Draws values; every bit of a double may be set.
struct Draw {
    std::mt19937_64& random;
    double real(double low, double high) { return std::uniform_real_distribution<double>(low, high)(random); }
    int whole(int low, int high) { return std::uniform_int_distribution<int>(low, high)(random); }
    bool flag() { return whole(0, 1) == 1; }
    double length() { return flag() ? real(-3, 3) : whole(-3000, 3000) / 1000.0; }
    double angle() { return flag() ? real(-7, 7) : radians(whole(-360, 360) * 0.5); }
    Vec3 point() { return {length(), length(), length()}; }
    Vec3 direction() { return Vec3(real(-1, 1), real(-1, 1), real(0.1, 1)); }
    std::string text() {
        static const char* const pieces[] = {"clamp", " ", "ö", "3/4 in", "\"", "\\", "<b>", "→", "'", "plan", ";", "0"};
        std::string out;
        for (int i = whole(0, 6); i > 0; --i) out += pieces[whole(0, 11)];
        return out;
    }
    Basis basis() { return {static_cast<BasisKind>(whole(0, 2)), text()}; }
    Figure figure(double high) { return flag() ? Figure{real(0, high), basis()} : Figure{std::nullopt, {BasisKind::unknown, text()}}; }
    Solid solid() {
        switch (whole(0, 4)) {
            case 0: return Solid::sphere(point(), real(0.001, 1));
            case 1: return Solid::capsule(point(), point() + Vec3(0, 0, 7), real(0.001, 1));
            case 2: return Solid::cylinder(point(), point() + Vec3(0, 7, 0), real(0.001, 1));
            case 3: return Solid::roundedBox(pose(rotationFromRollPitchYaw(angle(), angle(), angle()), point()), Vec3(real(0.1, 1), real(0.1, 1), real(0.1, 1)), real(0.001, 0.1));
            default: {
                std::vector<Vec3> cloud;
                for (int i = 0; i < 12; ++i) cloud.push_back(point() * 0.5);
                if (const auto hull = makeHull(cloud)) return Solid::convexHull(hull, pose(rotationFromRollPitchYaw(angle(), 0, angle()), point()));
                return Solid::sphere(point(), 0.1);
            }
        }
    }
};

Attachment randomAttachment(Draw& d, int i) {
    Attachment a;
    a.kind = static_cast<AttachmentKind>(d.whole(0, 3));
    a.id = "at" + std::to_string(i);
    a.name = d.text();
    a.a = d.point();
    if (a.kind == AttachmentKind::face) {
        a.sizeX_m = d.real(0, 1);
        a.sizeY_m = d.real(0, 1);
        a.reference = d.direction();
        a.up = d.direction();
    } else {
        a.b = a.a + Vec3(d.real(0.1, 1), 0, 0);
        for (int k = d.whole(0, 2); k > 0; --k) a.blocked.push_back({d.real(0, 1), d.real(0, 1), d.angle(), d.angle(), d.flag(), d.text()});
    }
    if (a.kind == AttachmentKind::rail) {
        a.reference = d.direction();
        a.section = d.flag() ? Section::round : Section::square;
        a.tubeAsTyped = d.flag() ? "7/8 in" : "";
        a.outside_m = d.figure(0.1);
        if (d.flag() && !a.tubeAsTyped.empty()) a.outside_m = {parseTube(a.tubeAsTyped).value->outside_m, d.basis()};
    } else if (a.kind != AttachmentKind::face) {
        a.up = d.direction();
        a.thickness_m = d.figure(0.1);
        if (a.kind == AttachmentKind::edge) a.depth_m = d.real(0, 1);
    }
    for (int k = d.whole(0, 2); k > 0; --k) a.solids.push_back("solid" + std::to_string(k));
    return a;
}

}  // namespace

Plan randomPlan(std::mt19937_64& random) {
    Draw d{random};
    Plan p;
    p.id = "plan-" + std::to_string(d.whole(0, 999999));
    p.title = d.text();
    p.shows = d.text();
    p.notes = d.text() + "\n" + d.text();
    p.revision = d.whole(0, 1000);
    p.made_utc = "2026-01-02T03:04:05Z";
    p.changed_utc = "2026-02-28T23:59:59Z";
    p.display = d.flag() ? UnitSystem::metric : UnitSystem::inch;
    p.limits = {d.real(0, 1), d.real(0, 1), d.real(0, 1), d.real(0, 10), d.real(0, 100), d.real(0, 10), d.real(0, 10)};
    for (int i = 0, n = d.whole(1, 3); i < n; ++i) {
        SupportSpec s;
        s.id = "s" + std::to_string(i);
        const SupportKind& kind = supportKinds()[static_cast<std::size_t>(d.whole(0, static_cast<int>(supportKinds().size()) - 1))];
        s.kind = kind.kind;
        s.name = d.text();
        for (const SupportDimension& x : kind.dimensions) if (d.flag()) s.dimensions[x.key] = d.real(x.min, x.max);
        if (d.flag()) s.tubes["rail"] = "NPS 3/4";
        s.at_m = d.point();
        s.yaw_rad = d.angle();
        if (i > 0 && d.flag()) { s.carriedBy = "s0"; s.carriedByGroup = d.text(); }
        for (int k = d.whole(0, 2); k > 0; --k) {
            MovingGroup g;
            g.id = "g" + std::to_string(k);
            g.name = d.text();
            g.pivot = d.point();
            g.axis = d.direction();
            g.slides = d.flag();
            g.min = d.real(-1, 0);
            g.max = d.real(0, 1);
            g.value = d.real(g.min, g.max);
            s.settings[g.id] = d.real(g.min, g.max);
            s.groups.push_back(g);
        }
        for (int k = d.whole(0, 4); k > 0; --k) s.attachments.push_back(randomAttachment(d, k));
        for (int k = d.whole(0, 2); k > 0; --k) s.landmarks.push_back({"l" + std::to_string(k), d.text(), d.point(), d.text()});
        for (int k = d.whole(0, 2); k > 0; --k) s.solids.push_back({d.text(), d.solid(), d.text()});
        p.supports.push_back(std::move(s));
    }
    if (d.flag()) {
        PersonSpec person;
        person.name = d.text();
        person.body.table = static_cast<BodyTable>(d.whole(0, 2));
        if (d.flag()) person.body.percentile = d.real(1, 99);
        person.body.typed = {{"stature", d.real(1, 2)}, {"weightkg", d.real(20, 100)}};
        person.on = "s0";
        person.lying = static_cast<PersonSpec::Lying>(d.whole(0, 2));
        person.posture["elbow_flexion_left"] = d.angle();
        person.activeRanges["knee_flexion_left"] = {d.real(-1, 0), d.real(0, 2), d.text()};
        person.cushion_m = d.real(0, 0.2);
        p.person = person;
    }
    for (int i = 0, n = d.whole(0, 3); i < n; ++i) {
        SiteSpec s;
        s.id = "site" + std::to_string(i);
        s.name = d.text();
        s.controlSite = d.flag() ? "elbow_right" : "head_left";
        s.given = static_cast<SiteGiven>(d.whole(0, 2));
        s.point = d.point();
        s.direction = d.direction();
        s.directionTyped = d.flag();
        if (d.flag()) s.segment = {Segment::forearm, Side::right};
        s.movement_m = d.figure(0.1);
        s.tolerance_m = d.real(0, 0.1);
        s.angleTolerance_rad = d.real(0, 1);
        s.force_N = d.figure(10);
        s.spread_m = d.figure(0.1);
        if (d.flag()) { s.goesWithSupport = "s0"; s.goesWithGroup = d.text(); }
        p.sites.push_back(std::move(s));
    }
    for (const char* id : {"screw-clamp-7-8-in", "arm-single-lock-200", "gooseneck-300", "post-telescopic-220-380", "switch-round-medium"})
        for (const auto& part : shippedParts().parts()) if (part->id == id) p.parts.push_back(part);
    for (int i = 0, n = d.whole(0, 2); i < n; ++i) {
        PlanOption o;
        o.id = "o" + std::to_string(i);
        o.name = d.text();
        o.notes = d.text();
        for (int k = d.whole(0, 3); k > 0; --k) {
            Mount m;
            m.id = "m" + std::to_string(k);
            m.name = d.text();
            if (d.flag() && !p.sites.empty()) m.site = p.sites.front().id;
            m.support = "s0";
            m.attachment = "at1";
            m.place = {d.length(), d.angle(), d.flag(), d.length(), d.length(), d.angle()};
            m.placeKept = d.flag();
            for (int n2 = d.whole(0, 5); n2 > 0; --n2) {
                MountPart part;
                const Part& what = *p.parts[static_cast<std::size_t>(d.whole(0, static_cast<int>(p.parts.size()) - 1))];
                part.part = what.id;
                part.reversed = d.flag();
                part.clocking_rad = d.angle();
                part.clockingKept = d.flag();
                for (const Element& e : what.elements) {
                    if (e.freedoms() == 0 || d.flag()) continue;
                    JointSetting setting;
                    for (int c = 0; c < e.freedoms(); ++c) setting.q.push_back(d.angle());
                    setting.kept = d.flag();
                    part.joints[e.name] = setting;
                }
                m.parts.push_back(std::move(part));
            }
            o.mounts.push_back(std::move(m));
        }
        for (int k = d.whole(0, 2); k > 0; --k) o.keepOuts.push_back({"k" + std::to_string(k), d.text(), d.solid(), d.real(0, 0.1), d.flag() ? "s0" : "", ""});
        p.options.push_back(std::move(o));
    }
    if (d.flag()) p.extraItems.push_back({"e", d.text(), d.whole(0, 9), d.flag() ? std::optional<Money>(Money{d.whole(0, 99999), "EUR"}) : std::nullopt, d.text()});
    if (d.flag()) p.accepted.push_back({"o0", d.text(), d.text(), d.text(), ""});
    if (d.flag()) p.history.push_back({d.whole(0, 9), "2026-01-02T03:04:05Z", d.text(), d.text()});
    return p;
}

Folder::Folder() {
    std::string name = (std::filesystem::temp_directory_path() / "hither plans XXXXXX").string();
    if (mkdtemp(name.data()) == nullptr) throw std::runtime_error("no folder for the test");
    path_ = name;
}
Folder::~Folder() {
    std::error_code ignored;
    std::filesystem::remove_all(path_, ignored);
}

std::string bytesOf(const std::string& path) {
    std::ifstream in(path, std::ios::binary);
    std::ostringstream out;
    out << in.rdbuf();
    return out.str();
}
void writeBytes(const std::string& path, const std::string& bytes) { std::ofstream(path, std::ios::binary) << bytes; }

}  // namespace hither::test
