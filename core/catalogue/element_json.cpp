#include "core/catalogue/element_json.h"

#include <nlohmann/json.hpp>

#include "core/catalogue/solid_json.h"

namespace hither {

using nlohmann::json;

namespace {

const FormRange place_mm{-5000, 5000};
const FormRange size_mm{0, 5000, true};
const FormRange notNegative{0, 1e9};
const FormRange mass_g{0, 1e6};
const FormRange turn_deg{-3600, 3600};

/// Keys that every joint has; their units differ between turning joints, slides and bends.
struct JointKeys {
    const char* hold; FormUnit holdUnit;
    const char* stiffness; FormUnit stiffnessUnit;
    const char* error; FormUnit errorUnit;
};
constexpr JointKeys turning{"hold_Nm", form::newtonMetre, "stiffness_Nm_per_rad", form::newtonMetrePerRadian, "setting_error_deg", form::degree};
constexpr JointKeys sliding{"hold_N", form::newton, "stiffness_N_per_m", form::newtonPerMetre, "setting_error_mm", form::mm};
constexpr JointKeys bending{"hold_Nm", form::newtonMetre, "stiffness_Nm_per_rad", form::newtonMetrePerRadian, "setting_error_per_m", form::perMetre};

JointFigures readJoint(JsonForm& form, const JointKeys& keys, const Basis& basis) {
    JointFigures joint;
    joint.hold = form.figure(keys.hold, basis, keys.holdUnit, notNegative);
    joint.stiffness = form.figure(keys.stiffness, basis, keys.stiffnessUnit, {0, 1e9, true});
    joint.settingError = form.figure(keys.error, basis, keys.errorUnit, {0, 1000});
    joint.lockGroup = form.textOr("lock_group", "", 64);
    return joint;
}

void writeJoint(json& out, const JointFigures& joint, const JointKeys& keys, const Basis& basis) {
    writeFigure(out, keys.hold, joint.hold, basis, keys.holdUnit);
    writeFigure(out, keys.stiffness, joint.stiffness, basis, keys.stiffnessUnit);
    writeFigure(out, keys.error, joint.settingError, basis, keys.errorUnit);
    if (!joint.lockGroup.empty()) out["lock_group"] = joint.lockGroup;
}

void orderedRange(JsonForm& form, const char* minKey, double min, double max) {
    if (min > max) form.problem(minKey, "at most the greatest value beside it");
}

RigidElement readRigid(JsonForm& form, const Basis& basis) {
    RigidElement rigid;
    const Vec3 to = form.vectorOr("to_mm", Vec3::Zero(), form::mm, place_mm);
    rigid.X = pose(form.turnOr("turn_deg"), to);
    for (const auto& [item, path] : form.items("solids", 64))
        if (auto solid = readSolidInto(*item, path, form.problems())) rigid.solids.push_back(std::move(*solid));
    rigid.mass_kg = form.figure("mass_g", basis, form::gram, mass_g);
    rigid.centreOfMass = form.vectorOr("centre_of_mass_mm", 0.5 * to, form::mm, place_mm);
    rigid.EI_Nm2 = form.figure("EI_Nm2", basis, form::newtonMetreSquared, {0, 1e9, true});
    rigid.GJ_Nm2 = form.figure("GJ_Nm2", basis, form::newtonMetreSquared, {0, 1e9, true});
    return rigid;
}

HingeElement readHinge(JsonForm& form, const Basis& basis) {
    HingeElement hinge;
    hinge.axis = form.axisOr("axis", Vec3::UnitX());
    hinge.min = form.need("min_deg", form::degree, turn_deg);
    hinge.max = form.need("max_deg", form::degree, turn_deg);
    orderedRange(form, "min_deg", hinge.min, hinge.max);
    hinge.detent = form.number("detent_deg", form::degree, {0, 360, true});
    hinge.joint = readJoint(form, turning, basis);
    return hinge;
}

SwivelElement readSwivel(JsonForm& form, const Basis& basis) {
    SwivelElement swivel;
    swivel.min = form.numberOr("min_deg", swivel.min, form::degree, turn_deg);
    swivel.max = form.numberOr("max_deg", swivel.max, form::degree, turn_deg);
    orderedRange(form, "min_deg", swivel.min, swivel.max);
    swivel.detent = form.number("detent_deg", form::degree, {0, 360, true});
    swivel.joint = readJoint(form, turning, basis);
    return swivel;
}

BallElement readBall(JsonForm& form, const Basis& basis) {
    BallElement ball;
    ball.cone = form.need("cone_deg", form::degree, {0, 180, true, true});
    ball.twistMin = form.numberOr("twist_min_deg", ball.twistMin, form::degree, turn_deg);
    ball.twistMax = form.numberOr("twist_max_deg", ball.twistMax, form::degree, turn_deg);
    orderedRange(form, "twist_min_deg", ball.twistMin, ball.twistMax);
    ball.joint = readJoint(form, turning, basis);
    return ball;
}

SlideElement readSlide(JsonForm& form, const Basis& basis) {
    SlideElement slide;
    slide.axis = form.axisOr("axis", Vec3::UnitZ());
    slide.min = form.need("min_mm", form::mm, place_mm);
    slide.max = form.need("max_mm", form::mm, place_mm);
    orderedRange(form, "min_mm", slide.min, slide.max);
    slide.step = form.number("step_mm", form::mm, size_mm);
    slide.joint = readJoint(form, sliding, basis);
    return slide;
}

BendElement readBend(JsonForm& form, const Basis& basis) {
    BendElement bend;
    bend.length = form.need("length_mm", form::mm, size_mm);
    bend.minRadius = form.need("min_radius_mm", form::mm, size_mm);
    bend.radius = form.numberOr("radius_mm", bend.radius, form::mm, {0, 500, true});
    if (form.has("min_radius_mm") && bend.minRadius <= bend.radius) form.problem("min_radius_mm", "more than radius_mm, the neck's own thickness");
    bend.mass_kg = form.figure("mass_g", basis, form::gram, mass_g);
    bend.EI_Nm2 = form.figure("EI_Nm2", basis, form::newtonMetreSquared, {0, 1e9, true});
    bend.joint = readJoint(form, bending, basis);
    return bend;
}

struct Writer {
    json& out;
    const Basis& basis;

