#include "app/scene/scene_tools.h"

#include <algorithm>
#include <cmath>
#include <utility>

#include "app/scene/hover_words.h"
#include "app/scene/scene_click.h"

namespace hither {
namespace {

constexpr double holdStill_px = 4;           // less movement than that is a click
constexpr int frame_ms = 16, hover_ms = 30;
constexpr double orbitPerPixel = 0.0075;     // rad
constexpr double orbitPerKey = 0.13;         // rad
constexpr double slidePerKey_px = 40;
constexpr double zoomPerNotch = 0.88, zoomPerKey = 0.85;

}  // namespace

SceneTools::SceneTools(const EditorContext& context, SceneView& view, std::function<const Camera&()> camera, std::function<const Picture&()> picture, QObject* parent)
    : QObject(parent), context_(context), view_(view), camera_(std::move(camera)), picture_(std::move(picture)) {
    connect(&view, &SceneView::mousePressed, this, &SceneTools::press);
    connect(&view, &SceneView::mouseMoved, this, &SceneTools::move);
    connect(&view, &SceneView::mouseReleased, this, [this](QPointF at, Qt::MouseButton button) { release(at, button); });
    connect(&view, &SceneView::mouseDoubleClicked, this, &SceneTools::doubleClick);
    connect(&view, &SceneView::wheelTurned, this, [this](QPointF at, QPointF angle, QPointF pixels) { wheel(at, angle, pixels); });
    connect(&view, &SceneView::pinched, this, &SceneTools::zoom);
    connect(&view, &SceneView::keyPressed, this, &SceneTools::key);
    connect(&view, &SceneView::mouseLeft, this, [this] {
        hoverTimer_.stop();
        if (doing_ == Doing::nothing && !std::exchange(hovered_, {}).nothing()) emit hoverChanged();
        if (doing_ == Doing::nothing) say({});
    });
    dragTimer_.setSingleShot(true);
    connect(&dragTimer_, &QTimer::timeout, this, &SceneTools::followDrag);
    hoverTimer_.setSingleShot(true);
    hoverTimer_.setInterval(hover_ms);
    connect(&hoverTimer_, &QTimer::timeout, this, [this] { hover(hoverAt_); });
}

SceneTools::~SceneTools() = default;

void SceneTools::say(const QString& words) { emit saying(words); }

Ray SceneTools::rayAt(QPointF at) const {
    const QSize size = view_.pictureSize();
    const Camera::Ray ray = camera_().rayThrough(at.x(), at.y(), size.width(), size.height());
    return {ray.origin_W, ray.direction_W};
}

std::optional<PictureHit> SceneTools::hitAt(QPointF at) const {
    const Ray ray = rayAt(at);
    return pickInPicture(picture_(), ray.origin_W, ray.direction_W);
}

void SceneTools::press(QPointF at, Qt::MouseButton button, Qt::KeyboardModifiers keys) {
    if (doing_ == Doing::dragging) {
        if (button != button_) endDrag(false);
        return;
    }
    if (doing_ != Doing::nothing) return;
    doing_ = Doing::pressed;
    button_ = button;
    keys_ = keys;
    pressedAt_ = lastAt_ = at;
    hoverTimer_.stop();
    pressedHit_ = button == Qt::LeftButton ? hitAt(at) : std::nullopt;
}

void SceneTools::beginDragging(Qt::KeyboardModifiers keys) {
    const JobStep step = context_.view.step();
    const bool building = step == JobStep::build || step == JobStep::check;
    if (button_ == Qt::LeftButton && pressedHit_ && building && !context_.document.readOnly()) {
        DragStart start;
        start.setup = context_.analysis.setup();
        start.camera = camera_();
        start.size = view_.pictureSize();
        start.units = context_.view.units();
        start.pick = pressedHit_->pick;
        start.grabbed_W = pressedHit_->point_W;
        start.at = pressedAt_;
        start.handle = pressedHit_->key;
        drag_ = makeDrag(start, refused_);
        if (drag_) {
            context_.view.pick(start.pick);
            context_.document.beginGesture(drag_->label());
        }
        if (drag_ || !refused_.isEmpty()) {
            doing_ = Doing::dragging;
            if (!drag_) say(refused_);
            return;
        }
    }
    const bool slides = button_ == Qt::MiddleButton || (button_ == Qt::LeftButton && keys.testFlag(Qt::ShiftModifier));
    doing_ = slides ? Doing::sliding : button_ == Qt::LeftButton || button_ == Qt::RightButton ? Doing::orbiting : Doing::pressed;
    view_.setCursor(slides ? Qt::SizeAllCursor : Qt::ClosedHandCursor);
}

void SceneTools::move(QPointF at, Qt::MouseButtons, Qt::KeyboardModifiers keys) {
    keys_ = keys;
    if (doing_ == Doing::nothing) {
        hoverAt_ = at;
        if (!hoverTimer_.isActive()) hoverTimer_.start();
        return;
    }
    if (doing_ == Doing::pressed) {
        const QPointF gone = at - pressedAt_;
        if (std::hypot(gone.x(), gone.y()) < holdStill_px) return;
        beginDragging(keys);
    }
    const QPointF step = at - lastAt_;
    lastAt_ = at;
    Camera camera = camera_();
    switch (doing_) {
        case Doing::orbiting:
            camera.orbit(-step.x() * orbitPerPixel, step.y() * orbitPerPixel);
            emit cameraMoved(camera);
            break;
        case Doing::sliding:
            camera.slide(step.x(), step.y(), view_.pictureSize().height());
            emit cameraMoved(camera);
            break;
        case Doing::dragging:
            if (drag_ && !dragTimer_.isActive()) dragTimer_.start(sinceDrag_.isValid() ? std::clamp(frame_ms - static_cast<int>(sinceDrag_.elapsed()), 0, frame_ms) : 0);
            break;
        default: break;
    }
}

void SceneTools::followDrag() {
    if (doing_ != Doing::dragging || !drag_) return;
    if (!context_.document.inGesture()) {
        // Something else ended it: another edit, another plan.
        drag_.reset();
        doing_ = Doing::nothing;
        return;
    }
    sinceDrag_.restart();
    const Drag::Step step = drag_->to(context_.document.gestureStart(), lastAt_, keys_.testFlag(Qt::ShiftModifier));
    context_.document.preview(step.edit);
    if (!step.hint.isEmpty()) say(step.hint);
}

void SceneTools::endDrag(bool keep) {
    dragTimer_.stop();
    if (drag_ && keep) followDrag();
    const bool going = drag_ != nullptr && context_.document.inGesture();
    drag_.reset();
    refused_.clear();
    sinceDrag_.invalidate();
    doing_ = Doing::nothing;
    if (!going) return;
    if (keep) context_.document.endGesture();
    else {
        context_.document.cancelGesture();
        say(tr("Put back as it was"));
    }
}

void SceneTools::release(QPointF at, Qt::MouseButton button) {
    if (button != button_) return;
    const Doing was = doing_;
    view_.unsetCursor();
    if (was == Doing::dragging) {
        lastAt_ = at;
        endDrag(true);
        return;
    }
    doing_ = Doing::nothing;
    if (was == Doing::pressed && button == Qt::LeftButton) clickInScene(context_, rayAt(at), pressedHit_);
}

void SceneTools::doubleClick(QPointF at, Qt::MouseButton button) {
    if (button == Qt::LeftButton && doing_ == Doing::nothing && !hitAt(at)) emit wholeWanted();
}

void SceneTools::zoom(QPointF at, double factor) {
    if (doing_ == Doing::dragging) return;
    const QSize size = view_.pictureSize();
    Camera camera = camera_();
    camera.zoomAt(factor, at.x(), at.y(), size.width(), size.height());
    emit cameraMoved(camera);
}

void SceneTools::wheel(QPointF at, QPointF angle, QPointF pixels) {
    const double notches = !pixels.isNull() && angle.isNull() ? pixels.y() / 60 : angle.y() / 120;
    if (notches != 0) zoom(at, std::pow(zoomPerNotch, notches));
}

void SceneTools::key(int key, Qt::KeyboardModifiers keys) {
    if (key == Qt::Key_Escape) {
        if (doing_ == Doing::dragging) endDrag(false);
        else if (doing_ == Doing::nothing) context_.view.pick({});
        return;
    }
    if (doing_ == Doing::dragging) return;
    const QSize size = view_.pictureSize();
    Camera camera = camera_();
    const int across = key == Qt::Key_Left ? -1 : key == Qt::Key_Right ? 1 : 0, down = key == Qt::Key_Up ? -1 : key == Qt::Key_Down ? 1 : 0;
    if (across != 0 || down != 0) {
        if (keys.testFlag(Qt::ShiftModifier)) camera.slide(-across * slidePerKey_px, -down * slidePerKey_px, size.height());
        else camera.orbit(across * orbitPerKey, -down * orbitPerKey);
        emit cameraMoved(camera);
    } else if (key == Qt::Key_F) {
        emit wholeWanted();
    } else {
        zoom(QPointF(0.5 * size.width(), 0.5 * size.height()), key == Qt::Key_Minus ? 1 / zoomPerKey : zoomPerKey);
    }
}

void SceneTools::hover(QPointF at) {
    if (doing_ != Doing::nothing) return;
    const std::optional<PictureHit> hit = hitAt(at);
    const Picked now = hit ? hit->pick : Picked{};
    const bool canClick = !now.nothing();
    if (canClick) view_.setCursor(Qt::PointingHandCursor);
    else view_.unsetCursor();
    if (now == hovered_) return;
    hovered_ = now;
    say(hoverWords(now, context_.view.step(), context_.view.units(), context_.analysis.situation().get(), context_.analysis.setup().get()));
    emit hoverChanged();
}

}  // namespace hither
