#include <catch2/catch.hpp>

#include <cmath>
#include <fstream>
#include <sstream>

#include <nlohmann/json.hpp>

#include "core/catalogue/catalogue.h"
#include "core/catalogue/solid_json.h"

using namespace hither;
using nlohmann::json;

namespace {

std::string page() {
    std::ifstream in(std::string(HITHER_SOURCE_DIR) + "/resources/parts/part_format.md");
    std::stringstream text;
    text << in.rdbuf();
    return text.str();
}

/// The first block of the page between ```json and ```.
json workedPart() {
    const std::string text = page(), begin = "```json\n";
    const auto from = text.find(begin);
    REQUIRE(from != std::string::npos);
    return json::parse(text.substr(from + begin.size(), text.find("\n```", from + begin.size()) - from - begin.size()));
}

}  // namespace

TEST_CASE("the worked part of the format page is read as the page says", "[catalogue][part-format]") {
    const PartRead read = readPart(workedPart(), "part_format.md");
    for (const PartProblem& problem : read.problems) FAIL_CHECK(describe(problem));
    REQUIRE(read.part);
    CHECK(read.part->totalMass_kg().value.value() == Approx(0.292));
    CHECK(read.part->totalMass_kg().basis.kind == BasisKind::assumed);
    double straight = 0;
    for (const Element& element : read.part->elements)
        if (const auto* rigid = std::get_if<RigidElement>(&element.what)) straight += rigid->X.translation().z();
    CHECK(straight == Approx(0.016 + 0.130 + 0.130 + 0.016));
    const auto& ball = std::get<BallElement>(read.part->elements.at(1).what);
    CHECK(ball.joint.hold.value == 0.25 * 17);
    CHECK(ball.joint.hold.basis == Basis{BasisKind::measured, "KL, 2026-05-01"});
    CHECK(ball.joint.lockGroup == "knob");
    // EI and GJ by the formulas of the page, with E and G of resources/materials.
    const double fourth = pi * (std::pow(0.016, 4) - std::pow(0.013, 4));
    const auto& rod = std::get<RigidElement>(read.part->elements.at(2).what);
    CHECK(rod.EI_Nm2.value.value() == Approx(200e9 * fourth / 64).epsilon(0.005));
    CHECK(rod.GJ_Nm2.value.value() == Approx(77.3e9 * fourth / 32).epsilon(0.005));
}

TEST_CASE("every key that a problem offers as allowed is explained on the format page", "[catalogue][part-format]") {
    // A stray key makes the reader list the keys it knows.
    const std::string text = page();
    const auto explained = [&](const json& part) {
        int lists = 0;
        for (const PartProblem& problem : readPart(part, "").problems) {
            if (problem.found != "a key that does not exist") continue;
            ++lists;
            std::stringstream names(problem.allowed.substr(std::string("the keys ").size()));
            for (std::string name; std::getline(names, name, ',');) {
                name.erase(0, name.find_first_not_of(' '));
                INFO(name);
                CHECK((text.find("`" + name + "`") != std::string::npos || text.find("\"" + name + "\"") != std::string::npos));
            }
        }
        return lists;
    };
    for (const char* element : {R"({"kind":"rigid","?":1})", R"({"kind":"hinge","?":1})", R"({"kind":"swivel","?":1})", R"({"kind":"ball","?":1})",
                                R"({"kind":"slide","?":1})", R"({"kind":"bend","?":1})"})
        CHECK(explained({{"elements", json::array({json::parse(element)})}, {"?", 1}}) == 2);
    for (const char* grip : {R"({"on":"rail","?":1})", R"({"on":"edge","?":1})", R"({"on":"face","?":1})", R"({"on":"cloth","?":1})"})
        CHECK(explained({{"grips", json::array({json::parse(grip)})}}) == 1);
    CHECK(explained(json::parse(R"({"outlet":{"interface":"bolt pattern","?":1},"face":{"?":1},"price":{"?":1},"keep_free":[{"?":1}],"basis":{"?":1}})")) == 5);
}

TEST_CASE("the solids of the format page are solids", "[catalogue][part-format]") {
    const std::string text = page();
    int found = 0;
    for (const char* kind : {"sphere", "capsule", "cylinder", "box", "rounded_box", "hull"}) {
        const auto from = text.find("    {\"" + std::string(kind) + "\":");
        REQUIRE(from != std::string::npos);
        int depth = 0;
        std::size_t end = from + 4;
        do {
            depth += text[end] == '{' ? 1 : text[end] == '}' ? -1 : 0;
            ++end;
        } while (depth > 0);
        std::vector<PartProblem> problems;
        CHECK(readSolid(json::parse(text.substr(from, end - from)), kind, problems));
        for (const PartProblem& problem : problems) FAIL_CHECK(describe(problem));
        ++found;
    }
    CHECK(found == 6);
}
