#pragma once
#include <functional>
#include <memory>

#include <QElapsedTimer>
#include <QObject>
#include <QPointF>
#include <QTimer>

#include "app/actions/editor_context.h"
#include "app/picture/make_picture.h"
#include "app/scene/drag.h"
#include "app/scene/scene_view.h"

namespace hither {

/// Turns the view's mouse and keys into camera moves, picks and gestures of the document (see Scene).
class SceneTools : public QObject {
    Q_OBJECT

public:
    /// `camera` and `picture` give what the view shows at the moment.
    SceneTools(const EditorContext& context, SceneView& view, std::function<const Camera&()> camera, std::function<const Picture&()> picture, QObject* parent);
    ~SceneTools() override;
    const Picked& hovered() const { return hovered_; }

signals:
    void cameraMoved(const Camera& camera);
    void wholeWanted();
    void saying(const QString& words);
    void hoverChanged();

private:
    enum class Doing { nothing, pressed, orbiting, sliding, dragging };

    void press(QPointF at, Qt::MouseButton button, Qt::KeyboardModifiers keys);
    void move(QPointF at, Qt::MouseButtons buttons, Qt::KeyboardModifiers keys);
    void release(QPointF at, Qt::MouseButton button);
    void doubleClick(QPointF at, Qt::MouseButton button);
    void wheel(QPointF at, QPointF angle, QPointF pixels);
    void zoom(QPointF at, double factor);
    void key(int key, Qt::KeyboardModifiers keys);

    Ray rayAt(QPointF at) const;
    std::optional<PictureHit> hitAt(QPointF at) const;
    void beginDragging(Qt::KeyboardModifiers keys);
    void followDrag();
    void endDrag(bool keep);
    void hover(QPointF at);
    void say(const QString& words);

    const EditorContext context_;
    SceneView& view_;
    std::function<const Camera&()> camera_;
    std::function<const Picture&()> picture_;
    Doing doing_ = Doing::nothing;
    QPointF pressedAt_, lastAt_;
    Qt::MouseButton button_ = Qt::NoButton;
    Qt::KeyboardModifiers keys_;
    std::optional<PictureHit> pressedHit_;
    std::unique_ptr<Drag> drag_;
    QString refused_;             ///< why what was taken hold of does not move; it holds the picture still
    Picked hovered_;
    QPointF hoverAt_;
    QTimer dragTimer_, hoverTimer_;
    QElapsedTimer sinceDrag_;
};

}  // namespace hither
