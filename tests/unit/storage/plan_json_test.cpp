#include <catch2/catch.hpp>

#include "core/storage/json_value.h"
#include "core/storage/plan_json.h"
#include "core/storage/plan_rules.h"
#include "core/units/quantity.h"
#include "sample.h"

using namespace hither;
using namespace hither::test;
using Code = StorageError::Code;

namespace {

std::string with(std::string text, const std::string& old, const std::string& now) {
    const std::size_t at = text.find(old);
    REQUIRE(at != std::string::npos);
    return text.replace(at, old.size(), now);
}

/// The first problem of a plan that must be refused.
StorageError first(const std::string& json) {
    const PlanRead read = readPlan(json);
    REQUIRE_FALSE(read.plan);
    REQUIRE_FALSE(read.problems.empty());
    CHECK(read.problems[0].file == "plan.json");
    return read.problems[0];
}

}  // namespace

TEST_CASE("the smallest plan reads with its defaults") {
    const PlanRead read = readPlan(smallest);
    INFO(told(read.problems));
    REQUIRE(read.plan);
    const Plan& p = *read.plan;
    CHECK(p.id == "00000000-0000-4000-8000-000000000001");
    CHECK(p.made_utc == "2026-11-25T09:00:00Z");
    CHECK(p.supports.at(0).id == "support-1");
    CHECK(p.supports[0].name == "Table");
    CHECK(p.sites.at(0).id == "site-1");
    CHECK(p.sites[0].given == SiteGiven::typed);
    CHECK(p.sites[0].angleTolerance_rad == radians(20));
    const Mount& m = p.options.at(0).mounts.at(0);
    CHECK(m.id == "mount-1");
    CHECK(m.site == "site-1");
    CHECK(m.support == "support-1");
    CHECK(m.parts.at(1).part == "gooseneck-300");
    CHECK(p.parts.size() == 2);
    CHECK(p.part("desk-clamp-50") != nullptr);
    CHECK(p.limits == CheckLimits{});
    CHECK(p.currency == "EUR");
}

TEST_CASE("a plan with every key keeps every value through its JSON form") {
    const Plan p = everyKeyPlan();
    CHECK(p.supports.at(1).attachments.at(0).id == "top");
    CHECK(p.supports[1].attachments[1].outside_m.basis.source == "KL, 2026-05-01");
    CHECK(p.supports[1].groups.at(1).slides);
    CHECK(p.supports[1].settings.at("lift") == 0.03);
    CHECK(p.sites.at(0).directionTyped == false);
    CHECK(p.options.at(0).mounts.at(0).parts.at(1).joints.at("ball1").q == std::vector<double>{radians(10), radians(-20), radians(30)});
    CHECK(p.options[0].mounts[1].support.empty());
    const std::string text = planToJson(p);
    const PlanRead again = readPlan(text);
    INFO(told(again.problems));
    REQUIRE(again.plan);
    CHECK(*again.plan == p);
    CHECK(planToJson(*again.plan) == text);
    // Everything the input says is in the output: as many keys at least.
    const JsonValueRead in = readJsonValue(everyKey), out = readJsonValue(text);
    for (const std::string& key : in.value->keys) CHECK(out.value->find(key) != nullptr);
}

TEST_CASE("random plans survive the JSON form bit for bit, solids to a billionth of a millimetre") {
    std::mt19937_64 random(7);
    for (int i = 0; i < 300; ++i) {
        Plan p = randomPlan(random);
        // What solids hold only indirectly is rounded: compare those through one more writing.
        const std::string text = planToJson(p);
        const PlanRead read = readPlan(text);
        INFO(told(read.problems));
        REQUIRE(read.plan);
        REQUIRE(planToJson(*read.plan) == text);
        const auto near = [](Solid& a, const Solid& b) {
            CHECK(a.kind == b.kind);
            // A hull is written with its frame worked into its corners, in an order of their own.
            if (a.kind != SolidKind::hull) {
                CHECK((a.X_FG.matrix() - b.X_FG.matrix()).cwiseAbs().maxCoeff() < 1e-10);
                CHECK((a.half - b.half).norm() < 1e-11);
            } else if (a.hull && b.hull) {
                CHECK(a.hull->points.size() == b.hull->points.size());
            }
            a = b;
        };
        Plan q = *read.plan;
        for (std::size_t s = 0; s < p.supports.size(); ++s)
            for (std::size_t k = 0; k < p.supports[s].solids.size(); ++k) near(p.supports[s].solids[k].solid, q.supports[s].solids.at(k).solid);
        for (std::size_t o = 0; o < p.options.size(); ++o)
            for (std::size_t k = 0; k < p.options[o].keepOuts.size(); ++k) near(p.options[o].keepOuts[k].solid, q.options[o].keepOuts.at(k).solid);
        CHECK(q.supports == p.supports);
        CHECK(q.person == p.person);
        CHECK(q.sites == p.sites);
        CHECK(q.options == p.options);
        REQUIRE(q == p);
    }
}

