#include <algorithm>
#include <filesystem>
#include <fstream>
#include <functional>
#include <set>

#include <catch2/catch.hpp>
#include <nlohmann/json.hpp>

#include "core/catalogue/catalogue.h"
#include "core/catalogue/materials.h"
#include "core/catalogue/mating.h"
#include "core/geometry/distance.h"

// What ships in resources/parts. The ranges asked for here are those of the trade for cheap gear
// (common practice, no source) except where a test names its source.

using namespace hither;
namespace fs = std::filesystem;

namespace {

const fs::path partsFolder = fs::path(HITHER_SOURCE_DIR) / "resources" / "parts";

const Catalogue& shipped() {
    static const Catalogue catalogue = [] {
        Catalogue c;
        c.addFolder(partsFolder);
        return c;
    }();
    return catalogue;
}

const Part& part(const std::string& id) {
    const Part* found = shipped().find(id);
    INFO("part " << id);
    REQUIRE(found != nullptr);
    return *found;
}

std::vector<std::shared_ptr<const Part>> partsOf(PartKind kind) {
    std::vector<std::shared_ptr<const Part>> out;
    for (const auto& p : shipped().parts())
        if (p->kind == kind) out.push_back(p);
    return out;
}

double grams(const Part& p) {
    const Figure mass = p.totalMass_kg();
    INFO("mass of " << p.id);
    REQUIRE(mass.known());
    return *mass.value * 1000;
}

template <class G> const G* gripOf(const Part& p) {
    for (const Grip& grip : p.grips)
        if (const G* g = std::get_if<G>(&grip)) return g;
    return nullptr;
}
template <class E> std::vector<const E*> elementsOf(const Part& p) {
    std::vector<const E*> out;
    for (const Element& e : p.elements)
        if (const E* x = std::get_if<E>(&e.what)) out.push_back(x);
    return out;
}

Port threadPort(const std::string& name, Gender gender, double length_m) {
    Port port;
    port.interface = Interface::thread;
    port.gender = gender;
    const auto thread = parseThread(name);
    REQUIRE(thread);
    port.thread = *thread.value;
    port.length = Figure{length_m, {BasisKind::assumed, {}}};
    return port;
}

/// The part at home (turns 0, slides in, neck straight): its solids and last frame in its base frame.
struct AtHome { std::vector<Solid> solids; Pose X_BaseOutlet = Pose::Identity(); };
AtHome atHome(const Part& p) {
    AtHome home;
    Pose& X = home.X_BaseOutlet;
    for (const Element& element : p.elements) {
        if (const auto* rigid = std::get_if<RigidElement>(&element.what)) {
            for (const Solid& solid : rigid->solids) home.solids.push_back(solid.movedBy(X));
            X = X * rigid->X;
        } else if (const auto* bend = std::get_if<BendElement>(&element.what)) {
            home.solids.push_back(Solid::capsule(Vec3::Zero(), Vec3(0, 0, bend->length), bend->radius).movedBy(X));
            X = X * translation(Vec3(0, 0, bend->length));
        } else if (const auto* slide = std::get_if<SlideElement>(&element.what)) {
            X = X * translation(slide->axis * std::clamp(0.0, slide->min, slide->max));
        }
    }
    return home;
}

struct NamedFigure { std::string name; const Figure* figure; };
/// Every figure a part of its kind should have; a bend springs by its EI, so it has no stiffness of its own.
std::vector<NamedFigure> figures(const Part& p) {
    std::vector<NamedFigure> out{};
    const auto joint = [&](const std::string& name, const JointFigures& j, bool stiffness) {
        out.push_back({name + " hold", &j.hold});
        if (stiffness) out.push_back({name + " stiffness", &j.stiffness});
        out.push_back({name + " setting error", &j.settingError});
    };
    const auto port = [&](const std::string& name, const Port& q) {
        if (q.interface == Interface::thread) out.push_back({name + " length", &q.length});
    };
    for (const Grip& grip : p.grips) {
        if (const auto* rail = std::get_if<RailGrip>(&grip))
            out.insert(out.end(), {{"min", &rail->min_m}, {"max", &rail->max_m}, {"torque", &rail->holdTorque_Nm}, {"axial", &rail->holdAxial_N}});
        if (const auto* edge = std::get_if<EdgeGrip>(&grip))
            out.insert(out.end(), {{"min", &edge->min_m}, {"max", &edge->max_m}, {"moment", &edge->holdMoment_Nm}, {"force", &edge->holdForce_N}});
        if (const auto* face = std::get_if<FaceGrip>(&grip))
            out.insert(out.end(), {{"moment", &face->holdMoment_Nm}, {"force", &face->holdForce_N}});
        if (const auto* cloth = std::get_if<ClothGrip>(&grip))
            out.insert(out.end(), {{"max", &cloth->max_m}, {"force", &cloth->holdForce_N}, {"drift", &cloth->drift_m}});
    }
    for (const Port& base : p.bases) port("base", base);
    if (p.outlet) port("outlet", *p.outlet);
    for (const Element& e : p.elements) {
        if (const auto* rigid = std::get_if<RigidElement>(&e.what))
            out.insert(out.end(), {{"mass", &rigid->mass_kg}, {"EI", &rigid->EI_Nm2}, {"GJ", &rigid->GJ_Nm2}});
        if (const auto* hinge = std::get_if<HingeElement>(&e.what)) joint(e.name, hinge->joint, true);
        if (const auto* swivel = std::get_if<SwivelElement>(&e.what)) joint(e.name, swivel->joint, true);
        if (const auto* ball = std::get_if<BallElement>(&e.what)) joint(e.name, ball->joint, true);
        if (const auto* slide = std::get_if<SlideElement>(&e.what)) joint(e.name, slide->joint, true);
        if (const auto* bend = std::get_if<BendElement>(&e.what)) {
            out.insert(out.end(), {{"mass", &bend->mass_kg}, {"EI", &bend->EI_Nm2}});
            joint(e.name, bend->joint, false);
        }
    }
    if (p.face) {
        out.insert(out.end(), {{"travel", &p.face->travel_m}, {"force", &p.face->force_N}, {"angle tolerance", &p.face->angleTolerance_rad}});
        if (p.face->action == SwitchFace::Action::sense) out.push_back({"sensing range", &p.face->sensingRange_m});
    } else {
        out.push_back({"rated load", &p.ratedLoad_kg});
    }
    return out;
}

}  // namespace

