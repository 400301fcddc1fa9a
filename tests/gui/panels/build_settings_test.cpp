#include <catch2/catch.hpp>

#include <QAccessible>
#include <QCheckBox>
#include <QLineEdit>
#include <QPushButton>
#include <QToolButton>

#include "app/panels/build_dial.h"
#include "app/panels/build_settings_form.h"
#include "app/widgets/theme.h"
#include "build_fixture.h"
#include "givens_checks.h"

using namespace hither;
using namespace hither::test;

namespace {

BuildDial* dial(BuildFixture& f, const QString& field) {
    for (auto* d : f.panel().findChildren<BuildDial*>())
        if (d->isVisibleTo(&f.panel()) && d->field()->accessibleName() == field) return d;
    return nullptr;
}

QToolButton* head(BuildFixture& f, const QString& words) {
    for (auto* b : f.panel().findChildren<QToolButton*>())
        if (b->text() == words) return b;
    return nullptr;
}

double elbow(const BuildFixture& f) { return f.option().mounts.front().parts.at(1).joints.at("elbow").q.at(0); }

/// Every control that is shown and can have the keyboard is called something.
void checkShownNames(const QWidget& panel) {
    int controls = 0;
    for (QWidget* w : panel.findChildren<QWidget*>()) {
        if (!(w->focusPolicy() & Qt::TabFocus) || !w->isVisible()) continue;
        QAccessibleInterface* said = QAccessible::queryAccessibleInterface(w);
        INFO(w->metaObject()->className());
        REQUIRE(said);
        ++controls;
        CHECK_FALSE(said->text(QAccessible::Name).trimmed().isEmpty());
    }
    CHECK(controls > 3);
}

/// The elbow mount with its arm picked.
struct ArmPicked : BuildFixture {
    ArmPicked() {
        if (!elbowMountByKeys()) throw std::runtime_error("the mount was not built");
        view.pick(Picked::partOf(option().mounts.front().id, 1));
        settle();
    }
};

}  // namespace

TEST_CASE("A slider that is held is one step, by mouse and by keys, and Esc leaves no trace") {
    ArmPicked f;
    BuildDial* d = dial(f, "Elbow, Angle");
    REQUIRE(d);
    BuildSlider* s = d->slider();
    const std::string before = f.json();
    const QString label = f.document.undoLabel();
    const QPoint middle = s->rect().center();
    QTest::mousePress(s, Qt::LeftButton, {}, middle);
    CHECK(f.document.inGesture());
    for (int i = 1; i <= 12; ++i) {
        QTest::mouseMove(s, middle + QPoint(3 * i, 0));
        f.settle();
    }
    const std::string moved = f.json();
    CHECK(moved != before);
    QTest::mouseRelease(s, Qt::LeftButton, {}, middle + QPoint(36, 0));
    f.settle();
    CHECK_FALSE(f.document.inGesture());
    CHECK(f.json() == moved);
    CHECK(f.document.undoLabel() == "Set elbow of Single-lock arm, halves of 130 mm");
    f.document.undo();
    f.settle();
    CHECK(f.json() == before);
    CHECK(f.document.undoLabel() == label);

    QTest::mousePress(s, Qt::LeftButton, {}, middle);
    QTest::mouseMove(s, middle + QPoint(30, 0));
    f.settle();
    CHECK(f.json() != before);
    QTest::keyClick(s, Qt::Key_Escape);
    CHECK(f.json() == before);
    QTest::mouseMove(s, middle + QPoint(50, 0));
    QTest::mouseRelease(s, Qt::LeftButton, {}, middle + QPoint(50, 0));
    f.settle();
    CHECK(f.json() == before);
    CHECK(f.document.undoLabel() == label);

    s->setFocus(Qt::TabFocusReason);
    for (int i = 0; i < 5; ++i) QTest::keyPress(s, Qt::Key_Right);   // held down
    CHECK(f.document.inGesture());
    QTest::keyRelease(s, Qt::Key_Right);
    f.settle();
    CHECK_FALSE(f.document.inGesture());
    CHECK(elbow(f) == Approx(radians(5)).margin(radians(1)));
    f.document.undo();
    f.settle();
    CHECK(f.json() == before);
    CHECK(f.document.undoLabel() == label);
}

TEST_CASE("An angle typed is one step, shown while it is typed; Esc puts it back") {
    ArmPicked f;
    BuildDial* d = dial(f, "Elbow, Angle");
    REQUIRE(d);
    const std::string before = f.json();
    d->field()->setFocus(Qt::TabFocusReason);
    d->field()->selectAll();
    f.type("35");
    CHECK(elbow(f) == Approx(radians(35)));
    f.key(Qt::Key_Escape);
    CHECK(f.json() == before);
    d->field()->selectAll();
    f.type("35");
    f.key(Qt::Key_Return);
    CHECK(elbow(f) == Approx(radians(35)));
    CHECK(f.document.undoLabel() == "Set elbow of Single-lock arm, halves of 130 mm");
    f.document.undo();
    f.settle();
    CHECK(f.json() == before);
}

