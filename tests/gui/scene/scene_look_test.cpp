#include <catch2/catch.hpp>

#include <QToolButton>

#include "shown_scene.h"

using namespace hither;

TEST_CASE("Dragging beside things turns the view and changes no plan") {
    SceneStand s("elbow_switch_on_chair", JobStep::build);
    const Camera before = s.scene->camera();
    s.drag(QPointF(6, 6), QPointF(80, 30));
    CHECK(s.scene->camera().azimuth != before.azimuth);
    CHECK((s.scene->camera().target_W - before.target_W).norm() < 1e-12);
    CHECK_FALSE(s.document.canUndo());
    const Camera turned = s.scene->camera();
    s.drag(QPointF(6, 6), QPointF(80, 30), Qt::MiddleButton);
    CHECK(s.scene->camera().azimuth == turned.azimuth);
    CHECK((s.scene->camera().target_W - turned.target_W).norm() > 0.01);
    QTest::keyClick(&s.scene->view(), Qt::Key_Left);
    CHECK(s.scene->camera().azimuth != turned.azimuth);
    const double distance = s.scene->camera().distance;
    QTest::keyClick(&s.scene->view(), Qt::Key_Plus);
    CHECK(s.scene->camera().distance < distance);
}

TEST_CASE("Every way to look is a command with keys, a named button and what it promises") {
    SceneStand s("elbow_switch_on_chair", JobStep::check);
    for (const char* id : {"view.whole", "view.front", "view.left", "view.right", "view.back", "view.top", "view.person", "view.body", "view.labels"})
        CHECK_FALSE(s.actions.action(id)->shortcut().isEmpty());
    for (const QToolButton* button : s.scene->findChildren<QToolButton*>()) {
        CHECK_FALSE(button->accessibleName().isEmpty());
        CHECK(button->width() >= 24);
        CHECK(button->height() >= 24);
        CHECK(button->focusPolicy() != Qt::NoFocus);
    }
    const auto eye = [&](const char* id) {
        s.actions.action(id)->trigger();
        return Vec3((s.scene->camera().eye_W() - s.scene->camera().target_W).normalized());
    };
    CHECK(eye("view.front").x() > 0.9);
    CHECK(eye("view.left").y() > 0.9);
    CHECK(eye("view.right").y() < -0.9);
    CHECK(eye("view.back").x() < -0.9);
    CHECK(eye("view.top").z() > 0.99);
    s.actions.action("view.person")->trigger();
    CHECK((s.scene->camera().eye_W() - s.analysis.situation()->body->eyes_W).norm() < 0.02);
    // Everything is in the picture.
    s.actions.action("view.whole")->trigger();
    const Eigen::AlignedBox3d& box = s.scene->picture().bounds_W;
    for (int i = 0; i < 8; ++i) {
        const Vec3 p = s.scene->camera().project(box.corner(static_cast<Eigen::AlignedBox3d::CornerType>(i)), s.size().width(), s.size().height());
        CHECK(p.x() > 0);
        CHECK(p.x() < s.size().width());
        CHECK(p.y() > 0);
        CHECK(p.y() < s.size().height());
    }
    // Without the person there is no body, and nothing in the plan changed.
    const auto bodies = [&] {
        QTest::qWait(20);
        int n = 0;
        for (const PictureItem& i : s.scene->picture().items) n += i.pick.kind == Picked::Kind::person;
        return n;
    };
    CHECK(bodies() > 0);
    s.actions.action("view.body")->trigger();
    CHECK(bodies() == 0);
    CHECK_FALSE(s.document.modified());
}

TEST_CASE("The scene tells those who do not see it where the same is in words") {
    SceneStand s("elbow_switch_on_chair", JobStep::build);
    SceneView& v = s.scene->view();
    CHECK_FALSE(v.accessibleName().isEmpty());
    CHECK(v.accessibleDescription().contains("findings"));
    CHECK(v.focusPolicy() == Qt::StrongFocus);
    // Tab comes from the last button and leaves the view again.
    s.scene->activateWindow();
    const QList<QToolButton*> buttons = s.scene->findChildren<QToolButton*>();
    buttons.back()->setFocus();
    QTest::keyClick(buttons.back(), Qt::Key_Tab);
    CHECK(v.hasFocus());
    QTest::keyClick(&v, Qt::Key_Tab);
    CHECK_FALSE(v.hasFocus());
    CHECK(v.grabPicture().size().width() >= v.pictureSize().width());
}