TEST_CASE("The shipped parts load without a problem") {
    Catalogue catalogue;
    for (const PartProblem& problem : catalogue.addFolder(partsFolder)) FAIL_CHECK(describe(problem));
    const auto switches = partsOf(PartKind::switchDevice).size();
    CHECK(switches >= 14);
    CHECK(catalogue.parts().size() - switches >= 70);
}

TEST_CASE("Every shipped part comes back whole from its JSON form") {
    for (const auto& p : shipped().parts()) {
        INFO(p->id);
        const auto written = writePart(*p);
        const PartRead again = readPart(written, "again");
        for (const PartProblem& problem : again.problems) FAIL_CHECK(describe(problem));
        REQUIRE(again.part);
        CHECK(*again.part == *p);
        CHECK(writePart(*again.part).dump() == written.dump());
    }
}

TEST_CASE("Every row of the trade's generic gear is in the shipped catalogue, in several sizes") {
    const std::vector<std::pair<std::string, std::vector<std::string>>> rows = {
        {"spring tube clamp", {"spring-clamp-13-25", "spring-clamp-13-38", "spring-clamp-19-38-stud"}},
        {"hinged screw tube clamp", {"screw-clamp-1-2-in", "screw-clamp-3-4-in", "screw-clamp-7-8-in", "screw-clamp-1-in"}},
        {"square tube", {"square-clamp-20-26", "square-clamp-25-40", "jaw-clamp-15-40"}},
        {"desk clamp", {"desk-clamp-35", "desk-clamp-50", "desk-clamp-neck-400", "desk-clamp-neck-600"}},
        {"plate clamp with safety tab", {"plate-clamp-tab-40", "plate-clamp-tab-70", "plate-clamp-tab-side-40"}},
        {"cloth clip", {"cloth-clip-small", "cloth-clip-large"}},
        {"wrap-leg stand", {"wrap-stand-light", "wrap-stand-heavy", "wrap-stand-heavy-strapped"}},
        {"mini tripod", {"mini-tripod-quick-release", "mini-tripod-quick-release-ball"}},
        {"flat bases", {"suction-base-60", "suction-base-90-ball", "hook-loop-base-75", "adhesive-base-40", "screwed-base-60"}},
        {"gooseneck", {"gooseneck-150", "gooseneck-200", "gooseneck-300", "gooseneck-400", "gooseneck-500", "gooseneck-600"}},
        {"single-lock arm", {"arm-single-lock-130", "arm-single-lock-160", "arm-single-lock-200", "arm-single-lock-250", "arm-single-lock-300"}},
        {"ball head", {"ball-head-small", "ball-head-medium", "ball-head-large"}},
        {"swivel", {"swivel-small", "swivel-large-3-8", "swivel-clicks-30"}},
        {"rosette hinge", {"rosette-hinge-10", "rosette-hinge-12", "rosette-hinge-15"}},
        {"right-angle joint", {"right-angle-joint", "right-angle-joint-3-8", "right-angle-swivel"}},
        {"extension post", {"post-100", "post-150", "post-200", "post-300", "post-400", "post-500", "post-600"}},
        {"telescopic post", {"post-telescopic-130-190", "post-telescopic-220-380", "post-telescopic-350-600"}},
        {"switch back", {"back-two-screws-30-m3", "back-three-screws-75-6-32", "back-four-screws-60-m3", "back-single-screw-m5", "back-slotted-m3",
                         "back-slide-in-holder", "back-adhesive-40", "back-hook-loop-50"}},
        {"switch", {"switch-round-large", "switch-round-medium", "switch-round-small", "switch-round-light", "switch-lever", "switch-string",
                    "switch-pillow", "switch-grip", "switch-proximity", "switch-touch-plate", "switch-puff-bulb", "switch-pneumatic-pillow",
                    "switch-finger-button", "switch-thumb", "switch-leaf", "switch-ribbon", "switch-foot-pedal", "switch-chin-pad", "switch-head-pad"}}};
    for (const auto& [row, ids] : rows)
        for (const std::string& id : ids) {
            INFO(row << ": " << id);
            CHECK(shipped().find(id) != nullptr);
        }
}

