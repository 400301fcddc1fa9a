#include <catch2/catch.hpp>

#include <QAbstractButton>
#include <QSignalSpy>

#include "app/panels/support_panel.h"
#include "app/widgets/dimension_picture.h"
#include "app/widgets/field_row.h"
#include "app/widgets/slider_field.h"
#include "app/widgets/text_field.h"
#include "givens_checks.h"
#include "givens_fixture.h"

using namespace hither;

TEST_CASE("Typing a seat width shows it at once, Esc leaves no trace, Enter is one step") {
    GivensFixture f;
    Shown<SupportPanel> shown(f);
    auto* width = shown.find<NumberField>("dimension seat_width");
    REQUIRE(width);
    CHECK(width->text().isEmpty());
    const std::string before = f.json();
    width->setFocus(Qt::TabFocusReason);
    QTest::keyClicks(width, "412");
    CHECK(f.document.plan().supports.front().dimensions.at("seat_width") == 0.412);
    CHECK(f.document.inGesture());
    QTest::keyClick(width, Qt::Key_Escape);
    CHECK(f.json() == before);
    CHECK_FALSE(f.document.canUndo());
    CHECK(width->text().isEmpty());

    QTest::keyClicks(width, "4");
    QTest::keyClicks(width, "12");
    QTest::keyClick(width, Qt::Key_Return);
    shown.settle();
    CHECK(f.document.plan().supports.front().dimensions.at("seat_width") == 0.412);
    CHECK(f.document.undoLabel() == "Set: seat width");
    CHECK(width->hasFocus());
    auto* row = qobject_cast<FieldRow*>(width->parentWidget());
    REQUIRE(row);
    CHECK(row->basis() == BasisKind::measured);
    f.document.undo();
    CHECK(f.json() == before);
    CHECK_FALSE(f.document.canUndo());
    CHECK(row->basis() == BasisKind::assumed);
    CHECK(width->text().isEmpty());
}

TEST_CASE("The picture shows the dimension that has the keyboard") {
    GivensFixture f;
    Shown<SupportPanel> shown(f);
    auto* picture = f.document.plan().supports.empty() ? nullptr : shown.area.findChild<DimensionPicture*>("dimension picture");
    REQUIRE(picture);
    CHECK_FALSE(picture->marked());
    shown.find<NumberField>("dimension seat_depth")->setFocus(Qt::TabFocusReason);
    CHECK(picture->marked());
    CHECK(picture->drawnFrom() == DrawnFrom::side);
    shown.find<NumberField>("dimension seat_width")->setFocus(Qt::TabFocusReason);
    CHECK(picture->drawnFrom() == DrawnFrom::front);
    CHECK(picture->accessibleDescription().contains("across the seat"));
}

TEST_CASE("A field that gets the keyboard is not left under the picture") {
    GivensFixture f;
    Shown<SupportPanel> shown(f, 340, 520);
    auto* picture = shown.area.findChild<DimensionPicture*>("dimension picture");
    shown.find<NumberField>("dimension castor_diameter")->setFocus(Qt::TabFocusReason);
    shown.settle();
    auto* height = shown.find<NumberField>("dimension armrest_height");
    for (int i = 0; i < 30 && !height->hasFocus(); ++i) QTest::keyClick(QApplication::focusWidget(), Qt::Key_Backtab, Qt::ShiftModifier);
    REQUIRE(height->hasFocus());
    shown.settle();
    const auto seen = [&](QWidget* w) { return QRect(w->mapTo(shown.area.viewport(), QPoint(0, 0)), w->size()); };
    CHECK(shown.area.viewport()->rect().contains(seen(height)));
    CHECK(shown.area.viewport()->rect().contains(seen(picture)));
    CHECK_FALSE(seen(picture).intersects(seen(height)));
}

TEST_CASE("Choosing, renaming and removing supports") {
    GivensFixture f{Plan{}};
    Shown<SupportPanel> shown(f);
    for (const SupportKind& kind : supportKinds()) CHECK(shown.find<QAbstractButton>(("add " + kind.kind).c_str()));
    auto* bed = shown.find<QAbstractButton>("add bed");
    REQUIRE(bed);
    QTest::mouseClick(bed, Qt::LeftButton);
    shown.settle();
    REQUIRE(f.document.plan().supports.size() == 1);
    CHECK(f.document.plan().supports.front().kind == "bed");
    CHECK(f.view.picked() == Picked::support("bed"));
    auto* name = shown.find<TextField>("support name");
    REQUIRE(name);
    name->setFocus();
    QTest::keyClicks(name, "Room 2");
    QTest::keyClick(name, Qt::Key_Return);
    CHECK(f.document.plan().supports.front().name == "Room 2");
    QTest::mouseClick(shown.find<QAbstractButton>("remove support"), Qt::LeftButton);
    shown.settle();
    CHECK(f.document.plan().supports.empty());
    CHECK(shown.find<QAbstractButton>("add bed"));
    f.document.undo();
    shown.settle();
    CHECK(shown.find<TextField>("support name")->text() == "Room 2");
}

