#include <QAccessible>

#include "app/panels/setup_tree.h"
#include "core/plan/edits/joints.h"
#include "core/plan/edits/mounts.h"
#include "tests/gui/panels/build_desk.h"

using namespace hither;
using namespace hither::test;

namespace {

struct TreeDesk : Desk {
    SetupTree setup{context};
    QTreeWidget* tree = setup.tree();

    explicit TreeDesk(Plan plan) : Desk(std::move(plan)) {
        setup.resize(320, 700);
        setup.show();
        QApplication::setActiveWindow(&setup);
        REQUIRE(QTest::qWaitForWindowActive(&setup));
    }
    std::vector<QTreeWidgetItem*> all() const {
        std::vector<QTreeWidgetItem*> out;
        for (QTreeWidgetItemIterator it(tree); *it; ++it) out.push_back(*it);
        return out;
    }
    QTreeWidgetItem* starting(const QString& text) const {
        for (QTreeWidgetItem* i : all()) if (i->text(0).startsWith(text)) return i;
        FAIL("no line " << text.toStdString());
        return nullptr;
    }
    void key(int key) { QTest::keyClick(QApplication::focusWidget(), static_cast<Qt::Key>(key)); QTest::qWait(1); }
    std::string json() const { return planToJson(document.plan()); }
};

}  // namespace

TEST_CASE("The tree names every thing of the setup with the core's values") {
    for (const char* name : {"elbow_switch_on_chair", "two_switches_on_tray", "head_switch_on_bed"}) {
        TreeDesk t(samplePlan(name));
        const std::shared_ptr<const Setup> made = t.analysis.setup();
        REQUIRE(made);
        for (const Support& s : made->situation.supports)
            for (const Attachment& a : s.attachments) CHECK(t.starting(QString::fromStdString(a.name) + ":"));
        for (const Site& s : made->situation.sites) CHECK(t.starting(QString::fromStdString(s.name)));
        std::size_t numbers = 0, freedoms = 0;
        for (const SetupMount& m : made->mounts) {
            CHECK(t.starting(QString::fromStdString(m.mount.name)));
            freedoms += m.chain.freedoms.size();
            for (int i = 0; i < m.chain.freedomCount(); ++i) {
                const Freedom& f = m.chain.freedoms[static_cast<std::size_t>(i)];
                if (f.of != Freedom::Of::joint || f.component != 0) continue;
                bool found = false;
                for (QTreeWidgetItem* item : t.all()) found = found || t.setup.rowOf(item)->picked == Picked::jointOf(m.mount.id, f.part, f.joint);
                CHECK(found);
            }
        }
        for (QTreeWidgetItem* item : t.all()) {
            const SetupRow* row = t.setup.rowOf(item);
            numbers += row->dial.has_value() || item->text(0).contains("none while it is straight");
            if (!row->dial || row->dial->what != Dial::What::value) continue;
            const SetupMount* m = nullptr;
            for (const SetupMount& each : made->mounts) if (each.mount.id == row->picked.id) m = &each;
            REQUIRE(m);
            for (int i = 0; i < m->chain.freedomCount(); ++i) {
                const Freedom& f = m->chain.freedoms[static_cast<std::size_t>(i)];
                if (f.of != Freedom::Of::joint || f.part != row->picked.part || f.joint != row->picked.piece) continue;
                const std::string words = f.isAngle ? printAngle(m->q[i]) : printLength(m->q[i], UnitSystem::metric);
                CHECK(item->text(0).contains(QString::fromStdString(": " + words)));
            }
        }
        CHECK(numbers == freedoms);   // a ball has three numbers, a neck three bends with their directions: six
    }
}

TEST_CASE("Picking goes from tree to scene and from scene to tree") {
    TreeDesk t(samplePlan("elbow_switch_on_chair"));
    t.tree->setFocus();
    t.tree->setCurrentItem(t.starting("2 Single-lock arm"));
    CHECK(t.view.picked() == Picked::partOf("elbow-mount", 1));
    t.view.pick(Picked::jointOf("elbow-mount", 1, "elbow"));
    CHECK(t.tree->currentItem()->text(0).startsWith("Elbow:"));
    CHECK(t.tree->currentItem()->parent()->isExpanded());
    t.view.pick(Picked::support("chair", "some solid"));
    CHECK(t.tree->currentItem()->text(0) == "Manual wheelchair");
    t.view.pick({});
    CHECK(t.tree->selectedItems().isEmpty());
}

