#include <limits>

#include "core/situation/person.h"

namespace hither {

const ControlSite* Body::site(const std::string& id) const {
    for (const ControlSite& each : sites)
        if (each.id == id) return &each;
    return nullptr;
}

std::optional<BodyPick> pickOnBody(const Body& body, const Ray& ray_W) {
    std::optional<BodyPick> nearest;
    double least = std::numeric_limits<double>::infinity();
    for (const BodySolid& each : body.solids) {
        const Pose& X_WB = body.X_WSegment.at(each.segment);
        const auto hit = castRay(ray_W, each.solid.movedBy(X_WB));
        if (!hit || hit->along_m >= least) continue;
        least = hit->along_m;
        nearest = BodyPick{each.segment, X_WB.inverse() * hit->point_W, X_WB.linear().transpose() * hit->normal_W, hit->point_W};
    }
    return nearest;
}

}  // namespace hither
