#include "core/catalogue/port_json.h"

#include <algorithm>

#include <nlohmann/json.hpp>

namespace hither {

using nlohmann::json;

namespace {

struct Plain { Interface interface; const char* word; };
constexpr Plain plainInterfaces[] = {{Interface::dovetailPlate, "38 mm dovetail plate"},
                                     {Interface::accessoryShoe, "accessory shoe"},
                                     {Interface::hookAndLoop, "hook-and-loop"},
                                     {Interface::adhesivePad, "adhesive pad"},
                                     {Interface::boltPattern, "bolt pattern"}};
constexpr const char* allowedInterfaces =
    "a thread (\"UNC 1/4-20\", \"M5\"), 38 mm dovetail plate, accessory shoe, hook-and-loop, adhesive pad, bolt pattern";

BoltPattern readPattern(JsonForm& form) {
    BoltPattern pattern;
    pattern.count = form.wholeOr("count", 0, 1, 16);
    if (!form.has("count")) form.problem("count", "how many screws or holes, 1 to 16");
    const FormRange range{0, 500};
    const json* circle = form.take("circle_mm");
    if (circle && circle->is_array()) {
        double ends[2] = {0, 0};
        bool good = circle->size() == 2;
        for (std::size_t i = 0; good && i < 2; ++i) {
            const json& end = (*circle)[i];
            good = end.is_number() && end.get<double>() >= range.min && end.get<double>() <= range.max;
            if (good) ends[i] = toSI(end.get<double>(), form::mm);
        }
        if (!good || ends[0] > ends[1]) form.problem("circle_mm", "the circle's diameter, or [least, greatest], each " + range.words(form::mm));
        pattern.circleMin_m = ends[0];
        pattern.circleMax_m = ends[1];
    } else {
        pattern.circleMin_m = pattern.circleMax_m = form.numberOr("circle_mm", 0, form::mm, range);
    }
    if (pattern.count > 1 && pattern.circleMin_m <= 0) form.problem("circle_mm", "a diameter above 0 mm, because there is more than one");
    if (pattern.count == 1 && pattern.circleMax_m > 0) form.problem("circle_mm", "0, because a single screw is in the middle");
    const std::string screw = form.needText("screw");
    const auto thread = parseThread(screw);
    if (thread) pattern.screw = thread.value->name;
    else if (!screw.empty()) form.problem("screw", "a thread name, \"UNC 4-40\" or \"M3\" (" + thread.reason + ")");
    return pattern;
}

}  // namespace

bool isId(const std::string& text) {
    return !text.empty() && text.size() <= 64 && std::all_of(text.begin(), text.end(), [](char c) {
        return (c >= 'a' && c <= 'z') || (c >= '0' && c <= '9') || c == '-';
    });
}

std::optional<Port> readPort(const json& value, const std::string& path, const Basis& byDefault, ProblemList& problems) {
    const std::size_t before = problems.list.size();
    JsonForm form(value, path, problems);
    if (!form.isObject()) return std::nullopt;
    Port port;
    const std::string interface = form.needText("interface");
    const auto plain = std::find_if(std::begin(plainInterfaces), std::end(plainInterfaces), [&](const Plain& p) { return interface == p.word; });
    if (plain != std::end(plainInterfaces)) {
        port.interface = plain->interface;
    } else if (const auto thread = parseThread(interface)) {
        port.interface = Interface::thread;
        port.thread = *thread.value;
    } else if (problems.list.size() == before) {
        form.problem("interface", allowedInterfaces);
    }
    port.gender = form.choice("gender", {"male", "female"}, -1) == 0 ? Gender::male : Gender::female;
    port.length = form.figure("length_mm", byDefault, form::mm, {0, 1000});
    port.material = form.textOr("material", "", 64);
    if (!port.material.empty() && !isId(port.material)) form.problem("material", "a key of resources/materials/materials.json, \"aluminium-6061\"");
    port.lockRing = form.flagOr("lock_ring", false);
    if (port.lockRing && !port.thread) form.problem("lock_ring", "false, because only a thread can have a lock ring");
    if (port.interface == Interface::boltPattern) port.pattern = readPattern(form);
    form.finish();
    if (problems.list.size() != before) return std::nullopt;
    return port;
}

json writePort(const Port& port, const Basis& byDefault) {
    json out = json::object();
    if (port.thread) out["interface"] = port.thread->name;
    for (const Plain& plain : plainInterfaces)
        if (port.interface == plain.interface) out["interface"] = plain.word;
    out["gender"] = port.gender == Gender::male ? "male" : "female";
    writeFigure(out, "length_mm", port.length, byDefault, form::mm);
    if (!port.material.empty()) out["material"] = port.material;
    if (port.lockRing) out["lock_ring"] = true;
    if (port.pattern) {
        out["count"] = port.pattern->count;
        const double least = fromSI(port.pattern->circleMin_m, form::mm), greatest = fromSI(port.pattern->circleMax_m, form::mm);
        if (port.pattern->circleMin_m == port.pattern->circleMax_m) out["circle_mm"] = least;
        else out["circle_mm"] = json::array({least, greatest});
        out["screw"] = port.pattern->screw;
    }
    return out;
}

}  // namespace hither
