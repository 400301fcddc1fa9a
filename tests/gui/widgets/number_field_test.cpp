#include <catch2/catch.hpp>

#include <QApplication>
#include <QLabel>
#include <QScrollArea>
#include <QSignalSpy>
#include <QTest>
#include <QVBoxLayout>
#include <QWheelEvent>

#include "app/widgets/number_field.h"

using namespace hither;

namespace {

struct Form {
    QWidget window;
    NumberField* field;
    NumberField* other;
    QSignalSpy* tried;
    QSignalSpy* committed;
    QSignalSpy* abandoned;

    explicit Form(NumberField::Of of = NumberField::Of::length) {
        auto* layout = new QVBoxLayout(&window);
        field = new NumberField(of);
        other = new NumberField(of);
        layout->addWidget(field);
        layout->addWidget(other);
        layout->addStretch();
        field->setRange(0.300, 0.560);
        field->setValue(0.430);
        tried = new QSignalSpy(field, &NumberField::tried);
        committed = new QSignalSpy(field, &NumberField::committed);
        abandoned = new QSignalSpy(field, &NumberField::abandoned);
        tried->setParent(&window);
        committed->setParent(&window);
        abandoned->setParent(&window);
        window.resize(300, 200);
        window.show();
        window.activateWindow();
        field->setFocus(Qt::TabFocusReason);
        QApplication::processEvents();
    }
    void type(const char* text) {
        field->selectAll();
        QTest::keyClicks(field, text);
    }
    const QLabel* bubble() const { return window.findChild<QLabel*>("refusal"); }
};

void turnWheel(QWidget* over, int by) {
    QWheelEvent event(QPointF(5, 5), over->mapToGlobal(QPointF(5, 5)), QPoint(), QPoint(0, by), Qt::NoButton, Qt::NoModifier, Qt::NoScrollPhase, false);
    QApplication::sendEvent(over, &event);
}

}  // namespace

TEST_CASE("Typing tries every valid text, Enter commits once") {
    Form f;
    REQUIRE(f.field->hasFocus());
    f.type("412");
    REQUIRE(f.tried->count() == 1);   // "4" and "41" are below the range
    CHECK(f.tried->front().front().toDouble() == 0.412);
    QTest::keyClick(f.field, Qt::Key_Return);
    REQUIRE(f.committed->count() == 1);
    CHECK(f.field->value() == 0.412);
    CHECK(f.field->text() == "412 mm");
    QTest::keyClick(f.field, Qt::Key_Return);
    f.other->setFocus();
    CHECK(f.committed->count() == 1);
    CHECK(f.abandoned->count() == 0);
}

TEST_CASE("Leaving commits, the same value does not") {
    Form f;
    f.type("440 - 5");
    f.other->setFocus(Qt::TabFocusReason);
    CHECK(f.committed->count() == 1);
    CHECK(f.field->value() == Approx(0.435));
    f.field->setFocus();
    f.type("435");
    f.other->setFocus();
    CHECK(f.committed->count() == 1);
    CHECK(f.abandoned->count() == 1);   // what was tried is taken back
}

TEST_CASE("Esc brings the last value back") {
    Form f;
    f.type("500");
    QTest::keyClick(f.field, Qt::Key_Escape);
    CHECK(f.field->text() == "430 mm");
    CHECK(f.field->value() == 0.430);
    CHECK(f.abandoned->count() == 1);
    CHECK(f.committed->count() == 0);
    f.type("7 apples");
    QTest::keyClick(f.field, Qt::Key_Return);
    REQUIRE(f.bubble());
    QTest::keyClick(f.field, Qt::Key_Escape);
    CHECK(f.field->text() == "430 mm");
    CHECK_FALSE(f.bubble());
}

