#include "app/picture/mount_items.h"

#include "app/picture/shapes.h"

namespace hither {

std::vector<PictureItem> mountItems(const SetupMount& mount, const Situation&, const PictureWishes& wishes, MeshStore& store) {
    std::vector<PictureItem> items;
    const ChainPoses poses = forward(mount.chain, mount.q);
    int number = 0;
    for (const PlacedSolid& placed : placedSolids(mount.chain, mount.q, poses)) {
        PictureItem item;
        item.key = "mount/" + mount.mount.id + "/" + std::to_string(number++);
        const Pose X = placed.solid_W.X_FG;
        Solid own = placed.solid_W;
        own.X_FG = Pose::Identity();
        std::string shape = "solid";
        for (const double d : {static_cast<double>(own.kind), own.half.x(), own.half.y(), own.half.z(), own.radius}) shape += " " + std::to_string(d);
        item.mesh = own.hull ? store.get(item.key, [&] { return solidMesh(own); }) : store.get(shape, [&] { return solidMesh(own); });
        item.X_W = X;
        const bool last = placed.part + 1 == static_cast<int>(mount.chain.parts.size());
        item.look = placed.part == 0 ? Look::gripPart : last ? Look::switchCap : Look::armPart;
        item.pick = Picked::partOf(mount.mount.id, placed.part);
        item.outlined = wishes.picked == item.pick;
        items.push_back(std::move(item));
    }
    return items;
}

}  // namespace hither
