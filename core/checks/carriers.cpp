#include "core/checks/carriers.h"

#include <algorithm>

namespace hither {

std::vector<CarrierStep> carriers(const Situation& situation, const std::string& supportId, const std::string& groupId) {
    std::vector<CarrierStep> out;
    std::string supportName = supportId, groupName = groupId;
    // Supports and groups were checked for cycles when they were made; the count is a belt to that.
    for (std::size_t guard = 0; guard < 64; ++guard) {
        const Support* support = situation.support(supportName);
        if (!support) break;
        while (!groupName.empty()) {
            const MovingGroup* g = support->group(groupName);
            if (!g) break;
            if (g->max > g->min) {
                CarrierStep step;
                step.support = support->id;
                step.group = g->id;
                step.slides = g->slides;
                step.min = g->min;
                step.max = g->max;
                step.now = g->value;
                // The pivot line is given in S with everything at zero, so the parent carries it.
                const Pose X = groupPose_W(situation, support->id, g->parent);
                step.pivot_W = X * g->pivot;
                step.axis_W = X.linear() * g->axis;
                out.push_back(step);
            }
            groupName = g->parent;
        }
        if (support->carriedBy.empty()) break;
        supportName = support->carriedBy;
        groupName = support->carriedByGroup;
    }
    return out;
}

RelativeMotion relativeMotion(const std::vector<CarrierStep>& first, const std::vector<CarrierStep>& second) {
    const auto has = [](const std::vector<CarrierStep>& list, const CarrierStep& s) {
        return std::any_of(list.begin(), list.end(), [&](const CarrierStep& t) { return t.support == s.support && t.group == s.group; });
    };
    RelativeMotion out;
    for (const CarrierStep& s : first) if (!has(second, s)) { out.steps.push_back(s); out.movesFirst.push_back(true); }
    for (const CarrierStep& s : second) if (!has(first, s)) { out.steps.push_back(s); out.movesFirst.push_back(false); }
    return out;
}

double motionBound(const std::vector<CarrierStep>& of, std::size_t k, const std::vector<Solid>& solids_W) {
    if (of[k].slides) return 1.0;
    double direct = 0.0, fromInnermost = 0.0;
    for (const Solid& solid : solids_W) {
        direct = std::max(direct, solid.reachFromAxis(of[k].pivot_W, of[k].axis_W));
        const Eigen::AlignedBox3d box = solid.bounds(Pose::Identity());
        for (int corner = 0; corner < 8; ++corner)
            fromInnermost = std::max(fromInnermost, (box.corner(static_cast<Eigen::AlignedBox3d::CornerType>(corner)) - of[0].pivot_W).norm());
    }
    if (k == 0) return direct;
    double bound = fromInnermost;
    for (std::size_t i = 0; i < k; ++i) {
        if (of[i].slides) bound += of[i].max - of[i].min;
        bound += (of[i + 1].pivot_W - of[i].pivot_W).norm();
    }
    return bound;
}

}  // namespace hither