TEST_CASE("unknown keys are named with the nearest known one") {
    const StorageError e = first(with(smallest, "\"attachment\"", "\"atachment\""));
    const PlanRead all = readPlan(with(smallest, "\"attachment\"", "\"atachment\""));
    bool named = false;
    for (const StorageError& p : all.problems)
        if (p.code == Code::unknownKey && p.place == "options/0/mounts/0/fixed_to/atachment") named = p.facts.at("nearest") == "attachment";
    CHECK(named);
    CHECK((e.code == Code::missingKey || e.code == Code::unknownKey));
    CHECK(first(with(smallest, "\"hither_plan\": 1", "\"hither_plan\": 1, \"titel\": \"x\"")).place == "titel");
}

TEST_CASE("an unknown part is an error that names it and the nearest") {
    const StorageError e = first(with(smallest, "gooseneck-300", "gooseneck-30O"));
    CHECK(e.place == "options/0/mounts/0/parts/1");
    CHECK(e.facts.at("found").find("gooseneck-30O") != std::string::npos);
    CHECK(e.facts.at("nearest") == "gooseneck-300");
}

TEST_CASE("every problem is placed") {
    struct Row { const char* old; const char* now; Code code; const char* place; };
    const Row rows[] = {
        {"\"angle_deg\": 35", "\"angle_deg\": 4000", Code::badValue, "options/0/mounts/0/parts/1/joints/elbow/angle_deg"},
        {"\"angle_deg\": 35", "\"angle_deg\": \"35\"", Code::wrongType, "options/0/mounts/0/parts/1/joints/elbow/angle_deg"},
        {"\"elbow\": {\"angle_deg\"", "\"elbw\": {\"angle_deg\"", Code::unknownKey, "options/0/mounts/0/parts/1/joints/elbw"},
        {"\"slide_mm\": 40", "\"slide_deg\": 40", Code::unknownKey, "options/0/mounts/0/parts/2/joints/post/slide_deg"},
        {"\"along_mm\": 210", "\"along_mm\": 21000", Code::badValue, "options/0/mounts/0/fixed_to/along_mm"},
        {"\"along_mm\": 210", "\"along_mm\": 1e400", Code::badValue, nullptr},
        {"\"site\": \"elbow\"", "\"site\": \"elbo\"", Code::badValue, "options/0/mounts/0/site"},
        {"\"on\": \"chair\"", "\"on\": \"chiar\"", Code::badValue, "person/on"},
        {"\"stature\": 1612", "\"stature\": 16120", Code::badValue, "person/body/dimensions_mm/stature"},
        {"\"stature\": 1612", "\"statur\": 1612", Code::unknownKey, "person/body/dimensions_mm/statur"},
        {"\"seat_width_mm\": 430", "\"seat_width_deg\": 430", Code::unknownKey, "supports/0/dimensions/seat_width_deg"},
        {"\"seat_width_mm\": 430", "\"seat_width_mm\": 1", Code::badValue, "supports/0/dimensions/seat_width_mm"},
        {"\"recline_deg\": 12.5", "\"recline_mm\": 12.5", Code::unknownKey, "supports/0/settings/recline_mm"},
        {"\"recline_deg\": 12.5", "\"reclin_deg\": 12.5", Code::unknownKey, "supports/0/settings/reclin_deg"},
        {"\"kind\": \"chair-manual\"", "\"kind\": \"chair-manuel\"", Code::badValue, "supports/0/kind"},
        {"\"control_site\": \"elbow_right\"", "\"control_site\": \"elbow_rigth\"", Code::badValue, "sites/0/control_site"},
        {"\"segment\": \"forearm_left\"", "\"segment\": \"forarm_left\"", Code::badValue, "sites/2/segment"},
        {"\"direction\": [0.6, 0, -0.8]", "\"direction\": [0, 0, 0]", Code::badValue, "sites/1/direction"},
        {"\"direction\": [0.6, 0, -0.8]", "\"direction\": [0, 0]", Code::wrongType, "sites/1/direction"},
        {"\"id\": \"typed\"", "\"id\": \"elbow\"", Code::badValue, "sites/1/id"},
        {"\"id\": \"typed\"", "\"id\": \"a/b\"", Code::badValue, "sites/1/id"},
        {"\"made_utc\": \"2026-05-01T08:00:00Z\"", "\"made_utc\": \"2026-02-30T08:00:00Z\"", Code::badValue, "made_utc"},
        {"\"currency\": \"USD\",\n", "\"currency\": \"usd\",\n", Code::badValue, "currency"},
        {"\"amount\": \"3.50\"", "\"amount\": \"3.505\"", Code::badValue, "extra_items/0/price/amount"},
        {"\"count\": 2", "\"count\": 2.5", Code::wrongType, "extra_items/0/count"},
        {"\"title\": \"All", "\"title\": \"\\u0007All", Code::badValue, "title"},
        {"\"hither_plan\": 1", "\"hither_plan\": 2", Code::newerFormat, "hither_plan"},
        {"\"hither_plan\": 1, ", "", Code::missingKey, "hither_plan"},
        {"\"percentile\": 40", "\"percentile\": 100", Code::badValue, "person/body/percentile"},
        {"\"support\": \"chair\", \"group\": \"recline\"}},\n  {\"id\": \"picked\"", "\"support\": \"chai\", \"group\": \"recline\"}},\n  {\"id\": \"picked\"", Code::badValue, "sites/1/goes_with/support"},
    };
    for (const Row& row : rows) {
        CAPTURE(row.old, row.now);
        const std::string text = with(with(everyKey, "\"currency\": \"USD\",", "\"currency\": \"USD\",\n"), row.old, row.now);
        const PlanRead read = readPlan(text);
        REQUIRE_FALSE(read.plan);
        bool found = false;
        for (const StorageError& p : read.problems) found = found || (p.code == row.code && (row.place == nullptr || p.place == row.place));
        INFO(told(read.problems));
        CHECK(found);
    }
}

