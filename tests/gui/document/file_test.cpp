#include <csignal>
#include <filesystem>

#include <sys/resource.h>

#include <QTemporaryDir>

#include <catch2/catch.hpp>

#include "app/document/document.h"
#include "app/shipped/shipped.h"
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
    QString path = folder.filePath("a plan.hither");
    Fixture() { REQUIRE(savePlanFile(crashStart(), path.toStdString()).empty()); }
    Plan onDisk(const QString& file) const {
        PlanRead read = openPlanFile(file.toStdString());
        REQUIRE(read.plan);
        return std::move(*read.plan);
    }
    Plan onDisk() const { return onDisk(path); }
    bool isLocked(const QString& file) const { return PlanLock::holder(file.toStdString()).has_value(); }
};

}  // namespace

TEST_CASE("A save is the next revision with what was done in its history, and undoing does not touch that") {
    Fixture f;
    Document document{QString()};
    REQUIRE(document.open(f.path).how == How::opened);
    CHECK_FALSE(document.modified());
    CHECK(document.plan() == crashStart());
    REQUIRE(document.apply("Name the plan", setTitle(document.plan(), "A")));
    REQUIRE(document.apply("Note something", setNotes(document.plan(), "n")));
    CHECK(document.modified());
    CHECK(document.save() == QString());
    CHECK_FALSE(document.modified());
    CHECK(f.onDisk() == document.plan());
    CHECK(document.plan().revision == crashStart().revision + 1);
    REQUIRE(document.plan().history.size() == 1);
    CHECK(document.plan().history[0].what == "Name the plan; Note something");
    CHECK(document.plan().history[0].when_utc == document.plan().changed_utc);
    CHECK(f.onDisk(f.path + ".bak") == crashStart());

    document.undo();
    CHECK(document.modified());
    CHECK(document.plan().notes.empty());
    CHECK(document.plan().revision == crashStart().revision + 1);
    document.redo();
    CHECK_FALSE(document.modified());
    document.undo();
    document.undo();
    CHECK(document.save() == QString());
    Plan back = crashStart();
    back.revision += 2;
    back.changed_utc = document.plan().changed_utc;
    back.history = document.plan().history;
    CHECK(f.onDisk() == back);
    CHECK(back.history.size() == 2);
    CHECK(back.history[1].what == "Took back: Name the plan");

    // Nothing to save: nothing is written.
    CHECK(document.save() == QString());
    CHECK(f.onDisk().revision == back.revision);
    // Steps after a save are still there to be redone.
    document.redo();
    document.redo();
    CHECK(document.plan().notes == "n");
    CHECK(document.plan().revision == back.revision);
}

TEST_CASE("Saving in another file moves the lock, and the old file stays") {
    Fixture f;
    Document document{QString()};
    REQUIRE(document.open(f.path).how == How::opened);
    CHECK(f.isLocked(f.path));
    REQUIRE(document.apply("Name the plan", setTitle(document.plan(), "A")));
    const QString other = f.folder.filePath("other.hither");
    CHECK(document.saveAs(other) == QString());
    CHECK(document.path() == other);
    CHECK_FALSE(f.isLocked(f.path));
    CHECK(f.isLocked(other));
    CHECK(f.onDisk() == crashStart());
    CHECK(f.onDisk(other).title == "A");
    CHECK(document.saveAs(f.folder.filePath("form.json")) != QString());
    CHECK(document.path() == other);
    document.startWith(Plan{}, true);
    CHECK_FALSE(f.isLocked(other));
    CHECK(document.path().isEmpty());
    CHECK_FALSE(document.plan().id.empty());
    CHECK(document.modified());
}

TEST_CASE("A save that fails leaves everything as it was and says so") {
    Fixture f;
    Document document{QString()};
    REQUIRE(document.open(f.path).how == How::opened);
    REQUIRE(document.apply("Name the plan", setTitle(document.plan(), "A")));
    const auto before = document.shared();

    SECTION("the folder is not there") {
        CHECK(document.saveAs(f.folder.filePath("none/x.hither")) != QString());
        CHECK(document.path() == f.path);
    }
    SECTION("a folder has that name") {
        std::filesystem::create_directory(f.folder.filePath("x.hither").toStdString());
        CHECK(document.saveAs(f.folder.filePath("x.hither")) != QString());
        CHECK_FALSE(f.isLocked(f.folder.filePath("x.hither")));
        CHECK(document.path() == f.path);
    }
    SECTION("there is no room") {
        rlimit old{};
        REQUIRE(getrlimit(RLIMIT_FSIZE, &old) == 0);
        const auto handler = std::signal(SIGXFSZ, SIG_IGN);
        const rlimit small{4096, old.rlim_max};
        REQUIRE(setrlimit(RLIMIT_FSIZE, &small) == 0);
        const QString why = document.save();
        setrlimit(RLIMIT_FSIZE, &old);
        std::signal(SIGXFSZ, handler);
        CHECK(why.contains("written"));
    }
    CHECK(document.shared() == before);
    CHECK(document.modified());
    CHECK(f.isLocked(f.path));
    CHECK(f.onDisk() == crashStart());
    CHECK(document.save() == QString());  // the way is free again
    CHECK(f.onDisk().title == "A");
}

