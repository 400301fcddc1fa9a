#include "tests/gui/document/other_program.h"

#include <cstdio>
#include <filesystem>

#include <QEventLoop>
#include <QTimer>

#include <unistd.h>

#include <catch2/catch.hpp>

#include "app/document/document.h"
#include "tests/gui/document/crash_edits.h"

using namespace hither;
using namespace hither::test;

namespace {

void say(const char* word) {
    std::printf("%s\n", word);
    std::fflush(stdout);
}
[[noreturn]] void wait() {
    for (;;) pause();
}

bool anyKept(const std::filesystem::path& folder) {
    std::error_code ignored;
    for (std::filesystem::recursive_directory_iterator it(folder, ignored), end; !ignored && it != end; it.increment(ignored))
        if (it->path().extension() == ".hither" && it->path().filename().string().front() != '.') return true;
    return false;
}

}  // namespace

/// What OtherProgram runs; not listed among the tests.
TEST_CASE("Another program", "[.other program]") {
    const QString job = qEnvironmentVariable("HITHER_TEST_JOB"), path = qEnvironmentVariable("HITHER_TEST_PATH");
    if (job == "hold" || job == "take over") {
        Document document{QString()};
        const auto access = job == "hold" ? Document::Access::change : Document::Access::takeOver;
        REQUIRE(document.open(path, access).how == Document::Opened::How::opened);
        say("HOLDS");
        wait();
    }
    REQUIRE(job == "edit and crash");
    // `path` is the folder: unsaved/ for what is kept, plan.hither the plan, which may not be there.
    Document document(path + "/unsaved");
    if (std::filesystem::exists((path + "/plan.hither").toStdString())) REQUIRE(document.open(path + "/plan.hither").how == Document::Opened::How::opened);
    else document.startWith(crashStart(), true);
    makeCrashEdits(document);
    document.beginGesture("Half way");
    document.preview(setTitle(document.gestureStart(), "Half way"));
    // By its own timers.
    QEventLoop loop;
    QTimer look;
    QObject::connect(&look, &QTimer::timeout, &loop, [&] { if (anyKept((path + "/unsaved").toStdString())) loop.quit(); });
    look.start(50);
    loop.exec();
    say("KEPT");
    wait();
}