TEST_CASE("A tray put on a chair goes with its seat") {
    Plan plan = GivensFixture::chairPlan();
    plan.supports.front().kind = "chair-tilt";
    GivensFixture f{plan};
    Shown<SupportPanel> shown(f);
    shown.find<QAbstractButton>("add tray")->click();
    REQUIRE(f.document.plan().supports.size() == 2);
    CHECK(f.document.plan().supports.back().carriedBy == "chair");
    CHECK(f.document.plan().supports.back().carriedByGroup == "tilt");
}

TEST_CASE("A bed's sections move by slider and by field, one step each") {
    Plan plan;
    plan.title = "Bed";
    SupportSpec bed;
    bed.id = "bed";
    bed.kind = "bed";
    plan.supports.push_back(bed);
    GivensFixture f{plan};
    Shown<SupportPanel> shown(f);
    auto* back = shown.find<SliderField>("setting back");
    REQUIRE(back);
    back->slider()->setFocus(Qt::TabFocusReason);
    for (int i = 0; i < 5; ++i) QTest::keyClick(back->slider(), Qt::Key_Right);
    CHECK(f.document.plan().supports.front().settings.at("back") == Approx(radians(5)));
    CHECK(f.document.inGesture());
    QTest::keyClick(back->slider(), Qt::Key_Escape);
    CHECK_FALSE(f.document.canUndo());
    CHECK(f.document.plan().supports.front().settings.empty());
    CHECK(back->slider()->value() == 0);
    back->numberField()->setFocus(Qt::TabFocusReason);
    back->numberField()->selectAll();
    QTest::keyClicks(back->numberField(), "40");
    QTest::keyClick(back->numberField(), Qt::Key_Return);
    CHECK(f.document.plan().supports.front().settings.at("back") == Approx(radians(40)));
    CHECK(back->slider()->value() == 40);
    f.document.undo();
    CHECK_FALSE(f.document.canUndo());
}

TEST_CASE("A tube size is taken as typed and says what it is, a wrong one is refused") {
    GivensFixture f;
    Shown<SupportPanel> shown(f);
    shown.find<QAbstractButton>("fold Tube sizes (14)")->click();
    shown.settle();
    auto* tube = shown.find<TextField>("tube seat_rail_left");
    REQUIRE(tube);
    tube->setFocus(Qt::TabFocusReason);
    CHECK(f.view.picked() == Picked::attachment("chair", "seat_rail_left"));
    QTest::keyClicks(tube, "NPS 3/4");
    // ASME B36.10M: nominal pipe size 3/4 is 1.050 in outside.
    CHECK(tube->accessibleDescription().toStdString() == "26.67 mm outside");
    QTest::keyClick(tube, Qt::Key_Return);
    CHECK(f.document.plan().supports.front().tubes.at("seat_rail_left") == "NPS 3/4");
    tube->selectAll();
    QTest::keyClicks(tube, "apple");
    QSignalSpy refused(&f.document, &Document::refused);
    QTest::keyClick(tube, Qt::Key_Return);
    CHECK(refused.count() == 1);
    CHECK(f.document.plan().supports.front().tubes.at("seat_rail_left") == "NPS 3/4");
}

TEST_CASE("Every control of the support form has a name and a place in the order of tabs") {
    for (const char* kind : {"chair-tilt", "bed", "tray"}) {
        Plan plan = GivensFixture::chairPlan();
        plan.supports.front().kind = kind;
        GivensFixture f{plan};
        Shown<SupportPanel> shown(f);
        checkNames(*shown.panel);
        checkTabs(*shown.panel);
    }
}

TEST_CASE("Nothing of the support form is cut off at twice the font size") {
    GivensFixture f;
    const QFont usual = QApplication::font();
    QFont twice = usual;
    twice.setPointSizeF(2 * usual.pointSizeF());
    QApplication::setFont(twice);
    {
        Shown<SupportPanel> shown(f);
        checkRoom(*shown.panel);
    }
    QApplication::setFont(usual);
}
