#include "app/picture/make_picture.h"

#include <iterator>

#include "app/picture/body_items.h"
#include "app/picture/mount_items.h"
#include "app/picture/outlined.h"
#include "app/picture/site_items.h"
#include "app/picture/support_items.h"

namespace hither {

struct PictureMaker::Kept { MeshStore store; };

PictureMaker::PictureMaker() : kept_(std::make_unique<Kept>()) {}
PictureMaker::~PictureMaker() = default;

Picture PictureMaker::make(const Situation* situation, const Setup* setup, const PictureWishes& wishes) {
    Picture picture;
    picture.floorStep_m = wishes.units == UnitSystem::metric ? 0.1 : 4 * 0.0254;
    MeshStore& store = kept_->store;
    const auto add = [&](std::vector<PictureItem> items) {
        picture.items.insert(picture.items.end(), std::make_move_iterator(items.begin()), std::make_move_iterator(items.end()));
    };
    if (!situation && setup) situation = &setup->situation;
    if (situation) {
        add(supportItems(*situation, wishes, store));
        add(cushionItems(*situation, wishes, store));
        add(bodyItems(*situation, wishes, store));
        add(attachmentItems(*situation, wishes, store));
        add(siteItems(*situation, wishes, store));
        if (wishes.labels) picture.labels = siteLabels(*situation, wishes);
    }
    if (setup) {
        for (const SetupMount& mount : setup->mounts) add(mountItems(mount, situation ? *situation : setup->situation, wishes, store));
        add(keepOutItems(*setup, wishes, store));
        if (wishes.labels)
            for (PictureLabel& label : keepOutLabels(*setup, wishes)) picture.labels.push_back(std::move(label));
    }
    addFinding(picture, wishes);
    if (situation) addPickedName(picture, *situation, setup, wishes);
    for (PictureItem& item : picture.items) item.outlined = item.outlined || isOutlined(wishes, item.pick);
    store.sweep();

    for (const PictureItem& item : picture.items) {
        if (item.opacity < 1) continue;
        Eigen::AlignedBox3f own;
        for (const Eigen::Vector3f& p : item.mesh->points) own.extend(p);
        if (own.isEmpty()) continue;
        for (int i = 0; i < 8; ++i)
            picture.bounds_W.extend(item.X_W * own.corner(static_cast<Eigen::AlignedBox3f::CornerType>(i)).cast<double>());
    }
    return picture;
}

}  // namespace hither
