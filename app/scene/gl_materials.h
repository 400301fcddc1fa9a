#pragma once
#include <map>
#include <utility>

#include <QSize>

#include "app/picture/picture_colours.h"
#include "app/scene/gl_stages.h"

namespace Qt3DCore { class QNode; }
namespace Qt3DRender { class QMaterial; class QParameter; class QAbstractTexture; }

namespace hither {

/// The materials of the scene, one for each look, shared by all that looks so.
class GlMaterials {
public:
    explicit GlMaterials(Qt3DCore::QNode* owner);

    void setColours(const PictureColours& colours);
    /// In the view's pixels (not the screen's).
    void setViewSize(QSize size);

    Qt3DRender::QMaterial* surface(Look look, double opacity);
    Qt3DRender::QMaterial* edges(bool faint);
    Qt3DRender::QMaterial* outline() const { return outline_; }
    Qt3DRender::QMaterial* lines(bool hidden) const { return hidden ? hiddenLines_ : lines_; }
    Qt3DRender::QMaterial* back() const { return back_; }
    Qt3DRender::QMaterial* words(bool onFloor) const { return onFloor ? floorWords_ : words_; }

    void setWords(Qt3DRender::QAbstractTexture* texture);
    void setShadow(Qt3DRender::QAbstractTexture* texture);
    /// The floor's lines: steps in metres, and where they fade out.
    void setFloor(double fine, double strong, double middleX, double middleY, double radius);
    void setShadowBox(double x, double y, double width, double height);

private:
    Qt3DRender::QMaterial* make(Qt3DRender::QEffect* effect);
    void colourSurface(Qt3DRender::QMaterial* material, Look look, double opacity);

    Qt3DCore::QNode* owner_;
    PictureColours colours_;
    Qt3DRender::QParameter *viewSize_, *lineWidth_, *outlineWidth_;
    Qt3DRender::QEffect *opaqueEffect_, *translucentEffect_, *handleEffect_, *edgeEffect_;
    Qt3DRender::QMaterial *outline_, *lines_, *hiddenLines_, *back_, *words_, *floorWords_;
    std::map<std::pair<Look, int>, Qt3DRender::QMaterial*> surfaces_;
    std::map<bool, Qt3DRender::QMaterial*> edges_;
};

/// Whether things of this look are drawn before everything else.
bool inFront(Look look);

}  // namespace hither
