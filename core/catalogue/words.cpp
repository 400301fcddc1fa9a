#include "core/catalogue/part.h"

namespace hither {

const char* word(PartKind kind) {
    switch (kind) {
        case PartKind::grip: return "grip";
        case PartKind::arm: return "arm";
        case PartKind::neck: return "neck";
        case PartKind::post: return "post";
        case PartKind::joint: return "joint";
        case PartKind::adapter: return "adapter";
        case PartKind::back: return "back";
        case PartKind::switchDevice: return "switch";
    }
    return "adapter";
}

int Element::freedoms() const {
    struct Count {
        int operator()(const RigidElement&) const { return 0; }
        int operator()(const HingeElement&) const { return 1; }
        int operator()(const SwivelElement&) const { return 1; }
        int operator()(const BallElement&) const { return 3; }
        int operator()(const SlideElement&) const { return 1; }
        int operator()(const BendElement&) const { return 6; }
    };
    return std::visit(Count{}, what);
}

}  // namespace hither
