#include "app/scene/software_view.h"

#include <QKeyEvent>
#include <QPainter>

#include "app/picture/software_picture.h"
#include "app/scene/focus_ring.h"
#include "app/scene/view_input.h"

namespace hither {
namespace {

constexpr int restAfter_ms = 160;
constexpr double coarse = 0.5;  // of the view's pixels while something moves

}  // namespace

SoftwareView::SoftwareView(QWidget* parent) : SceneView(parent) {
    setFocusPolicy(Qt::StrongFocus);
    setMouseTracking(true);
    setAttribute(Qt::WA_AcceptTouchEvents);
    setMinimumSize(80, 60);
    new ViewInput(this, this, QPointF(focusRingWidth, focusRingWidth));
    note_ = new QLabel(tr("Drawn without OpenGL"), this);
    note_->setAttribute(Qt::WA_TransparentForMouseEvents);
    note_->setMargin(4);
    rest_.setSingleShot(true);
    rest_.setInterval(restAfter_ms);
    connect(&rest_, &QTimer::timeout, this, [this] {
        moving_ = false;
        stale_ = true;
        update();
    });
}

void SoftwareView::moved() {
    moving_ = true;
    stale_ = true;
    rest_.start();
    update();
}

void SoftwareView::show(const Picture& picture) {
    picture_ = picture;
    moved();
}
void SoftwareView::setCamera(const Camera& camera) {
    camera_ = camera;
    moved();
}
void SoftwareView::setColours(const PictureColours& colours) {
    colours_ = colours;
    moved();
}

QImage SoftwareView::draw(double scale) const {
    const QSize inside = size() - QSize(2 * focusRingWidth, 2 * focusRingWidth);
    return softwarePicture(picture_, camera_, colours_, inside.expandedTo(QSize(2, 2)), scale);
}

QImage SoftwareView::grabPicture() { return draw(devicePixelRatioF()); }

void SoftwareView::paintEvent(QPaintEvent*) {
    paintFocusRing(*this);
    if (stale_) {
        image_ = draw(moving_ ? coarse : devicePixelRatioF());
        stale_ = false;
    }
    QPainter painter(this);
    painter.setRenderHint(QPainter::SmoothPixmapTransform);
    painter.drawImage(QRectF(rect().adjusted(focusRingWidth, focusRingWidth, -focusRingWidth, -focusRingWidth)), image_, QRectF(image_.rect()));
    ++frames_;
}

void SoftwareView::resizeEvent(QResizeEvent* event) {
    SceneView::resizeEvent(event);
    note_->adjustSize();
    note_->move(focusRingWidth + 4, height() - note_->height() - focusRingWidth - 4);
    stale_ = true;
}

void SoftwareView::keyPressEvent(QKeyEvent* event) {
    if (takesKey(event->key())) {
        emit keyPressed(event->key(), event->modifiers());
        event->accept();
    } else {
        SceneView::keyPressEvent(event);
    }
}

void SoftwareView::focusInEvent(QFocusEvent* event) {
    SceneView::focusInEvent(event);
    update();
}
void SoftwareView::focusOutEvent(QFocusEvent* event) {
    SceneView::focusOutEvent(event);
    update();
}

}  // namespace hither