TEST_CASE("Shipped grips close on what the trade's table says") {
    const auto rail = [](const std::string& id) {
        INFO(id);
        REQUIRE(gripOf<RailGrip>(part(id)) != nullptr);
        return *gripOf<RailGrip>(part(id));
    };
    for (const char* id : {"spring-clamp-13-25", "spring-clamp-13-38", "spring-clamp-19-38-stud"}) {
        INFO(id);
        CHECK(*rail(id).min_m.value >= 0.013);
        CHECK(*rail(id).max_m.value <= 0.038);
        CHECK(grams(part(id)) >= 60);
        CHECK(grams(part(id)) <= 120);
    }
    // Outside diameters: tube sizes by definition of the inch; conduit EMT 1/2 = 17.9 mm (Steel Tube Institute).
    const auto closesOn = [&](const std::string& id, double outside_m) {
        const RailGrip grip = rail(id);
        return *grip.min_m.value <= outside_m && outside_m <= *grip.max_m.value;
    };
    CHECK(closesOn("screw-clamp-1-2-in", 0.5 * 0.0254));
    CHECK(closesOn("screw-clamp-3-4-in", 0.75 * 0.0254));
    CHECK(closesOn("screw-clamp-7-8-in", 0.875 * 0.0254));
    CHECK(closesOn("screw-clamp-1-in", 1.0 * 0.0254));
    CHECK(closesOn("screw-clamp-1-1-4-in", 1.25 * 0.0254));
    CHECK(closesOn("screw-clamp-1-1-2-in", 1.5 * 0.0254));
    CHECK(closesOn("screw-clamp-3-4-in", 0.0179));
    CHECK_FALSE(closesOn("screw-clamp-7-8-in", 1.0 * 0.0254));
    for (const auto& p : partsOf(PartKind::grip))
        if (p->id.rfind("screw-clamp", 0) == 0) {
            INFO(p->id);
            CHECK(grams(*p) >= 120);
            CHECK(grams(*p) <= 250);
        }
    CHECK(rail("square-clamp-20-26").square);
    CHECK_FALSE(rail("square-clamp-20-26").round);
    for (const char* id : {"wrap-stand-light", "wrap-stand-heavy"}) {
        INFO(id);
        CHECK((rail(id).round && rail(id).square));
        REQUIRE(gripOf<FaceGrip>(part(id)) != nullptr);
        CHECK(gripOf<FaceGrip>(part(id))->fixing == FaceFixing::standing);
    }
    for (const auto& p : partsOf(PartKind::grip)) {
        const EdgeGrip* edge = gripOf<EdgeGrip>(*p);
        if (!edge) continue;
        INFO(p->id);
        CHECK(*edge->max_m.value <= 0.050);
        if (p->id.rfind("plate-clamp", 0) == 0) {
            CHECK(*edge->min_m.value == Approx(0.003));
            CHECK(*edge->max_m.value == Approx(0.025));
            CHECK(p->releaseActions == 2);
        }
    }
    std::set<FaceFixing> fixings;
    for (const auto& p : partsOf(PartKind::grip))
        if (const FaceGrip* face = gripOf<FaceGrip>(*p)) fixings.insert(face->fixing);
    CHECK(fixings.size() == 5);
    for (const char* id : {"cloth-clip-small", "cloth-clip-large"}) {
        REQUIRE(gripOf<ClothGrip>(part(id)) != nullptr);
        CHECK(*part(id).ratedLoad_kg.value <= 0.1);
    }
}

