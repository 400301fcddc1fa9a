#include "app/picture/site_items.h"

#include <algorithm>

#include "app/picture/mesh_key.h"
#include "app/picture/outlined.h"
#include "app/picture/shapes.h"

namespace hither {

namespace {

constexpr double unknownMovement_m = 0.030;  // drawn, pale, where the movement's length is not known
constexpr double leastDisc_m = 0.014, discBeyond_m = 0.006, discHalf_m = 0.0015;  // the disc shows round the ball of the tolerance

double arrowLength(const Site& site) { return std::max(0.008, site.movement_m.value.value_or(unknownMovement_m)); }

/// An arrow along z from the origin, as long as the movement.
Mesh arrow(double length) {
    const double head = std::min(0.018, 0.5 * length), shaft = std::min(0.0035, 0.2 * length);
    Mesh mesh = cylinderMesh(Vec3::Zero(), Vec3(0, 0, length - head), shaft, 10);
    mesh.add(coneMesh(Vec3(0, 0, length - head), Vec3(0, 0, length), 2.6 * shaft, 0, 14));
    return mesh;
}

}  // namespace

std::vector<PictureItem> siteItems(const Situation& situation, const PictureWishes& wishes, MeshStore& store) {
    std::vector<PictureItem> items;
    for (const Site& site : situation.sites) {
        const Pose X_W = frameFromZ(site.p_W, site.d_W, Vec3::UnitZ());
        const Picked pick = Picked::site(site.id);
        const auto add = [&](const char* what, MeshRef mesh, Look look, double opacity) {
            PictureItem item;
            item.key = "site/" + site.id + "/" + what;
            item.mesh = std::move(mesh);
            item.X_W = X_W;
            item.look = look;
            item.opacity = opacity;
            item.pick = pick;
            item.outlined = isOutlined(wishes, pick) && look != Look::siteTolerance;
            item.castsShadow = false;
            items.push_back(std::move(item));
        };
        const double length = arrowLength(site);
        const double disc = std::clamp(site.tolerance_m + discBeyond_m, leastDisc_m, 3 * leastDisc_m);
        add("disc", store.get(meshKey("site disc", {disc}), [&] { return cylinderMesh(Vec3(0, 0, -discHalf_m), Vec3(0, 0, discHalf_m), disc, 28); }), Look::siteDisc, 1);
        add("arrow", store.get(meshKey("site arrow", {length}), [&] { return arrow(length); }), Look::movementArrow, site.movement_m.known() ? 1 : 0.5);
        if (site.tolerance_m > 0)
            add("tolerance", store.get(meshKey("site ball", {site.tolerance_m}), [&] { return sphereMesh(Vec3::Zero(), site.tolerance_m, 24); }), Look::siteTolerance, 0.25);
    }
    return items;
}

std::vector<PictureLabel> siteLabels(const Situation& situation, const PictureWishes& wishes) {
    std::vector<PictureLabel> labels;
    for (const Site& site : situation.sites) {
        PictureLabel label;
        label.key = "site/" + site.id;
        label.words = site.name;
        label.at_W = site.p_W;
        label.rank = wishes.picked == Picked::site(site.id) ? PictureLabel::Rank::picked : PictureLabel::Rank::plain;
        if (!label.words.empty()) labels.push_back(std::move(label));
    }
    return labels;
}

std::vector<PictureItem> keepOutItems(const Setup& setup, const PictureWishes& wishes, MeshStore& store) {
    std::vector<PictureItem> items;
    for (const KeepOut& keepOut : setup.keepOuts) {
        PictureItem item;
        item.key = "keepOut/" + keepOut.id;
        Solid own = keepOut.solid;
        own.X_FG = Pose::Identity();
        item.mesh = store.get(meshKey("solid", own), [&] { return solidMesh(own); });
        item.X_W = keepOut.solid.X_FG;
        item.look = Look::keepOut;
        item.opacity = 0.28;
        item.pick = Picked::keepOut(keepOut.id);
        item.outlined = isOutlined(wishes, item.pick);
        item.castsShadow = false;
        items.push_back(std::move(item));
    }
    return items;
}

std::vector<PictureLabel> keepOutLabels(const Setup& setup, const PictureWishes& wishes) {
    std::vector<PictureLabel> labels;
    for (const KeepOut& keepOut : setup.keepOuts)
        if (!keepOut.name.empty() && !(wishes.picked == Picked::keepOut(keepOut.id)))  // picked, it has its name already
            labels.push_back({"keepOut/" + keepOut.id, keepOut.name, keepOut.solid.X_FG.translation(), PictureLabel::Rank::plain});
    return labels;
}

}  // namespace hither
