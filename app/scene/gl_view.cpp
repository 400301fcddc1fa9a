#include "app/scene/gl_view.h"

#include <cmath>

#include <QEventLoop>
#include <QKeyEvent>
#include <QPainter>
#include <QTimer>
#include <QVector3D>
#include <Qt3DCore/QEntity>
#include <Qt3DExtras/Qt3DWindow>
#include <Qt3DLogic/QFrameAction>
#include <Qt3DRender/QCamera>
#include <Qt3DRender/QGeometryRenderer>
#include <Qt3DRender/QMaterial>
#include <Qt3DRender/QRenderCapture>
#include <Qt3DRender/QRenderSettings>
#include <Qt3DRender/QTexture>

#include "app/scene/floor_shadow.h"
#include "app/scene/focus_ring.h"
#include "app/scene/gl_camera.h"
#include "app/scene/gl_items.h"
#include "app/scene/gl_lines.h"
#include "app/scene/gl_words.h"
#include "app/scene/view_input.h"

namespace hither {
namespace {

constexpr int shadow_ms = 400;

QVector3D vectorOf(const Vec3& v) { return {static_cast<float>(v.x()), static_cast<float>(v.y()), static_cast<float>(v.z())}; }

}  // namespace

struct GlView::Parts {
    Qt3DExtras::Qt3DWindow* window = nullptr;
    QWidget* container = nullptr;
    Qt3DCore::QEntity* root = nullptr;
    FrameGraph graph;
    std::unique_ptr<GlMaterials> materials;
    std::unique_ptr<GlItems> items;
    std::unique_ptr<GlLines> lines;
    std::unique_ptr<GlWords> words;
    std::unique_ptr<ImageTexture> shadow;
    std::unique_ptr<LooseTriangles> back;
    Picture picture;
    Camera camera;
    PictureColours colours;
    quint64 frames = 0;
    bool changed = true;
    FloorShadow shadowShown;
    QTimer shadowTimer;      ///< a new shadow costs a frame of its own: some a second while something moves