TEST_CASE("Shipped necks, arms, hinges, posts and backs have the joints and sizes of their kind") {
    for (const auto& p : partsOf(PartKind::neck)) {
        INFO(p->id);
        const auto bends = elementsOf<BendElement>(*p);
        REQUIRE(bends.size() == 1);
        const double total = atHome(*p).X_BaseOutlet.translation().z();
        CHECK(total >= 0.150);
        CHECK(total <= 0.600 + 1e-9);
        CHECK(bends[0]->radius >= 0.004);
        CHECK(bends[0]->radius <= 0.0075);
        CHECK(bends[0]->minRadius >= 0.040);
        CHECK(bends[0]->minRadius <= 0.080);
        CHECK(*bends[0]->joint.hold.value >= 0.3);
        CHECK(*bends[0]->joint.hold.value <= 2.0);
    }
    for (const auto& p : partsOf(PartKind::arm)) {
        INFO(p->id);
        const auto balls = elementsOf<BallElement>(*p);
        const auto hinges = elementsOf<HingeElement>(*p);
        REQUIRE(balls.size() == 2);
        REQUIRE(hinges.size() == 1);
        if (p->id.rfind("arm-single-lock", 0) == 0) {
            CHECK_FALSE(hinges[0]->joint.lockGroup.empty());
            for (const BallElement* ball : balls) CHECK(ball->joint.lockGroup == hinges[0]->joint.lockGroup);
        } else {
            CHECK(hinges[0]->joint.lockGroup.empty());
        }
        for (const BallElement* ball : balls) {
            CHECK(*ball->joint.hold.value >= 2);
            CHECK(*ball->joint.hold.value <= 6);
        }
        CHECK(grams(*p) >= 200);
        CHECK(grams(*p) <= 450);
    }
    for (int degreesPerStep : {10, 12, 15}) {
        const Part& p = part("rosette-hinge-" + std::to_string(degreesPerStep));
        const auto hinges = elementsOf<HingeElement>(p);
        REQUIRE(hinges.size() == 1);
        REQUIRE(hinges[0]->detent);
        const double step = radians(degreesPerStep);
        CHECK(*hinges[0]->detent == Approx(step));
        // Its stops are clicks, and a full turn has a whole number of teeth.
        CHECK(std::abs(std::remainder(hinges[0]->min, step)) < 1e-9);
        CHECK(std::abs(std::remainder(hinges[0]->max, step)) < 1e-9);
        CHECK(360 % degreesPerStep == 0);
    }
    for (const auto& p : partsOf(PartKind::post)) {
        INFO(p->id);
        double longest = atHome(*p).X_BaseOutlet.translation().z();
        for (const SlideElement* slide : elementsOf<SlideElement>(*p)) longest += slide->max - slide->min;
        CHECK(longest >= 0.100);
        CHECK(longest <= 0.600 + 1e-9);
    }
    for (const auto& p : partsOf(PartKind::back)) {
        INFO(p->id);
        CHECK(grams(*p) >= 10);
        CHECK(grams(*p) <= 40);
        const bool teeNut = std::any_of(p->bases.begin(), p->bases.end(), [](const Port& base) {
            return base.thread && base.thread->name == "UNC 1/4-20" && base.gender == Gender::female;
        });
        CHECK(teeNut);
    }
}

