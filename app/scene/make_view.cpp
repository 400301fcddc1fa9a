#include <QGuiApplication>
#include <QOffscreenSurface>
#include <QOpenGLContext>
#include <QSurfaceFormat>

#include "app/scene/focus_ring.h"
#include "app/scene/gl_view.h"
#include "app/scene/scene_view.h"
#include "app/scene/software_view.h"

namespace hither {
namespace {

/// Core profile, smooth edges, and what the shaders need.
QSurfaceFormat wantedFormat() {
    QSurfaceFormat format;
    format.setRenderableType(QSurfaceFormat::OpenGL);
    format.setProfile(QSurfaceFormat::CoreProfile);
    format.setVersion(3, 3);
    format.setDepthBufferSize(24);
    format.setSamples(4);
    return format;
}

bool tryContext() {
    const QString platform = QGuiApplication::platformName();
    if (platform == "offscreen" || platform == "minimal" || platform == "vnc" || platform == "linuxfb") return false;
    QOpenGLContext context;
    context.setFormat(wantedFormat());
    if (!context.create() || context.isOpenGLES() || context.format().version() < std::pair(3, 2)) return false;
    QOffscreenSurface surface;
    surface.setFormat(context.format());
    surface.create();
    if (!surface.isValid() || !context.makeCurrent(&surface)) return false;
    context.doneCurrent();
    return true;
}

}  // namespace

QSize SceneView::pictureSize() const { return (size() - QSize(2 * focusRingWidth, 2 * focusRingWidth)).expandedTo(QSize(2, 2)); }

bool openGLWorks() {
    static const bool works = tryContext();
    return works;
}

SceneView* makeSceneView(QWidget* parent, bool forceSoftware) {
    if (forceSoftware || qEnvironmentVariable("HITHER_PICTURE") == "software" || !openGLWorks()) return new SoftwareView(parent);
    QSurfaceFormat::setDefaultFormat(wantedFormat());
    return new GlView(parent);
}

}  // namespace hither
