#include <catch2/catch.hpp>

#include <filesystem>

#include "core/storage/autosave.h"
#include "core/storage/plan_save.h"
#include "core/units/quantity.h"
#include "sample.h"

using namespace hither;
using namespace hither::test;

TEST_CASE("two equal plans do not differ, and each change is one difference in its place") {
    const Plan a = everyKeyPlan();
    CHECK(planDifferences(a, a).empty());
    Plan b = a;
    b.title = "Another";
    b.options[0].mounts[0].parts[1].joints["elbow"].q[0] = radians(36);
    b.options.erase(b.options.begin() + 1);
    b.sites.push_back(b.sites[1]);
    b.sites.back().id = "new";
    std::swap(b.supports[1].landmarks, b.supports[0].landmarks);
    const auto d = planDifferences(a, b);
    const auto has = [&](PlanDifference::Kind kind, const std::string& place, const std::string& before, const std::string& after) {
        for (const PlanDifference& x : d) if (x.kind == kind && x.place == place && (before.empty() || x.before == before) && (after.empty() || x.after == after)) return true;
        return false;
    };
    using K = PlanDifference::Kind;
    CHECK(has(K::changed, "title", "\"All that a plan can say\"", "\"Another\""));
    CHECK(has(K::changed, "options/a/mounts/m/parts/1/joints/elbow/angle_deg", "35", "36"));
    CHECK(has(K::removed, "options/b", "", ""));
    CHECK(has(K::added, "sites/new", "", ""));
    CHECK(d.size() == 6);  // and the landmarks of two supports
    Plan c = a;
    std::swap(c.options[0], c.options[1]);
    REQUIRE(planDifferences(a, c).size() == 1);
    CHECK(planDifferences(a, c)[0].kind == K::moved);
    CHECK(planDifferences(a, c)[0].place == "options");
}

TEST_CASE("an autosave is bound to its file by what is in it, and says what differs") {
    Folder folder;
    const Autosave autosave(folder / "data/autosave");
    CHECK(autosave.leftovers().empty());  // no folder yet
    const std::string file = folder / "plan.hither";
    const Plan saved = everyKeyPlan();
    REQUIRE(savePlanFile(saved, file).empty());
    Plan edited = saved;
    edited.title = "Edited";
    REQUIRE(autosave.keep(edited, file, fileSum(file).value()).empty());
    edited.title = "Edited again";
    REQUIRE(autosave.keep(edited, file, fileSum(file).value()).empty());

    auto left = autosave.leftovers();
    REQUIRE(left.size() == 1);
    CHECK(left[0].file == file);
    CHECK(left[0].against == Leftover::Against::sameFile);
    REQUIRE(left[0].plan);
    CHECK(*left[0].plan == edited);
    REQUIRE(left[0].differences.size() == 1);
    CHECK(left[0].differences[0].after == "\"Edited again\"");
    CHECK(left[0].saved_utc.size() == 20);

    // The same time stamp, other content: another file.
    const auto time = std::filesystem::last_write_time(file);
    Plan others = saved;
    others.notes = "by somebody else";
    REQUIRE(savePlanFile(others, file).empty());
    std::filesystem::last_write_time(file, time);
    left = autosave.leftovers();
    CHECK(left.at(0).against == Leftover::Against::otherFile);
    CHECK(left[0].differences.size() == 2);
    std::filesystem::remove(file);
    left = autosave.leftovers();
    CHECK(left.at(0).against == Leftover::Against::missingFile);
    CHECK(*left[0].plan == edited);

    autosave.discard(left[0]);
    CHECK(autosave.leftovers().empty());
    CHECK(std::filesystem::is_empty(folder / "data/autosave"));
}

TEST_CASE("plans that never had a file are kept too, each for itself") {
    Folder folder;
    const Autosave autosave(folder / "auto");
    Plan a = everyKeyPlan(), b = everyKeyPlan();
    b.id = "another";
    REQUIRE(autosave.keep(a, "", "").empty());
    REQUIRE(autosave.keep(b, "", "").empty());
    REQUIRE(autosave.keep(a, folder / "copy.hither", "").empty());
    CHECK(autosave.leftovers().size() == 3);
    autosave.discard(a, "");
    const auto left = autosave.leftovers();
    REQUIRE(left.size() == 2);
    for (const Leftover& l : left) CHECK((l.against == Leftover::Against::unnamed) == (l.plan->id == "another"));
}

TEST_CASE("an autosave that cannot be read is listed with the reason") {
    Folder folder;
    const Autosave autosave(folder / "auto");
    REQUIRE(autosave.keep(everyKeyPlan(), "", "").empty());
    const std::string path = autosave.pathFor(everyKeyPlan(), "");
    writeBytes(path, bytesOf(path).substr(0, 5000));
    const auto left = autosave.leftovers();
    REQUIRE(left.size() == 1);
    CHECK_FALSE(left[0].plan);
    CHECK(left[0].problems.at(0).code == StorageError::Code::truncated);
}
