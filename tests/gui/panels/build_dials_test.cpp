#include <QCheckBox>
#include <QLabel>

#include "app/panels/build_dial.h"
#include "app/panels/build_settings_form.h"
#include "core/plan/edits/parts.h"
#include "tests/gui/panels/build_desk.h"

using namespace hither;
using namespace hither::test;

namespace {

BuildDial* dialNamed(BuildDesk& b, const QString& name) {
    for (BuildDial* d : b.panel.findChildren<BuildDial*>())
        if (d->isVisible() && d->field()->accessibleName() == name) return d;
    FAIL("no dial " << name.toStdString());
    return nullptr;
}
void enter(BuildDesk& b, QLineEdit* field, const QString& text) {
    field->setFocus();
    field->selectAll();
    b.type(text);
    b.key(Qt::Key_Return);
}
const std::vector<double>& joint(BuildDesk& b, int part, const std::string& name) {
    return b.mount().parts[static_cast<std::size_t>(part)].joints.at(name).q;
}
/// The sample with its arm replaced by another part.
Plan withPart(const std::string& id) {
    const Plan plan = samplePlan("elbow_switch_on_chair");
    return *replacePart(plan, plan.options[0].id, "elbow-mount", 1, *shipped()->catalogue.find(id)).plan;
}

}  // namespace

TEST_CASE("A joint that clicks stands on its clicks, by slider and by number") {
    BuildDesk b(withPart("rosette-hinge-15-stud"));
    b.view.pick(Picked::partOf("elbow-mount", 1));
    BuildDial* dial = nullptr;
    for (BuildDial* d : b.panel.findChildren<BuildDial*>()) if (d->isVisible() && d->dial().step && d->dial().what == Dial::What::value) dial = d;
    REQUIRE(dial);
    const std::string name = b.analysis.setup()->mounts[0].chain.freedoms.back().joint;
    enter(b, dial->field(), "37");
    const auto value = [&] { return joint(b, 1, b.mount().parts[1].joints.begin()->first)[0]; };
    CHECK(value() == Approx(radians(30)));
    CHECK(dial->field()->text() == "30°");
    bool said = false;
    for (QLabel* l : dial->findChildren<QLabel*>()) said = said || l->text() == "37° is between two clicks: set to 30°.";
    CHECK(said);
    QTest::keyClick(dial->slider(), Qt::Key_Right);
    CHECK(value() == Approx(radians(45)));
}

// A ball's swing (a, b) stays in its cone: what is set counts, the other gives way to sqrt(cone^2 - a^2).
TEST_CASE("A ball's two swings share its cone") {
    BuildDesk b(samplePlan("elbow_switch_on_chair"));
    b.view.pick(Picked::partOf("elbow-mount", 1));
    enter(b, dialNamed(b, "Ball 1, Swing sideways")->field(), "60");
    enter(b, dialNamed(b, "Ball 1, Swing toward")->field(), "80");
    CHECK(joint(b, 1, "ball1")[0] == Approx(radians(80)));
    CHECK(joint(b, 1, "ball1")[1] == Approx(std::sqrt(radians(90) * radians(90) - radians(80) * radians(80))));
}

// A circular arc of length L bent by an angle has curvature angle / L; bending by 40 degrees in direction 0
// moves the end along x: the tangent after the arc is (sin 40, 0, cos 40).
TEST_CASE("A neck's arc is set by how far it bends and whereto") {
    BuildDesk b(withPart("gooseneck-300"));
    b.view.pick(Picked::partOf("elbow-mount", 1));
    const Setting neck = [&] {
        for (const Setting& s : settingsOf(b.document.plan(), *b.analysis.setup(), b.analysis.setup()->mounts[0], 1)) if (s.dials.size() == 6) return s;
        return Setting{};
    }();
    REQUIRE(neck.dials.size() == 6);
    CHECK_FALSE(neck.dials[1].usable);   // a straight neck bends nowhere
    enter(b, dialNamed(b, neck.title + ", Bend near the support")->field(), "40");
    const auto pose = [&] {
        const std::shared_ptr<const Setup> setup = b.analysis.setup();
        const Chain& chain = setup->mounts[0].chain;
        const ChainPoses poses = forward(chain, setup->mounts[0].q);
        for (std::size_t s = 0; s < chain.steps.size(); ++s)
            if (chain.steps[s].kind == ChainStep::Kind::bend) return Mat3(poses.X_WF[s].linear().transpose() * poses.X_WF[s + 1].linear());
        return Mat3(Mat3::Zero());
    };
    const Vec3 along = pose().col(2);
    CHECK(along.x() == Approx(std::sin(radians(40))));
    CHECK(along.y() == Approx(0).margin(1e-12));
    enter(b, dialNamed(b, neck.title + ", Its direction")->field(), "90");
    CHECK(pose().col(2).y() == Approx(std::sin(radians(40))));
}

TEST_CASE("What one knob locks is locked and let go together; home and place are steps") {
    BuildDesk b(samplePlan("elbow_switch_on_chair"));
    const std::string start = b.json();
    b.view.pick(Picked::partOf("elbow-mount", 1));
    const auto button = [&](const QString& name) -> QAbstractButton* {
        for (QAbstractButton* a : b.panel.findChildren<QAbstractButton*>()) if (a->isVisible() && a->accessibleName() == name) return a;
        FAIL(name.toStdString());
        return nullptr;
    };
    button("Elbow, locked")->setFocus();
    b.key(Qt::Key_Space);
    for (const char* name : {"ball1", "elbow", "ball2"}) CHECK(b.mount().parts[1].joints.at(name).kept);
    b.key(Qt::Key_Space);
    for (const char* name : {"ball1", "elbow", "ball2"}) CHECK_FALSE(b.mount().parts[1].joints.at(name).kept);
    button("Elbow, home")->click();
    CHECK(joint(b, 1, "elbow")[0] == 0);
    b.view.pick(Picked::partOf("elbow-mount", 0));
    enter(b, dialNamed(b, "Place on Back cane, right, From its lower end")->field(), "10 in");
    CHECK(b.mount().place.along_m == Approx(0.254));
    button("Place on Back cane, right, locked")->click();
    CHECK(b.mount().placeKept);
    while (b.document.canUndo()) b.document.undo();
    CHECK(b.json() == start);
}

TEST_CASE("While a joint is dragged the fields stay the same widgets and follow") {
    BuildDesk b(samplePlan("elbow_switch_on_chair"));
    b.view.pick(Picked::partOf("elbow-mount", 1));
    BuildDial* dial = dialNamed(b, "Elbow, Angle");
    b.document.beginGesture("Drag");
    SettingOf of;
    of.part = 1;
    of.joint = "elbow";
    for (int i = 0; i < 20; ++i) {
        REQUIRE(b.document.preview(withDial(b.document.gestureStart(), b.view.option(), "elbow-mount", of, dial->dial(), radians(i))));
        REQUIRE(dialNamed(b, "Elbow, Angle") == dial);
        REQUIRE(dial->field()->text() == QString("%1°").arg(i));
    }
    b.document.cancelGesture();
}
