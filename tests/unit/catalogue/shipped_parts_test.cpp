#include <catch2/catch.hpp>

#include <algorithm>

#include <nlohmann/json.hpp>

#include "core/catalogue/catalogue.h"
#include "core/catalogue/json_text.h"
#include "core/catalogue/materials.h"
#include "core/catalogue/mating.h"
#include "core/catalogue/reversed.h"

using namespace hither;

namespace {

const std::filesystem::path resources = std::filesystem::path(HITHER_SOURCE_DIR) / "resources";

Catalogue shipped() {
    Catalogue catalogue;
    const auto problems = catalogue.addFolder(resources / "parts");
    for (const PartProblem& problem : problems) FAIL_CHECK(describe(problem));
    return catalogue;
}

}  // namespace

TEST_CASE("the shipped catalogue has no problem and the numbers that the plan of work asks for", "[catalogue][shipped]") {
    const Catalogue catalogue = shipped();
    std::size_t switches = 0, others = 0;
    for (const auto& part : catalogue.parts()) ++(part->kind == PartKind::switchDevice ? switches : others);
    CHECK(others >= 70);
    CHECK(switches >= 14);
}

TEST_CASE("every shipped part reads back from its written form as the same value", "[catalogue][shipped]") {
    const Catalogue catalogue = shipped();
    for (const auto& part : catalogue.parts()) {
        INFO(part->id);
        const nlohmann::json written = writePart(*part);
        const PartRead again = readPart(written, "again");
        REQUIRE(again.part);
        CHECK(*again.part == *part);
        CHECK(writePart(*again.part).dump() == written.dump());
    }
}

TEST_CASE("every shipped part says what it weighs, names known materials and its ports can be described", "[catalogue][shipped]") {
    std::vector<std::string> problems;
    const MaterialTable materials = readMaterials(resources / "materials" / "materials.json", problems);
    for (const std::string& problem : problems) FAIL_CHECK(problem);
    const Catalogue catalogue = shipped();
    for (const auto& part : catalogue.parts()) {
        INFO(part->id);
        CHECK(part->totalMass_kg().known());
        const auto check = [&](const Port& port) {
            CHECK_FALSE(describe(port).empty());
            if (!port.material.empty()) CHECK(materials.find(port.material) != nullptr);
            if (port.interface == Interface::thread) CHECK_FALSE(port.material.empty());
        };
        for (const Port& base : part->bases) check(base);
        if (part->outlet) check(*part->outlet);
    }
}

TEST_CASE("every part of the catalogue goes on another one, and something goes on its outlet", "[catalogue][shipped]") {
    const Catalogue catalogue = shipped();
    std::vector<const Port*> outlets;  // reversible parts offer their base as well
    for (const auto& part : catalogue.parts()) {
        if (part->outlet) outlets.push_back(&*part->outlet);
        if (part->reversible) outlets.push_back(&part->bases.front());
    }
    const auto goesOn = [&](const Part& next) {
        return !next.bases.empty() && std::any_of(outlets.begin(), outlets.end(), [&](const Port* outlet) { return mateWith(*outlet, next).mate.goesTogether(); });
    };
    for (const auto& next : catalogue.parts()) {
        if (next->bases.empty()) continue;
        INFO(next->id);
        CHECK((goesOn(*next) || (next->reversible && goesOn(reversed(*next)))));
    }
    for (const auto& part : catalogue.parts()) {
        if (!part->outlet) continue;
        INFO(part->id);
        bool found = false;
        for (const auto& next : catalogue.parts()) {
            if (next->bases.empty()) continue;
            found = found || mateWith(*part->outlet, *next).mate.goesTogether() || (next->reversible && mate(*part->outlet, *next->outlet).goesTogether());
        }
        CHECK(found);
    }
}
