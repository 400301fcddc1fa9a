#include <QAccessible>
#include <QFile>
#include <QLabel>
#include <QLineEdit>
#include <QPlainTextEdit>
#include <QTableView>
#include <QTemporaryDir>

#include <nlohmann/json.hpp>

#include "app/panels/hand_over_about.h"
#include "app/panels/hand_over_panel.h"
#include "app/panels/hand_over_parts.h"
#include "app/widgets/choice_box.h"
#include "app/widgets/text_field.h"
#include "core/plan/edits/extra_items.h"
#include "tests/gui/panels/finding_fixture.h"

using namespace hither;
using namespace hither::test;

namespace {

struct HandingOver : Desk {
    HandOverPanel panel{context};
    QTableView* table = panel.findChild<QTableView*>();

    explicit HandingOver(Plan plan) : Desk(std::move(plan)) {
        panel.resize(360, 1200);
        panel.show();
        REQUIRE(QTest::qWaitForWindowExposed(&panel));
    }
    QString cell(int row, int column) const { return table->model()->index(row, column).data().toString(); }
    QString words() const {
        QString all;
        for (const QLabel* l : panel.findChildren<QLabel*>()) if (l->isVisible()) all += l->text() + '\n';
        return all;
    }
    /// Types a price into a row's cell as a person does: to the cell, F2, digits, Enter.
    void typePrice(int row, const QString& text) {
        table->setFocus();
        table->setCurrentIndex(table->model()->index(row, HandOverRows::each));
        QTest::keyClick(table, Qt::Key_F2);
        auto* editor = table->viewport()->findChild<QLineEdit*>();
        REQUIRE(editor);
        editor->selectAll();
        QTest::keyClicks(editor, text);
        QTest::keyClick(editor, Qt::Key_Return);
        QCoreApplication::processEvents();   // an editor's Enter is taken when the key is done
        QCoreApplication::sendPostedEvents(nullptr, QEvent::DeferredDelete);
    }
    QLineEdit* initials() {
        for (QLineEdit* e : panel.parts().findChildren<QLineEdit*>()) if (e->maxLength() == 40) return e;
        return nullptr;
    }
};

std::string contents(const QString& path) {
    QFile file(path);
    REQUIRE(file.open(QIODevice::ReadOnly));
    return file.readAll().toStdString();
}

}  // namespace

TEST_CASE("The table, its totals and what has no price are those of the core's parts list") {
    Plan plan = samplePlan("two_options_at_one_site");
    plan = *addExtraItem(plan, {"tape", "Tape", 2, Money{350, "EUR"}, ""}).plan;
    plan = *addExtraItem(plan, {"strap", "Strap", 1, std::nullopt, ""}).plan;
    HandingOver h(plan);
    auto* which = h.panel.findChild<ChoiceBox*>();
    for (const int choice : {0, 1, 2}) {
        for (ChoiceBox* box : h.panel.parts().findChildren<ChoiceBox*>()) box->setCurrentIndex(choice);
        const PartsList want = partsList(plan, choice == 0 ? std::vector<std::string>{h.view.option()} : std::vector<std::string>{}, choice == 2 ? BuiltAs::allAtOnce : BuiltAs::oneAtATime);
        REQUIRE(h.table->model()->rowCount() == static_cast<int>(want.rows.size()));
        for (int i = 0; i < h.table->model()->rowCount(); ++i) {
            const PartsRow& row = want.rows[static_cast<std::size_t>(i)];
            CHECK(h.cell(i, HandOverRows::name).toStdString() == row.name);
            CHECK(h.cell(i, HandOverRows::count).toInt() == row.count);
            if (row.total) CHECK(h.cell(i, HandOverRows::total).toStdString() == printMoney(*row.total));
        }
        for (const Money& total : want.totals) CHECK(h.words().contains(QString::fromStdString(printMoney(total))));
        for (const std::string& name : want.notPriced) CHECK(h.words().contains(QString::fromStdString(name)));
        for (const std::string& tool : want.toolsNeeded) CHECK(h.words().contains(QString::fromStdString(tool)));
    }
    REQUIRE(which);
}

