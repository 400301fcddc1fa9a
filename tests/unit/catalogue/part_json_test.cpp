#include <catch2/catch.hpp>

#include <cmath>
#include <limits>

#include "core/catalogue/catalogue.h"
#include "core/catalogue/json_form.h"
#include "core/catalogue/json_text.h"
#include "random_parts.h"

using namespace hither;
using nlohmann::json;

namespace {

json good() {
    return json::parse(R"({"id":"gooseneck-300","name":"Gooseneck, 300 mm","kind":"neck","basis":"assumed",
        "bases":[{"interface":"UNC 1/4-20","gender":"female","length_mm":8,"material":"steel"}],
        "elements":[{"kind":"rigid","to_mm":[0,0,20],"mass_g":40,"solids":[{"cylinder":{"from_mm":[0,0,0],"to_mm":[0,0,20],"radius_mm":9}}]},
                    {"kind":"bend","name":"neck","length_mm":300,"min_radius_mm":60,"radius_mm":5,"mass_g":180,"hold_Nm":{"value":1.2,"basis":"measured","source":"KL, 2026-05-01"}}],
        "outlet":{"interface":"UNC 1/4-20","gender":"male","length_mm":6,"material":"steel","lock_ring":true},
        "rated_load_g":250,"price":{"amount":"12.50","currency":"EUR"},"reversible":true})");
}
json grip() {
    json part = good();
    part.erase("bases");
    part.erase("reversible");
    part["kind"] = "grip";
    part["grips"] = json::parse(R"([{"on":"rail","min_mm":13,"max_mm":38,"hold_torque_Nm":2}])");
    return part;
}
json device() {
    json part = good();
    part.erase("outlet");
    part.erase("reversible");
    part["kind"] = "switch";
    part["face"] = json::parse(R"({"size_mm":[64,64,20],"force_N":2,"travel_mm":1})");
    return part;
}

/// The one problem of a part; more or fewer fail.
PartProblem only(const json& part) {
    const PartRead read = readPart(part, "cupboard.json");
    for (const PartProblem& problem : read.problems) UNSCOPED_INFO(describe(problem));
    REQUIRE(read.problems.size() == 1);
    CHECK_FALSE(read.part);
    CHECK(read.problems[0].file == "cupboard.json");
    return read.problems[0];
}
json with(json part, const char* pointer, json value) {
    part[json::json_pointer(pointer)] = std::move(value);
    return part;
}

}  // namespace

TEST_CASE("a part is read with its units, bases and defaults", "[catalogue][part-json]") {
    const PartRead read = readPart(good(), "cupboard.json");
    for (const PartProblem& problem : read.problems) FAIL_CHECK(describe(problem));
    REQUIRE(read.part);
    const Part& part = *read.part;
    CHECK(part.kind == PartKind::neck);
    CHECK(part.bases.at(0).length == Figure{0.008, {BasisKind::assumed, {}}});
    CHECK(part.bases.at(0).thread->name == "UNC 1/4-20");
    CHECK(part.outlet->lockRing);
    CHECK(part.price == Money{1250, "EUR"});
    CHECK(part.ratedLoad_kg.value == 0.25);
    CHECK(part.releaseActions == 1);
    const auto& bend = std::get<BendElement>(part.elements.at(1).what);
    CHECK(bend.minRadius == 0.06);
    CHECK(bend.joint.hold == Figure{1.2, {BasisKind::measured, "KL, 2026-05-01"}});
    CHECK_FALSE(bend.joint.stiffness.known());
    CHECK(bend.joint.stiffness.basis.kind == BasisKind::unknown);
    const auto& rod = std::get<RigidElement>(part.elements.at(0).what);
    CHECK(rod.centreOfMass == Vec3(0, 0, 0.01));  // half way along, where none is given
    CHECK(part.totalMass_kg().value.value() == Approx(0.22));
    CHECK(readPart(grip(), "").part);
    CHECK(readPart(device(), "").part);
}

TEST_CASE("the mass of a part is unknown as soon as one piece's is, and has the weakest basis", "[catalogue][part-json]") {
    json part = good();
    part["elements"][0]["mass_g"] = {{"value", 40}, {"basis", "published"}, {"source", "data sheet"}};
    CHECK(readPart(part, "").part->totalMass_kg().basis.kind == BasisKind::assumed);
    part["elements"][1]["mass_g"] = {{"value", 180}, {"basis", "measured"}, {"source", "KL, 2026-05-01"}};
    CHECK(readPart(part, "").part->totalMass_kg().basis == Basis{BasisKind::published, "data sheet"});
    part["elements"][1].erase("mass_g");
    CHECK_FALSE(readPart(part, "").part->totalMass_kg().known());
    part["elements"] = json::array();
    CHECK_FALSE(readPart(part, "").part->totalMass_kg().known());  // nothing says what it weighs
}

