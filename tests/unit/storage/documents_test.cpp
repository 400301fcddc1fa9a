#include <catch2/catch.hpp>

#include <filesystem>
#include <set>

#include "core/storage/json_value.h"
#include "core/storage/plan_json.h"
#include "core/storage/plan_rules.h"
#include "core/storage/plan_schema.h"
#include "core/units/quantity.h"
#include "sample.h"

using namespace hither;
using namespace hither::test;

namespace {

const std::string& page() {
    static const std::string text = bytesOf(HITHER_SOURCE_DIR "/resources/plan_format.md");
    return text;
}

/// The blocks of JSON of the page, as they stand there.
std::vector<std::string> blocks() {
    std::vector<std::string> out;
    for (std::size_t at = page().find("```json\n"); at != std::string::npos; at = page().find("```json\n", at)) {
        at += 8;
        const std::size_t end = page().find("```", at);
        out.push_back(page().substr(at, end - at));
        at = end + 3;
    }
    return out;
}

const JsonValue& schema() {
    static const JsonValue value = readJsonValue(bytesOf(HITHER_SOURCE_DIR "/resources/plan.schema.json")).value.value();
    return value;
}

/// Walks a document along the schema and notes each key of the schema that it meets.
class Walk {
public:
    std::set<const JsonValue*> met;
    std::vector<std::string> unknown;

    void along(const JsonValue& value, const JsonValue& rule, const std::string& place) {
        if (const JsonValue* ref = rule.find("$ref")) return along(value, definition(ref->text), place);
        for (const char* choice : {"anyOf", "oneOf"})
            if (const JsonValue* all = rule.find(choice)) {
                for (const JsonValue& one : all->items)
                    if (fits(value, one)) return along(value, one, place);
                unknown.push_back(place + " (no choice of the schema)");
                return;
            }
        if (value.kind == JsonValue::Kind::object) {
            const JsonValue* properties = rule.find("properties");
            const JsonValue* others = rule.find("additionalProperties");
            const JsonValue* patterns = rule.find("patternProperties");
            for (std::size_t i = 0; i < value.keys.size(); ++i) {
                const std::string at = place + "/" + value.keys[i];
                const JsonValue* known = properties == nullptr ? nullptr : properties->find(value.keys[i]);
                if (known != nullptr) {
                    met.insert(known);
                    along(value.items[i], *known, at);
                } else if (others != nullptr && others->kind == JsonValue::Kind::object) {
                    along(value.items[i], *others, at);
                } else if (patterns == nullptr) {
                    unknown.push_back(at);
                }
            }
        }
        if (value.kind == JsonValue::Kind::list)
            if (const JsonValue* items = rule.find("items"); items != nullptr && items->kind == JsonValue::Kind::object)
                for (std::size_t i = 0; i < value.items.size(); ++i) along(value.items[i], *items, place + "/" + std::to_string(i));
    }

    /// Keys of the schema that no document met, each with its place there.
    static void everyKeyOf(const JsonValue& rule, const std::string& place, std::vector<std::pair<std::string, const JsonValue*>>& out) {
        for (std::size_t i = 0; i < rule.items.size(); ++i) {
            const std::string at = place + "/" + (rule.kind == JsonValue::Kind::object ? rule.keys[i] : std::to_string(i));
            if (rule.kind == JsonValue::Kind::object && rule.keys[i] == "properties")
                for (std::size_t k = 0; k < rule.items[i].items.size(); ++k) out.emplace_back(at + "/" + rule.items[i].keys[k], &rule.items[i].items[k]);
            everyKeyOf(rule.items[i], at, out);
        }
    }

private:
    static const JsonValue& definition(const std::string& ref) { return *schema().find("$defs")->find(ref.substr(std::string("#/$defs/").size())); }

