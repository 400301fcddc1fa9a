#include "core/catalogue/grip_json.h"

#include <nlohmann/json.hpp>

namespace hither {

using nlohmann::json;

namespace {

const FormRange opening_mm{0, 1000};
const FormRange size_mm{0, 5000, true};
const FormRange notNegative{0, 1e9};
constexpr const char* fixings[] = {"standing", "suction", "adhesive", "hook_and_loop", "screwed"};

void ordered(JsonForm& form, const Figure& min, const Figure& max) {
    if (min.value && max.value && *min.value > *max.value) form.problem("min_mm", "at most max_mm");
}

RailGrip readRail(JsonForm& form, const Basis& basis) {
    RailGrip grip;
    grip.min_m = form.figure("min_mm", basis, form::mm, opening_mm);
    grip.max_m = form.figure("max_mm", basis, form::mm, opening_mm);
    ordered(form, grip.min_m, grip.max_m);
    grip.width_m = form.numberOr("width_mm", grip.width_m, form::mm, size_mm);
    grip.wall_m = form.numberOr("wall_mm", grip.wall_m, form::mm, size_mm);
    if (form.has("sections")) {
        grip.round = grip.square = false;
        const std::size_t before = form.problems().list.size();
        for (const auto& [item, path] : form.items("sections", 2)) {
            if (*item == "round") grip.round = true;
            else if (*item == "square") grip.square = true;
            else form.problems().add(path, quoted(*item), "round or square");
        }
        if (!grip.round && !grip.square && form.problems().list.size() == before) form.problem("sections", "a list with round, square or both");
    }
    grip.holdTorque_Nm = form.figure("hold_torque_Nm", basis, form::newtonMetre, notNegative);
    grip.holdAxial_N = form.figure("hold_axial_N", basis, form::newton, notNegative);
    return grip;
}

EdgeGrip readEdge(JsonForm& form, const Basis& basis) {
    EdgeGrip grip;
    grip.min_m = form.figure("min_mm", basis, form::mm, opening_mm);
    grip.max_m = form.figure("max_mm", basis, form::mm, opening_mm);
    ordered(form, grip.min_m, grip.max_m);
    grip.width_m = form.numberOr("width_mm", grip.width_m, form::mm, size_mm);
    grip.throat_m = form.numberOr("throat_mm", grip.throat_m, form::mm, size_mm);
    grip.wall_m = form.numberOr("wall_mm", grip.wall_m, form::mm, size_mm);
    grip.holdMoment_Nm = form.figure("hold_moment_Nm", basis, form::newtonMetre, notNegative);
    grip.holdForce_N = form.figure("hold_force_N", basis, form::newton, notNegative);
    return grip;
}

FaceGrip readFace(JsonForm& form, const Basis& basis) {
    FaceGrip grip;
    if (const json* size = form.take("size_mm")) {
        const auto good = [](const json& n) { return n.is_number() && n.get<double>() > 0 && n.get<double>() <= size_mm.max; };
        if (size->is_array() && size->size() == 2 && good((*size)[0]) && good((*size)[1])) {
            grip.sizeX_m = toSI((*size)[0].get<double>(), form::mm);
            grip.sizeY_m = toSI((*size)[1].get<double>(), form::mm);
        } else {
            form.problem("size_mm", "[x, y], each " + size_mm.words(form::mm));
        }
    }
    const int fixing = form.choice("fixing", {fixings[0], fixings[1], fixings[2], fixings[3], fixings[4]}, 2);
    grip.fixing = static_cast<FaceFixing>(fixing);
    grip.holdMoment_Nm = form.figure("hold_moment_Nm", basis, form::newtonMetre, notNegative);
    grip.holdForce_N = form.figure("hold_force_N", basis, form::newton, notNegative);
    return grip;
}

ClothGrip readCloth(JsonForm& form, const Basis& basis) {
    ClothGrip grip;
    grip.max_m = form.figure("max_mm", basis, form::mm, opening_mm);
    grip.holdForce_N = form.figure("hold_force_N", basis, form::newton, notNegative);
    grip.drift_m = form.figure("drift_mm", basis, form::mm, opening_mm);
    return grip;
}

struct Writer {
    json& out;
    const Basis& basis;

    void operator()(const RailGrip& grip) {
        out["on"] = "rail";
        writeFigure(out, "min_mm", grip.min_m, basis, form::mm);
        writeFigure(out, "max_mm", grip.max_m, basis, form::mm);
        out["width_mm"] = fromSI(grip.width_m, form::mm);
        out["wall_mm"] = fromSI(grip.wall_m, form::mm);
        out["sections"] = json::array();
        if (grip.round) out["sections"].push_back("round");
        if (grip.square) out["sections"].push_back("square");
        writeFigure(out, "hold_torque_Nm", grip.holdTorque_Nm, basis, form::newtonMetre);
        writeFigure(out, "hold_axial_N", grip.holdAxial_N, basis, form::newton);
    }
    void operator()(const EdgeGrip& grip) {
        out["on"] = "edge";
        writeFigure(out, "min_mm", grip.min_m, basis, form::mm);
        writeFigure(out, "max_mm", grip.max_m, basis, form::mm);
        out["width_mm"] = fromSI(grip.width_m, form::mm);
        out["throat_mm"] = fromSI(grip.throat_m, form::mm);
        out["wall_mm"] = fromSI(grip.wall_m, form::mm);
        writeFigure(out, "hold_moment_Nm", grip.holdMoment_Nm, basis, form::newtonMetre);
        writeFigure(out, "hold_force_N", grip.holdForce_N, basis, form::newton);
    }
    void operator()(const FaceGrip& grip) {
        out["on"] = "face";
        out["size_mm"] = json::array({fromSI(grip.sizeX_m, form::mm), fromSI(grip.sizeY_m, form::mm)});
        out["fixing"] = fixings[static_cast<std::size_t>(grip.fixing)];
        writeFigure(out, "hold_moment_Nm", grip.holdMoment_Nm, basis, form::newtonMetre);
        writeFigure(out, "hold_force_N", grip.holdForce_N, basis, form::newton);
    }
    void operator()(const ClothGrip& grip) {
        out["on"] = "cloth";
        writeFigure(out, "max_mm", grip.max_m, basis, form::mm);
        writeFigure(out, "hold_force_N", grip.holdForce_N, basis, form::newton);
        writeFigure(out, "drift_mm", grip.drift_m, basis, form::mm);
    }
};

}  // namespace

std::optional<Grip> readGrip(const json& value, const std::string& path, const Basis& byDefault, ProblemList& problems) {
    const std::size_t before = problems.list.size();
    JsonForm form(value, path, problems);
    if (!form.isObject()) return std::nullopt;
    const int on = form.choice("on", {"rail", "edge", "face", "cloth"}, -1);
    if (problems.list.size() != before) return std::nullopt;
    Grip grip;
    switch (on) {
        case 0: grip = readRail(form, byDefault); break;
        case 1: grip = readEdge(form, byDefault); break;
        case 2: grip = readFace(form, byDefault); break;
        default: grip = readCloth(form, byDefault); break;
    }
    form.finish();
    if (problems.list.size() != before) return std::nullopt;
    return grip;
}

json writeGrip(const Grip& grip, const Basis& byDefault) {
    json out = json::object();
    std::visit(Writer{out, byDefault}, grip);
    return out;
}

}  // namespace hither
