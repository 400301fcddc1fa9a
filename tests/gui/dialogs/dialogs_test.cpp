#include <algorithm>
#include <set>

#include <QAbstractButton>
#include <QAccessible>
#include <QAction>
#include <QLabel>
#include <QLineEdit>
#include <QPushButton>
#include <QSignalSpy>
#include <QTableWidget>
#include <QTest>

#include <catch2/catch.hpp>

#include "app/dialogs/cautions_dialog.h"
#include "app/dialogs/command_search.h"
#include "app/dialogs/keys_page.h"
#include "app/dialogs/locked_dialog.h"
#include "app/dialogs/recovery_dialog.h"
#include "app/dialogs/start_page.h"
#include "app/shipped/shipped.h"
#include "core/situation/support.h"
#include "tests/unit/plan/fixture.h"

using namespace hither;
using namespace hither::test;

namespace {

struct Commands {
    ActionTable table;
    int opened = 0, saved = 0;
    Commands() {
        table.add({"file.open", "file", "Open a plan", "Opens a plan file", QKeySequence("Ctrl+O"), [this] { ++opened; }, {}, {}, {}});
        table.add({"file.save", "file", "Save", "Saves the plan", QKeySequence("Ctrl+S"), [this] { ++saved; }, [] { return false; }, {}, {}});
        table.add({"view.front", "view", "See it from the front", "Turns the camera", {}, [] {}, {}, {}, {}});
        table.refresh();
    }
};

LockHolder holder() { return {"ward-3.clinic.example", "kl", "2026-11-25T08:12:00Z", {}, {}, 77}; }

std::vector<Leftover> leftovers() {
    Leftover named;
    named.against = Leftover::Against::unnamed;
    named.saved_utc = "2026-11-25T11:30:00Z";
    named.plan = smallPlan();
    named.plan->title = std::string(200, 'w') + " and a long name that goes on";
    Leftover broken;
    broken.against = Leftover::Against::missingFile;
    broken.file = "/home/kl/away.hither";
    broken.path = "/home/kl/unsaved.hither";
    broken.problems.push_back({StorageError::Code::damaged, broken.path, {}, {}});
    return {named, broken};
}

QPushButton* button(QWidget& in, const QString& words, int n = 0) {
    for (QPushButton* b : in.findChildren<QPushButton*>()) if (b->text() == words && n-- == 0) return b;
    FAIL("no button " << words.toStdString());
    return nullptr;
}

/// Everything that takes the keyboard has a name; no button is too small for its words or for a finger; no
/// label is lower than its wrapped text.
void look(QWidget& w) {
    w.show();
    QTest::qWait(20);
    for (QWidget* child : w.findChildren<QWidget*>()) {
        if (!child->isVisible()) continue;
        INFO(child->metaObject()->className() << " " << child->objectName().toStdString());
        if (child->focusPolicy() & Qt::TabFocus) {
            QAccessibleInterface* spoken = QAccessible::queryAccessibleInterface(child);
            REQUIRE(spoken);
            CHECK_FALSE(spoken->text(QAccessible::Name).isEmpty());
        }
        if (auto* b = qobject_cast<QAbstractButton*>(child); b && (b->focusPolicy() & Qt::TabFocus)) {
            CHECK(b->height() >= 24);
            CHECK(b->width() >= 24);
            CHECK(b->height() >= (b->hasHeightForWidth() ? b->heightForWidth(b->width()) : b->minimumSizeHint().height()));
            if (qobject_cast<QPushButton*>(b)) CHECK(b->width() >= b->fontMetrics().horizontalAdvance(b->text()));
        }
        if (auto* l = qobject_cast<QLabel*>(child); l && l->wordWrap()) CHECK(l->height() >= l->heightForWidth(l->width()));
    }
}

/// At the size of the system's type and at twice that.
struct TwiceAsLarge {
    QFont before = QApplication::font();
    TwiceAsLarge() {
        QFont large = before;
        large.setPointSizeF(before.pointSizeF() * 2);
        QApplication::setFont(large);
    }
    ~TwiceAsLarge() { QApplication::setFont(before); }
};

}  // namespace