TEST_CASE("Shipped switches are as large, heavy and light to the touch as the trade's are") {
    std::set<SwitchFace::Action> actions;
    for (const auto& p : partsOf(PartKind::switchDevice)) {
        INFO(p->id);
        REQUIRE(p->face);
        const SwitchFace& face = *p->face;
        actions.insert(face.action);
        CHECK(grams(*p) >= 20);
        CHECK(grams(*p) <= 200);
        REQUIRE(face.force_N.known());
        if (face.action == SwitchFace::Action::sense) {
            CHECK(*face.force_N.value == 0);
            CHECK(*face.sensingRange_m.value > 0);
        } else {
            CHECK(*face.force_N.value >= 0.3);
            CHECK(*face.force_N.value <= 5);
        }
        CHECK(*face.travel_m.value >= 0);
        CHECK(*face.travel_m.value <= 0.010 + 1e-12);
        Eigen::AlignedBox3d bounds;
        for (const Solid& solid : atHome(*p).solids) bounds.extend(solid.bounds(Pose::Identity()));
        CHECK(bounds.sizes().maxCoeff() >= 0.030 - 1e-9);
        CHECK(bounds.sizes().maxCoeff() <= 0.130 + 1e-9);
        CHECK_FALSE(p->keepFree.empty());
        CHECK(p->price.has_value());
    }
    CHECK(actions.size() == 3);
}

TEST_CASE("Every figure of the shipped parts is there, with a basis, and a published one names its source") {
    for (const auto& p : shipped().parts())
        for (const auto& [name, figure] : figures(*p)) {
            INFO(p->id << ", " << name);
            CHECK(figure->known());
            CHECK(figure->basis.kind != BasisKind::unknown);
            if (figure->basis.kind != BasisKind::assumed) CHECK_FALSE(figure->basis.source.empty());
        }
    // The words as written in the files.
    const std::set<std::string> words{"measured", "published", "assumed"};
    std::function<void(const nlohmann::json&, const std::string&)> walk = [&](const nlohmann::json& j, const std::string& where) {
        if (j.is_object() && j.contains("basis")) {
            const auto& basis = j.at("basis");
            const std::string kind = basis.is_object() ? basis.at("kind").get<std::string>() : basis.get<std::string>();
            INFO(where);
            CHECK(words.count(kind) == 1);
            if (kind != "assumed") CHECK_FALSE((basis.is_object() ? basis : j).value("source", "").empty());
        }
        if (j.is_structured())
            for (const auto& item : j.items()) walk(item.value(), where + "/" + item.key());
    };
    int files = 0;
    for (const auto& entry : fs::directory_iterator(partsFolder)) {
        if (entry.path().extension() != ".json") continue;
        ++files;
        std::ifstream in(entry.path());
        const auto list = nlohmann::json::parse(in);
        for (const auto& item : list) {
            INFO(item.value("id", "?"));
            CHECK(item.contains("basis"));
            CHECK(item.at("price").contains("basis"));
        }
        walk(list, entry.path().filename().string());
    }
    CHECK(files == 8);
}

