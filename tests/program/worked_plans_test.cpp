#include <catch2/catch.hpp>

#include <nlohmann/json.hpp>

#include "run_program.h"

using namespace hither::test;
using Json = nlohmann::json;

TEST_CASE("the two plans of plan_format.md, copied by hand, have the findings that the page tells", "[samples]") {
    const std::string page = readText(HITHER_SOURCE_DIR "/resources/plan_format.md");
    Folder folder;
    std::size_t at = 0;
    const double farthest_mm[] = {0.4, 0.1};  // as the page says of the first; the second's rounding
    for (int i = 0; i < 2; ++i) {
        CAPTURE(i);
        at = page.find("```json\n", at);
        REQUIRE(at != std::string::npos);
        at += 8;
        const std::size_t end = page.find("```", at);
        writeText(folder.file("plan.json"), page.substr(at, end - at));
        at = end + 3;
        const Ran ran = runProgram("check --json " + folder.quoted("plan.json"));
        INFO(ran.err);
        REQUIRE(ran.code == 0);
        const Json document = Json::parse(ran.out);
        bool reached = false;
        REQUIRE(document["options"].size() == 1);
        for (const Json& f : document["options"][0]["findings"]) {
            INFO(f.dump());
            CHECK(f["verdict"] == "meets");
            if (f["check"] == "reach" && f.contains("value_mm")) {
                reached = true;
                CHECK(f["value_mm"].get<double>() == Approx(farthest_mm[i]).margin(0.05));
            }
        }
        CHECK(reached);
    }
}
