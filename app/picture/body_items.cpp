#include "app/picture/body_items.h"

#include <algorithm>
#include <set>

#include "app/picture/creased.h"
#include "app/picture/mesh_key.h"
#include "app/picture/outlined.h"
#include "app/picture/shapes.h"

namespace hither {

namespace {

/// Flat ends of a limb's form are inside its neighbours: they keep their own normals, so that the rest is
/// shaded evenly up to the end.
constexpr double flatEnd_rad = 1.05;

/// A solid as a form without lines on it.
Mesh soft(const Solid& solid) {
    const Vec3 up = solid.X_FG.linear().col(2) * solid.half.z(), at = solid.X_FG.translation();
    const int around = solid.radius < 0.02 ? 7 : 12;
    if (solid.kind == SolidKind::sphere) return sphereMesh(at, solid.radius, around);
    if (solid.kind == SolidKind::capsule) return capsuleMesh(at - up, at + up, solid.radius, around);
    Mesh mesh;
    if (solid.kind == SolidKind::hull) mesh.add(creased({solid.hull->points, solid.hull->faces}, flatEnd_rad), solid.X_FG);
    else mesh = solidMesh(solid);
    mesh.edges.clear();
    return mesh;
}

/// The ball of one segment at a joint and that of the next stand in the same place: one is enough.
bool doubled(const Body& body, const BodySolid& solid, const std::set<SegmentId>& operating) {
    if (solid.solid.kind != SolidKind::sphere) return false;
    const auto middle = [&](const BodySolid& s) { return Vec3(body.X_WSegment.at(s.segment) * s.solid.X_FG.translation()); };
    return std::any_of(body.solids.begin(), body.solids.end(), [&](const BodySolid& other) {
        if (other.segment == solid.segment || other.solid.kind != SolidKind::sphere || (middle(other) - middle(solid)).norm() > 0.002) return false;
        if (std::abs(other.solid.radius - solid.solid.radius) > 0.002) return false;
        const bool mine = operating.count(solid.segment) != 0, theirs = operating.count(other.segment) != 0;
        if (mine != theirs) return theirs;
        return other.segment < solid.segment;
    });
}

}  // namespace

std::vector<PictureItem> bodyItems(const Situation& situation, const PictureWishes& wishes, MeshStore& store) {
    std::vector<PictureItem> items;
    if (!situation.body || !wishes.body) return items;
    const Body& body = *situation.body;
    std::set<SegmentId> operating;
    for (const Site& site : situation.sites)
        if (site.segment) operating.insert(*site.segment);

    for (const auto& [segment, X_W] : body.X_WSegment) {
        std::vector<const Solid*> solids;
        std::string key = "body " + word(segment);
        for (const BodySolid& s : body.solids) {
            if (s.segment != segment || doubled(body, s, operating)) continue;
            solids.push_back(&s.solid);
            const Vec3 at = s.solid.X_FG.translation();
            key += meshKey("/", s.solid) + meshKey("@", {at.x(), at.y(), at.z()});
        }
        if (solids.empty()) continue;
        PictureItem item;
        item.key = "body/" + word(segment);
        item.mesh = store.get(key, [&] {
            Mesh mesh;
            for (const Solid* solid : solids) mesh.add(soft(*solid));
            return mesh;
        });
        item.X_W = X_W;
        item.look = operating.count(segment) ? Look::bodySite : Look::body;
        item.pick = Picked::person(word(segment));
        item.outlined = isOutlined(wishes, item.pick);
        items.push_back(std::move(item));
    }
    return items;
}

}  // namespace hither
