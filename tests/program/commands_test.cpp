#include <catch2/catch.hpp>

#include <cmath>
#include <sstream>

#include <nlohmann/json.hpp>

#include "run_program.h"

using namespace hither::test;
using Json = nlohmann::json;

namespace {

std::string quotedSample(const std::string& name) { return "'" + samplePath(name) + "'"; }
const std::string elbow = quotedSample("elbow_switch_on_chair.hither");

Json jsonOf(const std::string& words, int code) {
    const Ran ran = runProgram(words);
    INFO(words << "\n" << ran.err);
    CHECK(ran.code == code);
    CHECK(ran.err.empty());
    return Json::parse(ran.out);
}

}  // namespace

TEST_CASE("every command helps with an example", "[program]") {
    const Ran all = runProgram("--help");
    CHECK(all.code == 0);
    for (const char* command : {"check", "parts", "solve", "import", "export", "resolve", "list"}) {
        CHECK(all.out.find(command) != std::string::npos);
        const Ran ran = runProgram(std::string(command) + " --help");
        CHECK(ran.code == 0);
        CHECK(ran.out.find("Example:\n  hither " + std::string(command)) != std::string::npos);
    }
}

TEST_CASE("check: plain words with the cautions, and the exit code says whether a check misses", "[program]") {
    const Ran good = runProgram("check " + elbow);
    CHECK(good.code == 0);
    CHECK(good.out.find("passes these checks") != std::string::npos);
    CHECK(good.out.find("Planning aid only") != std::string::npos);
    CHECK(good.out.find("vehicle transport") != std::string::npos);
    const Ran bad = runProgram("check --brief " + quotedSample("does_not_mate.hither"));
    CHECK(bad.code == 1);
    CHECK(bad.out.find("MISSES") != std::string::npos);
    CHECK(bad.out.find("-> Add ") != std::string::npos);
    CHECK(bad.out.find("  meets ") == std::string::npos);
    const Ran tray = runProgram("check " + quotedSample("two_switches_on_tray.hither"));
    for (const Ran& ran : {good, bad, tray}) {
        std::string lower = ran.out;
        for (char& c : lower) if (c >= 'A' && c <= 'Z') c = static_cast<char>(c - 'A' + 'a');
        CHECK(lower.find("safe") == std::string::npos);
        CHECK(lower.find("{") == std::string::npos);  // no fact was left out of a sentence
    }
}

TEST_CASE("changing units changes words, never a verdict", "[program]") {
    for (const char* name : {"elbow_switch_on_chair", "head_switch_on_bed", "does_not_mate"}) {
        const Ran metric = runProgram("check --metric " + quotedSample(std::string(name) + ".hither"));
        const Ran inch = runProgram("check --inch " + quotedSample(std::string(name) + ".hither"));
        CHECK(metric.code == inch.code);
        CHECK(metric.out.find(" mm") != std::string::npos);
        CHECK(inch.out.find(" in") != std::string::npos);
        CHECK(inch.out.find("mm;") == std::string::npos);
        Json a = jsonOf("check --json --metric " + quotedSample(std::string(name) + ".hither"), metric.code);
        Json b = jsonOf("check --json --inch " + quotedSample(std::string(name) + ".hither"), metric.code);
        for (Json* document : {&a, &b})
            for (Json& option : (*document)["options"])
                for (Json& finding : option["findings"]) {
                    finding.erase("sentence");
                    if (finding.contains("remedy")) finding["remedy"].erase("sentence");
                }
        CHECK(a == b);
    }
}

TEST_CASE("a plan file and its JSON form give the same findings", "[program]") {
    CHECK(runProgram("check --json " + quotedSample("two_switches_on_tray.hither")).out ==
          runProgram("check --json " + quotedSample("two_switches_on_tray.json")).out);
}

TEST_CASE("the same answers every run", "[program]") {
    for (const char* words : {"check --json ", "solve --json ", "resolve --json ", "parts --json "}) {
        const std::string command = words + quotedSample("two_options_at_one_site.hither");
        CHECK(runProgram(command).out == runProgram(command).out);
    }
}

TEST_CASE("export and import give the plan back, text equal to text", "[program]") {
    const Folder folder;
    REQUIRE(runProgram("export " + elbow + " -o " + folder.quoted("one.json")).code == 0);
    CHECK(readText(folder.file("one.json")) == runProgram("export " + elbow).out);
    REQUIRE(runProgram("import " + folder.quoted("one.json") + " -o " + folder.quoted("one.hither")).code == 0);
    CHECK(runProgram("export " + folder.quoted("one.hither")).out == readText(folder.file("one.json")));
    // Not over a plan that is there, unless asked; then the old one is kept.
    CHECK(runProgram("import " + folder.quoted("one.json") + " -o " + folder.quoted("one.hither")).code == 2);
    CHECK(runProgram("import " + folder.quoted("one.json") + " -o " + folder.quoted("one.hither") + " --replace").code == 0);
    CHECK(std::filesystem::exists(folder.file("one.hither.bak")));
    // The same for text that somebody may have edited.
    writeText(folder.file("one.json"), "edited by hand");
    CHECK(runProgram("export " + elbow + " -o " + folder.quoted("one.json")).code == 2);
    CHECK(readText(folder.file("one.json")) == "edited by hand");
    CHECK(runProgram("export " + elbow + " -o " + folder.quoted("one.json") + " --replace").code == 0);
    CHECK(readText(folder.file("one.json.bak")) == "edited by hand");
    const std::string before = readText(folder.file("one.json"));
    CHECK(runProgram("solve " + folder.quoted("one.json") + " --write").code == 0);
    CHECK(readText(folder.file("one.json.bak")) == before);
}

