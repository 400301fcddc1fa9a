#pragma once
#include <map>
#include <memory>

#include "app/document/view_state.h"
#include "app/picture/picture.h"
#include "core/chain/setup.h"

namespace hither {

/// What the scene is asked to show beside the givens and the option.
struct PictureWishes {
    JobStep step = JobStep::build;
    Picked picked, hovered;
    const Finding* finding = nullptr;      ///< its subjects outlined, its nearest points joined
    OfferFor offerFor;
    bool labels = true;
    bool body = true;
    UnitSystem units = UnitSystem::metric;
};

/// Makes pictures and keeps meshes from one to the next, so that dragging a joint makes only the necks anew.
class PictureMaker {
public:
    PictureMaker();
    ~PictureMaker();
    /// `setup` may be null (nothing built yet, or it cannot be set up); `situation` too.
    Picture make(const Situation* situation, const Setup* setup, const PictureWishes& wishes);

private:
    struct Kept;
    std::unique_ptr<Kept> kept_;
};

/// The nearest thing that a ray hits, by the same meshes as drawn (items that cannot be clicked are
/// passed through; handles win over what they stand in).
struct PictureHit {
    Picked pick;
    Vec3 point_W = Vec3::Zero();
    double along = 0;
    std::string key;   ///< of the item: tells apart the handles of a neck's arcs
};
std::optional<PictureHit> pickInPicture(const Picture& picture, const Vec3& origin_W, const Vec3& direction_W);

}  // namespace hither
