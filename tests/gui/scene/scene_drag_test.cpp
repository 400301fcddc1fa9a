#include <catch2/catch.hpp>

#include "shown_scene.h"

using namespace hither;

TEST_CASE("A hinge's handle dragged is one step, and Esc leaves no trace") {
    SceneStand s("elbow_switch_on_chair", JobStep::build);
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
    SceneStand s("elbow_switch_on_chair", JobStep::build);
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
    SceneStand s("elbow_switch_on_chair", JobStep::build);
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
    SceneStand s("elbow_switch_on_chair", JobStep::build);
    const int last = static_cast<int>(s.mount().parts.size()) - 1;
    const std::optional<QPointF> at = s.pixelOf(Picked::partOf(s.mount().id, last));
    REQUIRE(at);
    s.drag(*at, QPointF(-260, -160));
    CHECK(s.said.contains("short"));
    const SetupMount& m = s.analysis.setup()->mounts.front();
    for (int i = 0; i < m.chain.freedomCount(); ++i) CHECK(outside(m.chain, m.q, i) < 1e-9);
}