TEST_CASE("solve brings the switch to its site and --write saves it as the next revision", "[program]") {
    const Folder folder;
    Json plan = Json::parse(readText(samplePath("elbow_switch_on_chair.json")));
    // All joints at home: far from the site.
    for (Json& part : plan["options"][0]["mounts"][0]["parts"]) { part.erase("joints"); part.erase("clocking_deg"); }
    writeText(folder.file("home.json"), plan.dump());
    REQUIRE(runProgram("import " + folder.quoted("home.json") + " -o " + folder.quoted("home.hither")).code == 0);
    CHECK(runProgram("check " + folder.quoted("home.hither")).code == 1);
    const std::string before = readText(folder.file("home.hither"));
    const Json dry = jsonOf("solve --json " + folder.quoted("home.hither"), 0);
    CHECK(readText(folder.file("home.hither")) == before);
    CHECK(dry["mounts"][0]["status"] == "solved");
    CHECK(dry["mounts"][0]["solutions"].size() > 1);
    for (const Json& s : dry["mounts"][0]["solutions"]) {
        CHECK(s["position_off_mm"].get<double>() <= 0.01);
        CHECK(s["angle_off_deg"].get<double>() <= 0.01);
    }
    const int revision = Json::parse(runProgram("export " + folder.quoted("home.hither")).out)["revision"];
    REQUIRE(runProgram("solve " + folder.quoted("home.hither") + " --write").code == 0);
    const Json after = Json::parse(runProgram("export " + folder.quoted("home.hither")).out);
    CHECK(after["revision"] == revision + 1);
    const Json checked = jsonOf("check --json " + folder.quoted("home.hither"), 0);
    for (const Json& f : checked["options"][0]["findings"])
        if (f["id"] == "reach.site:elbow-mount") CHECK(f["value_mm"].get<double>() < 0.01);
}

TEST_CASE("solve says how near it gets and what stops it when the site is out of reach", "[program]") {
    const Folder folder;
    Json plan = Json::parse(readText(samplePath("elbow_switch_on_chair.json")));
    plan["sites"][0] = {{"id", "elbow"}, {"name", "far away"}, {"given", "typed"}, {"point_mm", {2000, 0, 800}}, {"direction", {1, 0, 0}}};
    writeText(folder.file("far.json"), plan.dump());
    const Json far = jsonOf("solve --json " + folder.quoted("far.json"), 1);
    CHECK(far["mounts"][0]["status"] == "near_only");
    CHECK(far["mounts"][0]["nearest"]["position_off_mm"].get<double>() > 1000);
    CHECK(far["mounts"][0]["reach_short_mm"].get<double>() > 500);
    const Ran words = runProgram("solve " + folder.quoted("far.json"));
    CHECK(words.out.find("cannot be brought to far away") != std::string::npos);
}

TEST_CASE("an option that is not far enough does not hide the others", "[program]") {
    const Folder folder;
    Json plan = Json::parse(readText(samplePath("elbow_switch_on_chair.json")));
    Json later = plan["options"][0];
    later["id"] = "later";
    later["name"] = "Not there yet";
    later["mounts"][0]["parts"] = Json::array();
    plan["options"].push_back(later);
    writeText(folder.file("two.json"), plan.dump());
    const Ran words = runProgram("check " + folder.quoted("two.json"));
    CHECK(words.code == 1);
    CHECK(words.out.find("passes these checks (16 met)") != std::string::npos);
    CHECK(words.out.find("Not there yet cannot be checked yet") != std::string::npos);
    const Json document = jsonOf("check --json " + folder.quoted("two.json"), 1);
    CHECK(document["options"].size() == 2);
    CHECK(document["options"][1]["problem"].get<std::string>().find("options/1/mounts/0") != std::string::npos);
    CHECK(jsonOf("check --json --option cane " + folder.quoted("two.json"), 0)["options"].size() == 1);
    // Asked for alone it is bad input, like a plan with nothing else.
    CHECK(runProgram("check --option later " + folder.quoted("two.json")).code == 2);
}

