#include "app/scene/view_input.h"

#include <algorithm>
#include <cmath>

#include <QMouseEvent>
#include <QNativeGestureEvent>
#include <QTouchEvent>
#include <QWheelEvent>

namespace hither {

ViewInput::ViewInput(SceneView* view, QObject* source, QPointF origin) : QObject(source), view_(view), origin_(origin) { source->installEventFilter(this); }

bool ViewInput::takeTouch(QEvent* event) {
    const auto* touch = static_cast<QTouchEvent*>(event);
    if (event->type() == QEvent::TouchEnd || event->type() == QEvent::TouchCancel || touch->points().size() != 2) {
        spread_ = 0;
        return false;
    }
    const QPointF a = touch->points()[0].position(), b = touch->points()[1].position();
    const double spread = std::hypot(a.x() - b.x(), a.y() - b.y());
    if (spread_ > 0 && spread > 0) emit view_->pinched(0.5 * (a + b) - origin_, spread_ / spread);
    spread_ = spread;
    event->accept();
    return true;
}

bool ViewInput::eventFilter(QObject*, QEvent* event) {
    switch (event->type()) {
        case QEvent::MouseButtonPress: {
            const auto* e = static_cast<QMouseEvent*>(event);
            view_->setFocus(Qt::MouseFocusReason);
            emit view_->mousePressed(e->position() - origin_, e->button(), e->modifiers());
            return true;
        }
        case QEvent::MouseMove: {
            const auto* e = static_cast<QMouseEvent*>(event);
            emit view_->mouseMoved(e->position() - origin_, e->buttons(), e->modifiers());
            return true;
        }
        case QEvent::MouseButtonRelease: {
            const auto* e = static_cast<QMouseEvent*>(event);
            emit view_->mouseReleased(e->position() - origin_, e->button(), e->modifiers());
            return true;
        }
        case QEvent::MouseButtonDblClick: {
            const auto* e = static_cast<QMouseEvent*>(event);
            emit view_->mouseDoubleClicked(e->position() - origin_, e->button());
            return true;
        }
        case QEvent::Wheel: {
            const auto* e = static_cast<QWheelEvent*>(event);
            emit view_->wheelTurned(e->position() - origin_, e->angleDelta(), e->pixelDelta(), e->modifiers());
            return true;
        }
        case QEvent::NativeGesture: {
            const auto* e = static_cast<QNativeGestureEvent*>(event);
            if (e->gestureType() != Qt::ZoomNativeGesture) return false;
            emit view_->pinched(e->position() - origin_, 1 / std::max(0.2, 1 + e->value()));
            return true;
        }
        case QEvent::TouchBegin:
        case QEvent::TouchUpdate:
        case QEvent::TouchEnd:
        case QEvent::TouchCancel: return takeTouch(event);
        case QEvent::Leave: emit view_->mouseLeft(); return false;
        default: return false;
    }
}

}  // namespace hither
