#include <catch2/catch.hpp>

#include <nlohmann/json.hpp>

#include "core/plan/parts_list.h"
#include "tests/unit/plan/fixture.h"

using namespace hither;
using namespace hither::test;

namespace {
const PartsRow& row(const PartsList& list, const std::string& id) {
    for (const PartsRow& r : list.rows) if (r.id == id) return r;
    FAIL("no row " << id);
    return list.rows.front();
}
/// Two mounts in "first" (clamp, arm, switch; clamp, neck, neck, switch) and one in "second" (clamp, arm, arm, switch).
Plan twoOptions() {
    Plan plan = smallPlan();
    plan.parts.push_back(std::make_shared<const Part>(neckPart()));
    plan.options[0].mounts.push_back(mountOf("other", {"tube-clamp", "neck", "neck", "round-switch"}));
    PlanOption second = smallPlan().options[0];
    second.id = "second";
    second.mounts[0].parts.insert(second.mounts[0].parts.begin() + 1, mounted("arm"));
    plan.options.push_back(second);
    plan.extraItems = {{"tape", "Hook tape", 3, Money{250, "EUR"}, "black"}, {"strap", "Strap", 1, std::nullopt, ""}};
    return plan;
}
}  // namespace

TEST_CASE("parts are counted over every mount of an option and priced by the line", "[plan]") {
    const PartsList list = partsList(twoOptions(), {"first"});
    REQUIRE(list.rows.size() == 6);
    CHECK(row(list, "tube-clamp").count == 2);
    CHECK(*row(list, "tube-clamp").total == Money{2900, "EUR"});
    CHECK(row(list, "tube-clamp").usedIn == std::vector<std::string>{"first/main", "first/other"});
    CHECK(row(list, "neck").count == 2);
    CHECK(row(list, "neck").usedIn == std::vector<std::string>{"first/other"});
    CHECK(*row(list, "neck").total == Money{2400, "USD"});
    CHECK(row(list, "arm").count == 1);
    CHECK(row(list, "round-switch").count == 2);
    CHECK_FALSE(row(list, "round-switch").total);
    CHECK(*row(list, "tape").total == Money{750, "EUR"});
    // 2 * 14.50 + 30.00 + 3 * 2.50 in EUR, 2 * 12.00 in USD.
    CHECK(list.totals == std::vector<Money>{{6650, "EUR"}, {2400, "USD"}});
    CHECK(list.notPriced == std::vector<std::string>{"Round switch", "Strap"});
    CHECK(list.priceBasis == BasisKind::unknown);
    CHECK(list.toolsNeeded == std::vector<std::string>{"4 mm hex key"});
    // From the support toward the switch, extra items last.
    std::vector<std::string> order;
    for (const PartsRow& r : list.rows) order.push_back(r.id);
    CHECK(order == std::vector<std::string>{"tube-clamp", "arm", "neck", "round-switch", "tape", "strap"});
}

TEST_CASE("options share parts when they are built one at a time, and add up when they stand together", "[plan]") {
    const Plan plan = twoOptions();
    const PartsList any = partsList(plan), all = partsList(plan, {}, BuiltAs::allAtOnce);
    CHECK(any.options == std::vector<std::string>{"first", "second"});
    CHECK(row(any, "tube-clamp").count == 2);
    CHECK(row(all, "tube-clamp").count == 3);
    CHECK(row(any, "arm").count == 2);
    CHECK(row(all, "arm").count == 3);
    CHECK(row(all, "tape").count == 3);  // extra items belong to the plan, not to an option
    CHECK(partsList(plan, {"no such"}).options.empty());
}

TEST_CASE("a total's basis is that of its weakest price", "[plan]") {
    Plan plan = smallPlan();
    Part priced = switchPart();
    priced.price = Money{900, "EUR"};
    priced.priceBasis = {BasisKind::measured, "receipt"};
    plan.parts[2] = std::make_shared<const Part>(priced);
    CHECK(partsList(plan).priceBasis == BasisKind::assumed);
    CHECK(partsList(plan).notPriced.empty());
}

// The characters are those that published advice on formula injection into spreadsheets names (OWASP,
// "CSV Injection"): = + - @, tab, carriage return, line feed and the full-width forms.
TEST_CASE("no text can become a formula in a spreadsheet", "[plan]") {
    struct Row { const char* text; const char* cell; };
    for (const Row& r : {Row{"plain", "plain"}, {"=1+1", "'=1+1"}, {"+1", "'+1"}, {"-1", "'-1"}, {"@A1", "'@A1"}, {"\tx", "\"'\tx\""}, {"\rx", "\"'\rx\""}, {"\xEF\xBC\x9D" "1", "'\xEF\xBC\x9D" "1"},
                         {"a,b", "\"a,b\""}, {"say \"no\"", "\"say \"\"no\"\"\""}, {"a;=1", "\"a;'=1\""}, {"a, =1", "\"a, '=1\""}, {"\"=1", "\"\"\"'=1\""}, {"  =1", "  '=1"}, {"x\n=1", "\"x\n'=1\""}, {"4-20", "4-20"}, {"a=b", "a=b"}, {"", ""}})
        CHECK(csvText(r.text) == r.cell);
}

TEST_CASE("the list is written as RFC 4180 lines with numbers that stay numbers", "[plan]") {
    Plan plan = twoOptions();
    Part evil = clampPart();
    evil.name = "=HYPERLINK(\"x\")";
    evil.notes = "-5";
    plan.parts[0] = std::make_shared<const Part>(evil);
    const std::string csv = partsListCsv(partsList(plan, {"first"}));
    CHECK(csv.find("tube-clamp,\"'=HYPERLINK(\"\"x\"\")\",grip,2,14.50,29.00,EUR,published,demo price list,4 mm hex key,\"first/main, first/other\",,'-5\r\n") != std::string::npos);
    CHECK(csv.find("tape,Hook tape,extra item,3,2.50,7.50,EUR,assumed,,,,,black\r\n") != std::string::npos);
    CHECK(csv.find("round-switch,Round switch,switch,2,,,,unknown,") != std::string::npos);
    CHECK(csv.find(",total,,,,66.50,EUR,") != std::string::npos);
    CHECK(csv.find("without a price: Round switch, Strap") != std::string::npos);
    // Every line has the same number of fields.
    std::size_t fields = 1, expected = 0;
    bool quoted = false;
    for (std::size_t i = 0; i < csv.size(); ++i) {
        if (csv[i] == '"') quoted = !quoted;
        else if (!quoted && csv[i] == ',') ++fields;
        else if (!quoted && csv[i] == '\n') {
            CHECK(csv[i - 1] == '\r');
            if (expected == 0) expected = fields;
            CHECK(fields == expected);
            fields = 1;
        }
    }
    CHECK(expected == 13);
}

TEST_CASE("the list has a JSON form", "[plan]") {
    const nlohmann::json json = partsListJson(partsList(twoOptions(), {"first"}));
    CHECK(json["options"] == nlohmann::json{"first"});
    CHECK(json["items"].size() == 6);
    CHECK(json["items"][0]["item"] == "tube-clamp");
    CHECK(json["items"][0]["count"] == 2);
    CHECK(json["items"][0]["line_total"] == nlohmann::json{{"amount", "29.00"}, {"currency", "EUR"}});
    CHECK(json["items"][3]["price_each"].is_null());
    CHECK(json["totals"][1]["amount"] == "24.00");
    CHECK(json["not_priced"].size() == 2);
    CHECK(json["tools_needed"][0] == "4 mm hex key");
}
