#include <catch2/catch.hpp>
#include <algorithm>
#include <set>

#include "core/geometry/distance.h"
#include "core/units/quantity.h"
#include "core/units/thread.h"
#include "tests/unit/situation/support_samples.h"

using namespace support_samples;

namespace {

Support make(const SupportSpec& spec) {
    const SupportMade made = makeSupport(spec);
    for (const SupportProblem& p : made.problems) UNSCOPED_INFO(p.key << ": " << p.found << " (" << p.allowed << ")");
    REQUIRE(made.problems.empty());
    REQUIRE(made.support);
    return *made.support;
}

Eigen::AlignedBox3d boundsOf(const Support& support) {
    Eigen::AlignedBox3d all;
    for (const SupportSolid& s : support.solids) all.extend(s.solid.bounds(Pose::Identity()));
    return all;
}

std::string twinOf(const std::string& id) {
    const std::string left = "_left";
    if (id.size() < left.size() || id.compare(id.size() - left.size(), left.size(), left) != 0) return {};
    return id.substr(0, id.size() - left.size()) + "_right";
}

Vec3 mirrored(const Vec3& p) { return {p.x(), -p.y(), p.z()}; }
bool same(const Vec3& a, const Vec3& b) { return (a - b).norm() < 1e-12; }

Pose mirrored(const Pose& X) {
    const Mat3 M = Vec3(1, -1, 1).asDiagonal();
    return pose(M * X.linear() * M, M * X.translation());
}

}  // namespace

TEST_CASE("every kind is made at its standard, its least and its most, and all of it is finite", "[support]") {
    for (const SupportSpec& spec : samples()) {
        INFO(described(spec));
        const Support support = make(spec);
        std::set<std::string> names, ids, marks;
        for (const SupportSolid& s : support.solids) {
            INFO("solid " << s.name);
            CHECK(names.insert(s.name).second);
            CHECK((s.group.empty() || support.group(s.group)));
            CHECK(s.solid.X_FG.matrix().allFinite());
            CHECK(std::abs(s.solid.X_FG.linear().determinant() - 1) < 1e-9);
            if (s.solid.kind == SolidKind::box) CHECK(s.solid.half.minCoeff() > 0.001);
            else CHECK(s.solid.radius > 0.001);
            CHECK(s.solid.bounds(Pose::Identity()).min().z() > -1e-9);  // nothing under the floor
        }
        for (const Attachment& a : support.attachments) {
            INFO("attachment " << a.id);
            CHECK(ids.insert(a.id).second);
            CHECK(!a.name.empty());
            CHECK((a.group.empty() || support.group(a.group)));
            if (a.kind != AttachmentKind::face) CHECK(a.length_m() > 0.01);
            else CHECK(std::min(a.sizeX_m, a.sizeY_m) > 0.01);
            for (const Blocked& b : a.blocked) {
                CHECK(b.from_m >= 0);
                CHECK(b.from_m < b.to_m);
                CHECK(b.to_m <= a.length_m() + 1e-12);
                CHECK(!b.why.empty());
            }
        }
        for (const Landmark& l : support.landmarks) {
            INFO("landmark " << l.id);
            CHECK(marks.insert(l.id).second);
            CHECK(l.p_S.allFinite());
            CHECK((l.group.empty() || support.group(l.group)));
        }
        if (support.kind != "custom") CHECK(support.landmarks.size() >= 5);
    }
}

TEST_CASE("every attachment lies on the solid that it lists, everywhere along it and round it", "[support]") {
    std::size_t looked = 0;
    for (const SupportSpec& spec : samples()) {
        const Support support = make(spec);
        for (const Attachment& a : support.attachments) {
            std::vector<Placement> places;
            for (double share : {0.0, 0.3, 1.0}) {
                Placement p;
                p.along_m = share * a.length_m();
                if (a.kind == AttachmentKind::rail)
                    // A square tube's flats are a quarter turn apart.
                    for (double around : {0.0, pi / 2, -pi / 2, pi}) { p.around_rad = around; places.push_back(p); }
                else if (a.kind == AttachmentKind::edge)
                    for (bool below : {false, true}) { p.fromBelow = below; places.push_back(p); }
                else if (a.kind == AttachmentKind::face) {
                    p.x_m = (share - 0.5) * a.sizeX_m;
                    for (double y : {-0.5, 0.5}) { p.y_m = y * a.sizeY_m; places.push_back(p); }
                } else places.push_back(p);
            }
            for (const Placement& p : places) {
                const Pose X = gripFrame(a, p);
                const double d = distanceToListed(support, a, X.translation());
                if (!(std::abs(d) < 1e-9)) { INFO(described(spec) << ": " << a.id << " along " << p.along_m); CHECK(d == Approx(0).margin(1e-9)); }
                // A little along z is outside and a little against z inside: z points away from the material.
                // (At the very end of an edge or border "inside" is on the border; looked at in the middle.)
                if (p.along_m > 0 && p.along_m < a.length_m()) {
                    const double out = distanceToListed(support, a, X * Vec3(0, 0, 1e-4));
                    if (!(std::abs(out - 1e-4) < 1e-9)) { INFO(described(spec) << ": " << a.id); CHECK(out == Approx(1e-4).margin(1e-9)); }
                }
                ++looked;
            }
        }
    }
    CHECK(looked > 20000);
}

