#include <catch2/catch.hpp>

#include <algorithm>
#include <filesystem>
#include <map>
#include <set>

#include <nlohmann/json.hpp>

#include "core/catalogue/catalogue.h"
#include "core/storage/plan_file.h"
#include "core/storage/plan_json.h"
#include "run_program.h"

using namespace hither;
using namespace hither::test;
using Json = nlohmann::json;

namespace {

std::vector<std::string> samples() {
    std::vector<std::string> names;
    for (const auto& entry : std::filesystem::directory_iterator(samplePath("")))
        if (entry.path().extension() == ".hither") names.push_back(entry.path().stem().string());
    std::sort(names.begin(), names.end());
    return names;
}

/// Findings of a sample that are not simply met: "option finding-id verdict", and how many are met.
struct Expected { std::set<std::string> notMet; int met = 0; int code = 0; };
Expected found(const std::string& name) {
    const Ran ran = runProgram("check --json '" + samplePath(name + ".hither") + "'");
    Expected e;
    e.code = ran.code;
    const Json document = Json::parse(ran.out);
    for (const Json& option : document["options"])
        for (const Json& f : option["findings"]) {
            if (f["verdict"] == "meets") ++e.met;
            else e.notMet.insert(option["id"].get<std::string>() + " " + f["id"].get<std::string>() + " " + f["verdict"].get<std::string>());
        }
    return e;
}

}  // namespace

TEST_CASE("each sample says what it shows and has its text form beside it, whole value equal", "[samples]") {
    const std::vector<std::string> names = samples();
    CHECK(names.size() >= 8);
    for (const std::string& name : names) {
        INFO(name);
        const PlanRead file = openPlanFile(samplePath(name + ".hither"));
        const PlanRead text = planFromJsonFile(samplePath(name + ".json"));  // complete: needs no catalogue
        REQUIRE(file.plan);
        REQUIRE(text.plan);
        CHECK(*file.plan == *text.plan);
        CHECK(planToJson(*file.plan) == readText(samplePath(name + ".json")));
        CHECK_FALSE(file.plan->shows.empty());
        // A second way round: through the bytes of a file.
        const PlanBytes bytes = planToBytes(*text.plan);
        REQUIRE(bytes.bytes);
        const PlanRead again = planFromBytes(*bytes.bytes);
        REQUIRE(again.plan);
        CHECK(*again.plan == *text.plan);
    }
}

TEST_CASE("parts copied in the samples are those of the shipped catalogue", "[samples]") {
    Catalogue catalogue;
    REQUIRE(catalogue.addFolder(std::string(HITHER_SOURCE_DIR) + "/resources/parts").empty());
    for (const std::string& name : samples()) {
        const PlanRead file = openPlanFile(samplePath(name + ".hither"));
        REQUIRE(file.plan);
        for (const auto& part : file.plan->parts) {
            INFO(name << " " << part->id);
            REQUIRE(catalogue.find(part->id));
            CHECK(*catalogue.find(part->id) == *part);
        }
    }
}

TEST_CASE("the samples' findings are these", "[samples]") {
    // What each is there to show, worked out when it was made; ids as documented in resources/command_line.md.
    const std::map<std::string, Expected> expected = {
        {"elbow_switch_on_chair", {{}, 16, 0}},
        {"head_switch_on_bed", {{"rail movement.site:head-mount misses", "rail movement.support:head-mount misses"}, 17, 1}},
        {"two_switches_on_tray", {{}, 41, 0}},
        {"finger_switch_at_table", {{}, 14, 0}},
        {"knee_switch_under_tray", {{"under clearance.body:knee-mount/2~body/thigh_left close"}, 17, 0}},
        {"foot_switch_on_pole", {{}, 17, 0}},
        {"does_not_mate", {{"found fit.mate:head-mount/0~head-mount/1 misses"}, 14, 1}},
        {"two_options_at_one_site", {{}, 53, 0}},
    };
    std::set<std::string> listed;
    for (const auto& [name, e] : expected) listed.insert(name);
    const std::vector<std::string> names = samples();
    CHECK(listed == std::set<std::string>(names.begin(), names.end()));
    for (const auto& [name, e] : expected) {
        const Expected now = found(name);
        INFO(name);
        CHECK(now.notMet == e.notMet);
        CHECK(now.met == e.met);
        CHECK(now.code == e.code);
    }
}

TEST_CASE("the adapter that a sample is offered makes it fit", "[samples]") {
    const Folder folder;
    Json plan = Json::parse(readText(samplePath("does_not_mate.json")));
    const Json check = Json::parse(runProgram("check --json '" + samplePath("does_not_mate.json") + "'").out);
    const Json& finding = check["options"][0]["findings"][0];
    REQUIRE(finding["verdict"] == "misses");
    const Json& remedy = finding["remedy"];
    REQUIRE(remedy["kind"] == "insert_parts");
    Json& parts = plan["options"][0]["mounts"][0]["parts"];
    parts.insert(parts.begin() + remedy["before_part"].get<int>(), remedy["insert"].begin(), remedy["insert"].end());
    writeText(folder.file("mended.json"), plan.dump());
    REQUIRE(runProgram("solve " + folder.quoted("mended.json") + " --write").code == 0);
    const Json mended = Json::parse(runProgram("check --json " + folder.quoted("mended.json")).out);
    for (const Json& f : mended["options"][0]["findings"]) {
        INFO(f["sentence"]);
        if (f["check"] == "fit") CHECK(f["verdict"] == "meets");
    }
}