    QSize size() const { return container->size().expandedTo(QSize(2, 2)); }
};

GlView::GlView(QWidget* parent) : SceneView(parent), parts_(std::make_unique<Parts>()) {
    Parts& p = *parts_;
    setFocusPolicy(Qt::StrongFocus);
    p.window = new Qt3DExtras::Qt3DWindow;
    p.window->setFormat(QSurfaceFormat::defaultFormat());
    p.window->setFlag(Qt::WindowDoesNotAcceptFocus);
    p.container = QWidget::createWindowContainer(p.window, this);
    p.container->setFocusPolicy(Qt::NoFocus);
    p.container->setMinimumSize(80, 60);
    new ViewInput(this, p.window);
    p.window->installEventFilter(this);

    p.root = new Qt3DCore::QEntity;
    p.graph = makeFrameGraph(p.window, p.window->camera());
    p.window->setActiveFrameGraph(p.graph.root);
    p.window->renderSettings()->setRenderPolicy(Qt3DRender::QRenderSettings::OnDemand);
    p.materials = std::make_unique<GlMaterials>(p.root);
    p.back = std::make_unique<LooseTriangles>(p.root, std::vector<VertexPart>{{"vertexPosition", 3}});
    p.back->setVertices({-1, -1, 0, 3, -1, 0, -1, 3, 0});
    auto* back = new Qt3DCore::QEntity(p.root);
    back->addComponent(p.back->renderer());
    back->addComponent(p.materials->back());
    p.shadow = std::make_unique<ImageTexture>(p.root);
    p.materials->setShadow(p.shadow->texture());
    p.items = std::make_unique<GlItems>(p.root, *p.materials);
    p.lines = std::make_unique<GlLines>(p.root, *p.materials);
    p.words = std::make_unique<GlWords>(p.root, *p.materials);
    // One tick draws all that was changed before it.
    auto* tick = new Qt3DLogic::QFrameAction(p.root);
    p.root->addComponent(tick);
    connect(tick, &Qt3DLogic::QFrameAction::triggered, this, [&p] {
        if (std::exchange(p.changed, false) && p.window->isExposed()) ++p.frames;
    });
    p.shadowTimer.setSingleShot(true);
    p.shadowTimer.setInterval(shadow_ms);
    connect(&p.shadowTimer, &QTimer::timeout, this, &GlView::showShadow);
    p.window->setRootEntity(p.root);
}

GlView::~GlView() = default;

void GlView::touch() { parts_->changed = true; }

void GlView::show(const Picture& picture) {
    Parts& p = *parts_;
    p.picture = picture;
    p.items->show(picture.items);
    p.lines->show(picture.lines, p.colours);
    if (!p.shadowTimer.isActive()) p.shadowTimer.start();
    const Vec3 middle = picture.bounds_W.isEmpty() ? Vec3(Vec3::Zero()) : Vec3(picture.bounds_W.center());
    p.materials->setFloor(picture.floorStep_m, strongStep_m(picture.floorStep_m), middle.x(), middle.y(), floorRadius_m(picture.bounds_W));
    p.words->show(p.picture, p.camera, p.size());
    touch();
}

void GlView::showShadow() {
    Parts& p = *parts_;
    FloorShadow shadow = floorShadow(p.picture);
    if (shadow.strength == p.shadowShown.strength && shadow.box_W == p.shadowShown.box_W) return;
    p.shadow->setImage(shadow.strength);
    p.materials->setShadowBox(shadow.box_W.x(), shadow.box_W.y(), shadow.box_W.width(), shadow.box_W.height());
    p.shadowShown = std::move(shadow);
    touch();
}

void GlView::setCamera(const Camera& camera) {
    Parts& p = *parts_;
    p.camera = camera;
    const QSize size = p.size();
    Qt3DRender::QCamera* c = p.window->camera();
    c->lens()->setPerspectiveProjection(static_cast<float>(camera.fieldOfView * 180 / EIGEN_PI), static_cast<float>(size.width()) / static_cast<float>(size.height()),
                                        static_cast<float>(nearPlane_m(camera)), static_cast<float>(farPlane_m(camera)));
    c->setPosition(vectorOf(camera.eye_W()));
    c->setViewCenter(vectorOf(camera.target_W));
    c->setUpVector(QVector3D(0, 0, 1));
    p.materials->setViewSize(size);
    p.words->show(p.picture, p.camera, size);
    touch();
}

void GlView::setColours(const PictureColours& colours) {
    Parts& p = *parts_;
    p.colours = colours;
    p.materials->setColours(colours);
    p.words->setColours(colours, devicePixelRatioF());
    p.lines->show(p.picture.lines, colours);
    p.words->show(p.picture, p.camera, p.size());
    touch();
}

quint64 GlView::frames() const { return parts_->frames; }

QImage GlView::grabPicture() {
    if (!parts_->window->isExposed()) return {};
    Qt3DRender::QRenderCaptureReply* reply = parts_->graph.capture->requestCapture();
    touch();
    QEventLoop loop;
    connect(reply, &Qt3DRender::QRenderCaptureReply::completed, &loop, &QEventLoop::quit);
    QTimer::singleShot(3000, &loop, &QEventLoop::quit);
    if (!reply->isComplete()) loop.exec(QEventLoop::ExcludeUserInputEvents);
    const QImage image = reply->isComplete() ? reply->image() : QImage();
    reply->deleteLater();
    return image;
}

bool GlView::eventFilter(QObject* watched, QEvent* event) {
    // Should the window get keys all the same (some systems insist), they go to this widget.
    if (watched == parts_->window && event->type() == QEvent::KeyPress) {
        auto* key = static_cast<QKeyEvent*>(event);
        if (key->key() == Qt::Key_Tab || key->key() == Qt::Key_Backtab) focusNextPrevChild(key->key() == Qt::Key_Tab);
        else keyPressEvent(key);
        return true;
    }
    return SceneView::eventFilter(watched, event);
}

void GlView::lay() {
    const int ring = focusRingWidth;
    parts_->container->setGeometry(rect().adjusted(ring, ring, -ring, -ring));
    setCamera(parts_->camera);
}

void GlView::resizeEvent(QResizeEvent* event) {
    SceneView::resizeEvent(event);
    lay();
}

void GlView::paintEvent(QPaintEvent*) { paintFocusRing(*this); }

void GlView::keyPressEvent(QKeyEvent* event) {
    if (takesKey(event->key())) {
        emit keyPressed(event->key(), event->modifiers());
        event->accept();
    } else {
        SceneView::keyPressEvent(event);
    }
}

void GlView::focusInEvent(QFocusEvent* event) {
    SceneView::focusInEvent(event);
    update();
}
void GlView::focusOutEvent(QFocusEvent* event) {
    SceneView::focusOutEvent(event);
    update();
}

}  // namespace hither