    void operator()(const RigidElement& rigid) {
        out["kind"] = "rigid";
        out["to_mm"] = writeVector(rigid.X.translation(), form::mm);
        if (!rigid.X.linear().isIdentity(0)) out["turn_deg"] = writeTurn(rigid.X.linear());
        if (!rigid.solids.empty()) {
            out["solids"] = json::array();
            for (const Solid& solid : rigid.solids) out["solids"].push_back(writeSolid(solid));
        }
        writeFigure(out, "mass_g", rigid.mass_kg, basis, form::gram);
        out["centre_of_mass_mm"] = writeVector(rigid.centreOfMass, form::mm);
        writeFigure(out, "EI_Nm2", rigid.EI_Nm2, basis, form::newtonMetreSquared);
        writeFigure(out, "GJ_Nm2", rigid.GJ_Nm2, basis, form::newtonMetreSquared);
    }
    void operator()(const HingeElement& hinge) {
        out["kind"] = "hinge";
        out["axis"] = writeAxis(hinge.axis);
        range("min_deg", hinge.min, "max_deg", hinge.max, form::degree);
        if (hinge.detent) out["detent_deg"] = fromSI(*hinge.detent, form::degree);
        writeJoint(out, hinge.joint, turning, basis);
    }
    void operator()(const SwivelElement& swivel) {
        out["kind"] = "swivel";
        range("min_deg", swivel.min, "max_deg", swivel.max, form::degree);
        if (swivel.detent) out["detent_deg"] = fromSI(*swivel.detent, form::degree);
        writeJoint(out, swivel.joint, turning, basis);
    }
    void operator()(const BallElement& ball) {
        out["kind"] = "ball";
        out["cone_deg"] = fromSI(ball.cone, form::degree);
        range("twist_min_deg", ball.twistMin, "twist_max_deg", ball.twistMax, form::degree);
        writeJoint(out, ball.joint, turning, basis);
    }
    void operator()(const SlideElement& slide) {
        out["kind"] = "slide";
        out["axis"] = writeAxis(slide.axis);
        range("min_mm", slide.min, "max_mm", slide.max, form::mm);
        if (slide.step) out["step_mm"] = fromSI(*slide.step, form::mm);
        writeJoint(out, slide.joint, sliding, basis);
    }
    void operator()(const BendElement& bend) {
        out["kind"] = "bend";
        out["length_mm"] = fromSI(bend.length, form::mm);
        out["min_radius_mm"] = fromSI(bend.minRadius, form::mm);
        out["radius_mm"] = fromSI(bend.radius, form::mm);
        writeFigure(out, "mass_g", bend.mass_kg, basis, form::gram);
        writeFigure(out, "EI_Nm2", bend.EI_Nm2, basis, form::newtonMetreSquared);
        writeJoint(out, bend.joint, bending, basis);
    }
    void range(const char* minKey, double min, const char* maxKey, double max, const FormUnit& unit) {
        out[minKey] = fromSI(min, unit);
        out[maxKey] = fromSI(max, unit);
    }
};

}  // namespace

std::optional<Solid> readSolidInto(const json& value, const std::string& path, ProblemList& problems) {
    std::vector<PartProblem> found;
    auto solid = readSolid(value, path, found);
    for (PartProblem& problem : found) problems.add(problem.key, std::move(problem.found), std::move(problem.allowed));
    return solid;
}

std::optional<Element> readElement(const json& value, const std::string& path, const Basis& byDefault, ProblemList& problems) {
    const std::size_t before = problems.list.size();
    JsonForm form(value, path, problems);
    if (!form.isObject()) return std::nullopt;
    const int kind = form.choice("kind", {"rigid", "hinge", "swivel", "ball", "slide", "bend"}, -1);
    if (problems.list.size() != before) return std::nullopt;  // without the kind no other key means anything
    Element element;
    element.name = kind == 0 ? form.textOr("name", "", 64) : form.needText("name", 64);
    switch (kind) {
        case 0: element.what = readRigid(form, byDefault); break;
        case 1: element.what = readHinge(form, byDefault); break;
        case 2: element.what = readSwivel(form, byDefault); break;
        case 3: element.what = readBall(form, byDefault); break;
        case 4: element.what = readSlide(form, byDefault); break;
        default: element.what = readBend(form, byDefault); break;
    }
    form.finish();
    if (problems.list.size() != before) return std::nullopt;
    return element;
}

json writeElement(const Element& element, const Basis& byDefault) {
    json out = json::object();
    if (!element.name.empty()) out["name"] = element.name;
    std::visit(Writer{out, byDefault}, element.what);
    return out;
}

}  // namespace hither