TEST_CASE("up x unit(b - a) of every edge points into its plate, from above and from below", "[support]") {
    std::set<std::string> edges;
    for (const SupportSpec& spec : samples()) {
        const Support support = make(spec);
        for (const Attachment& a : support.attachments) {
            if (a.kind != AttachmentKind::edge) continue;
            edges.insert(support.kind + "/" + a.id);
            const Vec3 inward = a.up.cross((a.b - a.a).normalized());
            const double step = 0.002, down = 0.001;  // a little in, and a little under the upper surface
            INFO(described(spec) << ": " << a.id);
            for (double share : {0.05, 0.5, 0.95}) {
                const Vec3 onLine = a.a + share * (a.b - a.a) - down * a.up;
                CHECK(distanceToListed(support, a, onLine + step * inward) < 0);
                CHECK(distanceToListed(support, a, onLine - step * inward) > 0);
                // As far in as the edge says it is free there is plate still, or its other side exactly.
                CHECK(distanceToListed(support, a, onLine + a.depth_m * inward) < 1e-9);
            }
            Placement below;
            below.fromBelow = true;
            const Pose X = gripFrame(a, below);
            CHECK(same(X.linear().col(2), -a.up));
            CHECK(same(X.linear().col(2).cross(X.linear().col(0)), inward));
        }
    }
    CHECK(edges.size() == 3 * 4 + 1 + 4 + 4 + 1);  // chairs: pad and foot plate edges; bed; tray; table; pushchair
}

TEST_CASE("left and right twins mirror each other: rails, sectors, edges, faces, cloth, landmarks, solids", "[support]") {
    for (const SupportSpec& spec : samples()) {
        const Support support = make(spec);
        INFO(described(spec));
        for (const Attachment& left : support.attachments) {
            if (twinOf(left.id).empty()) continue;
            INFO(left.id);
            const Attachment* right = support.attachment(twinOf(left.id));
            REQUIRE(right);
            CHECK(right->kind == left.kind);
            CHECK(right->group == left.group);
            CHECK(right->outside_m == left.outside_m);
            const bool swapped = left.kind == AttachmentKind::edge;  // so that both point into their plates
            CHECK(same(right->a, mirrored(swapped ? left.b : left.a)));
            CHECK(same(right->b, mirrored(swapped ? left.a : left.b)));
            if (left.kind == AttachmentKind::rail) CHECK(same(right->reference, mirrored(left.reference)));
            else CHECK(same(right->up, mirrored(left.up)));
            if (left.id == "armrest_tube_left" && spec.kind == "chair-power") continue;  // one of the two carries the joystick
            REQUIRE(right->blocked.size() == left.blocked.size());
            for (std::size_t i = 0; i < left.blocked.size(); ++i) {
                const Blocked &l = left.blocked[i], &r = right->blocked[i];
                CHECK(r.why == l.why);
                CHECK(r.wholeTurn == l.wholeTurn);
                CHECK(r.from_m == Approx(swapped ? left.length_m() - l.to_m : l.from_m).margin(1e-12));
                CHECK(r.to_m == Approx(swapped ? left.length_m() - l.from_m : l.to_m).margin(1e-12));
                if (l.wholeTurn) continue;
                // The directions that bound the sector mirror.
                Placement lp, rp;
                lp.around_rad = l.sectorFrom_rad;
                rp.around_rad = r.sectorTo_rad;
                CHECK(same(gripFrame(*right, rp).linear().col(2), mirrored(Vec3(gripFrame(left, lp).linear().col(2)))));
            }
        }
        for (const Landmark& left : support.landmarks) {
            if (twinOf(left.id).empty()) continue;
            INFO(left.id);
            const auto right = std::find_if(support.landmarks.begin(), support.landmarks.end(), [&](const Landmark& l) { return l.id == twinOf(left.id); });
            REQUIRE(right != support.landmarks.end());
            CHECK(same(right->p_S, mirrored(left.p_S)));
            CHECK(right->group == left.group);
        }
        for (const SupportSolid& left : support.solids) {
            if (twinOf(left.name).empty()) continue;
            INFO(left.name);
            const auto right = std::find_if(support.solids.begin(), support.solids.end(), [&](const SupportSolid& s) { return s.name == twinOf(left.name); });
            REQUIRE(right != support.solids.end());
            CHECK(right->group == left.group);
            // The mirrored solid and the twin hold the same points.
            Solid image = left.solid;
            image.X_FG = mirrored(left.solid.X_FG);
            const Eigen::AlignedBox3d b = image.bounds(Pose::Identity());
            for (int i = 0; i < 27; ++i) {
                const Vec3 share(0.5 * (i % 3), 0.5 * (i / 3 % 3), 0.5 * (i / 9));
                const Vec3 p = b.min() + share.cwiseProduct(b.sizes()) + Vec3(0.003, 0.001, -0.002);
                CHECK(signedDistance(right->solid, p) == Approx(signedDistance(image, p)).margin(1e-12));
            }
        }
    }
}

