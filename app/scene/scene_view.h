#pragma once
#include <QPointF>
#include <QWidget>

#include "app/picture/camera.h"
#include "app/picture/picture.h"
#include "app/picture/picture_colours.h"

namespace hither {

/// A widget that shows a picture through a camera. Two kinds: by OpenGL (Qt3D), and by software where
/// there is none. It shows; what mouse and keys mean is for SceneTools, which gets the events.
class SceneView : public QWidget {
    Q_OBJECT

public:
    using QWidget::QWidget;
    virtual void show(const Picture& picture) = 0;
    virtual void setCamera(const Camera& camera) = 0;
    virtual void setColours(const PictureColours& colours) = 0;
    /// Frames drawn so far: tests count them.
    virtual quint64 frames() const = 0;
    /// The view as an image of its own size (waits for the next frame).
    virtual QImage grabPicture() = 0;
    /// Size of the picture within the view, in the pixels of the signals' positions.
    QSize pictureSize() const;
    /// Whether OpenGL draws it.
    virtual bool byOpenGL() const = 0;

signals:
    /// Every mouse, wheel and key event on the view, before anything else sees it; positions in its pixels.
    void mousePressed(QPointF at, Qt::MouseButton button, Qt::KeyboardModifiers keys);
    void mouseMoved(QPointF at, Qt::MouseButtons buttons, Qt::KeyboardModifiers keys);
    void mouseReleased(QPointF at, Qt::MouseButton button, Qt::KeyboardModifiers keys);
    void mouseDoubleClicked(QPointF at, Qt::MouseButton button);
    void wheelTurned(QPointF at, QPointF angle, QPointF pixels, Qt::KeyboardModifiers keys);
    void pinched(QPointF at, double factor);
    void keyPressed(int key, Qt::KeyboardModifiers keys);
    void mouseLeft();
};

/// Whether a context can be made here; tried once. Must be called after QApplication is there.
bool openGLWorks();
/// Of the kind that works here; `forceSoftware`, or HITHER_PICTURE=software, asks for the software one.
SceneView* makeSceneView(QWidget* parent, bool forceSoftware = false);

}  // namespace hither
