#pragma once
#include <QImage>
#include <QLabel>
#include <QTimer>

#include "app/scene/scene_view.h"

namespace hither {

/// The view without OpenGL: drawn by the processor, coarser while it moves and sharp once it rests.
class SoftwareView : public SceneView {
    Q_OBJECT

public:
    explicit SoftwareView(QWidget* parent);

    void show(const Picture& picture) override;
    void setCamera(const Camera& camera) override;
    void setColours(const PictureColours& colours) override;
    quint64 frames() const override { return frames_; }
    QImage grabPicture() override;
    bool byOpenGL() const override { return false; }

protected:
    void paintEvent(QPaintEvent* event) override;
    void resizeEvent(QResizeEvent* event) override;
    void keyPressEvent(QKeyEvent* event) override;
    void focusInEvent(QFocusEvent* event) override;
    void focusOutEvent(QFocusEvent* event) override;

private:
    void moved();
    QImage draw(double scale) const;

    Picture picture_;
    Camera camera_;
    PictureColours colours_;
    QImage image_;
    bool stale_ = true, moving_ = false;
    quint64 frames_ = 0;
    QTimer rest_;
    QLabel* note_ = nullptr;
};

}  // namespace hither
