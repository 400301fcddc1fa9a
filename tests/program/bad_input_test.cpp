#include <catch2/catch.hpp>

#include <nlohmann/json.hpp>

#include <sys/stat.h>
#include <unistd.h>

#include "run_program.h"

using namespace hither::test;
using Json = nlohmann::json;

namespace {

const std::string sample = "'" + samplePath("elbow_switch_on_chair.hither") + "'";

Json sampleJson() { return Json::parse(readText(samplePath("elbow_switch_on_chair.json"))); }

/// One clear line that names the program, and exit code 2; nothing on standard output.
void refused(const std::string& words, const std::string& mustSay) {
    const Ran ran = runProgram(words);
    INFO(words << "\nout: " << ran.out << "\nerr: " << ran.err);
    CHECK(ran.code == 2);
    CHECK(ran.out.empty());
    CHECK(lines(ran.err) == 1);
    CHECK(ran.err.rfind("hither: ", 0) == 0);
    CHECK(ran.err.find(mustSay) != std::string::npos);
}

void refusedEverywhere(const std::string& path, const std::string& mustSay) {
    for (const char* command : {"check ", "parts ", "solve ", "resolve ", "export "}) refused(command + path, mustSay);
}

}  // namespace

TEST_CASE("bad words: one line and exit code 2", "[program]") {
    refused("", "hither --help");
    refused("frobnicate", "hither --help");
    refused("check", "PLAN");
    refused("check " + sample + " --nonsense", "nonsense");
    refused("check " + sample + " --option nowhere", "nowhere");
    refused("parts " + sample + " --option nowhere", "nowhere");
    refused("solve " + sample + " --mount nowhere", "nowhere");
    refused("solve " + sample + " --way 0", "way");
    refused("parts " + sample + " --csv --json", "--json");
    refused("list chairs", "chairs");
}

TEST_CASE("files that are no plans: one line and exit code 2", "[program]") {
    const Folder folder;
    refusedEverywhere(folder.quoted("nothing.hither"), "nothing.hither");
    std::filesystem::create_directory(folder.file("folder.hither"));
    refusedEverywhere(folder.quoted("folder.hither"), "folder");
    writeText(folder.file("empty.hither"), "");
    refusedEverywhere(folder.quoted("empty.hither"), "empty.hither");
    writeText(folder.file("letter.hither"), "Dear team, here is the plan.\n");
    refusedEverywhere(folder.quoted("letter.hither"), "not a Hither plan");
    REQUIRE(mkfifo(folder.file("pipe.hither").c_str(), 0600) == 0);
    refusedEverywhere(folder.quoted("pipe.hither"), "pipe.hither");
    REQUIRE(symlink(samplePath("elbow_switch_on_chair.hither").c_str(), folder.file("link.hither").c_str()) == 0);
    refusedEverywhere(folder.quoted("link.hither"), "link.hither");
}

