#pragma once
#include <vector>

#include <QSize>

#include "app/picture/camera.h"
#include "app/picture/picture.h"
#include "app/scene/gl_geometry.h"
#include "app/scene/gl_image.h"
#include "app/scene/gl_materials.h"
#include "app/scene/label_layout.h"
#include "app/scene/label_sheet.h"

namespace Qt3DCore { class QEntity; }

namespace hither {

/// Labels with their leader lines, and the words on the floor.
class GlWords {
public:
    GlWords(Qt3DCore::QEntity* root, GlMaterials& materials);
    void setColours(const PictureColours& colours, double pixelRatio);
    /// Lays them out anew; cheap enough for every frame.
    void show(const Picture& picture, const Camera& camera, QSize size);

private:
    void showLabels(const Picture& picture, const Camera& camera, QSize size);
    void showFloor(const Picture& picture, const Camera& camera, QSize size);

    PictureColours colours_;
    LabelSheet sheet_;
    LabelLayout layout_;
    ImageTexture texture_;
    LooseTriangles labels_, floor_;
};

/// Words on the floor: how far it is from the reference point along an edge of the grid.
struct FloorMark { Vec3 at_W; QString words; };
std::vector<FloorMark> floorMarks(double floorStep_m, const Eigen::AlignedBox3d& bounds_W, const Camera& camera);
/// Metres between the strong lines, for the spacing of the fine ones: a metre, or a foot.
double strongStep_m(double floorStep_m);
/// How far from its middle the floor is drawn.
double floorRadius_m(const Eigen::AlignedBox3d& bounds_W);

}  // namespace hither
