#include <catch2/catch.hpp>

#include <cstring>
#include <filesystem>

#include <sqlite3.h>
#include <sys/stat.h>
#include <unistd.h>

#include "core/storage/checksum.h"
#include "core/storage/plan_file.h"
#include "core/storage/plan_save.h"
#include "raw_database.h"
#include "sample.h"

using namespace hither;
using namespace hither::test;
using Code = StorageError::Code;

namespace {

std::string bytes(const Plan& plan) {
    PlanBytes out = planToBytes(plan);
    INFO(told(out.problems));
    REQUIRE(out.bytes);
    return *out.bytes;
}

StorageError refusal(const std::string& path) {
    const PlanRead read = openPlanFile(path);
    REQUIRE_FALSE(read.plan);
    REQUIRE(read.problems.size() >= 1);
    CHECK(read.problems[0].file == path);
    return read.problems[0];
}

}  // namespace

TEST_CASE("SHA-256 gives the sums of the standard's examples") {
    // FIPS 180-2, appendix B: one block, several blocks; the empty message from NIST's examples (from memory).
    CHECK(sha256("abc") == "ba7816bf8f01cfea414140de5dae2223b00361a396177a9cb410ff61f20015ad");
    CHECK(sha256("abcdbcdecdefdefgefghfghighijhijkijkljklmklmnlmnomnopnopq") == "248d6a61d20638b8e5c026930c3e6039a33ce45964ff2167f6ecedd419db06c1");
    CHECK(sha256("") == "e3b0c44298fc1c149afbf4c8996fb92427ae41e4649b934ca495991b7852b855");
}

TEST_CASE("a plan file is a plan, value by value, and two saves are equal bytes") {
    const Plan p = everyKeyPlan();
    const std::string first = bytes(p);
    CHECK(first == bytes(p));
    CHECK(first.substr(0, 15) == "SQLite format 3");
    const PlanRead read = planFromBytes(first);
    INFO(told(read.problems));
    REQUIRE(read.plan);
    CHECK(*read.plan == p);
    CHECK(read.log.empty());
    CHECK(bytes(*read.plan) == first);
}

TEST_CASE("random plans survive the file bit for bit") {
    std::mt19937_64 random(11);
    for (int i = 0; i < 200; ++i) {
        const Plan p = randomPlan(random);
        const PlanRead read = planFromBytes(bytes(p));
        INFO(told(read.problems));
        REQUIRE(read.plan);
        REQUIRE(*read.plan == p);
        REQUIRE(planToJson(*read.plan) == planToJson(p));
    }
}

TEST_CASE("the frozen file of format 1 opens for ever") {
    const std::string folder = HITHER_SOURCE_DIR "/tests/unit/storage/fixtures";
    const PlanRead read = openPlanFile(folder + "/format-1.hither");
    INFO(told(read.problems));
    REQUIRE(read.plan);
    const PlanRead wanted = planFromJson(bytesOf(folder + "/format-1.json"));
    INFO(told(wanted.problems));
    REQUIRE(wanted.plan);
    CHECK(*read.plan == *wanted.plan);
}

TEST_CASE("the header says what the file is") {
    const std::string b = bytes(everyKeyPlan());
    CHECK(b.substr(68, 4) == "Hthr");
    CHECK(b.substr(60, 4) == std::string("\0\0\0\1", 4));
    CHECK(b[18] == 1);
}

TEST_CASE("what is no plan file is refused in words, at once") {
    Folder folder;
    CHECK(refusal(folder / "none.hither").code == Code::missing);
    CHECK(refusal(folder.path()).code == Code::notAFile);
    writeBytes(folder / "empty", "");
    CHECK(refusal(folder / "empty").code == Code::notAPlan);
    writeBytes(folder / "text", std::string(5000, 'x'));
    CHECK(refusal(folder / "text").code == Code::notAPlan);
    writeBytes(folder / "short", "SQLite format 3");
    CHECK(refusal(folder / "short").code == Code::truncated);
    REQUIRE(mkfifo((folder / "pipe").c_str(), 0600) == 0);
    CHECK(refusal(folder / "pipe").code == Code::notAFile);
    CHECK(refusal("/dev/null").code == Code::notAFile);
    writeBytes(folder / "plan", bytes(everyKeyPlan()));
    CHECK(openPlanFile(folder / "plan").plan);
    std::filesystem::create_symlink(folder / "plan", folder / "link");
    CHECK(refusal(folder / "link").code == Code::notAFile);
    writeBytes(folder / "large", bytes(everyKeyPlan()));
    REQUIRE(truncate((folder / "large").c_str(), 1LL << 30) == 0);  // a gigabyte, sparse
    CHECK(refusal(folder / "large").code == Code::tooLarge);
}

