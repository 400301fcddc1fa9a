#include "app/scene/drag.h"

#include <algorithm>

#include "app/picture/mount_handles.h"

namespace hither {
namespace {

bool isElement(const Part& part, const std::string& name) {
    return !name.empty() && std::any_of(part.elements.begin(), part.elements.end(), [&](const Element& e) { return e.name == name; });
}

}  // namespace

Sight DragStart::sight(QPointF pixel) const {
    const Camera::Ray ray = camera.rayThrough(pixel.x(), pixel.y(), size.width(), size.height());
    return {ray.origin_W, ray.direction_W};
}
Vec3 DragStart::forward_W() const { return -camera.X_CW().linear().row(2).transpose(); }
Vec3 DragStart::up_W() const { return camera.X_CW().linear().row(1).transpose(); }

QString freedomWords(const Chain& chain, const Freedom& freedom) {
    const QString part = QString::fromStdString(chain.parts[static_cast<std::size_t>(freedom.part)]->name);
    switch (freedom.of) {
        case Freedom::Of::along: return Drag::tr("the place along the rail or edge");
        case Freedom::Of::around: return Drag::tr("the turn round the rail");
        case Freedom::Of::x:
        case Freedom::Of::y:
        case Freedom::Of::yaw: return Drag::tr("the place on the face");
        case Freedom::Of::clocking: return Drag::tr("the turn of %1 on its thread").arg(part);
        case Freedom::Of::joint: break;
    }
    return Drag::tr("%1: %2", "part, joint").arg(part, QString::fromStdString(freedom.joint));
}

std::unique_ptr<Drag> makeDrag(const DragStart& start, QString& whyNot) {
    if (!start.setup) return nullptr;
    const auto& mounts = start.setup->mounts;
    const auto found = std::find_if(mounts.begin(), mounts.end(), [&](const SetupMount& m) { return m.mount.id == start.pick.id; });
    const bool onMount = start.pick.kind == Picked::Kind::joint || start.pick.kind == Picked::Kind::part;
    if (!onMount || found == mounts.end()) return nullptr;
    const int parts = static_cast<int>(found->chain.parts.size());
    if (start.pick.part < 0 || start.pick.part >= parts) return nullptr;
    const Part& part = *found->chain.parts[static_cast<std::size_t>(start.pick.part)];
    if (start.pick.kind == Picked::Kind::part) {
        if (part.face) return makeSwitchDrag(start, *found, whyNot);
        return start.pick.part == 0 ? makePlaceDrag(start, *found, false, whyNot) : nullptr;
    }
    if (start.pick.part == 0 && !isElement(part, start.pick.piece)) return makePlaceDrag(start, *found, start.pick.piece == aroundJoint, whyNot);
    return makeJointDrag(start, *found, whyNot);
}

}  // namespace hither
