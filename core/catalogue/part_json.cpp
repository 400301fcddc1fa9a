#include <set>

#include <nlohmann/json.hpp>

#include "core/catalogue/catalogue.h"
#include "core/catalogue/element_json.h"
#include "core/catalogue/grip_json.h"
#include "core/catalogue/json_form.h"
#include "core/catalogue/port_json.h"
#include "core/catalogue/solid_json.h"

namespace hither {

using nlohmann::json;

namespace {

constexpr std::size_t mostElements = 64;

SwitchFace readFace(const json& value, const Basis& basis, ProblemList& problems) {
    JsonForm form(value, "face", problems);
    SwitchFace face;
    face.action = static_cast<SwitchFace::Action>(form.choice("action", {"press", "pull", "sense"}, 0));
    face.operatingAxis = form.axisOr("operating_axis", face.operatingAxis);
    face.size = form.needVector("size_mm", form::mm, {0, 5000});
    face.travel_m = form.figure("travel_mm", basis, form::mm, {0, 1000});
    face.force_N = form.figure("force_N", basis, form::newton, {0, 1000});
    face.angleTolerance_rad = form.figure("angle_tolerance_deg", basis, form::degree, {0, 180});
    face.sensingRange_m = form.figure("sensing_range_mm", basis, form::mm, {0, 5000});
    if (face.sensingRange_m.known() && face.action != SwitchFace::Action::sense)
        form.problem("sensing_range_mm", "nothing, because only a switch with the action sense has a range");
    form.finish();
    return face;
}

json writeFace(const SwitchFace& face, const Basis& basis) {
    constexpr const char* actions[] = {"press", "pull", "sense"};
    json out = {{"action", actions[static_cast<std::size_t>(face.action)]},
                {"operating_axis", writeAxis(face.operatingAxis)},
                {"size_mm", writeVector(face.size, form::mm)}};
    writeFigure(out, "travel_mm", face.travel_m, basis, form::mm);
    writeFigure(out, "force_N", face.force_N, basis, form::newton);
    writeFigure(out, "angle_tolerance_deg", face.angleTolerance_rad, basis, form::degree);
    writeFigure(out, "sensing_range_mm", face.sensingRange_m, basis, form::mm);
    return out;
}

void readPrice(const json& value, Part& part, ProblemList& problems) {
    JsonForm form(value, "price", problems);
    if (!form.isObject()) return;
    const std::string currency = form.textOr("currency", "EUR", 100);
    bool code = currency.size() == 3;
    for (const char c : currency) code = code && c >= 'A' && c <= 'Z';
    if (!code) form.problem("currency", "an ISO 4217 code, \"EUR\"");
    const char* allowed = "an amount as text with at most two decimals, \"12.50\"";
    const json* amount = form.take("amount");
    if (!amount || !amount->is_string()) {
        form.problem("amount", allowed);
    } else {
        const auto money = parseMoney(amount->get_ref<const std::string&>(), code ? currency : "EUR");
        if (!money) form.problem("amount", allowed + std::string(" (") + money.reason + ")");
        else if (money.value->minor < 0 || money.value->minor > 100'000'000) form.problem("amount", "from 0 to 1000000");
        else if (code && money.value->currency != currency) form.problem("amount", "no other currency than the key currency says");
        else part.price = *money.value;
    }
    Basis basis = part.dimensionsBasis;
    if (form.has("basis")) basis = form.basisOr("basis", basis);
    if (form.has("source")) basis.source = form.textOr("source", "", 500);
    part.priceBasis = basis;
    form.finish();
}

json writePrice(const Part& part) {
    json out = {{"amount", printAmount(*part.price)}, {"currency", part.price->currency}};
    if (!(part.priceBasis == part.dimensionsBasis)) {
        out["basis"] = word(part.priceBasis.kind);
        out["source"] = part.priceBasis.source;
    }
    return out;
}

/// What each kind of part must and must not have.
void checkShape(const Part& part, JsonForm& form) {
    const bool grip = part.kind == PartKind::grip, device = part.kind == PartKind::switchDevice;
    const auto must = [&form](const char* key, const char* why) { if (!form.has(key)) form.problem(key, why); };
    const auto mustNot = [&form](const char* key, const char* why) { if (form.has(key)) form.problem(key, why); };
    if (grip) {
        must("grips", "at least one way to hold the support, because this is a grip");
        mustNot("bases", "nothing, because a grip holds the support itself");
    } else {
        must("bases", "at least one port toward the support");
        mustNot("grips", "nothing, because only a part of the kind grip holds the support");
    }
    if (device) {
        must("face", "the face that the person operates, because this is a switch");
        mustNot("outlet", "nothing, because a switch ends the chain");
    } else {
        must("outlet", "the port toward the switch");
        mustNot("face", "nothing, because only a part of the kind switch has a face");
    }
}

}  // namespace

PartRead readPart(const json& value, const std::string& file) {
    PartRead read;
    ProblemList problems{file, "", read.problems};
    if (value.is_object()) {
        const auto id = value.find("id");
        if (id != value.end() && id->is_string()) problems.part = id->get_ref<const std::string&>().substr(0, 64);
    }
    JsonForm form(value, "", problems);
    if (!form.isObject()) return read;

    Part part;
    part.id = form.textOr("id", "", 64);
    if (!isId(part.id)) form.problem("id", "lower case letters a to z, digits and hyphens, 1 to 64 of them");
    part.name = form.needText("name");
    const std::size_t beforeKind = read.problems.size();
    part.kind = static_cast<PartKind>(form.choice("kind", {"grip", "arm", "neck", "post", "joint", "adapter", "back", "switch"}, -1));
    const bool kindKnown = read.problems.size() == beforeKind;
    part.words = form.texts("words", 64);
    part.dimensionsBasis = form.basisOr("basis", {});
    const Basis& basis = part.dimensionsBasis;

    for (const auto& [item, path] : form.items("grips", 8))
        if (auto grip = readGrip(*item, path, basis, problems)) part.grips.push_back(std::move(*grip));
    for (const auto& [item, path] : form.items("bases", 16))
        if (auto port = readPort(*item, path, basis, problems)) part.bases.push_back(std::move(*port));
    if (const json* outlet = form.take("outlet")) part.outlet = readPort(*outlet, "outlet", basis, problems);
    std::set<std::string> names;
    for (const auto& [item, path] : form.items("elements", mostElements)) {
        auto element = readElement(*item, path, basis, problems);
        if (!element) continue;
        if (!element->name.empty() && !names.insert(element->name).second)
            problems.add(path + "/name", "\"" + element->name + "\"", "a name that no other element of the part has");
        part.elements.push_back(std::move(*element));
    }
    if (const json* face = form.take("face")) part.face = readFace(*face, basis, problems);
    for (const auto& [item, path] : form.items("keep_free", 32)) {
        JsonForm volume(*item, path, problems);
        const std::string what = volume.needText("what");
        const json* solid = volume.take("solid");
        if (!solid) volume.problem("solid", "a solid");
        else if (auto made = readSolidInto(*solid, volume.at("solid"), problems)) part.keepFree.push_back({what, std::move(*made)});
        volume.finish();
    }
    part.ratedLoad_kg = form.figure("rated_load_g", basis, form::gram, {0, 1e6});
    if (const json* price = form.take("price")) readPrice(*price, part, problems);
    part.tools = form.texts("tools", 16);
    part.releaseActions = form.wholeOr("release_actions", 1, 0, 20);
    part.reversible = form.flagOr("reversible", false);
    part.whereToBuy = form.textOr("where_to_buy", "");
    part.notes = form.textOr("notes", "");

    if (kindKnown) checkShape(part, form);
    const auto items = [&value](const char* key) {
        const auto at = value.find(key);
        return at != value.end() && at->is_array() ? at->size() : std::size_t{0};
    };
    for (const char* key : {"grips", "bases"})
        if (form.has(key) && value.at(key).is_array() && items(key) == 0) form.problem(key, "a list that is not empty, or no such key");
    if (part.reversible && (items("bases") != 1 || !form.has("outlet") || items("keep_free") > 0))
        form.problem("reversible", "false, because only a part with one base, an outlet and nothing to keep free can be turned end for end");
    form.finish();
    if (read.problems.empty()) read.part = std::move(part);
    return read;
}

json writePart(const Part& part) {
    const Basis& basis = part.dimensionsBasis;
    json out = {{"id", part.id}, {"name", part.name}, {"kind", word(part.kind)}, {"basis", writeBasis(basis)}};
    if (!part.words.empty()) out["words"] = part.words;
    for (const Grip& grip : part.grips) out["grips"].push_back(writeGrip(grip, basis));
    for (const Port& base : part.bases) out["bases"].push_back(writePort(base, basis));
    if (part.outlet) out["outlet"] = writePort(*part.outlet, basis);
    for (const Element& element : part.elements) out["elements"].push_back(writeElement(element, basis));
    if (part.face) out["face"] = writeFace(*part.face, basis);
    for (const KeepFree& free : part.keepFree) out["keep_free"].push_back({{"what", free.what}, {"solid", writeSolid(free.solid)}});
    writeFigure(out, "rated_load_g", part.ratedLoad_kg, basis, form::gram);
    if (part.price) out["price"] = writePrice(part);
    if (!part.tools.empty()) out["tools"] = part.tools;
    if (part.releaseActions != 1) out["release_actions"] = part.releaseActions;
    if (part.reversible) out["reversible"] = true;
    if (!part.whereToBuy.empty()) out["where_to_buy"] = part.whereToBuy;
    if (!part.notes.empty()) out["notes"] = part.notes;
    return out;
}

}  // namespace hither
