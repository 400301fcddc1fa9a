#include "app/scene/gl_materials.h"

#include <cmath>

#include <QVector2D>
#include <QVector3D>
#include <QVector4D>
#include <Qt3DRender/QAbstractTexture>
#include <Qt3DRender/QEffect>
#include <Qt3DRender/QMaterial>
#include <Qt3DRender/QParameter>

#include "app/scene/gl_shaders.h"

namespace hither {
using namespace Qt3DRender;
namespace {

QVector3D linear(const QColor& c) {
    const auto channel = [](float v) { return v * v; };
    return {channel(c.redF()), channel(c.greenF()), channel(c.blueF())};
}
QVector4D plain(const QColor& c) { return {c.redF(), c.greenF(), c.blueF(), c.alphaF()}; }

void set(QMaterial* material, const char* name, const QVariant& value) {
    for (QParameter* p : material->parameters()) {
        if (p->name() == QLatin1String(name)) {
            p->setValue(value);
            return;
        }
    }
    material->addParameter(new QParameter(name, value, material));
}

/// How bright the light's reflection is, and how sharp (0 to 1).
struct Gloss { float shine, sharpness; };
Gloss glossOf(Look look) {
    switch (look) {
        case Look::frameTube: case Look::metal: case Look::gripPart: case Look::armPart: case Look::adapterPart: case Look::thread: return {0.30f, 1};
        case Look::switchCap: case Look::switchCase: case Look::knob: case Look::jointHandle: case Look::outletHandle: return {0.20f, 0.8f};
        case Look::neckPart: case Look::wood: return {0.10f, 0.3f};
        default: return {0.03f, 0};
    }
}

}  // namespace

bool inFront(Look look) { return look == Look::jointHandle || look == Look::outletHandle; }

GlMaterials::GlMaterials(Qt3DCore::QNode* owner) : owner_(owner) {
    viewSize_ = new QParameter("viewSize", QVector2D(100, 100), owner);
    lineWidth_ = new QParameter("width", 2.5f, owner);
    outlineWidth_ = new QParameter("width", 2.5f, owner);
    opaqueEffect_ = makeEffect(owner, {Stage::opaque}, shaders::surfaceVertex, shaders::surfaceFragment);
    translucentEffect_ = makeEffect(owner, {Stage::translucent}, shaders::surfaceVertex, shaders::surfaceFragment);
    handleEffect_ = makeEffect(owner, {Stage::handles}, shaders::surfaceVertex, shaders::surfaceFragment);
    for (QEffect* e : {opaqueEffect_, translucentEffect_}) e->addParameter(new QParameter("nearer", 0.0f, e));
    handleEffect_->addParameter(new QParameter("nearer", 1.0f, handleEffect_));
    edgeEffect_ = makeEffect(owner, {Stage::edges}, shaders::edgeVertex, shaders::flatFragment);

    QEffect* outline = makeEffect(owner, {Stage::outline}, shaders::outlineVertex, shaders::flatFragment);
    outline->addParameter(viewSize_);
    outline->addParameter(outlineWidth_);
    outline_ = make(outline);

    const auto lineMaterial = [&](Stage stage, float strength) {
        QEffect* effect = makeEffect(owner, {stage}, shaders::lineVertex, shaders::lineFragment);
        effect->addParameter(viewSize_);
        effect->addParameter(lineWidth_);
        effect->addParameter(new QParameter("strength", strength, effect));
        return make(effect);
    };
    lines_ = lineMaterial(Stage::lines, 1.0f);
    hiddenLines_ = lineMaterial(Stage::linesHidden, 0.4f);

    back_ = make(makeEffect(owner, {Stage::back}, shaders::backVertex, shaders::backFragment));
    QEffect* words = makeEffect(owner, {Stage::labels}, shaders::labelVertex, shaders::labelFragment);
    words->addParameter(viewSize_);
    words_ = make(words);
    QEffect* floorWords = makeEffect(owner, {Stage::floorLabels}, shaders::labelVertex, shaders::labelFragment);
    floorWords->addParameter(viewSize_);
    floorWords_ = make(floorWords);
    setFloor(0.1, 1, 0, 0, 3);
    setShadowBox(0, 0, 1, 1);
    setColours(colours_);
}

QMaterial* GlMaterials::make(QEffect* effect) {
    auto* material = new QMaterial(owner_);
    material->setEffect(effect);
    return material;
}

void GlMaterials::colourSurface(QMaterial* material, Look look, double opacity) {
    const QColor c = colours_.of(look);
    const Gloss gloss = glossOf(look);
    set(material, "base", linear(c));
    set(material, "glow", look == Look::jointHandle || look == Look::outletHandle || look == Look::siteDisc || look == Look::movementArrow ? linear(c) * 0.25f : QVector3D());
    set(material, "alpha", static_cast<float>(opacity));
    set(material, "shine", gloss.shine);
    set(material, "sharpness", gloss.sharpness);
}

QMaterial* GlMaterials::surface(Look look, double opacity) {
    QMaterial*& material = surfaces_[{look, static_cast<int>(std::lround(opacity * 100))}];
    if (!material) {
        material = make(inFront(look) ? handleEffect_ : opacity < 0.99 ? translucentEffect_ : opaqueEffect_);
        colourSurface(material, look, opacity);
    }
    return material;
}

QMaterial* GlMaterials::edges(bool faint) {
    QMaterial*& material = edges_[faint];
    if (!material) {
        material = make(edgeEffect_);
        QVector4D c = plain(colours_.edge);
        if (faint) c.setW(c.w() * 0.35f);
        set(material, "flatColour", c);
    }
    return material;
}

void GlMaterials::setColours(const PictureColours& colours) {
    colours_ = colours;
    for (auto& [key, material] : surfaces_) colourSurface(material, key.first, key.second / 100.0);
    for (auto& [faint, material] : edges_) {
        QVector4D c = plain(colours_.edge);
        if (faint) c.setW(c.w() * 0.35f);
        set(material, "flatColour", c);
    }
    set(outline_, "flatColour", plain(colours_.outline));
    set(back_, "top", plain(colours_.skyTop));
    set(back_, "bottom", plain(colours_.skyBottom));
    set(back_, "fineColour", plain(colours_.floorLine));
    set(back_, "strongColour", plain(colours_.floorLineStrong));
    set(back_, "shadowColour", colours_.dark ? QVector3D(0, 0, 0) : QVector3D(0.05f, 0.07f, 0.11f));
}

void GlMaterials::setViewSize(QSize size) { viewSize_->setValue(QVector2D(static_cast<float>(size.width()), static_cast<float>(size.height()))); }

void GlMaterials::setWords(QAbstractTexture* texture) {
    for (QMaterial* m : {words_, floorWords_}) set(m, "words", QVariant::fromValue(texture));
}
void GlMaterials::setShadow(QAbstractTexture* texture) { set(back_, "shadow", QVariant::fromValue(texture)); }

void GlMaterials::setFloor(double fine, double strong, double middleX, double middleY, double radius) {
    set(back_, "steps", QVector2D(static_cast<float>(fine), static_cast<float>(strong)));
    set(back_, "middle", QVector2D(static_cast<float>(middleX), static_cast<float>(middleY)));
    set(back_, "radius", static_cast<float>(radius));
}
void GlMaterials::setShadowBox(double x, double y, double width, double height) {
    set(back_, "shadowBox", QVector4D(static_cast<float>(x), static_cast<float>(y), static_cast<float>(width), static_cast<float>(height)));
}

}  // namespace hither
