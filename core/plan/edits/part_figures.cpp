#include "core/plan/edits/part_figures.h"

#include <algorithm>
#include <cmath>
#include <type_traits>

#include "core/plan/edits/build_rules.h"

namespace hither {
namespace {

/// Calls `visit(place, figure)` for every figure of a part, const or not.
template <class PartType, class Visit>
void visitFigures(PartType& part, Visit visit) {
    visit("rated_load", part.ratedLoad_kg);
    for (std::size_t i = 0; i < part.grips.size(); ++i) {
        const std::string at = "grips/" + std::to_string(i) + "/";
        std::visit([&](auto& g) {
            using G = std::decay_t<decltype(g)>;
            if constexpr (std::is_same_v<G, RailGrip>) { visit(at + "min", g.min_m); visit(at + "max", g.max_m); visit(at + "hold_torque", g.holdTorque_Nm); visit(at + "hold_axial", g.holdAxial_N); }
            if constexpr (std::is_same_v<G, EdgeGrip>) { visit(at + "min", g.min_m); visit(at + "max", g.max_m); visit(at + "hold_moment", g.holdMoment_Nm); visit(at + "hold_force", g.holdForce_N); }
            if constexpr (std::is_same_v<G, FaceGrip>) { visit(at + "hold_moment", g.holdMoment_Nm); visit(at + "hold_force", g.holdForce_N); }
            if constexpr (std::is_same_v<G, ClothGrip>) { visit(at + "max", g.max_m); visit(at + "hold_force", g.holdForce_N); visit(at + "drift", g.drift_m); }
        }, part.grips[i]);
    }
    for (std::size_t i = 0; i < part.bases.size(); ++i) visit("bases/" + std::to_string(i) + "/length", part.bases[i].length);
    for (std::size_t i = 0; i < part.elements.size(); ++i) {
        const std::string element = "elements/" + std::to_string(i) + "/", joint = "joints/" + part.elements[i].name + "/";
        std::visit([&](auto& e) {
            using E = std::decay_t<decltype(e)>;
            if constexpr (std::is_same_v<E, RigidElement>) { visit(element + "mass", e.mass_kg); visit(element + "EI", e.EI_Nm2); visit(element + "GJ", e.GJ_Nm2); }
            if constexpr (std::is_same_v<E, BendElement>) { visit(element + "mass", e.mass_kg); visit(element + "EI", e.EI_Nm2); }
            if constexpr (!std::is_same_v<E, RigidElement>) { visit(joint + "hold", e.joint.hold); visit(joint + "stiffness", e.joint.stiffness); visit(joint + "setting_error", e.joint.settingError); }
        }, part.elements[i].what);
    }
    if (part.outlet) visit("outlet/length", part.outlet->length);
    if (part.face) {
        visit("face/travel", part.face->travel_m);
        visit("face/force", part.face->force_N);
        visit("face/angle_tolerance", part.face->angleTolerance_rad);
        visit("face/sensing_range", part.face->sensingRange_m);
    }
}

std::shared_ptr<const Part>* copyOf(Plan& plan, const std::string& id) {
    for (auto& p : plan.parts) if (p->id == id) return &p;
    return nullptr;
}

}  // namespace

std::vector<NamedFigure> figuresOf(const Part& part) {
    std::vector<NamedFigure> all;
    visitFigures(part, [&](const std::string& place, const Figure& figure) { all.push_back({place, figure}); });
    return all;
}

Edited useMeasuredFigure(const Plan& plan, const std::string& part, const std::string& place, double value, const std::string& source) {
    return edited(plan, [&](Plan& p) -> std::string {
        auto* copy = copyOf(p, part);
        if (copy == nullptr) return "the plan does not use a part \"" + part + "\"";
        if (!std::isfinite(value) || value < 0) return "a figure must be a number that is not negative";
        if (source.empty()) return "say who measured it and when";
        Part changed = **copy;
        bool found = false;
        visitFigures(changed, [&](const std::string& at, Figure& figure) {
            if (at != place) return;
            figure = {value, {BasisKind::measured, source}};
            found = true;
        });
        if (!found) return "\"" + changed.name + "\" has no figure \"" + place + "\"";
        *copy = std::make_shared<const Part>(std::move(changed));
        return {};
    });
}

Edited replacePartData(const Plan& plan, const Part& part) {
    return edited(plan, [&](Plan& p) -> std::string {
        auto* copy = copyOf(p, part.id);
        if (copy == nullptr) return "the plan does not use a part \"" + part.id + "\"";
        *copy = std::make_shared<const Part>(part);
        for (const PlanOption& o : p.options)
            for (const Mount& m : o.mounts)
                if (std::any_of(m.parts.begin(), m.parts.end(), [&](const MountPart& mp) { return mp.part == part.id; }))
                    if (std::string why = cannotBuild(p, m.parts); !why.empty()) return "mount \"" + m.id + "\" of option \"" + o.id + "\" could not be built: " + why;
        return {};
    });
}

}  // namespace hither
