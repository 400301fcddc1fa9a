#include <catch2/catch.hpp>

#include <QApplication>
#include <QMouseEvent>
#include <QTest>
#include <QToolButton>

#include "app/picture/make_picture.h"
#include "app/picture/mount_handles.h"
#include "app/scene/placement_at.h"
#include "app/scene/scene.h"
#include "app/scene/scene_view.h"
#include "core/geometry/distance.h"
#include "core/plan/edits/joints.h"
#include "scene_stand.h"

using namespace hither;

namespace {

/// A scene with the software view, shown offscreen, and what it works with.
struct Stand {
    ActionTable actions;
    Document document{QString()};
    ViewState view{document};
    std::shared_ptr<const Shipped> shipped = shippedForTests();
    Analysis analysis{document, view, shipped};
    EditorContext context{document, view, analysis, actions, shipped};
    std::unique_ptr<Scene> scene;
    QString said;

    Stand(const std::string& sample, JobStep step) {
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

}  // namespace

TEST_CASE("A hinge's handle dragged is one step, and Esc leaves no trace") {
    Stand s("elbow_switch_on_chair", JobStep::build);
    const Picked handle = Picked::jointOf(s.mount().id, 1, "elbow");
    s.comeNear(s.face(), 0.4);
    s.view.pick(Picked::partOf(s.mount().id, 1));
    QTest::qWait(40);
    const std::optional<QPointF> at = s.pixelOf(handle);
    REQUIRE(at);
    const std::string before = planToJson(s.document.plan());

    SECTION("let go") {
        s.drag(*at, QPointF(12, -40));
        CHECK(s.document.canUndo());
        CHECK(planToJson(s.document.plan()) != before);
        CHECK(s.view.picked() == handle);
        CHECK_FALSE(s.said.isEmpty());
        // Only that joint moved.
        Plan expected = samplePlan("elbow_switch_on_chair");
        const double q = s.mount().parts[1].joints.at("elbow").q.at(0);
        CHECK(q != expected.options[0].mounts[0].parts[1].joints.at("elbow").q.at(0));
        expected.options[0].mounts[0].parts[1].joints.at("elbow").q.at(0) = q;
        CHECK(s.document.plan() == expected);
        s.document.undo();
        CHECK(planToJson(s.document.plan()) == before);
        CHECK_FALSE(s.document.canUndo());
    }
    SECTION("Esc") {
        s.drag(*at, QPointF(12, -40), Qt::LeftButton, false);
        CHECK(planToJson(s.document.plan()) != before);
        QTest::keyClick(&s.scene->view(), Qt::Key_Escape);
        CHECK(planToJson(s.document.plan()) == before);
        CHECK_FALSE(s.document.canUndo());
        CHECK_FALSE(s.document.inGesture());
        s.mouse(QEvent::MouseButtonRelease, *at);
        CHECK(planToJson(s.document.plan()) == before);
    }
    SECTION("the other button") {
        s.drag(*at, QPointF(12, -40), Qt::LeftButton, false);
        s.mouse(QEvent::MouseButtonPress, *at, Qt::RightButton);
        CHECK(planToJson(s.document.plan()) == before);
        CHECK_FALSE(s.document.canUndo());
    }
}

TEST_CASE("A joint that is kept has no handle, and a mount that is kept says so") {
    Stand s("elbow_switch_on_chair", JobStep::build);
    Plan plan = s.document.plan();
    Mount& mount = plan.options[0].mounts[0];
    mount.placeKept = true;
    for (MountPart& part : mount.parts) {
        part.clockingKept = true;
        for (auto& [name, joint] : part.joints) joint.kept = true;
    }
    s.document.startWith(plan, false);
    QTest::qWait(40);
    s.comeNear(s.face(), 0.4);
    const std::optional<QPointF> at = s.pixelOf(Picked::partOf(mount.id, static_cast<int>(mount.parts.size()) - 1));
    REQUIRE(at);
    const std::string before = planToJson(s.document.plan());
    s.drag(*at, QPointF(30, 20));
    CHECK(planToJson(s.document.plan()) == before);
    CHECK_FALSE(s.document.canUndo());
    CHECK(s.said.contains("kept"));
}

TEST_CASE("The switch dragged goes where the pointer goes, facing as it did") {
    Stand s("elbow_switch_on_chair", JobStep::build);
    const int last = static_cast<int>(s.mount().parts.size()) - 1;
    s.comeNear(s.face(), 0.4);
    const std::optional<QPointF> at = s.pixelOf(Picked::partOf(s.mount().id, last));
    REQUIRE(at);
    const Vec3 start = s.face();
    const auto axis = [&] {
        const SetupMount& m = s.analysis.setup()->mounts.front();
        return Vec3(forward(m.chain, m.q).last().linear() * m.chain.operatingAxis);
    };
    const Vec3 faced = axis();
    const double perPixel = s.scene->camera().metresPerPixel(start, s.size().height());
    const QPointF by(10, -8);
    s.drag(*at, by);
    CHECK(s.document.canUndo());
    s.document.undo();
    CHECK_FALSE(s.document.canUndo());
    s.document.redo();
    // Seen from the camera it moved by as many pixels; it did not come nearer or go farther.
    const Camera& c = s.scene->camera();
    const Vec3 from = c.project(start, s.size().width(), s.size().height()), to = c.project(s.face(), s.size().width(), s.size().height());
    INFO("metres per pixel " << perPixel << ", said " << s.said.toStdString());
    CHECK(to.x() - from.x() == Approx(by.x()).margin(0.5));
    CHECK(to.y() - from.y() == Approx(by.y()).margin(0.5));
    CHECK(to.z() == Approx(from.z()).margin(1e-3));
    CHECK(axis().dot(faced) > std::cos(0.002));
}

TEST_CASE("A switch dragged out of reach stays near and says by how much it is short") {
    Stand s("elbow_switch_on_chair", JobStep::build);
    const int last = static_cast<int>(s.mount().parts.size()) - 1;
    const std::optional<QPointF> at = s.pixelOf(Picked::partOf(s.mount().id, last));
    REQUIRE(at);
    s.drag(*at, QPointF(-260, -160));
    CHECK(s.said.contains("short"));
    const SetupMount& m = s.analysis.setup()->mounts.front();
    for (int i = 0; i < m.chain.freedomCount(); ++i) CHECK(outside(m.chain, m.q, i) < 1e-9);
}

TEST_CASE("A click on a rail asks for grips at the place that was clicked") {
    Stand s("elbow_switch_on_chair", JobStep::build);
    const Situation& situation = *s.analysis.situation();
    int clicked = 0;
    for (const Attachment& a : situation.supports.front().attachments) {
        if (a.kind != AttachmentKind::rail) continue;
        const std::optional<QPointF> at = s.pixelOf(Picked::attachment("chair", a.id));
        if (!at) continue;
        s.click(*at);
        const OfferFor& offer = s.view.offerFor();
        REQUIRE(offer.kind == OfferFor::Kind::attachment);
        CHECK(offer.attachment == a.id);
        CHECK(s.view.picked() == Picked::attachment("chair", a.id));
        // The place along it by the core's own frame: a grip there is as near to the line of sight as the tube is thick.
        const Pose X_W = groupPose_W(situation, "chair", a.group) * gripFrame(a, offer.place);
        const Ray r = s.ray(*at);
        const Vec3 d = r.direction_W.normalized(), off = X_W.translation() - r.origin_W;
        CHECK((off - d * d.dot(off)).norm() < a.outside_m.value.value_or(0.02) + 0.006);
        ++clicked;
    }
    CHECK(clicked >= 3);
    s.click(QPointF(3, 3));
    CHECK(s.view.offerFor().kind == OfferFor::Kind::nothing);
    CHECK(s.view.picked().nothing());
}

TEST_CASE("A place on an attachment comes back from the grip's frame there") {
    for (const char* sample : {"elbow_switch_on_chair", "two_switches_on_tray", "head_switch_on_bed", "foot_switch_on_pole"}) {
        const Plan plan = samplePlan(sample);
        const SituationMade made = makeSituation(plan.supports, plan.person, plan.sites, shippedForTests()->body);
        REQUIRE(made.situation);
        for (const Support& support : made.situation->supports)
            for (const Attachment& a : support.attachments) {
                Placement place;
                if (a.kind == AttachmentKind::face) {
                    place.x_m = 0.2 * a.sizeX_m;
                    place.y_m = -0.3 * a.sizeY_m;
                } else {
                    place.along_m = 0.4 * a.length_m();
                }
                if (a.kind == AttachmentKind::rail) place.around_rad = -2.1;
                if (a.kind == AttachmentKind::edge && a.thickness_m.value.value_or(0) > 0.002) place.fromBelow = true;
                const Vec3 at = (groupPose_W(*made.situation, support.id, a.group) * gripFrame(a, place)).translation();
                const auto back = placementAt(*made.situation, support.id, a.id, at);
                REQUIRE(back);
                INFO(sample << " " << a.id);
                CHECK(back->along_m == Approx(place.along_m).margin(1e-9));
                CHECK(back->x_m == Approx(place.x_m).margin(1e-9));
                CHECK(back->y_m == Approx(place.y_m).margin(1e-9));
                CHECK(back->fromBelow == place.fromBelow);
                if (a.kind == AttachmentKind::rail && a.outside_m.known()) CHECK(back->around_rad == Approx(place.around_rad).margin(1e-9));
            }
    }
}

TEST_CASE("A click on the body puts the site there, and moves the one that is picked") {
    Stand s("elbow_switch_on_chair", JobStep::site);
    std::optional<QPointF> at;
    for (const Segment segment : {Segment::thigh, Segment::head, Segment::shank}) {
        for (const Side side : {Side::right, Side::none}) if (!at) at = s.pixelOf(Picked::person(word(SegmentId{segment, side})));
    }
    REQUIRE(at);
    const std::size_t had = s.document.plan().sites.size();
    s.view.pick({});
    s.click(*at);
    REQUIRE(s.document.plan().sites.size() == had + 1);
    const auto seen = pickOnBody(*s.analysis.situation()->body, s.ray(*at));
    REQUIRE(seen);
    const std::string id = s.document.plan().sites.back().id;
    CHECK(s.view.picked() == Picked::site(id));
    const Site* site = s.analysis.situation()->site(id);
    REQUIRE(site);
    CHECK((site->p_W - seen->point_W).norm() < 1e-9);
    // Outward: against the line of sight.
    CHECK(site->d_W.dot(s.ray(*at).direction_W) < 0);
    // The picked one moves, in one more step.
    s.click(*at + QPointF(0, 12));
    CHECK(s.document.plan().sites.size() == had + 1);
    s.document.undo();
    s.document.undo();
    CHECK(s.document.plan() == samplePlan("elbow_switch_on_chair"));
}

TEST_CASE("Dragging beside things turns the view and changes no plan") {
    Stand s("elbow_switch_on_chair", JobStep::build);
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
    Stand s("elbow_switch_on_chair", JobStep::check);
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
    Stand s("elbow_switch_on_chair", JobStep::build);
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