TEST_CASE("text that is not a plan is refused in words") {
    CHECK(first("").code == Code::truncated);
    CHECK(first("hello").code == Code::notAPlan);
    CHECK(first("[1, 2]").code == Code::notAPlan);
    CHECK(first("{\"hither_plan\": 1,").code == Code::truncated);
    CHECK(first("{\"hither_plan\": 1, \"hither_plan\": 1}").facts.at("found").find("twice") != std::string::npos);
    CHECK(first("{\"hither_plan\": 1,\n \"title\": oops}").place.find("line 2") == 0);
    std::string deep = "{\"hither_plan\": 1, \"notes\": ";
    for (int i = 0; i < 100000; ++i) deep += "[";
    CHECK(first(deep).facts.at("found").find("deeper") != std::string::npos);
}

TEST_CASE("a chain of ten thousand parts is refused before it is read") {
    std::string parts = "\"gooseneck-300\"";
    for (int i = 1; i < 10000; ++i) parts += ", \"gooseneck-300\"";
    const StorageError e = first(with(smallest, "\"desk-clamp-50\", \"gooseneck-300\"", parts));
    CHECK(e.place == "options/0/mounts/0/parts");
    CHECK(e.facts.at("found") == "10000 entries");
}

TEST_CASE("a mount fixed to nothing is said to be") {
    CHECK(first(with(smallest, "\"fixed_to\": {\"attachment\": \"near_edge\"}, ", "")).code == Code::missingKey);
    CHECK(first(with(smallest, "{\"attachment\": \"near_edge\"}", "{}")).place == "options/0/mounts/0/fixed_to/attachment");
}

TEST_CASE("at most a hundred problems are listed") {
    std::string sites = "{}";
    for (int i = 0; i < 90; ++i) sites += ", {}";
    const PlanRead read = readPlan("{\"hither_plan\": 1, \"sites\": [" + sites + "]}");
    CHECK(read.problems.size() == 100);
}

TEST_CASE("the spelling that is nearest wins") {
    CHECK(nearestName("elbo", {"elbow", "ball1"}) == "elbow");
    CHECK(nearestName("zzzzzz", {"elbow", "ball1"}).empty());
}