TEST_CASE("The JSON form is opened with the shipped parts and has no file of its own") {
    ShippedRead read = readShipped();
    REQUIRE(read.shipped);
    const auto shipped = std::make_shared<const Shipped>(std::move(*read.shipped));
    Document document(QString(), std::shared_ptr<const Catalogue>(shipped, &shipped->catalogue));
    const QString sample = QString::fromStdString(samplesFolder().string()) + "/elbow_switch_on_chair.json";
    REQUIRE(document.open(sample).how == How::opened);
    CHECK(document.path().isEmpty());
    CHECK(document.modified());
    CHECK_FALSE(document.plan().parts.empty());
    CHECK(document.save() != QString());

    // A sample is opened as a plan of its own.
    const std::string id = document.plan().id;
    REQUIRE(document.openCopy(sample).how == How::opened);
    CHECK(document.plan().id != id);
    CHECK_FALSE(document.modified());
    CHECK(document.path().isEmpty());
}

TEST_CASE("What cannot be opened is told and changes nothing") {
    Fixture f;
    Document document{QString()};
    REQUIRE(document.open(f.path).how == How::opened);
    const auto before = document.shared();
    const auto refused = [&](const QString& path) {
        const Document::Opened opened = document.open(path);
        CHECK(opened.how == How::failed);
        CHECK_FALSE(opened.words.isEmpty());
        CHECK(document.shared() == before);
        CHECK(document.path() == f.path);
        CHECK(f.isLocked(f.path));
    };
    refused(f.folder.filePath("none.hither"));
    refused(f.folder.filePath("none/none.hither"));
    refused(f.folder.path());
    QFile text(f.folder.filePath("text.hither"));
    REQUIRE(text.open(QIODevice::WriteOnly));
    text.write("{\"hither_plan\": 1, \"titel\": \"x\"}");
    text.close();
    refused(text.fileName());
    CHECK_FALSE(f.isLocked(text.fileName()));
    // The same file again is no stranger's.
    CHECK(document.open(f.path).how == How::opened);
    CHECK(f.isLocked(f.path));
}

TEST_CASE("A plan that another program has open can be read, or taken over") {
    Fixture f;
    OtherProgram other("hold", f.path);
    REQUIRE(other.said("HOLDS"));
    Document document{QString()};
    const Document::Opened opened = document.open(f.path);
    CHECK(opened.how == How::lockedByOther);
    REQUIRE(opened.holder);
    CHECK(opened.holder->pid == other.pid());
    CHECK_FALSE(opened.holder->host.empty());
    CHECK(document.path().isEmpty());

    REQUIRE(document.open(f.path, Document::Access::readOnly).how == How::opened);
    CHECK(document.readOnly());
    QString why;
    QObject::connect(&document, &Document::refused, &document, [&](const QString& words) { why = words; });
    CHECK_FALSE(document.apply("Name the plan", setTitle(document.plan(), "A")));
    CHECK(why.contains("read only"));
    why.clear();
    document.beginGesture("Name the plan");
    CHECK_FALSE(document.preview(setTitle(document.gestureStart(), "A")));
    document.endGesture();
    CHECK(why.contains("read only"));
    CHECK(document.plan() == crashStart());
    CHECK(document.save() != QString());
    CHECK(PlanLock::holder(f.path.toStdString())->pid == other.pid());
    const QString copy = f.folder.filePath("copy.hither");
    CHECK(document.saveAs(f.path) != QString());
    CHECK(document.saveAs(copy) == QString());
    CHECK_FALSE(document.readOnly());
    CHECK(document.apply("Name the plan", setTitle(document.plan(), "A")));

    REQUIRE(document.open(f.path, Document::Access::takeOver).how == How::opened);
    CHECK_FALSE(document.readOnly());
    CHECK(PlanLock::holder(f.path.toStdString())->pid != other.pid());
    REQUIRE(document.apply("Name the plan", setTitle(document.plan(), "B")));
    CHECK(document.save() == QString());

    // When the other one takes it back, that is told before anything is written over.
    REQUIRE(document.apply("Name the plan", setTitle(document.plan(), "C")));
    OtherProgram again("take over", f.path);
    REQUIRE(again.said("HOLDS"));
    CHECK(document.conflict() == Document::Conflict::takenOver);
    CHECK(document.save() != QString());
    CHECK(f.onDisk().title == "B");
    CHECK(document.modified());
    CHECK(document.save(Document::Over::whateverIsThere) == QString());
    CHECK(f.onDisk().title == "C");
    CHECK(document.conflict() == Document::Conflict::none);
}

TEST_CASE("A program that ended without a word holds nothing") {
    Fixture f;
    OtherProgram other("hold", f.path);
    REQUIRE(other.said("HOLDS"));
    other.kill();
    Document document{QString()};
    CHECK(document.open(f.path).how == How::opened);
}

TEST_CASE("A file that was changed behind the plan's back is not written over without asking") {
    Fixture f;
    Document document{QString()};
    REQUIRE(document.open(f.path).how == How::opened);
    REQUIRE(document.apply("Name the plan", setTitle(document.plan(), "Mine")));
    Plan theirs = crashStart();
    theirs.title = "Theirs";
    REQUIRE(savePlanFile(theirs, f.path.toStdString()).empty());
    CHECK(document.conflict() == Document::Conflict::changedOnDisk);
    CHECK(document.save().contains("changed"));
    CHECK(f.onDisk() == theirs);
    CHECK(document.save(Document::Over::whateverIsThere) == QString());
    CHECK(f.onDisk().title == "Mine");
    // One that is gone is simply made again.
    std::filesystem::remove(f.path.toStdString());
    CHECK(document.save() == QString());
    CHECK(f.onDisk().title == "Mine");
}
