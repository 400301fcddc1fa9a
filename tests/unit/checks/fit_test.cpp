#include <catch2/catch.hpp>

#include "fixture.h"

using namespace hither;
using namespace hither::test;

namespace {

MaterialTable aluminium() {
    MaterialTable table;
    // 6061-T6: yield 276 MPa, Philpot 2017 Table D.1b.
    table.rows["aluminium"] = {"aluminium", "aluminium 6061-T6", 69e9, 26e9, 276e6, "Philpot 2017 Table D.1b"};
    return table;
}

}  // namespace

TEST_CASE("a tube within the clamp's range fits, outside it misses, at the ends it fits", "[fit]") {
    Bench bench;
    bench.addMount("m", 0.5, {"clamp", "post", "button"});
    const auto verdictAt = [&](Figure size) {
        bench.support().attachments[0].outside_m = size;
        const std::vector<Finding> all = checkFit(bench.setup, {});
        const Finding* f = find(all, "fit.tube:");
        REQUIRE(f);
        return f->verdict;
    };
    CHECK(verdictAt(measured(0.0254)) == Verdict::meets);
    CHECK(verdictAt(measured(0.038)) == Verdict::meets);
    CHECK(verdictAt(measured(0.013)) == Verdict::meets);
    CHECK(verdictAt(measured(0.0381)) == Verdict::misses);
    CHECK(verdictAt(measured(0.0129)) == Verdict::misses);
    CHECK(verdictAt(Figure{}) == Verdict::unknown);
}

TEST_CASE("a value and the limit it misses never print alike", "[sentences]") {
    Bench bench;
    bench.addMount("m", 0.5, {"clamp", "post", "button"});
    bench.support().attachments[0].outside_m = measured(0.01299);
    const std::vector<Finding> all = checkFit(bench.setup, {});
    CHECK(sentence(*find(all, "fit.tube:"), UnitSystem::metric) == "The clamp does not close on the rail: the tube is 12.99 mm, it takes 13.00 mm to 38.0 mm.");
    CHECK(sentence(*find(all, "fit.tube:"), UnitSystem::inch).find("0.511 in") != std::string::npos);
    bench.parts["clamp"].ratedLoad_kg = measured(0.1399);
    bench.rebuild();
    CHECK(sentence(*find(checkFit(bench.setup, {}), "fit.rated_load:m/0"), UnitSystem::metric) == "The clamp carries 140.0 g but is rated for 139.9 g.");
}

TEST_CASE("what is known of both sides decides the basis of a fit", "[fit]") {
    Bench bench;
    Attachment sheet;
    sheet.id = "sheet";
    sheet.kind = AttachmentKind::cloth;
    sheet.b = Vec3(1, 0, 0);
    sheet.thickness_m = measured(0.002);
    bench.support().attachments.push_back(sheet);
    ClothGrip clip;
    clip.max_m = assumed(0.004);
    bench.parts["clamp"].grips.push_back(clip);
    bench.addMount("m", 0.5, {"clamp", "post", "button"}, "sheet");
    const std::vector<Finding> all = checkFit(bench.setup, {});
    CHECK(find(all, "fit.cloth:")->verdict == Verdict::meets);
    CHECK(find(all, "fit.cloth:")->basis == BasisKind::assumed);
}

TEST_CASE("a round-only clamp misses a square rail", "[fit]") {
    Bench bench;
    bench.support().attachments[0].section = Section::square;
    bench.addMount("m", 0.5, {"clamp", "post", "button"});
    const std::vector<Finding> all = checkFit(bench.setup, {});
    REQUIRE(find(all, "fit.section:"));
    CHECK(find(all, "fit.section:")->verdict == Verdict::misses);
}

TEST_CASE("the grip must lie wholly on the rail, clear of blocked stretches and of other grips", "[fit]") {
    Bench bench;
    bench.addMount("m", 0.015, {"clamp", "post", "button"});
    CHECK(find(checkFit(bench.setup, {}), "fit.span:")->verdict == Verdict::meets);  // exactly at the end
    bench.setup.mounts[0].mount.place.along_m = 0.010;
    bench.rebuild();
    const std::vector<Finding> over = checkFit(bench.setup, {});
    CHECK(find(over, "fit.span:")->verdict == Verdict::misses);
    CHECK(*find(over, "fit.span:")->value == Approx(0.005));

    bench.setup.mounts[0].mount.place.along_m = 0.5;
    Blocked weld;
    weld.from_m = 0.51;
    weld.to_m = 0.60;
    weld.why = "a weld";
    bench.support().attachments[0].blocked = {weld};
    bench.rebuild();
    const std::vector<Finding> blocked = checkFit(bench.setup, {});
    REQUIRE(find(blocked, "fit.blocked:"));
    CHECK(*find(blocked, "fit.blocked:")->value == Approx(0.005));
    CHECK(sentence(*find(blocked, "fit.blocked:"), UnitSystem::metric).find("a weld") != std::string::npos);

    // A sector that does not reach round to the grip's side leaves it free.
    bench.support().attachments[0].blocked[0].wholeTurn = false;
    bench.support().attachments[0].blocked[0].sectorFrom_rad = radians(90);
    bench.support().attachments[0].blocked[0].sectorTo_rad = radians(270);
    bench.rebuild();
    CHECK_FALSE(find(checkFit(bench.setup, {}), "fit.blocked:"));
    bench.support().attachments[0].blocked[0].sectorFrom_rad = radians(-30);
    bench.support().attachments[0].blocked[0].sectorTo_rad = radians(30);
    bench.rebuild();
    CHECK(find(checkFit(bench.setup, {}), "fit.blocked:"));
    bench.support().attachments[0].blocked.clear();

    bench.addMount("n", 0.53, {"clamp", "post", "button"});
    CHECK(find(checkFit(bench.setup, {}), "fit.neighbour:")->verdict == Verdict::meets);  // 30 mm apart, 30 mm wide
    bench.setup.mounts[1].mount.place.along_m = 0.529;
    bench.rebuild();
    CHECK(find(checkFit(bench.setup, {}), "fit.neighbour:")->verdict == Verdict::misses);
}