TEST_CASE("Threads of the shipped parts are of a known material") {
    std::vector<std::string> problems;
    const MaterialTable table = readMaterials(fs::path(HITHER_SOURCE_DIR) / "resources" / "materials" / "materials.json", problems);
    for (const std::string& problem : problems) FAIL_CHECK(problem);
    const auto check = [&](const Part& p, const Port& port) {
        if (port.interface != Interface::thread) return;
        INFO(p.id << ": " << describe(port) << " of " << port.material);
        CHECK(table.find(port.material) != nullptr);
    };
    for (const auto& p : shipped().parts()) {
        for (const Port& base : p->bases) check(*p, base);
        if (p->outlet) check(*p, *p->outlet);
    }
}

TEST_CASE("A shipped camera screw stands out as ISO 1222 says and holds in every 1/4-20 socket") {
    // ISO 1222:2010, as cited by secondary sources: the screw stands out 4.5 mm +- 0.2 mm.
    // ASME B1.1: 1/4-20 has a pitch of 1.27 mm, so 4.5 mm is 3.54 turns.
    const Part& plate = part("dovetail-plate-38-1-4");
    REQUIRE(plate.outlet);
    CHECK(*plate.outlet->length.value == Approx(0.0045));
    CHECK(plate.outlet->length.basis.kind == BasisKind::published);
    int sockets = 0;
    for (const auto& p : shipped().parts())
        for (const Port& base : p->bases)
            if (base.thread && base.thread->name == "UNC 1/4-20" && base.gender == Gender::female) {
                INFO(p->id);
                const Mate m = mate(*plate.outlet, base);
                CHECK(m.fault == MateFault::none);
                CHECK(m.turns == Approx(4.5 / 1.27));
                ++sockets;
            }
    CHECK(sockets > 50);
}