TEST_CASE("each thing wrong with a part is said with its place and what is allowed", "[catalogue][part-json]") {
    struct Wrong { json part; const char* key; const char* found; const char* allowed; };
    const auto nan = std::numeric_limits<double>::quiet_NaN();
    const std::vector<Wrong> cases{
        {with(good(), "/id", "Goose Neck"), "id", "\"Goose Neck\"", "lower case"},
        {with(good(), "/id", nullptr), "id", "null", "lower case"},
        {with(good(), "/name", "  "), "name", "\"  \"", "not empty"},
        {with(good(), "/kind", "clamp"), "kind", "\"clamp\"", "grip, arm, neck, post, joint, adapter, back, switch"},
        {with(good(), "/lenght_mm", 3), "lenght_mm", "a key that does not exist", "id, name, kind"},
        {with(good(), "/elements/0/mass", 3), "elements/0/mass", "a key that does not exist", "mass_g"},
        {with(good(), "/elements/0/mass_g", -1), "elements/0/mass_g", "-1", "from 0 to 1000000 g"},
        {with(good(), "/elements/0/mass_g", "40"), "elements/0/mass_g", "\"40\"", "a number"},
        {with(good(), "/elements/0/mass_g", nan), "elements/0/mass_g", "null", "a number"},
        {with(good(), "/elements/0/to_mm", json::array({0, 0})), "elements/0/to_mm", "[0, 0]", "[x, y, z]"},
        {with(good(), "/elements/0/to_mm/2", 5001), "elements/0/to_mm", "[0, 0, 5001]", "from -5000 to 5000 mm"},
        {with(good(), "/elements/1/kind", "neck"), "elements/1/kind", "\"neck\"", "rigid, hinge, swivel, ball, slide, bend"},
        {with(good(), "/elements/1/min_radius_mm", 5), "elements/1/min_radius_mm", "5", "more than radius_mm"},
        {with(good(), "/elements/1/name", ""), "elements/1/name", "\"\"", "not empty"},
        {with(good(), "/elements/0/name", "neck"), "elements/1/name", "\"neck\"", "no other element"},
        {with(good(), "/elements/1/hold_Nm/basis", "guessed"), "elements/1/hold_Nm/basis", "\"guessed\"", "measured, published or assumed"},
        {with(good(), "/elements/1/hold_Nm/who", "KL"), "elements/1/hold_Nm/who", "a key that does not exist", "value, basis, source"},
        {with(good(), "/elements/0/solids/0/cylinder/radius_mm", 0), "elements/0/solids/0/cylinder/radius_mm", "0", "above 0 up to 10000 mm"},
        {with(good(), "/bases/0/interface", "UNC 1/4"), "bases/0/interface", "\"UNC 1/4\"", "a thread"},
        {with(good(), "/bases/0/gender", "both"), "bases/0/gender", "\"both\"", "male, female"},
        {with(good(), "/bases/0/count", 2), "bases/0/count", "a key that does not exist", "lock_ring"},
        {with(device(), "/bases", json::array()), "bases", "a list of 0", "not empty"},
        {with(good(), "/price/amount", 12.5), "price/amount", "12.5", "as text"},
        {with(good(), "/price/amount", "1,234.50"), "price/amount", "\"1,234.50\"", "as text"},
        {with(good(), "/price/amount", "-3"), "price/amount", "\"-3\"", ""},
        {with(good(), "/price/currency", "euro"), "price/currency", "\"euro\"", "ISO 4217"},
        {with(good(), "/release_actions", 1.5), "release_actions", "1.5", "a whole number"},
        {with(good(), "/reversible", "yes"), "reversible", "\"yes\"", "true or false"},
        {with(good(), "/face", json::object({{"size_mm", {1, 1, 1}}})), "face", "an object", "only a part of the kind switch"},
        {with(good(), "/grips", json::array({{{"on", "cloth"}}})), "grips", "[...]", "only a part of the kind grip"},
        {with(good(), "/basis", "hearsay"), "basis", "\"hearsay\"", "measured, published, assumed"},
        {with(grip(), "/grips/0/min_mm", 40), "grips/0/min_mm", "40", "at most max_mm"},
        {with(grip(), "/grips/0/sections", json::array({"oval"})), "grips/0/sections/0", "\"oval\"", "round or square"},
        {with(grip(), "/grips/0/on", "wall"), "grips/0/on", "\"wall\"", "rail, edge, face, cloth"},
        {with(grip(), "/bases", good()["bases"]), "bases", "[...]", "a grip holds the support itself"},
        {with(device(), "/outlet", good()["outlet"]), "outlet", "an object", "a switch ends the chain"},
        {with(device(), "/face/operating_axis", json::array({0, 0, 0})), "face/operating_axis", "[0, 0, 0]", "not zero"},
        {with(device(), "/face/action", "hit"), "face/action", "\"hit\"", "press, pull, sense"},
        {with(device(), "/face/sensing_range_mm", 10), "face/sensing_range_mm", "10", "action sense"},
    };
    for (const Wrong& wrong : cases) {
        INFO(wrong.key << " = " << wrong.found);
        const json& part = wrong.part;
        const PartProblem problem = only(part);
        CHECK(problem.part == (std::string(wrong.key) == "id" && part["id"].is_null() ? "" : part["id"].get<std::string>()));
        CHECK(problem.key == wrong.key);
        CHECK(problem.found == wrong.found);
        CHECK(problem.allowed.find(wrong.allowed) != std::string::npos);
    }
}