TEST_CASE("a screw that does not mate is named and the cheapest adapter is offered", "[fit]") {
    Bench bench;
    bench.addMount("m", 0.5, {"clamp", "post38", "button"});
    Catalogue catalogue;
    for (const auto& [id, price] : {std::pair{"dear-bushing", 900}, {"cheap-bushing", 250}}) {
        Part bushing;
        bushing.id = bushing.name = id;
        bushing.kind = PartKind::adapter;
        Port socket;
        socket.thread = parseThread("1/4-20 UNC").value;
        socket.length = measured(0.008);
        Port stud;
        stud.gender = Gender::male;
        stud.thread = parseThread("3/8-16").value;
        stud.length = measured(0.008);
        bushing.bases = {socket};
        bushing.outlet = stud;
        bushing.price = Money{price, "EUR"};
        catalogue.add(bushing);
    }
    CheckContext context;
    context.catalogue = &catalogue;
    const std::vector<Finding> all = checkFit(bench.setup, context);
    const Finding* f = find(all, "fit.mate:m/0~m/1");
    REQUIRE(f);
    CHECK(f->verdict == Verdict::misses);
    REQUIRE(f->remedy);
    CHECK(f->remedy->kind == Remedy::Kind::insertParts);
    CHECK(f->remedy->part == 1);
    REQUIRE(f->remedy->insert.size() == 1);
    CHECK(f->remedy->insert[0].part == "cheap-bushing");
    CHECK(f->remedy->price == Money{250, "EUR"});
    CHECK(remedySentence(*f, UnitSystem::metric).find("2.50 EUR") != std::string::npos);
    // The next mate is sound: 6 mm of 1.27 mm pitch.
    const Finding* sound = find(all, "fit.mate:m/1~m/2");
    REQUIRE(sound);
    CHECK(sound->verdict == Verdict::meets);
    CHECK(*sound->value == Approx(6.0 / 1.27));
}

TEST_CASE("a camera screw of ISO 1222 length passes three turns, a longer one meets the bottom", "[fit]") {
    // Screw stand-out 4.5 mm: ISO 1222:2010 as cited by secondary sources (reference table section 1).
    Bench bench;
    bench.parts["clamp"].outlet->length = measured(0.0045);
    bench.addMount("m", 0.5, {"clamp", "post", "button"});
    CHECK(find(checkFit(bench.setup, {}), "fit.mate:m/0~m/1")->verdict == Verdict::meets);
    bench.parts["clamp"].outlet->length = measured(3 * 0.00127);  // exactly three turns
    bench.rebuild();
    CHECK(find(checkFit(bench.setup, {}), "fit.mate:m/0~m/1")->verdict == Verdict::meets);
    bench.parts["clamp"].outlet->length = measured(0.0038);
    bench.rebuild();
    CHECK(find(checkFit(bench.setup, {}), "fit.mate:m/0~m/1")->verdict == Verdict::misses);
    bench.parts["clamp"].outlet->length = measured(0.0101);
    bench.rebuild();
    CHECK(find(checkFit(bench.setup, {}), "fit.mate:m/0~m/1")->key == "fit.mate.bottoms");
    bench.parts["clamp"].outlet->length = Figure{};
    bench.rebuild();
    CHECK(find(checkFit(bench.setup, {}), "fit.mate:m/0~m/1")->verdict == Verdict::unknown);
}