TEST_CASE("Each shipped thread adapter mates with what its name says") {
    struct End { const char* thread; Gender gender; };
    const Gender M = Gender::male, F = Gender::female;
    const char* quarter = "UNC 1/4-20";
    const char* threeEighths = "UNC 3/8-16";
    const char* microphone = "UNS 5/8-27";
    struct Row { const char* id; End base, outlet; };
    const std::vector<Row> rows = {
        {"bushing-1-4-to-3-8", {quarter, F}, {threeEighths, M}},
        {"reducer-3-8-to-1-4", {threeEighths, F}, {quarter, M}},
        {"stud-1-4-1-4-short", {quarter, M}, {quarter, M}},
        {"stud-1-4-1-4-long", {quarter, M}, {quarter, M}},
        {"stud-3-8-3-8", {threeEighths, M}, {threeEighths, M}},
        {"stud-1-4-3-8", {quarter, M}, {threeEighths, M}},
        {"coupler-1-4-1-4", {quarter, F}, {quarter, F}},
        {"coupler-3-8-3-8", {threeEighths, F}, {threeEighths, F}},
        {"coupler-1-4-3-8", {quarter, F}, {threeEighths, F}},
        {"right-angle-1-4", {quarter, F}, {quarter, M}},
        {"right-angle-1-4-sockets", {quarter, F}, {quarter, F}},
        {"angle-45-1-4", {quarter, F}, {quarter, M}},
        {"microphone-socket-to-1-4-stud", {microphone, F}, {quarter, M}},
        {"microphone-socket-to-3-8-stud", {microphone, F}, {threeEighths, M}},
        {"microphone-screw-to-1-4-socket", {quarter, F}, {microphone, M}},
        {"microphone-screw-to-3-8-socket", {threeEighths, F}, {microphone, M}},
        {"microphone-stud-to-1-4-stud", {microphone, M}, {quarter, M}},
        {"m5-stud-to-1-4-stud", {"M5", M}, {quarter, M}},
        {"m5-socket-to-1-4-stud", {"M5", F}, {quarter, M}},
        {"socket-1-4-to-m5-stud", {quarter, F}, {"M5", M}},
        {"m6-stud-to-1-4-stud", {"M6", M}, {quarter, M}},
        {"m6-socket-to-1-4-stud", {"M6", F}, {quarter, M}},
        {"socket-1-4-to-m6-stud", {quarter, F}, {"M6", M}},
        {"m8-stud-to-1-4-stud", {"M8", M}, {quarter, M}},
        {"m8-socket-to-1-4-stud", {"M8", F}, {quarter, M}},
        {"socket-1-4-to-m8-stud", {quarter, F}, {"M8", M}},
        {"spacer-lock-ring-1-4", {quarter, F}, {quarter, M}},
        {"spacer-12-1-4", {quarter, F}, {quarter, M}},
        {"spacer-25-1-4", {quarter, F}, {quarter, M}},
        {"spacer-16-3-8", {threeEighths, F}, {threeEighths, M}}};
    std::set<std::string> listed{"shoe-foot-1-4-stud", "shoe-holder-1-4-socket", "dovetail-clamp-38", "dovetail-plate-38-1-4", "dovetail-plate-38-adhesive"};
    // A partner for an end: a stud of four turns, or a socket deep enough for any stud.
    const auto partner = [&](const End& end) {
        const double pitch = parseThread(end.thread).value->pitch_m;
        return end.gender == M ? threadPort(end.thread, F, 0.020) : threadPort(end.thread, M, 4 * pitch);
    };
    for (const Row& row : rows) {
        INFO(row.id);
        listed.insert(row.id);
        const Part& p = part(row.id);
        REQUIRE(p.bases.size() == 1);
        REQUIRE(p.outlet);
        const Mate below = mate(partner(row.base), p.bases[0]);
        CHECK(below.fault == MateFault::none);
        CHECK(below.turns >= 3);
        const Mate above = mate(*p.outlet, partner(row.outlet));
        CHECK(above.fault == MateFault::none);
        CHECK(above.turns >= 3);
        // And with nothing of the other gender or thread.
        CHECK_FALSE(mate(*p.outlet, threadPort(row.outlet.thread, row.outlet.gender, 0.006)).goesTogether());
        CHECK_FALSE(mate(*p.outlet, threadPort("M3", row.outlet.gender == M ? F : M, 0.020)).goesTogether());
        if (p.reversible) CHECK(mate(partner(row.outlet), reversed(p).bases[0]).fault == MateFault::none);
    }
    for (const auto& p : partsOf(PartKind::adapter)) {
        INFO(p->id << " is in the list of this test");
        CHECK(listed.count(p->id) == 1);
    }
    CHECK(mate(*part("dovetail-clamp-38").outlet, part("dovetail-plate-38-1-4").bases[0]).goesTogether());
    CHECK(mate(*part("dovetail-clamp-38").outlet, part("dovetail-plate-38-adhesive").bases[0]).goesTogether());
    CHECK(mate(*part("shoe-holder-1-4-socket").outlet, part("shoe-foot-1-4-stud").bases[0]).goesTogether());
    CHECK(mate(*part("stud-1-4-1-4-long").outlet, part("back-adhesive-40").bases[0]).fault == MateFault::bottoms);
}

