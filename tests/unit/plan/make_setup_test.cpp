#include <catch2/catch.hpp>

#include "core/plan/edits/joints.h"
#include "tests/unit/plan/fixture.h"

using namespace hither;
using namespace hither::test;

TEST_CASE("an option is made ready to be judged", "[plan]") {
    const SetupMade made = makeSetup(smallPlan(), 0, BodyData{});
    REQUIRE(made.setup);
    CHECK(made.problems.empty());
    CHECK(made.setup->option == "first");
    REQUIRE(made.setup->mounts.size() == 1);
    const SetupMount& m = made.setup->mounts[0];
    CHECK(m.mount == smallPlan().options[0].mounts[0]);
    CHECK(m.chain.parts.size() == 3);
    CHECK(m.q.size() == m.chain.freedomCount());
    CHECK(made.setup->situation.site("elbow_right") != nullptr);
}

TEST_CASE("what keeps an option from being judged names its place", "[plan]") {
    struct Row { const char* where; const char* what; void (*spoil)(Plan&); };
    for (const Row& row : {Row{"options/0/mounts/0", "no attachment \"x\"", [](Plan& p) { p.options[0].mounts[0].attachment = "x"; }},
                           Row{"options/0/mounts/0", "fixed to nothing", [](Plan& p) { p.options[0].mounts[0].support.clear(); }},
                           Row{"options/0/mounts/0/parts/0", "no grip", [](Plan& p) { p.options[0].mounts[0].parts.erase(p.options[0].mounts[0].parts.begin()); }},
                           Row{"options/0/mounts/0/parts/1", "must come last", [](Plan& p) { auto& parts = p.options[0].mounts[0].parts; std::swap(parts[1], parts[2]); }},
                           Row{"options/0/mounts/0/parts/1", "no joint \"wrist\"", [](Plan& p) { p.options[0].mounts[0].parts[1].joints["wrist"].q = {0}; }},
                           Row{"options/0/mounts/0/parts/2", "no part \"ghost\"", [](Plan& p) { p.options[0].mounts[0].parts[2].part = "ghost"; }},
                           Row{"options/0/keep_outs/0", "no moving group", [](Plan& p) { KeepOut k; k.id = "k"; k.support = "frame"; k.group = "x"; p.options[0].keepOuts = {k}; }}}) {
        Plan plan = smallPlan();
        row.spoil(plan);
        const SetupMade made = makeSetup(plan, 0, BodyData{});
        INFO(row.where << ": " << row.what);
        CHECK_FALSE(made.setup);
        REQUIRE(made.problems.size() == 1);
        INFO(made.problems[0].where << ": " << made.problems[0].what);
        CHECK(made.problems[0].where == row.where);
        CHECK(made.problems[0].what.find(row.what) != std::string::npos);
    }
    CHECK_FALSE(makeSetup(smallPlan(), 3, BodyData{}).setup);
    Plan plan = smallPlan();
    plan.supports[0].kind = "cloud";
    CHECK_FALSE(makeSetup(plan, 0, BodyData{}).setup);
}

TEST_CASE("solved values go into the mount that they were solved for", "[plan]") {
    const Plan plan = smallPlan();
    const SetupMade made = makeSetup(plan, 0, BodyData{});
    REQUIRE(made.setup);
    const SetupMount& m = made.setup->mounts[0];
    Eigen::VectorXd q = m.q;
    for (Eigen::Index i = 0; i < q.size(); ++i) q[i] += 0.01;
    const Edited edited = applySolved(plan, "first", "main", m.chain, q);
    REQUIRE(edited.plan);
    const SetupMade again = makeSetup(*edited.plan, 0, BodyData{});
    REQUIRE(again.setup);
    CHECK((again.setup->mounts[0].q - q).norm() == 0);
    CHECK(edited.plan->options[0].mounts[0].parts[1].joints.at("ball").kept);
    CHECK_FALSE(applySolved(plan, "first", "none", m.chain, q));
    CHECK_FALSE(applySolved(plan, "first", "main", m.chain, Eigen::VectorXd::Zero(1)));
    q[0] = std::numeric_limits<double>::infinity();
    CHECK_FALSE(applySolved(plan, "first", "main", m.chain, q));
    Plan changed = plan;
    changed.options[0].mounts[0].parts.pop_back();
    CHECK(applySolved(changed, "first", "main", m.chain, m.q).whyNot == "the mount has changed since it was solved");
}
