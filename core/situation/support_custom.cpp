#include "core/situation/support_maker.h"

namespace hither {

namespace {

/// Everything of it is typed: support_typed.h reads that for every kind.
void makeCustom(SupportMaker&) {}

}  // namespace

SupportRecipe customRecipe() {
    return {{"custom", "Typed support", "Tubes, plates and boxes as typed: rails, edges, faces, cloth, landmarks, solids and moving groups in the support's frame. Nobody sits or lies on it.", {}}, makeCustom};
}

}  // namespace hither
