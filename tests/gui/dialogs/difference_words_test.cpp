#include <catch2/catch.hpp>

#include "app/dialogs/difference_words.h"
#include "tests/unit/plan/fixture.h"

using namespace hither;
using namespace hither::test;

namespace {

/// The words of the only difference that a change makes.
template <class Change> std::string words(Change change, UnitSystem units = UnitSystem::metric) {
    const Plan before = smallPlan();
    Plan after = before;
    change(after);
    const std::vector<PlanDifference> all = planDifferences(before, after);
    REQUIRE(all.size() == 1);
    CHECK_FALSE(isOfSaves(all[0]));
    return differenceWords(all[0], before, after, units).toStdString();
}

}  // namespace

TEST_CASE("Differences are said in the words of the plan and the units shown") {
    CHECK(words([](Plan& p) { p.title = "Other\nline"; }) == "Title: “Demo” → “Other line”");
    CHECK(words([](Plan& p) { p.options[0].mounts[0].parts[1].joints["elbow"].q = {radians(35)}; }) == "Option “First”, mount “main”, part 2 (Arm), elbow, angle: 40.1° → 35°");
    CHECK(words([](Plan& p) { p.options[0].mounts[0].place.along_m = 0.254; }) == "Option “First”, mount “main”, where it is fixed, place along it: 200 mm → 254 mm");
    CHECK(words([](Plan& p) { p.options[0].mounts[0].place.along_m = 0.254; }, UnitSystem::inch) == "Option “First”, mount “main”, where it is fixed, place along it: 7 7/8 in → 10 in");
    CHECK(words([](Plan& p) { p.limits.knock_N = 25; }) == "Limits of the checks, knock: 20 N → 25 N");
    CHECK(words([](Plan& p) { p.options[0].mounts.clear(); }) == "Option “First”, mount “main”: taken away");
    CHECK(words([](Plan& p) { p.options.push_back({"b", "Second", {}, {}, {}}); }) == "Option “Second”: added");
    CHECK(words([](Plan& p) { p.supports[0].dimensions["seat_width"] = 0.46; }).find("Support “Frame”") == 0);
    const Plan plan = smallPlan();
    Plan saved = plan;
    saved.revision = 7;
    saved.history.push_back({7, "2026-05-01T08:00:00Z", {}, "saved"});
    for (const PlanDifference& d : planDifferences(plan, saved)) CHECK(isOfSaves(d));
    // What reads the same is not said as "40° instead of 40°".
    CHECK(words([](Plan& p) { p.options[0].mounts[0].place.along_m += 1e-9; }) == "Option “First”, mount “main”, where it is fixed, place along it: changed");
}