TEST_CASE("A command is found by its words and runs after the dialog has closed") {
    Commands commands;
    CommandSearch search(commands.table);
    search.show();
    auto* field = search.findChild<QLineEdit*>();
    QTest::keyClicks(field, "plan op");
    QTest::keyClick(field, Qt::Key_Return);
    CHECK(search.result() == QDialog::Accepted);
    CHECK(commands.opened == 0);
    QCoreApplication::processEvents();
    CHECK(commands.opened == 1);
}

TEST_CASE("What is not possible now is found but cannot be run, and arrows choose") {
    Commands commands;
    CommandSearch search(commands.table);
    search.show();
    auto* field = search.findChild<QLineEdit*>();
    QTest::keyClicks(field, "saves");
    QTest::keyClick(field, Qt::Key_Return);
    QCoreApplication::processEvents();
    CHECK(search.isVisible());
    CHECK(commands.saved == 0);
    field->clear();
    QTest::keyClick(field, Qt::Key_Down);  // to the view
    QTest::keyClick(field, Qt::Key_Down);  // Save stands last and is passed by
    QTest::keyClick(field, Qt::Key_Up);
    QTest::keyClick(field, Qt::Key_Return);
    QCoreApplication::processEvents();
    CHECK(commands.opened == 1);
}

TEST_CASE("The page of keys has every command, in the table's order") {
    Commands commands;
    KeysPage page(commands.table);
    page.show();
    auto* rows = page.findChild<QTableWidget*>();
    REQUIRE(rows->rowCount() == 3);
    for (int i = 0; i < 3; ++i) CHECK(rows->item(i, 0)->text() == commands.table.entries()[static_cast<std::size_t>(i)].words);
    CHECK(rows->item(0, 1)->text() == QKeySequence("Ctrl+O").toString(QKeySequence::NativeText));
    CHECK(rows->item(2, 1)->text() == "none");
    QTest::keyClicks(page.findChild<QLineEdit*>(), "camera");
    CHECK(rows->rowCount() == 1);
}

TEST_CASE("A lock says who has it, and two Enters do not take it over") {
    LockedDialog dialog(holder(), "/plans/robin.hither");
    dialog.show();
    CHECK(dialog.accessibleDescription().contains("kl"));
    CHECK(dialog.accessibleDescription().contains("ward-3.clinic.example"));
    QTest::keyClick(button(dialog, "Take over …"), Qt::Key_Space);
    QTest::keyClick(&dialog, Qt::Key_Return);  // goes back
    CHECK(dialog.isVisible());
    CHECK(dialog.choice() == LockedDialog::Choice::cancel);
    SECTION("to read only") {
        button(dialog, "Open to read only")->click();
        CHECK(dialog.choice() == LockedDialog::Choice::readOnly);
    }
    SECTION("taken over") {
        button(dialog, "Take over …")->click();
        button(dialog, "Take it over")->click();
        CHECK(dialog.choice() == LockedDialog::Choice::takeOver);
    }
    SECTION("left") {
        QTest::keyClick(&dialog, Qt::Key_Escape);
        CHECK(dialog.choice() == LockedDialog::Choice::cancel);
        CHECK(dialog.result() == QDialog::Rejected);
    }
}

