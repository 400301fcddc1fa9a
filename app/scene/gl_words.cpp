#include "app/scene/gl_words.h"

#include <algorithm>
#include <cmath>

#include <QCoreApplication>
#include <Qt3DCore/QEntity>
#include <Qt3DRender/QGeometryRenderer>
#include <Qt3DRender/QMaterial>
#include <Qt3DRender/QTexture>

#include "app/scene/gl_camera.h"
#include "core/units/quantity.h"

namespace hither {
namespace {

const std::vector<VertexPart> wordVertexParts = {{"vertexPosition", 3}, {"wordPlace", 2}, {"tint", 4}};

struct Corner { QPointF at, uv; };

void addVertex(std::vector<float>& out, const Corner& c, float depth, const QColor& tint) {
    for (const double v : {c.at.x(), c.at.y()}) out.push_back(static_cast<float>(v));
    out.push_back(depth);
    for (const double v : {c.uv.x(), c.uv.y()}) out.push_back(static_cast<float>(v));
    for (const float v : {tint.redF(), tint.greenF(), tint.blueF(), tint.alphaF()}) out.push_back(v);
}
void addQuad(std::vector<float>& out, const Corner (&c)[4], float depth, const QColor& tint) {
    for (const int i : {0, 1, 2, 0, 2, 3}) addVertex(out, c[i], depth, tint);
}
void addWord(std::vector<float>& out, const QRectF& box, const QRectF& uv, float depth, const QColor& tint) {
    addQuad(out, {{box.topLeft(), uv.topLeft()}, {box.topRight(), uv.topRight()}, {box.bottomRight(), uv.bottomRight()}, {box.bottomLeft(), uv.bottomLeft()}}, depth, tint);
}
void addLine(std::vector<float>& out, QPointF a, QPointF b, double width, QPointF white, const QColor& tint) {
    const QPointF d = b - a;
    const double l = std::hypot(d.x(), d.y());
    if (l < 1) return;
    const QPointF n = QPointF(-d.y(), d.x()) * (0.5 * width / l);
    addQuad(out, {{a + n, white}, {b + n, white}, {b - n, white}, {a - n, white}}, 0, tint);
}
void addDot(std::vector<float>& out, QPointF at, double radius, QPointF white, const QColor& tint) {
    constexpr int around = 10;
    const auto rim = [&](int i) { return at + radius * QPointF(std::cos(2 * pi * i / around), std::sin(2 * pi * i / around)); };
    for (int i = 0; i < around; ++i)
        for (const QPointF& p : {at, rim(i), rim(i + 1)}) addVertex(out, {p, white}, 0, tint);
}

QPointF nearestIn(const QRectF& box, QPointF p) { return {std::clamp(p.x(), box.left(), box.right()), std::clamp(p.y(), box.top(), box.bottom())}; }

Qt3DCore::QEntity* addWords(Qt3DCore::QEntity* root, const LooseTriangles& triangles, Qt3DRender::QMaterial* material) {
    auto* entity = new Qt3DCore::QEntity(root);
    entity->addComponent(triangles.renderer());
    entity->addComponent(material);
    return entity;
}

}  // namespace

double strongStep_m(double floorStep_m) {
    const double metric = 0.1;
    const double times = std::log10(floorStep_m / metric);
    return std::abs(times - std::round(times)) < 1e-6 || std::abs(1 / floorStep_m - std::round(1 / floorStep_m)) < 1e-6 ? 1.0 : 0.3048;
}

double floorRadius_m(const Eigen::AlignedBox3d& bounds_W) { return bounds_W.isEmpty() ? 3.0 : std::clamp(1.1 * bounds_W.diagonal().norm(), 2.2, 8.0); }

std::vector<FloorMark> floorMarks(double floorStep_m, const Eigen::AlignedBox3d& bounds_W, const Camera& camera) {
    const double step = strongStep_m(floorStep_m);
    const bool feet = step < 0.5;
    const double apart = feet ? 2 * step : step;
    const Vec3 middle = bounds_W.isEmpty() ? Vec3(Vec3::Zero()) : Vec3(bounds_W.center());
    const double reach = 0.62 * floorRadius_m(bounds_W);
    // The two lines of the grid nearest the eye, beyond what stands on the floor.
    const Vec3 toward = camera.eye_W() - middle;
    const auto edge = [&](int axis) {
        const double half = bounds_W.isEmpty() ? 1.0 : 0.5 * bounds_W.sizes()[axis] + 0.15;
        const double at = middle[axis] + (toward[axis] >= 0 ? 1 : -1) * half;
        return (toward[axis] >= 0 ? std::ceil(at / step) : std::floor(at / step)) * step;
    };
    const double edgeX = edge(0), edgeY = edge(1);
    std::vector<FloorMark> marks;
    const auto words = [&](double v) {
        const int n = static_cast<int>(std::lround(v / step));
        return feet ? QCoreApplication::translate("hither::Scene", "%1 ft").arg(n) : QCoreApplication::translate("hither::Scene", "%1 m").arg(n);
    };
    for (int axis = 0; axis < 2; ++axis) {
        const double from = std::ceil((middle[axis] - reach) / apart) * apart;
        for (double v = from; v <= middle[axis] + reach; v += apart)
            marks.push_back({axis == 0 ? Vec3(v, edgeY, 0) : Vec3(edgeX, v, 0), words(v)});
    }
    return marks;
}

GlWords::GlWords(Qt3DCore::QEntity* root, GlMaterials& materials) : texture_(root), labels_(root, wordVertexParts), floor_(root, wordVertexParts) {
    materials.setWords(texture_.texture());
    addWords(root, labels_, materials.words(false));
    addWords(root, floor_, materials.words(true));
}

void GlWords::setColours(const PictureColours& colours, double pixelRatio) {
    colours_ = colours;
    sheet_.setLook(colours, pixelRatio);
}

void GlWords::show(const Picture& picture, const Camera& camera, QSize size) {
    const int started = sheet_.started();
    showFloor(picture, camera, size);
    showLabels(picture, camera, size);
    if (started != sheet_.started()) {
        // The sheet was full and begun anew: what was laid out before points to where words were.
        showFloor(picture, camera, size);
        showLabels(picture, camera, size);
    }
    if (sheet_.takeChanged()) texture_.setImage(sheet_.image());
}

void GlWords::showLabels(const Picture& picture, const Camera& camera, QSize size) {
    std::vector<LabelWish> wishes;
    std::vector<const PictureLabel*> labels;
    for (const PictureLabel& label : picture.labels) {
        const Vec3 p = camera.project(label.at_W, size.width(), size.height());
        if (p.z() <= 0.02) continue;
        const LabelLook look = label.rank == PictureLabel::Rank::plain ? LabelLook::boxed : LabelLook::strong;
        wishes.push_back({label.key, QPointF(p.x(), p.y()), sheet_.word(QString::fromStdString(label.words), look).size,
                          static_cast<int>(label.rank), label.rank == PictureLabel::Rank::plain});
        labels.push_back(&label);
    }
    std::vector<float> out;
    const QPointF white = sheet_.white();
    const std::vector<LabelPlace> places = layout_.place(wishes, size);
    for (const LabelPlace& place : places) {
        const bool strong = labels[place.wish]->rank != PictureLabel::Rank::plain;
        const QColor& colour = strong ? colours_.outline : colours_.labelBorder;
        const QPointF at = wishes[place.wish].at;
        addLine(out, at, nearestIn(place.box.adjusted(2, 2, -2, -2), at), strong ? 1.8 : 1.2, white, colour);
        addDot(out, at, strong ? 3 : 2.2, white, colour);
    }
    for (const LabelPlace& place : places) {
        const PictureLabel& label = *labels[place.wish];
        const LabelLook look = label.rank == PictureLabel::Rank::plain ? LabelLook::boxed : LabelLook::strong;
        // Whole pixels: letters stay sharp.
        const QRectF box(QPointF(std::round(place.box.left()), std::round(place.box.top())), place.box.size());
        addWord(out, box, sheet_.word(QString::fromStdString(label.words), look).uv, 0, Qt::white);
    }
    labels_.setVertices(out);
}

void GlWords::showFloor(const Picture& picture, const Camera& camera, QSize size) {
    std::vector<float> out;
    const double reach = floorRadius_m(picture.bounds_W);
    const Vec3 middle = picture.bounds_W.isEmpty() ? Vec3(Vec3::Zero()) : Vec3(picture.bounds_W.center());
    for (const FloorMark& mark : floorMarks(picture.floorStep_m, picture.bounds_W, camera)) {
        const Vec3 p = camera.project(mark.at_W, size.width(), size.height());
        if (p.z() <= 0.1) continue;
        const LabelSheet::Word& word = sheet_.word(mark.words, LabelLook::bare);
        const double n = nearPlane_m(camera), f = farPlane_m(camera);
        const double depth = (f + n) / (f - n) - 2 * f * n / ((f - n) * p.z());
        QColor tint = Qt::white;
        tint.setAlphaF(static_cast<float>(std::clamp(1.6 * (1 - (mark.at_W - middle).head<2>().norm() / reach), 0.0, 0.85)));
        addWord(out, QRectF(QPointF(std::round(p.x() - word.size.width() / 2), std::round(p.y() + 2)), word.size), word.uv, static_cast<float>(depth), tint);
    }
    floor_.setVertices(out);
}

}  // namespace hither
