#include <filesystem>

#include <QTemporaryDir>
#include <QTest>

#include <catch2/catch.hpp>

#include "app/document/document.h"
#include "core/plan/edits/about.h"
#include "core/storage/plan_file.h"
#include "core/storage/plan_json.h"
#include "core/storage/plan_save.h"
#include "tests/gui/document/crash_edits.h"
#include "tests/gui/document/other_program.h"

using namespace hither;
using namespace hither::test;

namespace {

using How = Document::Opened::How;

struct Fixture {
    QTemporaryDir folder;
    QString unsaved = folder.filePath("unsaved");
    QString path = folder.filePath("plan.hither");
    /// Files under the folder of unsaved plans, locks included.
    int files() const {
        int n = 0;
        std::error_code ignored;
        for (std::filesystem::recursive_directory_iterator it(unsaved.toStdString(), ignored), end; !ignored && it != end; it.increment(ignored)) n += it->is_regular_file();
        return n;
    }
    /// As a program that ended would have left it.
    std::vector<Leftover> left() const { return Document(unsaved).leftovers(); }
};

/// What the program that crashed had: the same edits here.
std::string edited(const Plan& start) {
    Document same{QString()};
    same.startWith(start, true);
    makeCrashEdits(same);
    return planToJson(same.plan());
}

}  // namespace

TEST_CASE("A program that is killed leaves its plan whole, and the next one offers it") {
    Fixture f;
    REQUIRE(savePlanFile(crashStart(), f.path.toStdString()).empty());
    OtherProgram other("edit and crash", f.folder.path());
    REQUIRE(other.said("KEPT"));
    // While it lives, what it keeps is nobody else's.
    CHECK(Document(f.unsaved).leftovers().empty());
    other.kill();

    Document document(f.unsaved);
    const std::vector<Leftover> left = document.leftovers();
    REQUIRE(left.size() == 1);
    REQUIRE(left[0].plan);
    CHECK(planToJson(*left[0].plan) == edited(crashStart()));  // and nothing of the gesture half way
    CHECK(left[0].file == f.path.toStdString());
    CHECK(left[0].against == Leftover::Against::sameFile);
    CHECK(left[0].differences == planDifferences(crashStart(), *left[0].plan));
    CHECK_FALSE(left[0].differences.empty());
    // Two programs do not both offer it.
    CHECK(Document(f.unsaved).leftovers().empty());

    REQUIRE(document.recover(left[0]).how == How::opened);
    CHECK(planToJson(document.plan()) == edited(crashStart()));
    CHECK(document.path() == f.path);
    CHECK(document.modified());
    CHECK(document.leftovers().empty());
    document.undo();
    CHECK(planToJson(document.plan()) == planToJson(crashStart()));
    CHECK_FALSE(document.modified());
    document.redo();
    CHECK(document.save() == QString());
    document.keepUnsaved();
    CHECK(f.left().empty());
}

TEST_CASE("A plan without a file is offered after a crash too, and can be discarded") {
    Fixture f;
    OtherProgram other("edit and crash", f.folder.path());
    REQUIRE(other.said("KEPT"));
    other.kill();
    {
        Document document(f.unsaved);
        const std::vector<Leftover> left = document.leftovers();
        REQUIRE(left.size() == 1);
        CHECK(left[0].against == Leftover::Against::unnamed);
        REQUIRE(left[0].plan);
        CHECK(planToJson(*left[0].plan) == edited(crashStart()));
        // Kept for later: the next start offers it again.
    }
    Document document(f.unsaved);
    const std::vector<Leftover> left = document.leftovers();
    REQUIRE(left.size() == 1);
    document.discardLeftover(left[0]);
    CHECK(document.leftovers().empty());
    CHECK(f.files() == 0);
}

