#include <QScrollBar>
#include <QTreeWidgetItemIterator>

#include "app/panels/setup_tree.h"
#include "core/plan/edits/joints.h"
#include "core/plan/edits/mounts.h"
#include "tests/gui/panels/finding_fixture.h"

using namespace hither;
using namespace hither::test;

namespace {

QTreeWidgetItem* elbowLine(const SetupTree& setup) {
    for (QTreeWidgetItemIterator it(setup.tree()); *it; ++it)
        if (setup.rowOf(*it)->picked == Picked::jointOf("elbow-mount", 1, "elbow")) return *it;
    FAIL("no line for the elbow");
    return nullptr;
}

NumberField* openField(const SetupTree& setup) {
    setup.tree()->setFocus();
    setup.tree()->setCurrentItem(elbowLine(setup));
    QTest::keyClick(setup.tree(), Qt::Key_F2);
    auto* field = qobject_cast<NumberField*>(QApplication::focusWidget());
    REQUIRE(field);
    return field;
}

/// Lines whose words need more height, at the width that they are drawn in, than they have.
QStringList cutLines(const QTreeWidget* tree) {
    QStringList cut;
    const int space = std::max(3, QFontMetrics(tree->font()).height() / 5);   // left and right of the words
    for (QTreeWidgetItemIterator it(const_cast<QTreeWidget*>(tree)); *it; ++it) {
        const QRect line = tree->visualItemRect(*it);
        if (line.isEmpty()) continue;
        QFont font = tree->font();
        font.setBold(!(*it)->parent());
        const QRect room(0, 0, line.width() - 2 * space, 100000);
        if (QFontMetrics(font).boundingRect(room, Qt::TextWordWrap, (*it)->text(0)).height() > line.height()) cut << (*it)->text(0);
    }
    return cut;
}

}  // namespace

TEST_CASE("No line of the tree is cut at any width, with text at one and at two times its size") {
    Desk desk(samplePlan("elbow_switch_on_chair"));
    for (const double scale : {1.0, 2.0}) {
        applyTheme(*qApp, Brightness::light, scale);
        SetupTree setup(desk.context);
        setup.resize(360, 700);
        setup.show();
        setup.tree()->expandAll();
        for (int width = 360; width >= 270; width -= 6) {
            setup.resize(width, 700);
            QTest::qWait(5);
            INFO(scale << " times at " << width << " px: " << cutLines(setup.tree()).join(" | ").toStdString());
            REQUIRE(cutLines(setup.tree()).isEmpty());
        }
    }
}

TEST_CASE("A number being typed is still taken after something else changed the plan") {
    Desk desk(samplePlan("elbow_switch_on_chair"));
    SetupTree setup(desk.context);
    setup.resize(320, 700);
    setup.show();
    QApplication::setActiveWindow(&setup);
    REQUIRE(QTest::qWaitForWindowActive(&setup));
    NumberField* field = openField(setup);
    QTest::keyClicks(field, "25");
    REQUIRE(desk.document.inGesture());
    SECTION("undone") { desk.document.undo(); }
    SECTION("another edit") { desk.document.apply("Rename", renameMount(desk.document.plan(), desk.view.option(), "elbow-mount", "Other")); }
    field->selectAll();
    QTest::keyClicks(field, "30");
    QTest::keyClick(field, Qt::Key_Return);
    CHECK(desk.view.mount()->parts[1].joints.at("elbow").q[0] == Approx(radians(30)));
    CHECK_FALSE(desk.document.inGesture());
}

TEST_CASE("A drag of 200 steps only changes words: no line is made, taken or moved") {
    Desk desk(samplePlan("elbow_switch_on_chair"));
    SetupTree setup(desk.context);
    setup.resize(300, 700);
    setup.show();
    setup.tree()->expandAll();
    const std::string start = planToJson(desk.document.plan());
    desk.view.pick(Picked::jointOf("elbow-mount", 1, "elbow"));
    QTest::qWait(10);
    QTreeWidgetItem* elbow = setup.tree()->currentItem();
    REQUIRE(elbow == elbowLine(setup));
    const int scrolled = setup.tree()->verticalScrollBar()->value();
    QAbstractItemModel* model = setup.tree()->model();
    const QSignalSpy reset(model, &QAbstractItemModel::modelReset), made(model, &QAbstractItemModel::rowsInserted), taken(model, &QAbstractItemModel::rowsRemoved);
    desk.document.beginGesture("Drag");
    for (int i = 0; i < 200; ++i) {
        REQUIRE(desk.document.preview(setJoint(desk.document.gestureStart(), desk.view.option(), "elbow-mount", 1, "elbow", {radians(i - 100)})));
        QApplication::processEvents();
        REQUIRE(elbow->text(0).startsWith(QString("Elbow: %1°").arg(i - 100)));
        REQUIRE(setup.tree()->currentItem() == elbow);
    }
    CHECK(setup.tree()->verticalScrollBar()->value() == scrolled);
    CHECK(reset.count() + made.count() + taken.count() == 0);
    desk.document.cancelGesture();
    CHECK(planToJson(desk.document.plan()) == start);
}