TEST_CASE("A refusal says why, below the field and to screen readers, and keeps the text") {
    Form f;
    f.field->setAccessibleDescription("across the seat");
    f.type("600");
    QTest::keyClick(f.field, Qt::Key_Return);
    CHECK(f.field->text() == "600");
    CHECK(f.committed->count() == 0);
    REQUIRE(f.bubble());
    CHECK(f.bubble()->isVisible());
    CHECK(f.bubble()->text() == "600 mm is not in the range 300 mm to 560 mm.");
    CHECK(f.bubble()->text() == f.field->complaint());
    CHECK(f.field->accessibleDescription() == f.bubble()->text());
    CHECK(f.bubble()->geometry().top() >= f.field->geometry().bottom());
    f.other->setFocus();
    CHECK(f.field->text() == "600");
    CHECK(f.field->value() == 0.430);
    f.field->setValue(0.430);           // a refresh with nothing new leaves it
    CHECK(f.field->text() == "600");
    f.field->setFocus();
    f.type("550");
    CHECK_FALSE(f.bubble());
    CHECK(f.field->accessibleDescription() == "across the seat");
    QTest::keyClick(f.field, Qt::Key_Return);
    CHECK(f.field->value() == 0.550);
}

TEST_CASE("A value exactly at a limit passes in either unit") {
    Form f;
    f.type("560");
    CHECK(f.field->complaint().isEmpty());
    f.type("300 mm");
    CHECK(f.field->complaint().isEmpty());
    f.type("299.9");
    CHECK_FALSE(f.field->complaint().isEmpty());
    f.field->setRange(0.0254, 0.0508);
    f.type("2 in");
    CHECK(f.field->complaint().isEmpty());
    f.type("1 in - 1/16 in + 1/16 in");
    CHECK(f.field->complaint().isEmpty());
}

TEST_CASE("The wheel and keys step it, the wheel only with focus") {
    Form f;
    f.other->setFocus();
    turnWheel(f.field, 120);
    CHECK(f.field->text() == "430 mm");
    CHECK(f.tried->count() == 0);
    f.field->setFocus();
    turnWheel(f.field, 120);
    CHECK(f.field->text() == "435 mm");
    turnWheel(f.field, -60);
    turnWheel(f.field, -60);
    CHECK(f.field->text() == "430 mm");
    QTest::keyClick(f.field, Qt::Key_Up);
    QTest::keyClick(f.field, Qt::Key_PageUp);
    CHECK(f.field->text() == "485 mm");
    QTest::keyClick(f.field, Qt::Key_PageUp);
    QTest::keyClick(f.field, Qt::Key_PageUp);
    CHECK(f.field->text() == "560 mm");   // stops at the range's end
    CHECK(f.committed->count() == 0);
    QTest::keyClick(f.field, Qt::Key_Enter);
    CHECK(f.committed->count() == 1);
    f.field->setReadOnly(true);
    turnWheel(f.field, 120);
    CHECK(f.field->value() == 0.560);
}

TEST_CASE("A value set while somebody types waits for them") {
    Form f;
    f.type("5");
    f.field->setValue(0.350);
    CHECK(f.field->text() == "5");
    QTest::keyClick(f.field, Qt::Key_Escape);
    CHECK(f.field->value() == 0.350);
    CHECK(f.field->text() == "350 mm");
}

TEST_CASE("An optional field takes nothing for an answer") {
    Form f;
    f.type("");
    QTest::keyClick(f.field, Qt::Key_Delete);
    QTest::keyClick(f.field, Qt::Key_Return);
    CHECK(f.field->complaint() == "A number is needed here.");
    f.field->setOptional("not known");
    QTest::keyClick(f.field, Qt::Key_Return);
    REQUIRE(f.committed->count() == 1);
    CHECK_FALSE(f.field->value());
}

TEST_CASE("A field keeps room for its text at twice the font size") {
    NumberField field(NumberField::Of::length);
    field.setValue(1.2345);
    for (const double scale : {1.0, 2.0}) {
        QFont font = QApplication::font();
        font.setPointSizeF(font.pointSizeF() * scale);
        field.setFont(font);
        CHECK(field.minimumSizeHint().width() >= QFontMetrics(font).horizontalAdvance(field.text()));
        CHECK(field.minimumSizeHint().height() >= std::max(24, QFontMetrics(font).height()));
    }
}
