#include <algorithm>
#include <optional>
#include <set>
#include <string>
#include <vector>

#include <catch2/catch.hpp>

#include "core/plan/plan.h"
#include "core/storage/plan_file.h"
#include "core/ways/ways.h"

using namespace hither;

namespace {

const std::vector<std::string> samples = {"elbow_switch_on_chair", "head_switch_on_bed", "two_switches_on_tray", "two_options_at_one_site", "finger_switch_at_table"};

Plan sample(const std::string& name) {
    PlanRead read = openPlanFile(std::string(HITHER_SOURCE_DIR) + "/sample_plans/" + name + ".hither");
    REQUIRE(read.plan);
    return std::move(*read.plan);
}

const BodyData& body() {
    static std::vector<std::string> problems;
    static const BodyData data = BodyData::read(std::string(HITHER_SOURCE_DIR) + "/resources/body", problems).value();
    return data;
}

Setup setupOf(const Plan& plan, std::size_t option = 0) {
    SetupMade made = makeSetup(plan, option, body());
    REQUIRE(made.setup);
    return std::move(*made.setup);
}

/// Every finding about the mount, whatever it depends on.
WayLeft all(const std::vector<Finding>& findings, const std::string& mount) {
    WayLeft n;
    for (const Finding& f : findings) {
        if (std::none_of(f.subjects.begin(), f.subjects.end(), [&](const Subject& s) { return s.id == mount; })) continue;
        n.missed += f.verdict == Verdict::misses;
        n.unknown += f.verdict == Verdict::unknown;
        n.close += f.verdict == Verdict::close;
    }
    return n;
}

}  // namespace

TEST_CASE("Ways stand in the order of what they leave, as the plan with that way set is judged") {
    bool differ = false;
    for (const std::string& name : samples) {
        const Plan plan = sample(name);
        const Setup setup = setupOf(plan);
        CheckContext context;
        context.limits = plan.limits;
        for (std::size_t k = 0; k < setup.mounts.size(); ++k) {
            INFO(name << " mount " << k);
            REQUIRE(canBringToSite(setup, k));
            const Ways ways = findWays(setup, k, context);
            REQUIRE(ways.report.status == SolveReport::Status::solved);
            REQUIRE(ways.left.size() == ways.report.solutions.size());
            CHECK(std::is_sorted(ways.left.begin(), ways.left.end()));
            differ = differ || ways.left.front() != ways.left.back();
            // What does not depend on the joints adds the same to every way.
            std::optional<WayLeft> constant;
            for (std::size_t i = 0; i < ways.left.size(); ++i) {
                Plan set = plan;
                Mount& mount = set.options[0].mounts[k];
                mount = withValues(mount, setup.mounts[k].chain, ways.report.solutions[i].q);
                const WayLeft whole = all(checkAll(setupOf(set), context), mount.id);
                const WayLeft rest{whole.missed - ways.left[i].missed, whole.unknown - ways.left[i].unknown, whole.close - ways.left[i].close};
                CHECK((rest.missed >= 0 && rest.unknown >= 0 && rest.close >= 0));
                if (!constant) constant = rest;
                CHECK(rest == *constant);
            }
        }
    }
    CHECK(differ);
}

TEST_CASE("Of ways that leave the same, the one with more room stands first as the solver has it") {
    const Plan plan = sample("elbow_switch_on_chair");
    const Setup setup = setupOf(plan);
    CheckContext context;
    context.limits = plan.limits;
    const Ways ways = findWays(setup, 0, context);
    for (const Solution& s : ways.report.solutions) {
        CHECK(s.clearance_m <= enoughRoom_m);
        CHECK(s.position_m < 1e-3);
    }
}

TEST_CASE("A mount without a switch, without a site or that is not there cannot be brought to one") {
    Plan plan = sample("elbow_switch_on_chair");
    CHECK(canBringToSite(setupOf(plan), 0));
    CHECK_FALSE(canBringToSite(setupOf(plan), plan.options[0].mounts.size()));
    Plan noSite = plan;
    noSite.options[0].mounts[0].site.clear();
    CHECK_FALSE(canBringToSite(setupOf(noSite), 0));
    Plan noSwitch = plan;
    noSwitch.options[0].mounts[0].parts.pop_back();
    CHECK_FALSE(canBringToSite(setupOf(noSwitch), 0));
}

TEST_CASE("A search that is cancelled at any moment leaves nothing, one that is not leaves the same") {
    const Plan plan = sample("elbow_switch_on_chair");
    const Setup setup = setupOf(plan);
    CheckContext context;
    context.limits = plan.limits;
    int asked = 0;
    SolveOptions counting;
    counting.cancelled = [&] { ++asked; return false; };
    const Ways whole = findWays(setup, 0, context, counting);
    REQUIRE(asked > 2);
    REQUIRE_FALSE(whole.left.empty());
    // At the beginning, at the end and in between.
    for (const int at : {1, 2, asked / 4, asked / 2, asked - 1, asked}) {
        int n = 0;
        SolveOptions options;
        options.cancelled = [&] { return ++n >= at; };
        const Ways ways = findWays(setup, 0, context, options);
        INFO(at << " of " << asked);
        CHECK(ways.report.status == SolveReport::Status::cancelled);
        CHECK(ways.report.solutions.empty());
        CHECK_FALSE(ways.report.nearest);
        CHECK(ways.left.empty());
    }
    SolveOptions options;
    int n = 0;
    options.cancelled = [&] { return ++n > asked; };
    const Ways again = findWays(setup, 0, context, options);
    CHECK(again.left == whole.left);
}

TEST_CASE("Every freedom of the sample plans has a name of its own within its part, in words") {
    for (const std::string& name : samples) {
        for (const SetupMount& m : setupOf(sample(name)).mounts) {
            std::set<std::pair<int, std::string>> seen;
            for (const Freedom& f : m.chain.freedoms) {
                const std::string words = freedomName(m.chain, f);
                INFO(name << ": " << words);
                CHECK_FALSE(words.empty());
                CHECK(words.find('_') == std::string::npos);
                CHECK(seen.insert({f.part, words}).second);
            }
        }
    }
}