TEST_CASE("a newer format is refused with the version that it needs") {
    std::string b = bytes(everyKeyPlan());
    b[63] = 7;
    const PlanRead read = planFromBytes(b);
    REQUIRE(read.problems.size() == 1);
    CHECK(read.problems[0].code == Code::newerFormat);
    CHECK(read.problems[0].facts.at("format") == "7");
}

TEST_CASE("other databases and other schemas are refused") {
    const std::string b = bytes(everyKeyPlan());
    const auto changed = [&](const char* sql) { return planFromBytes(changedBy(b, sql)); };
    CHECK(changed("PRAGMA application_id = 1").problems.at(0).code == Code::notAPlan);
    for (const char* sql : {"CREATE TABLE more (a)", "CREATE VIEW v AS SELECT * FROM plan", "CREATE INDEX i ON site (id)", "DROP TABLE history", "ALTER TABLE site ADD COLUMN x TEXT",
                            "CREATE TRIGGER t AFTER INSERT ON plan BEGIN SELECT 1; END", "CREATE VIRTUAL TABLE f USING fts5(a)"}) {
        CAPTURE(sql);
        CHECK(changed(sql).problems.at(0).code == Code::unexpectedSchema);
    }
}

TEST_CASE("a row changed by another program is noticed") {
    const std::string b = bytes(everyKeyPlan());
    for (const char* sql : {"UPDATE site SET point_x_m = 0.5 WHERE id = 'typed'", "UPDATE plan SET title = 'another'", "DELETE FROM history", "UPDATE checksum SET digest = 'x'", "DELETE FROM checksum"}) {
        CAPTURE(sql);
        const PlanRead read = planFromBytes(changedBy(b, sql));
        CHECK_FALSE(read.plan);
        CHECK(read.problems.at(0).code == Code::damaged);
    }
}

TEST_CASE("every value is looked at even when the sum fits") {
    const std::string b = bytes(everyKeyPlan());
    for (const char* sql : {
             "UPDATE site SET point_x_m = 1e300 WHERE id = 'typed'", "UPDATE site SET point_x_m = 9e999 WHERE id = 'typed'", "UPDATE mount SET support = 'nowhere'",
             "UPDATE mount SET site = 'nowhere' WHERE id = 'm'", "UPDATE mount_part SET part = 'no-such-part' WHERE position = 1", "UPDATE site SET id = 'elbow'",
             "UPDATE site SET given = 'somehow'", "UPDATE placement_option SET position = 7 WHERE position = 1", "UPDATE support SET kind = 'throne' WHERE id = 'chair'",
             "UPDATE mount SET from_below = 2", "UPDATE part SET definition_json = '{}' WHERE position = 0", "UPDATE part SET name = 'other' WHERE position = 0",
             "UPDATE part SET mass_kg = 7 WHERE position = 0", "DELETE FROM joint_value WHERE component = 1", "UPDATE joint_value SET joint = 'nose' WHERE joint = 'elbow'",
             "UPDATE keep_out SET solid_hull_m = '{}' WHERE id = 'h'", "UPDATE keep_out SET solid_r11 = 0.5 WHERE id = 'k'", "UPDATE keep_out SET solid_kind = 'blob' WHERE id = 'k'",
             "UPDATE keep_out SET option = 9", "UPDATE plan SET title = char(7)", "UPDATE plan SET title = CAST(x'c328' AS TEXT)", "UPDATE plan SET revision = 99999999999",
             "DELETE FROM plan", "DELETE FROM person", "UPDATE extra_item SET price_currency = NULL", "INSERT INTO support_dimension VALUES (0, 'wings', 1.0, 'm')",
             "UPDATE history SET when_utc = 'yesterday'", "UPDATE support SET carried_by = 'shelf' WHERE id = 'chair'",
             "WITH RECURSIVE n(i) AS (SELECT 100 UNION ALL SELECT i + 1 FROM n WHERE i < 10100) INSERT INTO mount_part SELECT 0, 0, i - 96, 'gooseneck-300', 0, 0.0, 0 FROM n"}) {
        CAPTURE(sql);
        const PlanRead read = planFromBytes(changedBy(b, sql, true));
        CHECK_FALSE(read.plan);
        REQUIRE_FALSE(read.problems.empty());
        INFO(told(read.problems));
        CHECK((read.problems[0].code == Code::badValue || read.problems[0].code == Code::damaged || read.problems[0].code == Code::unknownKey));
        CHECK(read.problems[0].facts.at("found").find("not those that were saved") == std::string::npos);
    }
    CHECK(planFromBytes(changedBy(b, "UPDATE plan SET title = 'changed with its sum'", true)).plan->title == "changed with its sum");
}