TEST_CASE("What was not saved is kept unless it is discarded twice over") {
    RecoveryDialog dialog(leftovers());
    dialog.show();
    SECTION("kept") {
        QTest::keyClick(&dialog, Qt::Key_Escape);
        CHECK_FALSE(dialog.continueWith());
        CHECK(dialog.discarded().empty());
    }
    SECTION("continued with") {
        button(dialog, "Continue with it")->click();
        CHECK(dialog.continueWith() == std::optional<std::size_t>(0));
    }
    SECTION("asked and not discarded") {
        button(dialog, "Discard …", 1)->click();
        CHECK(dialog.discarded().empty());
        button(dialog, "No, keep it", 1)->click();
        CHECK(dialog.discarded().empty());
    }
    SECTION("discarded") {
        button(dialog, "Discard …", 1)->click();
        button(dialog, "Discard for good", 1)->click();
        CHECK(dialog.discarded() == std::vector<std::size_t>{1});
        CHECK(dialog.isVisible());
    }
    SECTION("what cannot be read cannot be continued with") {
        int n = 0;
        for (QPushButton* b : dialog.findChildren<QPushButton*>()) n += b->text() == "Continue with it";
        CHECK(n == 1);
    }
}

TEST_CASE("The start page offers every kind of support, the plans of late and the samples, by keyboard") {
    const std::vector<SamplePlan> samples = samplePlans(QString::fromStdString(samplesFolder().string()));
    CHECK(samples.size() >= 8);
    for (const SamplePlan& s : samples) CHECK_FALSE((s.title.isEmpty() || s.shows.isEmpty()));
    StartPage page({{"/plans/robin.hither", "Robin", "2026-11-25T08:12:00Z", true}, {"/plans/lee.hither", "", "2026-11-02T08:12:00Z", false}}, samples);
    QSignalSpy begun(&page, &StartPage::newPlan), opened(&page, &StartPage::openPath), looked(&page, &StartPage::openSample), browsed(&page, &StartPage::browse);
    page.resize(1000, 700);
    page.show();
    for (const SupportKind& kind : supportKinds()) {
        auto* row = page.findChild<QAbstractButton*>("new." + QString::fromStdString(kind.kind));
        REQUIRE(row);
        QTest::keyClick(row, Qt::Key_Return);
        REQUIRE_FALSE(begun.isEmpty());
        CHECK(begun.takeLast().at(0).toString().toStdString() == kind.kind);
    }
    auto* first = page.findChild<QAbstractButton*>("recent./plans/robin.hither");
    auto* gone = page.findChild<QAbstractButton*>("recent./plans/lee.hither");
    REQUIRE(first);
    REQUIRE(gone);
    CHECK_FALSE(gone->isEnabled());
    QTest::keyClick(first, Qt::Key_Space);
    CHECK(opened.size() == 1);
    first->setFocus();
    QTest::keyClick(first, Qt::Key_Down);  // past the one that is gone
    auto* browse = page.findChild<QAbstractButton*>("browse");
    CHECK(page.window()->focusWidget() == browse);
    browse->click();
    CHECK(browsed.size() == 1);
    page.findChild<QAbstractButton*>("sample.elbow_switch_on_chair")->click();
    REQUIRE(looked.size() == 1);
    CHECK(looked[0][0].toString().endsWith("elbow_switch_on_chair.hither"));
}

TEST_CASE("Every dialog has names for what takes the keyboard, and room for its words at twice the size") {
    const auto all = [] {
        Commands commands;
        CommandSearch search(commands.table);
        look(search);
        KeysPage keys(commands.table);
        look(keys);
        CautionsDialog cautions;
        look(cautions);
        LockedDialog locked(holder(), "/plans/a_rather_long_name_of_a_file_for_the_second_attempt_with_the_longer_arm.hither");
        look(locked);
        button(locked, "Take over …")->click();
        look(locked);
        RecoveryDialog recovery(leftovers());
        look(recovery);
        StartPage start({{"/a/b_c.hither", "A title that goes on and on until it has to be broken into several lines of text", "2026-11-25T08:12:00Z", true}}, samplePlans(QString::fromStdString(samplesFolder().string())));
        start.resize(1000, 700);
        look(start);
        start.resize(500, 700);
        look(start);
    };
    SECTION("usual") { all(); }
    SECTION("twice") {
        TwiceAsLarge large;
        all();
    }
}
