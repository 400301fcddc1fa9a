#pragma once
#include "app/picture/picture.h"
#include "app/scene/gl_geometry.h"
#include "app/scene/gl_materials.h"

namespace Qt3DCore { class QEntity; }

namespace hither {

/// A picture's lines: some pixels wide, over everything, paler where something stands before them.
class GlLines {
public:
    GlLines(Qt3DCore::QEntity* root, GlMaterials& materials);
    void show(const std::vector<PictureLine>& lines, const PictureColours& colours);

private:
    LooseTriangles shown_, hidden_;
};

}  // namespace hither