TEST_CASE("ranges of joints end where they should", "[catalogue][part-json]") {
    const auto problems = [](const char* element) {
        json part = good();
        part["elements"].push_back(json::parse(element));
        return readPart(part, "").problems;
    };
    CHECK(problems(R"({"kind":"hinge","name":"h","axis":[0,1,0],"min_deg":-90,"max_deg":-90})").empty());  // a single angle
    CHECK(problems(R"({"kind":"hinge","name":"h","axis":[0,1,0],"min_deg":-90,"max_deg":-91})").size() == 1);
    CHECK(problems(R"({"kind":"hinge","name":"h","axis":[0,0,0],"min_deg":-90,"max_deg":90})").size() == 1);
    CHECK(problems(R"({"kind":"hinge","name":"h","min_deg":-90})").at(0).key == "elements/2/max_deg");
    CHECK(problems(R"({"kind":"ball","name":"b","cone_deg":179.9})").empty());
    CHECK(problems(R"({"kind":"ball","name":"b","cone_deg":180})").at(0).allowed == "a number above 0 below 180 degrees");
    CHECK(problems(R"({"kind":"ball","name":"b","cone_deg":0})").size() == 1);
    CHECK(problems(R"({"kind":"slide","name":"s","min_mm":0,"max_mm":200,"step_mm":0})").size() == 1);
    CHECK(problems(R"({"kind":"swivel","name":"s","detent_deg":15})").empty());
    json part = good();
    for (int i = 0; i < 62; ++i) part["elements"].push_back({{"kind", "rigid"}});
    CHECK(readPart(part, "").part);
    part["elements"].push_back({{"kind", "rigid"}});
    CHECK(only(part).key == "elements");
}

TEST_CASE("only a part with one base, an outlet and nothing to keep free can be reversible", "[catalogue][part-json]") {
    json part = good();
    part["bases"].push_back(part["bases"][0]);
    CHECK(only(part).key == "reversible");
    part = good();
    part["keep_free"] = json::parse(R"([{"what":"cable","solid":{"sphere":{"radius_mm":5}}}])");
    CHECK(only(part).key == "reversible");
    part["reversible"] = false;
    CHECK(readPart(part, "").part);
}

TEST_CASE("all problems of a part come at once", "[catalogue][part-json]") {
    json part = good();
    part["id"] = "";
    part["elements"][0]["mass_g"] = "heavy";
    part["elements"][1]["kind"] = "spring";
    part["outlet"].erase("gender");
    part["colour"] = "red";
    CHECK(readPart(part, "").problems.size() == 5);
    for (const json& other : {json(nullptr), json(3), json("part"), json::array()}) CHECK(readPart(other, "").problems.size() == 1);
    CHECK(readPart(json::object(), "").problems.size() == 3);  // id, name, kind; what else is needed depends on the kind
}

TEST_CASE("a problem is one line of words", "[catalogue][part-json]") {
    CHECK(describe({"own.json", "arm-1", "elements/0/mass_g", "-1", "a number from 0 to 1000000 g"}) ==
          "own.json: part arm-1: elements/0/mass_g: found -1; allowed: a number from 0 to 1000000 g");
    CHECK(describe({"own.json", "", "", "no JSON", "a part"}) == "own.json: found no JSON; allowed: a part");
}

TEST_CASE("random parts of every kind read back from their written form as equal values", "[catalogue][part-json]") {
    test::RandomParts random(1);
    for (int round = 0; round < 1000; ++round) {
        const json typed = random.part(round % 2 == 0);
        const PartRead first = readPart(typed, "typed");
        for (const PartProblem& problem : first.problems) FAIL_CHECK(describe(problem));
        REQUIRE(first.part);
        const json written = writePart(*first.part);
        const PartRead second = readPart(written, "written");
        for (const PartProblem& problem : second.problems) FAIL_CHECK(describe(problem));
        REQUIRE(second.part);
        INFO(typed.dump());
        REQUIRE(*second.part == *first.part);                      // bit for bit
        REQUIRE(writePart(*second.part).dump() == written.dump());  // and the same text
        REQUIRE(readPart(json::parse(written.dump()), "text").part == first.part);
    }
}