TEST_CASE("A price typed in its cell is one step and carries who and when, and an unreadable one is refused in words") {
    HandingOver h(samplePlan("elbow_switch_on_chair"));
    const std::string id = h.panel.parts().list().rows[0].id;
    h.initials()->clear();
    h.typePrice(0, "12,34");
    CHECK_FALSE(h.document.canUndo());              // waits for the initials
    CHECK(h.words().contains("Type your initials"));
    QTest::keyClicks(h.initials(), "KL");
    QTest::keyClick(h.initials(), Qt::Key_Return);
    const Part* part = h.document.plan().part(id);
    REQUIRE(part->price);
    CHECK(part->price->minor == 1234);
    CHECK(part->priceBasis.kind == BasisKind::measured);
    CHECK(part->priceBasis.source == "KL, " + QDate::currentDate().toString(Qt::ISODate).toStdString());
    CHECK(h.cell(0, HandOverRows::basis) == "measured");
    h.typePrice(0, "dear");
    CHECK(h.words().contains("cannot be read"));
    CHECK(h.document.plan().part(id)->price->minor == 1234);
    h.document.undo();
    CHECK_FALSE(h.document.canUndo());
}

TEST_CASE("The list and the plan are saved for other programs, the previous file kept") {
    HandingOver h(samplePlan("elbow_switch_on_chair"));
    QTemporaryDir folder;
    const QString csv = folder.filePath("list.csv"), json = folder.filePath("list.json"), plan = folder.filePath("plan.json");
    REQUIRE(h.panel.parts().saveList(csv).isEmpty());
    REQUIRE(h.panel.parts().saveList(json).isEmpty());
    const PartsList want = partsList(h.document.plan(), {h.view.option()});
    CHECK(contents(csv) == partsListCsv(want));
    CHECK(nlohmann::json::parse(contents(json)) == partsListJson(want));
    REQUIRE(h.panel.exportPlan(plan).isEmpty());
    PlanRead read = planFromJsonFile(plan.toStdString());
    REQUIRE(read.plan);
    CHECK(*read.plan == h.document.plan());
    REQUIRE(h.panel.exportPlan(plan).isEmpty());
    CHECK(QFile::exists(plan + ".bak"));
    CHECK_FALSE(h.panel.exportPlan(folder.filePath("no/such/folder/x.json")).isEmpty());
}

TEST_CASE("Title, notes, currency and units are changed by typing, and what is refused goes back") {
    HandingOver h(samplePlan("elbow_switch_on_chair"));
    auto* about = h.panel.findChild<HandOverAbout*>();
    const QList<TextField*> fields = about->findChildren<TextField*>();
    REQUIRE(fields.size() == 3);
    const auto type = [](QLineEdit* field, const QString& text) {
        field->setFocus();
        field->selectAll();
        if (text.isEmpty()) QTest::keyClick(field, Qt::Key_Delete);
        else QTest::keyClicks(field, text);
        QTest::keyClick(field, Qt::Key_Return);
    };
    type(fields[0], "Robin: second try");
    CHECK(h.document.plan().title == "Robin: second try");
    type(fields[0], "");
    CHECK(h.document.plan().title == "Robin: second try");
    CHECK(fields[0]->text() == "Robin: second try");
    CHECK_FALSE(h.refused.isEmpty());
    type(fields[2], "usd");
    CHECK(h.document.plan().currency == "USD");
    auto* notes = about->findChild<QPlainTextEdit*>();
    notes->setFocus();
    notes->selectAll();
    QTest::keyClicks(notes, "shown to all");
    fields[1]->setFocus();
    CHECK(h.document.plan().notes == "shown to all");
    auto* units = about->findChild<ChoiceBox*>();
    units->setFocus();
    QTest::keyClick(units, Qt::Key_Down);
    CHECK(h.document.plan().display == UnitSystem::inch);
}

TEST_CASE("Every control of the panel has a name and is big enough to hit") {
    HandingOver h(samplePlan("elbow_switch_on_chair"));
    for (QWidget* w : h.panel.findChildren<QWidget*>()) {
        if (!w->isVisibleTo(&h.panel) || w->focusPolicy() == Qt::NoFocus || w->focusPolicy() == Qt::ClickFocus) continue;
        QAccessibleInterface* in = QAccessible::queryAccessibleInterface(w);
        INFO(w->metaObject()->className());
        REQUIRE(in);
        CHECK_FALSE(in->text(QAccessible::Name).isEmpty());
        CHECK(w->height() >= 24);
    }
}