    /// Enough to tell the choices of this schema apart: type, constant keys, needed and known keys.
    static bool fits(const JsonValue& value, const JsonValue& rule) {
        if (const JsonValue* ref = rule.find("$ref")) return fits(value, definition(ref->text));
        if (rule.find("anyOf") != nullptr || rule.find("oneOf") != nullptr) return true;
        if (rule.find("enum") != nullptr) return value.kind == JsonValue::Kind::text;
        const JsonValue* type = rule.find("type");
        if (type == nullptr) return true;
        using Kind = JsonValue::Kind;
        const std::string& t = type->text;
        if (value.kind == Kind::number) return t == "number" || t == "integer";
        if (value.kind == Kind::text) return t == "string";
        if (value.kind == Kind::null) return t == "null";
        if (value.kind == Kind::list) return t == "array";
        if (value.kind != Kind::object || t != "object") return false;
        const JsonValue* properties = rule.find("properties");
        for (std::size_t i = 0; i < value.keys.size(); ++i) {
            const JsonValue* known = properties == nullptr ? nullptr : properties->find(value.keys[i]);
            if (known == nullptr) return false;
            if (const JsonValue* constant = known->find("const"); constant != nullptr && constant->text != value.items[i].text) return false;
        }
        if (const JsonValue* needed = rule.find("required"))
            for (const JsonValue& key : needed->items) if (value.find(key.text) == nullptr) return false;
        return true;
    }
};

/// Keys of parts that no shipped part uses.
const char* const rareParts = R"json({"hither_plan": 1, "parts": [
 {"id": "rare-one", "name": "Rare", "kind": "arm", "basis": {"kind": "measured", "source": "KL, 2026-05-01"},
  "bases": [{"interface": "bolt pattern", "gender": "female", "count": 2, "circle_mm": [20, 30], "screw": "M3"}],
  "outlet": {"interface": "UNC 1/4-20", "gender": "male", "length_mm": {"value": 6, "basis": "published", "source": "sheet"}, "material": "steel", "lock_ring": true},
  "elements": [
   {"kind": "rigid", "name": "foot", "to_mm": [0, 0, 10], "turn_deg": [0, 0, 30], "mass_g": {"value": 5, "basis": "assumed"}, "centre_of_mass_mm": [0, 0, 1], "EI_Nm2": 2, "GJ_Nm2": 3,
    "solids": [{"hull": {"points_mm": [[0, 0, 0], [1, 0, 0], [0, 1, 0], [0, 0, 1]]}}, {"box": {"centre_mm": [0, 0, 0], "size_mm": [1, 2, 3], "turn_deg": [10, 0, 0]}},
               {"rounded_box": {"centre_mm": [0, 0, 0], "size_mm": [4, 4, 4], "radius_mm": 1, "turn_deg": [10, 0, 0]}}, {"sphere": {"radius_mm": 2, "centre_mm": [0, 0, 1]}}]},
   {"kind": "hinge", "name": "h", "axis": [0, 1, 0], "min_deg": -10, "max_deg": 10, "detent_deg": 5, "hold_Nm": 1, "stiffness_Nm_per_rad": 2, "setting_error_deg": 1, "lock_group": "k"},
   {"kind": "swivel", "name": "s", "min_deg": -90, "max_deg": 90, "detent_deg": 30, "hold_Nm": 1, "stiffness_Nm_per_rad": 2, "setting_error_deg": 1, "lock_group": "k"},
   {"kind": "ball", "name": "b", "cone_deg": 40, "twist_min_deg": -90, "twist_max_deg": 90, "hold_Nm": 1, "stiffness_Nm_per_rad": 2, "setting_error_deg": 1, "lock_group": "k"},
   {"kind": "slide", "name": "l", "axis": [0, 1, 1], "min_mm": 0, "max_mm": 50, "step_mm": 10, "hold_N": 5, "stiffness_N_per_m": 100, "setting_error_mm": 1, "lock_group": "k"},
   {"kind": "bend", "name": "n", "length_mm": 300, "min_radius_mm": 60, "radius_mm": 7, "mass_g": 90, "EI_Nm2": 2, "hold_Nm": 1, "stiffness_Nm_per_rad": 2, "setting_error_per_m": 0.5, "lock_group": "k"}],
  "price": {"amount": "12.50", "currency": "USD", "basis": "published", "source": "list"}, "rated_load_g": 100, "tools": ["key"], "release_actions": 2, "where_to_buy": "here", "notes": "n", "words": ["w"]},
 {"id": "rare-two", "name": "Rare", "kind": "grip", "outlet": {"interface": "UNC 1/4-20", "gender": "male"},
  "grips": [{"on": "rail", "min_mm": 10, "max_mm": 20, "width_mm": 31, "wall_mm": 9, "sections": ["round", "square"], "hold_torque_Nm": 1, "hold_axial_N": 2},
            {"on": "edge", "min_mm": 10, "max_mm": 20, "width_mm": 31, "throat_mm": 51, "wall_mm": 9, "hold_moment_Nm": 1, "hold_force_N": 2},
            {"on": "face", "size_mm": [50, 50], "fixing": "suction", "hold_moment_Nm": 1, "hold_force_N": 2}, {"on": "cloth", "max_mm": 5, "hold_force_N": 1, "drift_mm": 10}]},
 {"id": "rare-three", "name": "Rare", "kind": "switch", "bases": [{"interface": "UNC 1/4-20", "gender": "female"}],
  "face": {"action": "sense", "operating_axis": [0, 0, -1], "size_mm": [30, 30, 10], "travel_mm": 1, "force_N": 0, "angle_tolerance_deg": 30, "sensing_range_mm": 20},
  "keep_free": [{"what": "window", "solid": {"sphere": {"centre_mm": [0, 0, 30], "radius_mm": 10}}}]},
 {"id": "rare-four", "name": "Rare", "kind": "adapter", "reversible": true, "bases": [{"interface": "UNC 1/4-20", "gender": "female"}], "outlet": {"interface": "UNC 1/4-20", "gender": "male"}}
]})json";

}  // namespace

