#include <algorithm>
#include <limits>

#include "app/picture/mesh_key.h"
#include "app/picture/outlined.h"
#include "app/picture/shapes.h"
#include "app/picture/support_items.h"

namespace hither {

namespace {

constexpr double thinnest_m = 0.008, thickest_m = 0.2;

/// How high the lowest point of the pelvis is above the upper side of a seat.
double gapAbove(const Body& body, const Pose& X_WSeat, double half) {
    double least = std::numeric_limits<double>::infinity();
    for (const BodySolid& s : body.solids) {
        if (s.segment.segment != Segment::pelvis || !s.solid.hull) continue;
        const Pose X = X_WSeat.inverse() * body.X_WSegment.at(s.segment) * s.solid.X_FG;
        for (const Vec3& p : s.solid.hull->points) least = std::min(least, (X * p).z() - half);
    }
    return least;
}

}  // namespace

std::vector<PictureItem> cushionItems(const Situation& situation, const PictureWishes& wishes, MeshStore& store) {
    std::vector<PictureItem> items;
    if (!situation.body || !wishes.body) return items;
    const Support* support = situation.support(situation.body->support);
    if (!support || support->resting.posture != Resting::Posture::seated) return items;
    for (const SupportSolid& seat : support->solids) {
        if (seat.name != "seat" || seat.solid.kind != SolidKind::box) continue;
        const Pose X_WSeat = groupPose_W(situation, support->id, seat.group) * seat.solid.X_FG;
        const Vec3& half = seat.solid.half;
        const double thick = gapAbove(*situation.body, X_WSeat, half.z());
        if (!(thick > thinnest_m && thick < thickest_m)) continue;
        PictureItem item;
        item.key = "support/" + support->id + "/cushion";
        const Vec3 own(half.x() - 0.004, half.y() - 0.002, 0.5 * thick);
        item.mesh = store.get(meshKey("cushion", {own.x(), own.y(), own.z()}), [&] { return roundedBoxMesh(Pose::Identity(), own, std::min(0.022, 0.8 * own.z())); });
        item.X_W = X_WSeat * translation(Vec3(0, 0, half.z() + 0.5 * thick));
        item.look = Look::pad;
        item.pick = Picked::support(support->id, seat.name);
        item.outlined = isOutlined(wishes, item.pick);
        items.push_back(std::move(item));
    }
    return items;
}

}  // namespace hither