TEST_CASE("solve tells when the way it offers leaves a check missed, and which way was asked for", "[program]") {
    // The backrest takes the site away whatever the gooseneck does.
    const Ran bed = runProgram("solve " + quotedSample("head_switch_on_bed.hither"));
    CHECK(bed.code == 1);
    CHECK(bed.out.find("missed (hither check says which)") != std::string::npos);
    const Json ways = Json::parse(runProgram("solve --json " + quotedSample("head_switch_on_bed.hither")).out)["mounts"][0]["solutions"];
    const Json check = Json::parse(runProgram("check --json " + quotedSample("head_switch_on_bed.hither")).out)["options"][0]["findings"];
    int missed = 0;
    for (const Json& f : check) if (f["verdict"] == "misses") ++missed;
    CHECK(ways[0]["checks_missed"] == missed);
    for (std::size_t i = 1; i < ways.size(); ++i) CHECK(ways[i - 1]["checks_missed"] <= ways[i]["checks_missed"]);
    const Ran one = runProgram("solve --way 5 " + quotedSample("elbow_switch_on_chair.hither"));
    CHECK(one.out.find("Way 5") != std::string::npos);
    CHECK(one.out.find("Way 1") == std::string::npos);
    CHECK(runProgram("solve --way 99 " + elbow).code == 2);
}

TEST_CASE("resolve: the face is where the poses say, and solids lie about their part", "[program]") {
    const Json all = jsonOf("resolve --json " + elbow, 0);
    const Json& mount = all["options"][0]["mounts"][0];
    const Json& site = all["options"][0]["sites"][0];
    for (std::size_t i = 0; i < 3; ++i) CHECK(mount["face"]["at_mm"][i].get<double>() == Approx(site["at_mm"][i].get<double>()).margin(0.01));
    // The press axis, -z of the face, lies along the movement.
    for (std::size_t i = 0; i < 3; ++i) CHECK(-mount["face"]["axes"][i][2u].get<double>() == Approx(site["movement"][i].get<double>()).margin(2e-4));
    CHECK(mount["parts"].size() == 4);
    CHECK(mount["freedoms"].size() >= 8);
    for (const char* key : {"supports", "body", "sites", "mounts"}) CHECK_FALSE(all["options"][0][key].empty());
}

TEST_CASE("parts: rows add up to the total, as text, CSV and JSON", "[program]") {
    const Json list = jsonOf("parts --json " + quotedSample("two_switches_on_tray.hither"), 0)["lists"][0];
    // Two mounts of the same four parts: every part counts twice.
    double sum = 0;
    for (const Json& row : list["items"]) {
        CHECK(row["count"] == 2);
        CHECK(std::stod(row["line_total"]["amount"].get<std::string>()) == Approx(2 * std::stod(row["price_each"]["amount"].get<std::string>())));
        sum += std::stod(row["line_total"]["amount"].get<std::string>());
    }
    REQUIRE(list["totals"].size() == 1);
    CHECK(std::stod(list["totals"][0]["amount"].get<std::string>()) == Approx(sum));
    const Ran csv = runProgram("parts --csv " + elbow);
    CHECK(csv.code == 0);
    std::istringstream rows(csv.out);
    std::string line;
    int count = 0;
    while (std::getline(rows, line)) {
        ++count;
        CHECK(std::string("=+-@\t").find(line[0]) == std::string::npos);
    }
    CHECK(count >= 5);
    CHECK(runProgram("parts " + elbow).out.find("Tools needed") != std::string::npos);
}

TEST_CASE("list names parts by words, supports with their dimensions, and control sites", "[program]") {
    const Json necks = jsonOf("list parts gooseneck 300 --json", 0)["parts"];
    CHECK(necks.size() >= 2);
    for (const Json& p : necks) CHECK(p["name"].get<std::string>().find("300") != std::string::npos);
    CHECK(jsonOf("list supports --json", 0)["supports"].size() == 9);
    CHECK(jsonOf("list sites --json", 0)["sites"].size() >= 30);
}

TEST_CASE("a person's own parts load beside the shipped ones, wrong ones are named and left out", "[program]") {
    const Folder folder;
    std::filesystem::create_directory(folder.file("parts"));
    writeText(folder.file("parts/mine.json"),
              R"({"id": "my-spacer", "name": "My spacer", "kind": "adapter", "basis": {"kind": "measured", "source": "KL, 2026-05-01"},
                  "bases": [{"interface": "UNC 1/4-20", "gender": "female", "length_mm": 8}],
                  "elements": [{"kind": "rigid", "to_mm": [0, 0, 12], "mass_g": 20}],
                  "outlet": {"interface": "UNC 1/4-20", "gender": "male", "length_mm": 6}})");
    const std::string with = "HITHER_PARTS=" + folder.quoted("parts") + " '" HITHER_PROGRAM "' list parts my-spacer >" + folder.quoted("out") + " 2>" + folder.quoted("err");
    CHECK(std::system(with.c_str()) == 0);
    CHECK(readText(folder.file("out")).find("My spacer") != std::string::npos);
    writeText(folder.file("parts/wrong.json"), R"({"id": "my-other", "name": "", "kind": "thing"})");
    CHECK(std::system(with.c_str()) == 0);
    CHECK(readText(folder.file("err")).find("wrong.json") != std::string::npos);
    CHECK(readText(folder.file("out")).find("My spacer") != std::string::npos);
}
