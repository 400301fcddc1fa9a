#pragma once
#include <memory>
#include <optional>

#include <QApplication>
#include <QMouseEvent>
#include <QTest>

#include "app/picture/make_picture.h"
#include "app/scene/scene.h"
#include "app/scene/scene_view.h"
#include "core/geometry/distance.h"
#include "scene_stand.h"

namespace hither {

/// A scene with the software view, shown offscreen, and what it works with.
struct SceneStand {
    ActionTable actions;
    Document document{QString()};
    ViewState view{document};
    std::shared_ptr<const Shipped> shipped = shippedForTests();
    Analysis analysis{document, view, shipped};
    EditorContext context{document, view, analysis, actions, shipped};
    std::unique_ptr<Scene> scene;
    QString said;

    SceneStand(const std::string& sample, JobStep step) {
        qputenv("HITHER_PICTURE", "software");
        document.startWith(samplePlan(sample), false);
        view.setStep(step);
        scene = std::make_unique<Scene>(context);
        QObject::connect(scene.get(), &Scene::saying, scene.get(), [this](const QString& words) { said = words; });
        scene->resize(720, 560);
        scene->show();
        QTest::qWait(60);
        QCoreApplication::sendPostedEvents();
        REQUIRE_FALSE(scene->view().byOpenGL());
        REQUIRE_FALSE(scene->picture().items.empty());
    }

    QSize size() const { return scene->view().pictureSize(); }
    Ray ray(QPointF at) const {
        const Camera::Ray r = scene->camera().rayThrough(at.x(), at.y(), size().width(), size().height());
        return {r.origin_W, r.direction_W};
    }
    /// A pixel of the picture at which a click picks this.
    std::optional<QPointF> pixelOf(const Picked& pick) const {
        for (int y = 2; y < size().height(); y += 3)
            for (int x = 2; x < size().width(); x += 3) {
                const auto hit = pickInPicture(scene->picture(), ray(QPointF(x, y)).origin_W, ray(QPointF(x, y)).direction_W);
                if (hit && hit->pick == pick) return QPointF(x, y);
            }
        return std::nullopt;
    }
    /// Real events at a pixel of the picture.
    void mouse(QEvent::Type type, QPointF at, Qt::MouseButton button = Qt::LeftButton, Qt::KeyboardModifiers keys = {}) {
        SceneView& v = scene->view();
        const QPointF inside = at + 0.5 * QPointF(v.width() - size().width(), v.height() - size().height());
        QMouseEvent event(type, inside, v.mapToGlobal(inside), type == QEvent::MouseMove ? Qt::NoButton : button,
                          type == QEvent::MouseButtonRelease ? Qt::MouseButtons() : Qt::MouseButtons(button), keys);
        QApplication::sendEvent(&v, &event);
    }
    void drag(QPointF from, QPointF by, Qt::MouseButton button = Qt::LeftButton, bool letGo = true) {
        mouse(QEvent::MouseButtonPress, from, button);
        for (int i = 1; i <= 10; ++i) {
            mouse(QEvent::MouseMove, from + 0.1 * i * by, button);
            QTest::qWait(20);
        }
        if (letGo) mouse(QEvent::MouseButtonRelease, from + by, button);
        QTest::qWait(20);
    }
    void click(QPointF at) {
        mouse(QEvent::MouseButtonPress, at);
        mouse(QEvent::MouseButtonRelease, at);
        QTest::qWait(20);
    }
    const Mount& mount() const { return document.plan().options.front().mounts.front(); }
    Vec3 face() const {
        const SetupMount& m = analysis.setup()->mounts.front();
        return forward(m.chain, m.q).last().translation();
    }
    /// Comes near to a place so that small things have pixels.
    void comeNear(const Vec3& p_W, double factor) {
        const Vec3 pixel = scene->camera().project(p_W, size().width(), size().height());
        emit scene->view().pinched(QPointF(pixel.x(), pixel.y()), factor);
        QTest::qWait(20);
    }
};

}  // namespace hither
