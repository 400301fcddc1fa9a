#pragma once
#include <memory>

#include "app/scene/scene_view.h"

namespace hither {

/// The view by OpenGL (Qt3D). The keyboard stays with this widget: the window inside takes none of it,
/// so that Tab goes on to the next control.
class GlView : public SceneView {
    Q_OBJECT

public:
    explicit GlView(QWidget* parent);
    ~GlView() override;

    void show(const Picture& picture) override;
    void setCamera(const Camera& camera) override;
    void setColours(const PictureColours& colours) override;
    quint64 frames() const override;
    QImage grabPicture() override;
    bool byOpenGL() const override { return true; }

protected:
    bool eventFilter(QObject* watched, QEvent* event) override;
    void resizeEvent(QResizeEvent* event) override;
    void paintEvent(QPaintEvent* event) override;
    void keyPressEvent(QKeyEvent* event) override;
    void focusInEvent(QFocusEvent* event) override;
    void focusOutEvent(QFocusEvent* event) override;

private:
    struct Parts;
    void lay();
    void showShadow();
    void touch();
    std::unique_ptr<Parts> parts_;
};

}  // namespace hither
