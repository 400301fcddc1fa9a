#include <algorithm>
#include <cmath>
#include <utility>

#include "app/picture/mesh_key.h"
#include "app/picture/outlined.h"
#include "app/picture/revolved.h"
#include "app/picture/shapes.h"
#include "app/picture/support_items.h"

namespace hither {

namespace {

constexpr double above_m = 0.0012;      // sleeves and strips stand this far off what they mark
constexpr double edgeStrip_m = 0.016;   // how far a strip reaches in from an edge
constexpr double clothTube_m = 0.006;

using Stretch = std::pair<double, double>;

/// The stretches along an attachment that are closed all round, joined and in order.
std::vector<Stretch> closedStretches(const Attachment& a) {
    std::vector<Stretch> out;
    for (const Blocked& b : a.blocked)
        if (b.wholeTurn) out.push_back({std::max(0.0, b.from_m), std::min(a.length_m(), b.to_m)});
    std::sort(out.begin(), out.end());
    std::vector<Stretch> joined;
    for (const Stretch& s : out) {
        if (s.second <= s.first) continue;
        if (!joined.empty() && s.first <= joined.back().second) joined.back().second = std::max(joined.back().second, s.second);
        else joined.push_back(s);
    }
    return joined;
}

std::vector<Stretch> freeStretches(const Attachment& a) {
    std::vector<Stretch> out;
    double from = 0;
    for (const Stretch& closed : closedStretches(a)) {
        if (closed.first > from + 0.002) out.push_back({from, closed.first});
        from = closed.second;
    }
    if (a.length_m() > from + 0.002) out.push_back({from, a.length_m()});
    return out;
}

/// Frame at the middle of a stretch: x along it, z away from the surface.
Pose stretchFrame(const Attachment& a, const Stretch& s) {
    const Vec3 x = (a.b - a.a).normalized();
    return frameFromZ(a.a + 0.5 * (s.first + s.second) * x, a.kind == AttachmentKind::rail ? a.reference : a.up, x);
}

struct Marked { MeshRef mesh; Pose X_S; };

Marked mark(const Attachment& a, const Stretch& s, MeshStore& store) {
    const double half = 0.5 * (s.second - s.first);
    const Pose X = stretchFrame(a, s);
    if (a.kind == AttachmentKind::rail) {
        const double r = 0.5 * a.outside_m.value.value_or(0.02) + above_m;
        if (a.section == Section::square)
            return {store.get(meshKey("square sleeve", {half, r}), [&] { return boxMesh(Pose::Identity(), Vec3(half, r, r)); }), X};
        // Open at the ends: the tube goes on.
        return {store.get(meshKey("sleeve", {half, r}), [&] { return revolved(frameFromZ(Vec3::Zero(), Vec3::UnitX(), Vec3::UnitY()), {{r, -half}, {r, half}}, r > 0.018 ? 16 : 10); }), X};
    }
    if (a.kind == AttachmentKind::cloth)
        return {store.get(meshKey("cloth", {half}), [&] { return tubeMesh({Vec3(-half, 0, 0), Vec3(half, 0, 0)}, clothTube_m, 6); }), X};
    // Along an edge: x along, y into the plate (up x x), z up; the strip wraps upper side and end.
    const double thickness = a.thickness_m.value.value_or(0.01), depth = std::min(edgeStrip_m, a.depth_m);
    return {store.get(meshKey("strip", {half, thickness, depth}), [&] {
                return boxMesh(translation(Vec3(0, 0.5 * (depth - above_m), -0.5 * thickness)), Vec3(half, 0.5 * (depth + above_m), 0.5 * thickness + above_m));
            }), X};
}

/// A face, less the strips along its border, as a thin plate lying on it.
Marked markFace(const Attachment& a, MeshStore& store) {
    const double x = 0.5 * a.sizeX_m, y = 0.5 * a.sizeY_m, border = std::min(edgeStrip_m, 0.3 * std::min(x, y));
    const MeshRef mesh = store.get(meshKey("face", {x, y}), [&] {
        Mesh out = boxMesh(translation(Vec3(0, 0, 0.5 * above_m)), Vec3(x - border, y - border, 0.5 * above_m));
        out.edges.clear();
        return out;
    });
    return {mesh, frameFromZ(a.a, a.up, a.reference)};
}

}  // namespace

std::vector<PictureItem> attachmentItems(const Situation& situation, const PictureWishes& wishes, MeshStore& store) {
    std::vector<PictureItem> items;
    if (wishes.step != JobStep::build) return items;
    for (const Support& support : situation.supports)
        for (const Attachment& a : support.attachments) {
            const Pose X_WS = groupPose_W(situation, support.id, a.group);
            const Picked pick = Picked::attachment(support.id, a.id);
            const bool asked = wishes.offerFor.kind == OfferFor::Kind::attachment && wishes.offerFor.support == support.id && wishes.offerFor.attachment == a.id;
            const bool strong = asked || wishes.picked == pick || wishes.hovered == pick;
            const bool outlined = isOutlined(wishes, pick) || asked;
            int number = 0;
            const auto add = [&](Marked marked, Look look, double opacity) {
                PictureItem item;
                item.key = "attachment/" + support.id + "/" + a.id + "/" + std::to_string(number++);
                item.mesh = std::move(marked.mesh);
                item.X_W = X_WS * marked.X_S;
                item.look = look;
                item.opacity = opacity;
                item.pick = pick;
                item.outlined = outlined && look == Look::attachmentFree;
                item.castsShadow = false;
                items.push_back(std::move(item));
            };
            const double opacity = strong ? 0.7 : 0.24;
            if (a.kind == AttachmentKind::face) {
                add(markFace(a, store), Look::attachmentFree, strong ? 0.4 : 0.08);
                continue;
            }
            for (const Stretch& s : freeStretches(a)) add(mark(a, s, store), Look::attachmentFree, opacity);
            if (!strong) continue;
            for (const Stretch& s : closedStretches(a)) add(mark(a, s, store), Look::attachmentTaken, 0.6);
        }
    return items;
}

}  // namespace hither