TEST_CASE("numbers are written as they were typed and read back as they were", "[catalogue][part-json]") {
    CHECK(toSI(38, form::mm) == 0.038);
    CHECK(fromSI(0.038, form::mm) == 38);
    CHECK(fromSI(radians(30), form::degree) == 30);
    CHECK(fromSI(radians(-179.99), form::degree) == -179.99);
    test::RandomParts random(2);
    int moved = 0;
    for (int i = 0; i < 20000; ++i) {
        for (const FormUnit& unit : {form::mm, form::degree}) {
            const double typed = std::round(random.between(-5000, 5000) * 1e4) / 1e4;
            CHECK(fromSI(toSI(typed, unit), unit) == typed);
            const double si = random.between(-5, 5);  // worked out, never typed
            const double back = toSI(fromSI(si, unit), unit);
            CHECK(std::abs(back - si) <= 2.3e-16 * std::abs(si));
            CHECK(toSI(fromSI(back, unit), unit) == back);
            moved += back != si;
        }
    }
    CHECK(moved < 4000);  // one in ten
}

TEST_CASE("turns are written as roll, pitch and yaw that give the same turn, upside down and straight up too", "[catalogue][part-json]") {
    test::RandomParts random(3);
    double worst = 0;
    for (int i = 0; i < 5000; ++i) {
        double pitch = random.between(-3.2, 3.2);
        if (i % 3 == 0) pitch = (i % 2 ? 1 : -1) * (pi / 2 - std::pow(10.0, random.between(-14, -2)));
        if (i % 7 == 0) pitch = i % 2 ? pi / 2 : -pi / 2;
        const Mat3 R = rotationFromRollPitchYaw(random.between(-3.2, 3.2), pitch, random.between(-3.2, 3.2));
        const json written = writeTurn(R);
        const Mat3 again = rotationFromRollPitchYaw(radians(written[0]), radians(written[1]), radians(written[2]));
        worst = std::max(worst, (again - R).cwiseAbs().maxCoeff());
        REQUIRE(writeTurn(again) == written);
    }
    CHECK(worst < 2e-11);
}

TEST_CASE("spoiled parts never crash the reader: they give problems, or a part that reads back equal", "[catalogue][part-json][fuzz]") {
    test::RandomParts random(20000);
    const std::vector<json> strange{nullptr, true, "", "nan", "NaN", "inf", "1e999", -1, 0, 1e300, -1e300, 1e-300, 181, 5e9, std::numeric_limits<double>::infinity(),
                                    std::numeric_limits<double>::quiet_NaN(), std::uint64_t{18446744073709551615u}, json::array(), json::object(),
                                    json::array({1, 2, 3}), json::array({json::array({json::array()})}), std::string(5000, 'x'), "\xff\xfe not UTF-8", "rigid", "UNC 1/4-20"};
    int good = 0, bad = 0;
    for (int round = 0; round < 2000; ++round) {
        const json whole = random.part(round % 2 == 0);
        const json flat = whole.flatten();
        std::vector<std::string> places;
        for (const auto& [pointer, value] : flat.items()) {
            for (std::size_t cut = pointer.find('/', 1); cut != std::string::npos; cut = pointer.find('/', cut + 1)) places.push_back(pointer.substr(0, cut));
            places.push_back(pointer);
        }
        for (int spoil = 0; spoil < 10; ++spoil) {
            json part = whole;
            for (int times = random.whole(1, 2); times > 0; --times) {
                const json::json_pointer place(places[static_cast<std::size_t>(random.whole(0, static_cast<int>(places.size()) - 1))]);
                if (!part.contains(place)) continue;  // went with its parent
                const json::json_pointer parent = place.parent_pointer();
                const int how = random.whole(0, 3);
                if (how == 0 && part[parent].is_object()) part[parent].erase(place.back());
                else if (how == 1 && part[parent].is_object()) part[parent][place.back() + "x"] = part[place];
                else part[place] = strange[static_cast<std::size_t>(random.whole(0, static_cast<int>(strange.size()) - 1))];
            }
            const PartRead read = readPart(part, "spoiled");
            if (!read.part) {
                ++bad;
                REQUIRE_FALSE(read.problems.empty());
                for (const PartProblem& problem : read.problems) REQUIRE(describe(problem).size() < 1000);
                continue;
            }
            ++good;
            REQUIRE(read.problems.empty());
            const json written = writePart(*read.part);
            const PartRead again = readPart(written, "again");
            for (const PartProblem& problem : again.problems) FAIL_CHECK(describe(problem));
            REQUIRE(again.part);
            REQUIRE(*again.part == *read.part);
        }
    }
    CHECK(good > 2000);
    CHECK(bad > 10000);
}