TEST_CASE("What is kept goes with a good save, with undoing all, or when a person says so, and only then") {
    Fixture f;
    REQUIRE(savePlanFile(crashStart(), f.path.toStdString()).empty());
    {
        Document document(f.unsaved);
        REQUIRE(document.open(f.path).how == How::opened);
        CHECK(f.files() == 0);
        REQUIRE(document.apply("Name the plan", setTitle(document.plan(), "A")));
        document.keepUnsaved();
        CHECK(f.files() == 3);  // the plan, its note, the program's lock
        SECTION("saved") { CHECK(document.save() == QString()); document.keepUnsaved(); CHECK(f.files() == 1); }
        SECTION("saved elsewhere") { CHECK(document.saveAs(f.folder.filePath("b.hither")) == QString()); document.keepUnsaved(); CHECK(f.files() == 1); }
        SECTION("undone") { document.undo(); document.keepUnsaved(); CHECK(f.files() == 1); }
        SECTION("said so") { document.discardUnsaved(); document.keepUnsaved(); CHECK(f.files() == 3); document.discardUnsaved(); }
        SECTION("another plan begun") { document.startWith(Plan{}, false); document.keepUnsaved(); CHECK(f.files() == 1); }
    }
    CHECK(f.files() == 0);
}

TEST_CASE("A program that ends with changes that nobody discarded keeps them") {
    Fixture f;
    REQUIRE(savePlanFile(crashStart(), f.path.toStdString()).empty());
    {
        Document document(f.unsaved);
        REQUIRE(document.open(f.path).how == How::opened);
        makeCrashEdits(document);
        CHECK(document.save() == QString());
        REQUIRE(document.apply("Name the plan", setTitle(document.plan(), "Later")));
    }
    const std::vector<Leftover> left = f.left();
    REQUIRE(left.size() == 1);
    REQUIRE(left[0].plan);
    CHECK(left[0].plan->title == "Later");
    CHECK(left[0].against == Leftover::Against::sameFile);
    REQUIRE(left[0].differences.size() == 1);
    CHECK(left[0].differences[0].place == "title");
}

TEST_CASE("A plan whose file was changed or lost after the crash is said to be so") {
    Fixture f;
    REQUIRE(savePlanFile(crashStart(), f.path.toStdString()).empty());
    {
        Document document(f.unsaved);
        REQUIRE(document.open(f.path).how == How::opened);
        makeCrashEdits(document);
    }
    Document document(f.unsaved);
    SECTION("changed") {
        Plan theirs = crashStart();
        theirs.notes = "theirs";
        REQUIRE(savePlanFile(theirs, f.path.toStdString()).empty());
        const std::vector<Leftover> left = document.leftovers();
        REQUIRE(left.size() == 1);
        CHECK(left[0].against == Leftover::Against::otherFile);
        REQUIRE(document.recover(left[0]).how == How::opened);
        CHECK(document.plan().title == "Edited before the crash");
        CHECK(document.conflict() == Document::Conflict::changedOnDisk);
        CHECK(document.save() != QString());
        CHECK(*openPlanFile(f.path.toStdString()).plan == theirs);
    }
    SECTION("lost") {
        std::filesystem::remove(f.path.toStdString());
        const std::vector<Leftover> left = document.leftovers();
        REQUIRE(left.size() == 1);
        CHECK(left[0].against == Leftover::Against::missingFile);
        REQUIRE(document.recover(left[0]).how == How::opened);
        CHECK(document.modified());
        CHECK(document.save() == QString());
        CHECK(openPlanFile(f.path.toStdString()).plan->title == "Edited before the crash");
    }
    SECTION("open elsewhere") {
        OtherProgram other("hold", f.path);
        REQUIRE(other.said("HOLDS"));
        const std::vector<Leftover> left = document.leftovers();
        REQUIRE(left.size() == 1);
        const Document::Opened opened = document.recover(left[0]);
        CHECK(opened.how == How::opened);
        CHECK_FALSE(opened.words.isEmpty());
        CHECK(document.path().isEmpty());
        CHECK(document.plan().title == "Edited before the crash");
    }
}

TEST_CASE("That nothing can be kept is told once") {
    Fixture f;
    QFile file(f.unsaved);  // where the folder should be
    REQUIRE(file.open(QIODevice::WriteOnly));
    file.close();
    Document document(f.unsaved);
    int told = 0;
    QObject::connect(&document, &Document::notKept, &document, [&](const QString& why) { CHECK_FALSE(why.isEmpty()); ++told; });
    document.startWith(crashStart(), true);
    document.keepUnsaved();
    REQUIRE(document.apply("Name the plan", setTitle(document.plan(), "A")));
    document.keepUnsaved();
    QCoreApplication::processEvents();
    CHECK(told == 1);
}