TEST_CASE("a NaN in a column of real numbers is refused") {
    Plan p = everyKeyPlan();
    p.sites[1].point.x() = 0.123456789;
    std::string b = bytes(p);
    const double marked = 0.123456789;
    char pattern[8], nan[8] = {0x7f, static_cast<char>(0xf8), 0, 0, 0, 0, 0, 0};
    for (int i = 0; i < 8; ++i) {
        std::uint64_t bits = 0;
        std::memcpy(&bits, &marked, 8);
        pattern[i] = static_cast<char>(bits >> (56 - 8 * i));  // SQLite keeps reals big-endian
    }
    const std::size_t at = b.find(std::string(pattern, 8));
    REQUIRE(at != std::string::npos);
    b.replace(at, 8, std::string(nan, 8));
    const PlanRead read = planFromBytes(b);
    CHECK_FALSE(read.plan);
    CHECK(read.problems.at(0).code == Code::damaged);
}

TEST_CASE("an older format is brought up in memory, with a log, and the file stays as it is") {
    // A format 0 that there never was: the same tables, the title in a column of another name.
    static std::vector<PlanTable> old = planTables1();
    old[0].sql.replace(old[0].sql.find("title TEXT"), 10, "heading TEXT");
    const std::string now = bytes(everyKeyPlan());
    const std::string before = olderFile(now, old);
    PlanFormats formats{{{0, &old}, {1, &planTables1()}}, {{0, "the heading is called title", [](sqlite3* c) {
        return sqlite3_exec(c, "ALTER TABLE plan RENAME COLUMN heading TO title", nullptr, nullptr, nullptr) == SQLITE_OK ? std::string() : std::string(sqlite3_errmsg(c));
    }}}};
    CHECK(planFromBytes(before).problems.at(0).code == Code::damaged);  // as far as this program knows there is no format 0
    Folder folder;
    writeBytes(folder / "old.hither", before);
    const PlanRead read = planFromBytes(bytesOf(folder / "old.hither"), "old.hither", formats);
    INFO(told(read.problems));
    REQUIRE(read.plan);
    CHECK(*read.plan == everyKeyPlan());
    CHECK(read.log == std::vector<std::string>{"format 0 to 1: the heading is called title"});
    CHECK(bytesOf(folder / "old.hither") == before);

    formats.steps[0].apply = [](sqlite3*) { return std::string("it cannot be done"); };
    CHECK(planFromBytes(before, {}, formats).problems.at(0).facts.at("found") == "it cannot be done");
    formats.steps.clear();
    CHECK_FALSE(planFromBytes(before, {}, formats).plan);
    CHECK(planFromBytes(now, {}, formats).plan);
}

TEST_CASE("a plan that breaks a rule is not written") {
    Plan p = everyKeyPlan();
    p.options[0].mounts[0].site = "gone";
    const PlanBytes out = planToBytes(p);
    CHECK_FALSE(out.bytes);
    CHECK(out.problems.at(0).place == "options/0/mounts/0/site");
    p = everyKeyPlan();
    p.sites[0].tolerance_m = std::nan("");
    CHECK_FALSE(planToBytes(p).bytes);
}