TEST_CASE("a standard chair stays within the largest size of ISO 7193: 1200 mm long, 700 mm wide", "[support]") {
    // ISO 7193 (maximum overall dimensions of wheelchairs), quoted in the project's reference values, section 3.
    for (const char* kind : {"chair-manual", "chair-tilt", "chair-power"}) {
        const Eigen::AlignedBox3d bounds = boundsOf(make(standard(kind)));
        INFO(kind << ": " << bounds.sizes().transpose());
        CHECK(bounds.sizes().x() <= 1.200);
        CHECK(bounds.sizes().y() <= 0.700);
        CHECK(bounds.sizes().x() > 0.800);  // and is as large as chairs are: an empty one would pass the limits
        CHECK(bounds.sizes().y() > 0.500);
    }
}

TEST_CASE("the openings of the bed's side rails are under 120 mm", "[support]") {
    // FDA, Hospital Bed System Dimensional and Assessment Guidance to Reduce Entrapment, 10 March 2006,
    // Table 3: zone 1 (within the rail) and zone 3 (rail to mattress) less than 120 mm.
    for (const SupportSpec& spec : samples()) {
        if (spec.kind != "bed") continue;
        const Support bed = make(spec);
        INFO(described(spec));
        std::vector<double> levels;
        for (const Attachment& a : bed.attachments)
            if (a.id.rfind("side_rail_", 0) == 0 && a.id.find("_post_") == std::string::npos && !twinOf(a.id).empty()) levels.push_back(a.a.z());
        std::sort(levels.begin(), levels.end());
        REQUIRE(levels.size() >= 2);
        for (std::size_t i = 1; i < levels.size(); ++i) CHECK(levels[i] - levels[i - 1] < 0.120);
        const double width = spec.dimensions.count("mattress_width") ? spec.dimensions.at("mattress_width") : 0.900;
        const Attachment& top = *bed.attachment("side_rail_top_left");
        CHECK(top.a.y() - 0.5 * *top.outside_m.value - 0.5 * width < 0.120);
        CHECK(levels.front() < bed.resting.hip_S.z());  // the bottom bar is below the mattress's top: no opening under the rail
    }
}

TEST_CASE("tubes change by text and their solids with them", "[support]") {
    SupportSpec spec = standard("chair-manual");
    spec.tubes["back_cane_left"] = "NPS 3/4";
    const Support chair = make(spec);
    const Attachment& cane = *chair.attachment("back_cane_left");
    // ASME B36.10: NPS 3/4 is 1.050 in = 26.67 mm outside; a 7/8 in tube is 22.225 mm.
    CHECK(*cane.outside_m.value == Approx(0.02667).margin(5e-5));
    CHECK(cane.outside_m.basis.kind == BasisKind::measured);
    CHECK(cane.tubeAsTyped == "NPS 3/4");
    CHECK(*chair.attachment("back_cane_right")->outside_m.value == Approx(0.022225));
    CHECK(chair.attachment("back_cane_right")->outside_m.basis.kind == BasisKind::assumed);
    CHECK(std::abs(distanceToListed(chair, cane, gripFrame(cane, {0.1, 0.4, false, 0, 0, 0}).translation())) < 1e-12);

    spec.tubes = {{"back_cane_left", "round"}, {"no_such_rail", "1 in"}, {"push_handle_left", "2 m"}};
    const SupportMade made = makeSupport(spec);
    CHECK(!made.support);
    std::set<std::string> keys;
    for (const SupportProblem& p : made.problems) keys.insert(p.key);
    CHECK(keys == std::set<std::string>{"tubes/back_cane_left", "tubes/no_such_rail", "tubes/push_handle_left"});
}

