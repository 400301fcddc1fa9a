#include <catch2/catch.hpp>

#include "core/storage/json_value.h"
#include "core/storage/plan_json.h"
#include "core/storage/plan_rules.h"
#include "sample.h"

using namespace hither;
using namespace hither::test;

namespace {

/// A plan that reads must be one that can be written and read again; one that does not says why.
bool fine(const std::string& text, bool andBack) {
    const PlanRead read = readPlan(text);
    if (!read.plan) {
        REQUIRE_FALSE(read.problems.empty());
        REQUIRE(read.problems.size() <= 100);
        INFO(told(read.problems));
        for (const StorageError& p : read.problems) {
            REQUIRE_FALSE(p.facts.at("found").empty());
            REQUIRE(isPrintableText(p.place, false));
            for (const auto& [key, value] : p.facts) REQUIRE(isPrintableText(value, false));
        }
        return false;
    }
    REQUIRE(read.problems.empty());
    if (andBack) {
        REQUIRE(planProblems(*read.plan).empty());
        const std::string out = planToJson(*read.plan);
        const PlanRead again = readPlan(out);
        INFO(told(again.problems));
        REQUIRE(again.plan);
        REQUIRE(planToJson(*again.plan) == out);
    }
    return true;
}

JsonValue* anywhere(JsonValue& root, std::mt19937_64& random) {
    JsonValue* v = &root;
    while (!v->items.empty() && std::uniform_int_distribution<int>(0, 5)(random) > 0)
        v = &v->items[std::uniform_int_distribution<std::size_t>(0, v->items.size() - 1)(random)];
    return v;
}

}  // namespace

TEST_CASE("twenty thousand random changes of a plan's JSON form") {
    std::mt19937_64 random(20261126);
    const std::string text = everyKey;
    const JsonValue tree = *readJsonValue(text).value;
    const JsonValueRead small = readJsonValue(smallest);
    static const char* const numbers[] = {"0", "-0", "1e308", "-1e-320", "1e999", "99999999999999999999", "0.1", "-45", "3600.0000001", "20000", "123.456789012345678901", "1E5"};
    static const char* const texts[] = {"", "elbow", "chair", "x", "..", "a/b", "gooseneck-300", "\x01", "meets", "7/8 in", "NPS 3/4", "2026-11-25T09:00:00Z"};
    static const char tokens[] = "{}[]\",:0123456789.-+eE truefalsn\\/u\x00\x80\xff\n";
    int readable = 0;
    for (int i = 0; i < 20000; ++i) {
        CAPTURE(i);
        if (i % 4 == 0) {  // of the text
            std::string s = text;
            for (int k = std::uniform_int_distribution<int>(1, 4)(random); k > 0 && !s.empty(); --k) {
                const std::size_t at = std::uniform_int_distribution<std::size_t>(0, s.size() - 1)(random);
                const char c = tokens[std::uniform_int_distribution<std::size_t>(0, sizeof tokens - 2)(random)];
                switch (std::uniform_int_distribution<int>(0, 3)(random)) {
                    case 0: s[at] = c; break;
                    case 1: s.insert(at, 1, c); break;
                    case 2: s.erase(at, std::uniform_int_distribution<std::size_t>(1, 20)(random)); break;
                    default: s.resize(at + 1); break;
                }
            }
            readable += fine(s, i % 8 == 0) ? 1 : 0;
            continue;
        }
        JsonValue changed = i % 4 == 1 ? *small.value : tree;  // of the values
        for (int k = std::uniform_int_distribution<int>(1, 3)(random); k > 0; --k) {
            JsonValue* v = anywhere(changed, random);
            switch (std::uniform_int_distribution<int>(0, 7)(random)) {
                case 0: *v = JsonValue::ofNumber(numbers[std::uniform_int_distribution<int>(0, 11)(random)]); break;
                case 1: *v = JsonValue::ofText(texts[std::uniform_int_distribution<int>(0, 11)(random)]); break;
                case 2: *v = JsonValue(); break;
                case 3: *v = JsonValue::list(); break;
                case 4: *v = JsonValue::object(); break;
                case 5: *v = JsonValue(*anywhere(changed, random)); break;
                case 6:
                    if (!v->items.empty()) {
                        const std::size_t at = std::uniform_int_distribution<std::size_t>(0, v->items.size() - 1)(random);
                        v->items.erase(v->items.begin() + static_cast<long>(at));
                        if (v->kind == JsonValue::Kind::object) v->keys.erase(v->keys.begin() + static_cast<long>(at));
                    }
                    break;
                default:
                    if (v->kind == JsonValue::Kind::object) v->add("extra", JsonValue::ofFlag(true));
                    else if (v->kind == JsonValue::Kind::list && !v->items.empty()) v->items.push_back(JsonValue(v->items.front()));
                    break;
            }
        }
        readable += fine(printJsonValue(changed), true) ? 1 : 0;
    }
    INFO(readable << " of 20000 still read");
    CHECK(readable > 100);
    CHECK(readable < 15000);
}

TEST_CASE("hostile sizes end in a sentence") {
    for (const char* piece : {"[", "{\"a\":", "\"", "1", "[1,", "{\"a\":1,\"a\":"}) {
        std::string s = "{\"hither_plan\": 1, \"notes\": ";
        while (s.size() < 3'000'000) s += piece;
        CAPTURE(piece);
        REQUIRE_FALSE(fine(s, false));
    }
    std::string keys = "{\"hither_plan\": 1";
    for (int i = 0; i < 100'000; ++i) keys += ", \"k" + std::to_string(i) + "\": 1";
    REQUIRE_FALSE(fine(keys + "}", false));
    std::string many = "{\"hither_plan\": 1, \"sites\": [";
    for (int i = 0; i < 200'000; ++i) many += "{},";
    REQUIRE_FALSE(fine(many + "{}]}", false));
}
