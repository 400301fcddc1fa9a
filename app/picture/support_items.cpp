#include "app/picture/support_items.h"

#include <algorithm>

#include "app/picture/outlined.h"
#include "app/picture/support_forms.h"

namespace hither {

std::vector<PictureItem> supportItems(const Situation& situation, const PictureWishes& wishes, MeshStore& store) {
    std::vector<PictureItem> items;
    for (const Support& support : situation.supports)
        for (const SupportSolid& solid : support.solids) {
            const Pose X_W = groupPose_W(situation, support.id, solid.group) * solid.solid.X_FG;
            const Picked pick = Picked::support(support.id, solid.name);
            const bool outlined = isOutlined(wishes, pick);
            int number = 0;
            for (DrawnPiece& piece : drawnSolid(support, solid, store)) {
                PictureItem item;
                item.key = "support/" + support.id + "/" + solid.name + "/" + std::to_string(number++);
                item.mesh = std::move(piece.mesh);
                item.X_W = X_W;
                item.look = piece.look;
                item.pick = pick;
                item.outlined = outlined;
                items.push_back(std::move(item));
            }
        }
    return items;
}

}  // namespace hither