TEST_CASE("a file of 1 GB is refused at once", "[program]") {
    const Folder folder;
    for (const char* name : {"huge.hither", "huge.json"}) {
        writeText(folder.file(name), name[5] == 'j' ? "{" : "SQLite format 3");
        REQUIRE(truncate(folder.file(name).c_str(), 1'000'000'000) == 0);
        refused("check " + folder.quoted(name), "too large");
    }
}

TEST_CASE("cut, newer and foreign plan files: one line and exit code 2", "[program]") {
    const Folder folder;
    const std::string whole = readText(samplePath("elbow_switch_on_chair.hither"));
    REQUIRE(whole.size() > 8192);
    writeText(folder.file("cut.hither"), whole.substr(0, whole.size() / 2));
    refusedEverywhere(folder.quoted("cut.hither"), "cut.hither");
    // user_version is the big-endian number at byte 60 of an SQLite file (sqlite.org/fileformat2.html).
    std::string newer = whole;
    newer[63] = static_cast<char>(newer[63] + 1);
    writeText(folder.file("newer.hither"), newer);
    refusedEverywhere(folder.quoted("newer.hither"), "newer");
    std::string foreign = whole;  // application_id, byte 68
    foreign[70] = static_cast<char>(foreign[70] ^ 0x55);
    writeText(folder.file("foreign.hither"), foreign);
    refusedEverywhere(folder.quoted("foreign.hither"), "not a Hither plan");
    std::string damaged = whole;
    for (std::size_t i = 5000; i < 5100; ++i) damaged[i] = static_cast<char>(damaged[i] ^ 0x2a);
    writeText(folder.file("damaged.hither"), damaged);
    const Ran ran = runProgram("check " + folder.quoted("damaged.hither"));
    CHECK(ran.code == 2);
    CHECK(lines(ran.err) == 1);
}

TEST_CASE("values that cannot be: the line names the place", "[program]") {
    const Folder folder;
    const auto written = [&](const Json& json) { writeText(folder.file("bad.json"), json.dump()); return "check " + folder.quoted("bad.json"); };
    writeText(folder.file("nan.json"), R"({"hither_plan":1,"sites":[{"id":"s","point_mm":[NaN,0,0]}]})");
    refused("check " + folder.quoted("nan.json"), "nan.json");
    writeText(folder.file("open.json"), R"({"hither_plan":1,"title":"half)");
    refused("check " + folder.quoted("open.json"), "open.json");
    writeText(folder.file("deep.json"), std::string(100000, '['));
    refused("check " + folder.quoted("deep.json"), "deep.json");
    Json json = sampleJson();
    json["options"][0]["mounts"][0]["parts"][1]["part"] = "arm-of-another-world";
    refused(written(json), "options/0/mounts/0/parts/1");
    json = sampleJson();
    json["options"][0]["mounts"][0]["fixed_to"]["attachment"] = "no_such_rail";
    refused(written(json), "no_such_rail");
    json = sampleJson();
    json["options"][0]["mounts"][0]["fixed_to"] = Json::object();
    refused(written(json), "options/0/mounts/0");
    json = sampleJson();
    json["options"][0]["mounts"][0].erase("fixed_to");
    refused(written(json), "options/0/mounts/0");
    json = sampleJson();
    json["options"][0]["mounts"][0]["parts"] = Json::array();
    refused(written(json), "options/0/mounts/0");
    json = sampleJson();
    json["sites"][0]["tolerance_mm"] = -1;
    refused(written(json), "sites/0");
    json = sampleJson();
    json["sites"][0]["tolerance_mm"] = 1e300;
    refused(written(json), "sites/0/tolerance_mm");
    json = sampleJson();
    json["sites"][0]["colour"] = "red";
    refused(written(json), "colour");
    json = sampleJson();
    json["supports"][0]["dimensions"]["seat_width_mm"] = 4300;
    refused(written(json), "seat_width");
    json = sampleJson();
    json["suports"] = json["supports"];
    json.erase("supports");
    refused(written(json), "suports");
    json = sampleJson();
    json["supports"][0]["kind"] = "sofa";
    refused(written(json), "sofa");
}

TEST_CASE("a chain of 10,000 parts is refused, not tried", "[program]") {
    const Folder folder;
    Json json = sampleJson();
    Json arm = json["options"][0]["mounts"][0]["parts"][1];
    for (int i = 0; i < 10000; ++i) json["options"][0]["mounts"][0]["parts"].push_back(arm);
    writeText(folder.file("long.json"), json.dump());
    refused("check " + folder.quoted("long.json"), "options/0/mounts/0/parts");
}

TEST_CASE("a plan that somebody else has open is not written over", "[program]") {
    const Folder folder;
    REQUIRE(runProgram("import '" + samplePath("elbow_switch_on_chair.json") + "' -o " + folder.quoted("robin.hither")).code == 0);
    const std::string before = readText(folder.file("robin.hither"));
    // A lock of another computer: nobody here can tell whether its program still runs.
    const Ran held = runProgram("list sites");
    REQUIRE(held.code == 0);
    writeText(folder.file(".robin.hither.lock"), R"({"host": "elsewhere", "user": "mo", "pid": 4711, "since_utc": "2026-11-25T08:00:00Z", "boot": "x", "started": "y"})");
    const Ran ran = runProgram("solve " + folder.quoted("robin.hither") + " --write");
    INFO(ran.err);
    CHECK(ran.code == 2);
    CHECK(ran.err.find("open") != std::string::npos);
    CHECK(readText(folder.file("robin.hither")) == before);
}
