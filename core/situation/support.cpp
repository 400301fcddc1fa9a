#include "core/situation/support.h"

#include <algorithm>
#include <cassert>
#include <cmath>

#include "core/situation/support_maker.h"
#include "core/situation/support_typed.h"

namespace hither {

namespace {

const std::vector<SupportRecipe>& recipes() {
    static const std::vector<SupportRecipe> all = {chairManualRecipe(), chairTiltRecipe(), chairPowerRecipe(), bedRecipe(), trayRecipe(),
                                                   tableRecipe(), pushchairRecipe(), poleRecipe(), customRecipe()};
    return all;
}

std::string listed(const std::vector<std::string>& words) {
    std::string text;
    for (const std::string& word : words) text += (text.empty() ? "" : ", ") + word;
    return text;
}

void checkDimensions(const SupportSpec& spec, const SupportKind& kind, std::vector<SupportProblem>& problems) {
    for (const auto& [key, value] : spec.dimensions) {
        const auto dimension = std::find_if(kind.dimensions.begin(), kind.dimensions.end(), [&k = key](const SupportDimension& d) { return d.key == k; });
        if (dimension == kind.dimensions.end()) {
            std::vector<std::string> keys;
            for (const SupportDimension& d : kind.dimensions) keys.push_back(dimensionKey(d));
            problems.push_back({spec.id, "dimensions/" + key, "a dimension that " + kind.kind + " does not have",
                                keys.empty() ? "none: everything of this kind is typed as rails, edges, faces, cloths and solids" : listed(keys)});
            continue;
        }
        const double slack = 1e-9;  // a value typed at the limit passes, also after its conversion from mm or degrees
        if (!(value >= dimension->min - slack && value <= dimension->max + slack))
            problems.push_back({spec.id, "dimensions/" + dimensionKey(*dimension), shownValue(value, dimension->angle),
                                shownRange(dimension->min, dimension->max, dimension->angle)});
    }
}

}  // namespace

std::string dimensionKey(const SupportDimension& dimension) { return dimension.key + (dimension.angle ? "_deg" : "_mm"); }

const Attachment* Support::attachment(const std::string& wanted) const {
    const auto found = std::find_if(attachments.begin(), attachments.end(), [&](const Attachment& a) { return a.id == wanted; });
    return found == attachments.end() ? nullptr : &*found;
}

const MovingGroup* Support::group(const std::string& wanted) const {
    const auto found = std::find_if(groups.begin(), groups.end(), [&](const MovingGroup& g) { return g.id == wanted; });
    return found == groups.end() ? nullptr : &*found;
}

const std::vector<SupportKind>& supportKinds() {
    static const std::vector<SupportKind> kinds = [] {
        std::vector<SupportKind> all;
        for (const SupportRecipe& recipe : recipes()) all.push_back(recipe.kind);
        return all;
    }();
    return kinds;
}

SupportMade makeSupport(const SupportSpec& spec) {
    SupportMade made;
    const auto recipe = std::find_if(recipes().begin(), recipes().end(), [&](const SupportRecipe& r) { return r.kind.kind == spec.kind; });
    if (recipe == recipes().end()) {
        std::vector<std::string> kinds;
        for (const SupportKind& kind : supportKinds()) kinds.push_back(kind.kind);
        made.problems.push_back({spec.id, "kind", spec.kind.empty() ? "nothing" : spec.kind, listed(kinds)});
        return made;
    }
    checkDimensions(spec, recipe->kind, made.problems);
    if (!spec.at_m.allFinite()) made.problems.push_back({spec.id, "at_mm", "not a number", "three numbers"});
    if (!std::isfinite(spec.yaw_rad)) made.problems.push_back({spec.id, "yaw_deg", "not a number", "a number"});
    if (!made.problems.empty()) return made;

    SupportMaker maker(spec, recipe->kind, made.problems);
    Support& support = maker.support;
    support.id = spec.id;
    support.kind = spec.kind;
    support.name = spec.name.empty() ? recipe->kind.name : spec.name;
    support.X_WS = pose(rotationFromRollPitchYaw(0, 0, spec.yaw_rad), spec.at_m);
    support.carriedBy = spec.carriedBy;
    support.carriedByGroup = spec.carriedByGroup;
    support.basis = maker.allTyped() ? BasisKind::measured : BasisKind::assumed;
    recipe->make(maker);
    addTypedGroups(spec, support, made.problems);
    addTypedSolids(spec, support, made.problems);
    addTypedAttachments(spec, support, made.problems);
    addTypedLandmarks(spec, support, made.problems);
    checkTubes(spec, support, made.problems);
    applySettings(spec, support, made.problems);
    if (made.problems.empty()) made.support = std::move(support);
    return made;
}

Pose groupPose_S(const Support& support, const std::string& group, const GroupSettings& settings) {
    Pose X = Pose::Identity();
    std::string id = group;
    // From the group outward to S: X = parent * ... * own. The count stops a cycle, which makeSupport refuses.
    for (std::size_t steps = 0; !id.empty() && steps <= support.groups.size(); ++steps) {
        const MovingGroup* g = support.group(id);
        assert(g != nullptr);
        const auto setting = settings.find({support.id, id});
        const double value = setting == settings.end() ? g->value : setting->second;
        const Pose own = g->slides ? translation(value * g->axis)
                                   : pose(rotationFromVector(value * g->axis), g->pivot - rotationFromVector(value * g->axis) * g->pivot);
        X = own * X;
        id = g->parent;
    }
    return X;
}

}  // namespace hither