TEST_CASE("the schema names every key that is written, and no other") {
    Walk walk;
    PlanRead rare = readPlan(rareParts);
    INFO(told(rare.problems));
    REQUIRE(rare.plan);
    Plan shipped = everyKeyPlan();
    shipped.parts = shippedParts().parts();
    for (const Plan& plan : {everyKeyPlan(), *rare.plan, shipped}) walk.along(*readJsonValue(planToJson(plan)).value, schema(), "");
    for (const std::string& at : walk.unknown) {
        INFO(at);
        CHECK_FALSE(true);
    }
    std::vector<std::pair<std::string, const JsonValue*>> keys;
    Walk::everyKeyOf(schema(), "", keys);
    CHECK(keys.size() > 200);
    for (const auto& [at, rule] : keys) {
        INFO(at);
        CHECK(walk.met.count(rule) == 1);
    }
}

TEST_CASE("the schema fits what people write too") {
    Walk walk;
    std::vector<std::string> texts = blocks();
    texts.push_back(everyKey);
    texts.push_back(smallest);
    texts.push_back(rareParts);
    for (const auto& entry : std::filesystem::directory_iterator(HITHER_SOURCE_DIR "/sample_plans"))
        if (entry.path().extension() == ".json") texts.push_back(bytesOf(entry.path().string()));
    CHECK(texts.size() >= 5);
    for (const std::string& text : texts) walk.along(*readJsonValue(text).value, schema(), "");
    for (const std::string& at : walk.unknown) {
        INFO(at);
        CHECK_FALSE(true);
    }
}

TEST_CASE("the page's two plans are plans, with the values that its words give") {
    const std::vector<std::string> all = blocks();
    REQUIRE(all.size() == 2);
    const PlanRead elbow = readPlan(all[0]), finger = readPlan(all[1]);
    INFO(told(elbow.problems) << told(finger.problems));
    REQUIRE(elbow.plan);
    REQUIRE(finger.plan);
    const Mount& arm = elbow.plan->options.at(0).mounts.at(0);
    CHECK(arm.support == "chair");
    CHECK(arm.place.along_m == 0.298);
    CHECK(arm.parts.at(1).joints.at("elbow").q == std::vector<double>{radians(-152.8)});
    CHECK(elbow.plan->sites.at(0).given == SiteGiven::fromPosture);
    CHECK(elbow.plan->person->body.typed.at("stature") == 1.63);
    CHECK(finger.plan->sites.at(0).direction == Vec3(0, 0, -1));
    CHECK(finger.plan->options.at(0).mounts.at(0).parts.at(0).joints.at("neck").q.size() == 6);
    CHECK(finger.plan->parts.size() == 3);
}

TEST_CASE("the page names every key, dimension, joint, control site, kind and table") {
    const auto named = [](const std::string& what) { return page().find(what) != std::string::npos; };
    std::vector<std::pair<std::string, const JsonValue*>> keys;
    Walk::everyKeyOf(schema(), "", keys);
    for (const auto& [at, rule] : keys) {
        if (at.find("/$defs/part/") == 0 || at.find("/$defs/element/") == 0 || at.find("/$defs/grip/") == 0 || at.find("/$defs/port/") == 0 ||
            at.find("/$defs/switch_face/") == 0 || at.find("/$defs/solid/") == 0) continue;  // part_format.md
        const std::string key = at.substr(at.rfind('/') + 1);
        CAPTURE(at);
        CHECK((named("`" + key + "`") || named("\"" + key + "\"")));
    }
    for (const std::string& name : bodyDimensionNames()) CHECK(named("`" + name + "`"));
    for (const auto& [joint, range] : publishedRanges()) {
        const std::size_t side = joint.find("_left") != std::string::npos ? joint.find("_left") : joint.find("_right");
        CAPTURE(joint);
        CHECK(named("`" + joint.substr(0, side) + "`"));
    }
    for (const auto& [id, name] : controlSites()) {
        const std::size_t side = id.find("_left") != std::string::npos ? id.find("_left") : id.find("_right");
        CAPTURE(id);
        CHECK(named("`" + id.substr(0, side) + "`"));
    }
    for (const SupportKind& kind : supportKinds()) CHECK(named("`" + kind.kind + "`"));
    for (const PlanTable& table : planTables1()) CHECK(named("`" + table.name + "`"));
}