TEST_CASE("Every shipped switch goes on a 1/4-20 stud, straight or by a back that keeps its zones free") {
    const Port stud = threadPort("UNC 1/4-20", Gender::male, 0.006);
    std::set<std::string> usedBacks;
    for (const auto& device : partsOf(PartKind::switchDevice)) {
        INFO(device->id);
        bool reached = mateWith(stud, *device).mate.goesTogether();
        for (const auto& back : partsOf(PartKind::back)) {
            const BestMate lower = mateWith(stud, *back), upper = mateWith(*back->outlet, *device);
            if (lower.base < 0 || upper.base < 0 || !lower.mate.goesTogether() || !upper.mate.goesTogether()) continue;
            usedBacks.insert(back->id);
            const AtHome home = atHome(*back);
            bool free = true;
            for (const Solid& solid : home.solids)
                for (const KeepFree& zone : device->keepFree)
                    free = free && distance(solid, home.X_BaseOutlet.inverse(), zone.solid, Pose::Identity()).distance >= 0;
            reached = reached || free;
        }
        CHECK(reached);
    }
    for (const auto& back : partsOf(PartKind::back)) {
        INFO(back->id << " fits some shipped switch");
        CHECK(usedBacks.count(back->id) == 1);
    }
}

TEST_CASE("On every shipped grip goes a gooseneck, an arm, a ball head and a post, straight or by adapters") {
    for (const auto& grip : partsOf(PartKind::grip)) {
        if (grip->outlet->interface != Interface::thread) continue;
        for (const char* id : {"gooseneck-300", "arm-single-lock-200", "ball-head-medium", "post-200"}) {
            INFO(grip->id << " then " << id);
            const BestMate direct = mateWith(*grip->outlet, part(id));
            CHECK((direct.mate.goesTogether() || !cheapestAdapters(*grip->outlet, part(id), shipped()).empty()));
        }
    }
}

TEST_CASE("Every shipped part goes on another one, and another one on its outlet") {
    // A part that may be built in either way round offers both its ends.
    std::vector<Port> outlets, bases;
    for (const auto& p : shipped().parts()) {
        if (p->outlet) outlets.push_back(*p->outlet);
        for (const Port& base : p->bases) bases.push_back(base);
        if (p->reversible) outlets.push_back(p->bases.front());
        if (p->reversible) bases.push_back(*p->outlet);
    }
    const auto someGoes = [](const std::vector<Port>& from, const std::vector<Port>& to) {
        for (const Port& outlet : from)
            for (const Port& base : to)
                if (mate(outlet, base).goesTogether()) return true;
        return false;
    };
    for (const auto& p : shipped().parts()) {
        INFO(p->id);
        if (p->outlet) CHECK(someGoes({*p->outlet}, bases));
        for (const Port& base : p->bases) CHECK(someGoes(outlets, {base}));
    }
}

TEST_CASE("The solids of each shipped part hang together and stay between its ports") {
    for (const auto& p : shipped().parts()) {
        INFO(p->id);
        const AtHome home = atHome(*p);
        REQUIRE_FALSE(home.solids.empty());
        // No piece is farther than 10 mm from the rest.
        std::vector<bool> joined(home.solids.size(), false);
        std::vector<std::size_t> open{0};
        joined[0] = true;
        while (!open.empty()) {
            const std::size_t i = open.back();
            open.pop_back();
            for (std::size_t k = 0; k < home.solids.size(); ++k)
                if (!joined[k] && distance(home.solids[i], home.solids[k]).distance <= 0.010) {
                    joined[k] = true;
                    open.push_back(k);
                }
        }
        CHECK(std::all_of(joined.begin(), joined.end(), [](bool j) { return j; }));
        // Nothing reaches more than 1 mm through the seating plane of the next part, nor through
        // that of the part before.
        for (const Solid& solid : home.solids) {
            if (p->outlet) CHECK(solid.bounds(home.X_BaseOutlet.inverse()).max().z() <= 0.001);
            if (p->grips.empty()) CHECK(solid.bounds(Pose::Identity()).min().z() >= -0.001);
        }
    }
}