TEST_CASE("thread strength is shear area times yield over root three, against four times the pull", "[fit]") {
    Bench bench;
    bench.addMount("m", 0.5, {"clamp", "post", "button"});
    const MaterialTable materials = aluminium();
    CheckContext context;
    context.materials = &materials;
    const std::vector<Finding> all = checkFit(bench.setup, context);
    const Finding* f = find(all, "fit.thread_strength:m/0~m/1");
    REQUIRE(f);
    // Worked by hand: stud 1/4-20, 6 mm engaged, basic profile (FED-STD-H28 form): area = pi * minor * 0.75 * length.
    const double minor = (0.25 - 1.082532 / 20) * 0.0254;
    CHECK(*f->value == Approx(pi * minor * 0.75 * 0.006 * 276e6 / std::sqrt(3.0)).epsilon(1e-5));
    // The thread lies level, so no weight pulls along it; a knock of 20 N is more than 3 x 2 N of press.
    CHECK(*f->limit == Approx(4 * 20.0));
    CHECK(f->verdict == Verdict::meets);
    context.limits.knock_N = *f->value / 4;  // exactly at the limit passes
    CHECK(find(checkFit(bench.setup, context), "fit.thread_strength:m/0~m/1")->verdict == Verdict::close);
    context.limits.knock_N *= 1.001;
    CHECK(find(checkFit(bench.setup, context), "fit.thread_strength:m/0~m/1")->verdict == Verdict::misses);
    context.materials = nullptr;
    CHECK(find(checkFit(bench.setup, context), "fit.thread_strength:m/0~m/1")->verdict == Verdict::unknown);
}

TEST_CASE("the mass beyond a part is compared with its rated load", "[fit]") {
    Bench bench;
    const auto ratedAt = [&](Figure rated) {
        bench.parts["clamp"].ratedLoad_kg = rated;
        if (bench.setup.mounts.empty()) bench.addMount("m", 0.5, {"clamp", "post", "button"});
        else bench.rebuild();
        const std::vector<Finding> all = checkFit(bench.setup, {});
        const Finding* f = find(all, "fit.rated_load:m/0");
        REQUIRE(f);
        return *f;
    };
    CHECK(ratedAt(measured(1.0)).verdict == Verdict::meets);
    CHECK(*ratedAt(measured(1.0)).value == Approx(0.140));  // post 80 g + button 60 g
    CHECK(ratedAt(measured(0.140)).verdict == Verdict::close);  // exactly at its limit
    CHECK(ratedAt(measured(0.160)).verdict == Verdict::close);
    CHECK(ratedAt(measured(0.139)).verdict == Verdict::misses);
    CHECK(ratedAt(Figure{}).verdict == Verdict::unknown);
}

TEST_CASE("a foot must lie wholly on its face, turned by its yaw", "[fit]") {
    Bench bench;
    Attachment face;
    face.id = "top";
    face.kind = AttachmentKind::face;
    face.a = Vec3(1, 0, 0.7);
    face.reference = Vec3::UnitX();
    face.up = Vec3::UnitZ();
    face.sizeX_m = 0.1;
    face.sizeY_m = 0.1;
    bench.support().attachments.push_back(face);
    FaceGrip foot;
    foot.sizeX_m = 0.08;
    foot.sizeY_m = 0.08;
    bench.parts["clamp"].grips.push_back(foot);
    bench.addMount("m", 0, {"clamp", "post", "button"}, "top");
    CHECK(find(checkFit(bench.setup, {}), "fit.footprint:")->verdict == Verdict::meets);
    bench.setup.mounts[0].mount.place.yaw_rad = radians(45);  // its half diagonal is 56.6 mm
    bench.rebuild();
    const std::vector<Finding> turned = checkFit(bench.setup, {});
    CHECK(find(turned, "fit.footprint:")->verdict == Verdict::misses);
    CHECK(*find(turned, "fit.footprint:")->value == Approx(0.08 / std::sqrt(2.0) - 0.05));
}

TEST_CASE("what must stay free on a switch is missed only when another part stands in it", "[fit]") {
    Bench bench;
    // Behind the button, beside the post: from 8 to 20 mm off its middle, 10 mm deep. The post's radius is 6 mm.
    const auto zoneFrom = [&](double inner) {
        bench.parts["button"].keepFree = {{"battery door", Solid::box(translation(Vec3(inner + 0.006, 0, -0.005)), Vec3(0.006, 0.005, 0.005))}};
        if (bench.setup.mounts.empty()) bench.addMount("m", 0.5, {"clamp", "post", "button"});
        else bench.rebuild();
        return checkFit(bench.setup, {});
    };
    CHECK(find(zoneFrom(0.008), "fit.keep_free:m/2")->verdict == Verdict::meets);
    CHECK(find(zoneFrom(0.006), "fit.keep_free:m/2")->verdict == Verdict::meets);  // touching
    const std::vector<Finding> covered = zoneFrom(0.004);
    const Finding* f = find(covered, "fit.keep_free:m/2~m/1");
    REQUIRE(f);
    CHECK(f->verdict == Verdict::misses);
    CHECK(*f->value == Approx(0.002).margin(1e-9));
    CHECK(sentence(*f, UnitSystem::metric) == "The post stands 2.0 mm into what must stay free on the button: battery door.");
}

TEST_CASE("an unfinished mount says that the switch is missing", "[fit]") {
    Bench bench;
    bench.addMount("m", 0.5, {"clamp", "post"});
    CHECK(find(checkFit(bench.setup, {}), "fit.no_switch:")->verdict == Verdict::unknown);
}