TEST_CASE("what is typed wrongly is a problem that names key, found and allowed", "[support]") {
    SupportSpec spec = standard("chair-manual");
    spec.dimensions = {{"seat_width", 2.0}, {"seat_depth", std::nan("")}, {"wheels", 4}, {"back_angle", radians(95)}};
    SupportMade made = makeSupport(spec);
    CHECK(!made.support);
    REQUIRE(made.problems.size() == 4);
    CHECK(made.problems[0].key == "dimensions/back_angle_deg");
    CHECK(made.problems[0].found == "95°");
    CHECK(made.problems[0].allowed == "0° to 30°");
    CHECK(made.problems[1].found == "not a number");
    CHECK(made.problems[2].key == "dimensions/seat_width_mm");
    CHECK(made.problems[2].found == "2000 mm");
    CHECK(made.problems[2].allowed == "250 mm to 600 mm");
    CHECK(made.problems[3].allowed.find("seat_width_mm") != std::string::npos);

    spec = standard("sofa");
    made = makeSupport(spec);
    REQUIRE(made.problems.size() == 1);
    CHECK(made.problems[0].key == "kind");
    CHECK(made.problems[0].allowed.find("chair-tilt") != std::string::npos);

    spec = standard("bed");
    spec.settings = {{"back", radians(71)}, {"roof", 0.1}};
    made = makeSupport(spec);
    REQUIRE(made.problems.size() == 2);
    CHECK(made.problems[0].key == "settings/back_deg");
    CHECK(made.problems[1].key == "settings/roof");
    spec.settings = {{"back", radians(70)}};  // exactly at the limit
    CHECK(make(spec).group("back")->value == Approx(radians(70)));
}

TEST_CASE("the basis is measured only when every dimension is typed", "[support]") {
    for (const SupportKind& kind : supportKinds()) {
        if (kind.dimensions.empty()) continue;
        SupportSpec spec = standard(kind.kind);
        CHECK(make(spec).basis == BasisKind::assumed);
        for (const SupportDimension& d : kind.dimensions) spec.dimensions[d.key] = d.standard;
        CHECK(make(spec).basis == BasisKind::measured);
        spec.dimensions.erase(kind.dimensions.front().key);
        CHECK(make(spec).basis == BasisKind::assumed);
    }
}

TEST_CASE("every dimension moves something, and its standard lies within its range", "[support]") {
    for (const SupportKind& kind : supportKinds()) {
        const Support usual = make(standard(kind.kind));
        for (const SupportDimension& d : kind.dimensions) {
            INFO(kind.kind << " " << d.key);
            CHECK(d.min < d.max);
            CHECK(d.min <= d.standard);
            CHECK(d.standard <= d.max);
            CHECK(!d.means.empty());
            SupportSpec spec = standard(kind.kind);
            spec.dimensions[d.key] = d.standard == d.max ? d.min : d.max;
            const Support other = make(spec);
            bool moved = other.solids.size() != usual.solids.size() || other.groups.size() != usual.groups.size();
            for (std::size_t i = 0; !moved && i < usual.solids.size(); ++i)
                moved = !usual.solids[i].solid.X_FG.isApprox(other.solids[i].solid.X_FG) || usual.solids[i].solid.half != other.solids[i].solid.half || usual.solids[i].solid.radius != other.solids[i].solid.radius;
            for (std::size_t i = 0; !moved && i < usual.groups.size(); ++i) moved = usual.groups[i].max != other.groups[i].max || usual.groups[i].pivot != other.groups[i].pivot;
            CHECK(moved);
        }
    }
}

TEST_CASE("every rail of a standard support has room for a clamp that touches nothing else", "[support]") {
    // A tube clamp 30 mm wide with a jaw 8 mm thick: typical figures of the trade (common practice, no source).
    const double width = 0.030, wall = 0.008;
    std::size_t rails = 0;
    for (const SupportKind& kind : supportKinds()) {
        const Support support = make(standard(kind.kind));
        for (const Attachment& a : support.attachments) {
            if (a.kind != AttachmentKind::rail) continue;
            INFO(kind.kind << " " << a.id);
            ++rails;
            bool room = false;
            for (double along = 0.5 * width; !room && along <= a.length_m() - 0.5 * width; along += 0.005) {
                const double from = along - 0.5 * width, to = along + 0.5 * width;
                const bool blocked = std::any_of(a.blocked.begin(), a.blocked.end(), [&](const Blocked& b) { return b.wholeTurn && b.from_m < to && b.to_m > from; });
                if (blocked) continue;
                const Vec3 x = (a.b - a.a).normalized();
                const Solid jaw = Solid::cylinder(a.a + from * x, a.a + to * x, 0.5 * *a.outside_m.value + wall);
                room = std::all_of(support.solids.begin(), support.solids.end(), [&](const SupportSolid& s) {
                    return std::find(a.solids.begin(), a.solids.end(), s.name) != a.solids.end() || distance(jaw, s.solid).distance > 0;
                });
            }
            CHECK(room);
        }
    }
    CHECK(rails > 60);
}