TEST_CASE("Enter goes to where the thing picked is worked on") {
    TreeDesk t(samplePlan("elbow_switch_on_chair"));
    t.tree->setFocus();
    t.tree->setCurrentItem(t.starting("2 Single-lock arm"));
    t.key(Qt::Key_Return);
    CHECK(t.view.step() == JobStep::build);
    t.tree->setCurrentItem(t.starting("right elbow, outward"));
    t.key(Qt::Key_Return);
    CHECK(t.view.step() == JobStep::site);
    t.tree->setCurrentItem(t.starting("Back cane, left"));
    t.key(Qt::Key_Return);
    CHECK(t.view.step() == JobStep::build);
    CHECK(t.view.offerFor().kind == OfferFor::Kind::attachment);
    CHECK(t.view.offerFor().attachment == "back_cane_left");
}

TEST_CASE("A number is typed in its place: F2, digits, Enter; Esc leaves no trace") {
    TreeDesk t(samplePlan("elbow_switch_on_chair"));
    const std::string start = t.json();
    t.tree->setFocus();
    QTreeWidgetItem* elbow = t.starting("Elbow:");
    t.tree->setCurrentItem(elbow);
    t.key(Qt::Key_F2);
    auto* field = qobject_cast<NumberField*>(QApplication::focusWidget());
    REQUIRE(field);
    QTest::keyClicks(field, "25");
    CHECK(elbow->text(0).startsWith("Elbow: 25°"));
    t.key(Qt::Key_Escape);
    CHECK(t.json() == start);
    QTest::qWait(10);
    t.tree->setFocus();
    t.key(Qt::Key_Return);
    field = qobject_cast<NumberField*>(QApplication::focusWidget());
    REQUIRE(field);
    QTest::keyClicks(field, "-30");
    t.key(Qt::Key_Return);
    QTest::qWait(10);
    CHECK(t.view.mount()->parts[1].joints.at("elbow").q[0] == Approx(radians(-30)));
    CHECK(elbow->text(0).startsWith("Elbow: -30°"));
    CHECK_FALSE(t.document.inGesture());
    t.document.undo();
    CHECK(t.json() == start);
    CHECK_FALSE(t.document.canUndo());
}

TEST_CASE("Lines stay opened, picked and in their place while values change") {
    TreeDesk t(samplePlan("elbow_switch_on_chair"));
    QTreeWidgetItem* arm = t.starting("2 Single-lock arm");
    arm->setExpanded(true);
    QTreeWidgetItem* elbow = t.starting("Elbow:");
    t.tree->setCurrentItem(elbow);
    t.document.beginGesture("Drag");
    for (int i = 0; i < 10; ++i) {
        REQUIRE(t.document.preview(setJoint(t.document.gestureStart(), t.view.option(), "elbow-mount", 1, "elbow", {radians(i)})));
        REQUIRE(t.starting("Elbow:") == elbow);
        REQUIRE(elbow->text(0).startsWith(QString("Elbow: %1°").arg(i)));
        REQUIRE(t.tree->currentItem() == elbow);
        REQUIRE(arm->isExpanded());
    }
    t.document.cancelGesture();
    t.document.apply("Rename", renameMount(t.document.plan(), t.view.option(), "elbow-mount", "Another name"));
    CHECK(t.starting("Another name"));
    CHECK(arm->isExpanded());
    t.document.apply("Remove", removeMount(t.document.plan(), t.view.option(), "elbow-mount"));
    CHECK(t.starting("Mounts: none yet"));
    t.document.undo();
    CHECK(t.starting("Another name"));
}

TEST_CASE("Screen readers are told every line") {
    TreeDesk t(samplePlan("two_switches_on_tray"));
    QAccessibleInterface* face = QAccessible::queryAccessibleInterface(t.tree);
    REQUIRE(face);
    CHECK(face->text(QAccessible::Name) == "The setup in words");
    t.tree->expandAll();
    QTest::qWait(10);
    REQUIRE(face->childCount() >= static_cast<int>(t.all().size()));
    for (int i = 0; i < face->childCount(); ++i) {
        QAccessibleInterface* line = face->child(i);
        if (line && line->role() == QAccessible::TreeItem) CHECK_FALSE(line->text(QAccessible::Name).isEmpty());
    }
}
