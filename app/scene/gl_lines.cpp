#include "app/scene/gl_lines.h"

#include <Qt3DCore/QEntity>
#include <Qt3DRender/QGeometryRenderer>
#include <Qt3DRender/QMaterial>

namespace hither {
namespace {

const std::vector<VertexPart> lineVertexParts = {{"vertexPosition", 3}, {"otherEnd", 3}, {"side", 1}, {"tint", 4}};

}  // namespace

GlLines::GlLines(Qt3DCore::QEntity* root, GlMaterials& materials) : shown_(root, lineVertexParts), hidden_(root, lineVertexParts) {
    for (const bool hidden : {false, true}) {
        auto* entity = new Qt3DCore::QEntity(root);
        entity->addComponent((hidden ? hidden_ : shown_).renderer());
        entity->addComponent(materials.lines(hidden));
    }
}

void GlLines::show(const std::vector<PictureLine>& lines, const PictureColours& colours) {
    std::vector<float> out;
    for (const PictureLine& line : lines) {
        const QColor tint = colours.of(line.look);
        const auto corner = [&](const Vec3& at, const Vec3& other, float side) {
            for (const Vec3* v : {&at, &other}) for (int i = 0; i < 3; ++i) out.push_back(static_cast<float>((*v)[i]));
            out.push_back(side);
            for (const float c : {tint.redF(), tint.greenF(), tint.blueF(), tint.alphaF()}) out.push_back(c);
        };
        // Seen from its other end a side is the other one.
        corner(line.a_W, line.b_W, 1); corner(line.b_W, line.a_W, -1); corner(line.b_W, line.a_W, 1);
        corner(line.a_W, line.b_W, 1); corner(line.b_W, line.a_W, 1); corner(line.a_W, line.b_W, -1);
    }
    shown_.setVertices(out);
    hidden_.setVertices(out);
}

}  // namespace hither