TEST_CASE("Locking one joint of an arm with one lock locks those that lock with it, in one step") {
    ArmPicked f;
    const std::string before = f.json();
    QCheckBox* locked = nullptr;
    for (auto* box : f.panel().findChildren<QCheckBox*>())
        if (box->accessibleName() == "Elbow, locked") locked = box;
    REQUIRE(locked);
    locked->setFocus(Qt::TabFocusReason);
    f.key(Qt::Key_Space);
    const auto& joints = f.option().mounts.front().parts.at(1).joints;
    for (const char* name : {"ball1", "elbow", "ball2"}) CHECK(joints.at(name).kept);
    CHECK(locked->isChecked());
    f.document.undo();
    CHECK(f.json() == before);
}

TEST_CASE("A volume to keep free is added and changed by the keyboard, one step each") {
    BuildFixture f;
    const std::string before = f.json();
    QToolButton* keepFree = head(f, "Keep free");
    REQUIRE(keepFree);
    keepFree->setFocus(Qt::TabFocusReason);
    f.key(Qt::Key_Space);
    QPushButton* box = nullptr;
    for (auto* b : f.panel().findChildren<QPushButton*>())
        if (b->text() == "Add a box") box = b;
    REQUIRE(box);
    REQUIRE(box->isVisible());
    box->setFocus(Qt::TabFocusReason);
    f.key(Qt::Key_Space);
    REQUIRE(f.option().keepOuts.size() == 1);
    auto* name = qobject_cast<QLineEdit*>(QApplication::focusWidget());
    REQUIRE(name);
    f.type("Transfer side");
    f.key(Qt::Key_Return);
    CHECK(f.option().keepOuts.front().name == "Transfer side");
    NumberField* length = nullptr;
    for (auto* n : f.panel().findChildren<NumberField*>())
        if (n->accessibleName() == "Length") length = n;
    REQUIRE(length);
    length->setFocus(Qt::TabFocusReason);
    length->selectAll();
    f.type("600");
    f.key(Qt::Key_Return);
    CHECK(f.option().keepOuts.front().solid.half.x() == Approx(0.3));
    for (int i = 0; i < 3; ++i) {
        REQUIRE(f.document.canUndo());
        f.document.undo();
        f.settle();
    }
    CHECK(f.json() == before);
    CHECK_FALSE(f.document.canUndo());
}

TEST_CASE("Every control of Build has a name and a place in the order of tabs") {
    {
        BuildFixture f;
        head(f, "Keep free")->click();
        f.settle();
        checkShownNames(f.panel());
        checkTabs(f.panel());
    }
    ArmPicked f;
    head(f, "Keep free")->click();
    for (auto* b : f.panel().findChildren<QPushButton*>())
        if (b->text() == "Add a box") b->click();
    f.settle();
    f.view.pick(Picked::partOf(f.option().mounts.front().id, 1));
    f.chain().offerBehind();
    f.settle();
    REQUIRE(f.offers().isVisible());
    checkShownNames(f.panel());
    checkTabs(f.panel());
}

TEST_CASE("Going through Build with Tab picks nothing and changes nothing") {
    ArmPicked f;
    head(f, "Keep free")->click();
    for (auto* b : f.panel().findChildren<QPushButton*>())
        if (b->text() == "Add a box") b->click();
    f.settle();
    const Picked arm = Picked::partOf(f.option().mounts.front().id, 1);
    f.view.pick(arm);
    f.settle();
    const std::string before = f.json();
    f.chain().list()->setFocus(Qt::TabFocusReason);
    for (int i = 0; i < 60; ++i) f.key(Qt::Key_Tab);
    CHECK(f.view.picked() == arm);
    CHECK(f.json() == before);
}

TEST_CASE("Nothing of Build is cut off at twice the font size in a column of the usual width") {
    const QFont usual = QApplication::font();
    applyTheme(*qApp, Brightness::light, 2);
    {
        ArmPicked f;
        checkRoom(f.panel());
        // The button to clear the words is Qt's own, drawn inside the field.
        for (auto* field : f.offers().findChildren<QLineEdit*>()) field->setClearButtonEnabled(false);
        f.view.pick(Picked::partOf(f.option().mounts.front().id, 1));
        f.chain().offerBehind();
        f.type("bushing");
        f.settle();
        checkRoom(f.panel());
        CHECK(f.panel().width() <= f.shown->area.viewport()->width());
        // What was opened is what is seen.
        const QRect search(f.offers().mapTo(f.shown->area.viewport(), QPoint(0, 0)), QSize(10, 10));
        CHECK(f.shown->area.viewport()->rect().contains(search));
    }
    qApp->setStyleSheet({});
    QApplication::setFont(usual);
}
