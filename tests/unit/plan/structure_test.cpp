#include <catch2/catch.hpp>

#include <limits>

#include "core/plan/structure.h"
#include "tests/unit/plan/fixture.h"

using namespace hither;
using namespace hither::test;

TEST_CASE("every fault in a plan's structure names its place", "[plan]") {
    CHECK(structureProblems(smallPlan()).empty());
    struct Row { const char* where; const char* what; void (*spoil)(Plan&); };
    for (const Row& row : {
             Row{"options/0/mounts/0/parts/2", "no part \"ghost\"", [](Plan& p) { p.options[0].mounts[0].parts[2].part = "ghost"; }},
             Row{"options/0/mounts/0/parts/1", "no id", [](Plan& p) { p.options[0].mounts[0].parts[1].part.clear(); }},
             Row{"options/0/mounts/0/parts/1", "no number", [](Plan& p) { p.options[0].mounts[0].parts[1].joints["elbow"].q[0] = std::numeric_limits<double>::infinity(); }},
             Row{"options/0/mounts/0/parts", "no parts", [](Plan& p) { p.options[0].mounts[0].parts.clear(); }},
             Row{"options/0/mounts/0/parts", "10000 parts", [](Plan& p) { p.options[0].mounts[0].parts.resize(10000); }},
             Row{"options/0/mounts/0", "fixed to nothing", [](Plan& p) { p.options[0].mounts[0].support.clear(); }},
             Row{"options/0/mounts/0/fixed_to", "not fixed to any", [](Plan& p) { p.options[0].mounts[0].attachment.clear(); }},
             Row{"options/0/mounts/0/fixed_to", "no support \"x\"", [](Plan& p) { p.options[0].mounts[0].support = "x"; }},
             Row{"options/0/mounts/0/fixed_to", "no number", [](Plan& p) { p.options[0].mounts[0].place.along_m = std::numeric_limits<double>::quiet_NaN(); }},
             Row{"options/0/mounts/0/site", "no site", [](Plan& p) { p.options[0].mounts[0].site = "x"; }},
             Row{"options/0/mounts/1", "used by another mount", [](Plan& p) { p.options[0].mounts.push_back(p.options[0].mounts[0]); }},
             Row{"options/0/mounts/0", "no id", [](Plan& p) { p.options[0].mounts[0].id.clear(); }},
             Row{"options/1", "used by another option", [](Plan& p) { p.options.push_back(p.options[0]); }},
             Row{"supports/1", "used by another support", [](Plan& p) { p.supports.push_back(p.supports[0]); }},
             Row{"sites/1", "used by another site", [](Plan& p) { p.sites.push_back(p.sites[0]); }},
             Row{"sites/0", "no number", [](Plan& p) { p.sites[0].point.y() = std::numeric_limits<double>::quiet_NaN(); }},
             Row{"sites/0", "no length", [](Plan& p) { p.sites[0].direction.setZero(); }},
             Row{"sites/0", "not negative", [](Plan& p) { p.sites[0].force_N = {-1.0, {}}; }},
             Row{"parts/3", "used by another part", [](Plan& p) { p.parts.push_back(p.parts[0]); }},
             Row{"limits/knock_N", "not negative", [](Plan& p) { p.limits.knock_N = -1; }},
             Row{"options/0/keep_outs/0", "margin", [](Plan& p) { KeepOut k; k.id = "k"; k.margin_m = -1; p.options[0].keepOuts = {k}; }},
             Row{"options/0/keep_outs/0", "no support", [](Plan& p) { KeepOut k; k.id = "k"; k.support = "x"; p.options[0].keepOuts = {k}; }},
             Row{"extra_items/0", "at least 1", [](Plan& p) { p.extraItems = {{"t", "t", 0, {}, ""}}; }},
             Row{"accepted/0", "no option", [](Plan& p) { p.accepted = {{"x", "f", "n", "w", "t"}}; }}}) {
        Plan plan = smallPlan();
        row.spoil(plan);
        const auto problems = structureProblems(plan);
        INFO(row.where << ": " << row.what);
        REQUIRE(problems.size() == 1);
        CHECK(problems[0].where == row.where);
        CHECK(problems[0].what.find(row.what) != std::string::npos);
    }
    REQUIRE(structureProblems(smallPlan(), 1).size() == 1);
    CHECK(structureProblems(smallPlan(), 1)[0].what == "there is no option number 2");
}
