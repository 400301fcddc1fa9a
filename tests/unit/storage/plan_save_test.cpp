#include <catch2/catch.hpp>

#include <csignal>
#include <filesystem>

#include <sys/resource.h>
#include <sys/stat.h>
#include <sys/wait.h>
#include <unistd.h>

#include "core/storage/plan_file.h"
#include "core/storage/plan_save.h"
#include "sample.h"

using namespace hither;
using namespace hither::test;
using Code = StorageError::Code;

namespace {

constexpr SaveStep allSteps[] = {SaveStep::built, SaveStep::made, SaveStep::written, SaveStep::synced, SaveStep::verified, SaveStep::linked, SaveStep::backedUp, SaveStep::replaced, SaveStep::done};

std::size_t filesIn(const Folder& folder) {
    std::size_t count = 0;
    for ([[maybe_unused]] const auto& entry : std::filesystem::directory_iterator(folder.path())) ++count;
    return count;
}

Plan titled(const std::string& title) {
    Plan p = everyKeyPlan();
    p.title = title;
    return p;
}

void saved(const Plan& plan, const std::string& path) {
    const auto problems = savePlanFile(plan, path);
    INFO(told(problems));
    REQUIRE(problems.empty());
}

}  // namespace

TEST_CASE("a save gives the plan, and the previous one as .bak, and nothing else") {
    Folder folder;
    const std::string path = folder / "my plan.hither";
    saved(titled("one"), path);
    CHECK(filesIn(folder) == 1);
    saved(titled("two"), path);
    saved(titled("three"), path);
    CHECK(openPlanFile(path).plan->title == "three");
    CHECK(openPlanFile(path + ".bak").plan->title == "two");
    CHECK(filesIn(folder) == 2);
}

TEST_CASE("a save keeps who may read the file") {
    Folder folder;
    const std::string path = folder / "plan.hither";
    saved(titled("one"), path);
    REQUIRE(chmod(path.c_str(), 0640) == 0);
    saved(titled("two"), path);
    struct stat info{};
    REQUIRE(stat(path.c_str(), &info) == 0);
    CHECK((info.st_mode & 0777) == 0640);
}

TEST_CASE("a program killed at any step of a save loses nothing") {
    for (const SaveStep killedAt : allSteps) {
        CAPTURE(word(killedAt));
        Folder folder;
        const std::string path = folder / "plan.hither";
        saved(titled("zero"), path);
        saved(titled("one"), path);
        const pid_t child = fork();
        if (child == 0) {
            SaveOptions options;
            options.after = [&](SaveStep step) { if (step == killedAt) kill(getpid(), SIGKILL); };
            savePlanFile(titled("two"), path, options);
            _exit(0);
        }
        int status = 0;
        REQUIRE(waitpid(child, &status, 0) == child);
        REQUIRE(WIFSIGNALED(status));
        const PlanRead read = openPlanFile(path);
        INFO(told(read.problems));
        REQUIRE(read.plan);
        const bool replaced = killedAt == SaveStep::replaced || killedAt == SaveStep::done;
        CHECK(read.plan->title == (replaced ? "two" : "one"));
        const PlanRead backup = openPlanFile(path + ".bak");
        REQUIRE(backup.plan);
        CHECK(backup.plan->title == (replaced || killedAt == SaveStep::backedUp ? "one" : "zero"));
        // The next save goes through and leaves nothing of the one that was cut short.
        saved(titled("three"), path);
        CHECK(openPlanFile(path).plan->title == "three");
        CHECK(openPlanFile(path + ".bak").plan->title == (replaced ? "two" : "one"));
        CHECK(filesIn(folder) == 2);
    }
}

TEST_CASE("a program killed at any step of a first save leaves a whole plan or none") {
    for (const SaveStep killedAt : allSteps) {
        if (killedAt == SaveStep::linked || killedAt == SaveStep::backedUp) continue;  // nothing to keep yet
        CAPTURE(word(killedAt));
        Folder folder;
        const std::string path = folder / "plan.hither";
        const pid_t child = fork();
        if (child == 0) {
            SaveOptions options;
            options.after = [&](SaveStep step) { if (step == killedAt) kill(getpid(), SIGKILL); };
            savePlanFile(titled("first"), path, options);
            _exit(0);
        }
        int status = 0;
        REQUIRE(waitpid(child, &status, 0) == child);
        REQUIRE(WIFSIGNALED(status));
        const PlanRead read = openPlanFile(path);
        if (killedAt == SaveStep::replaced || killedAt == SaveStep::done) CHECK(read.plan->title == "first");
        else CHECK(read.problems.at(0).code == Code::missing);
    }
}

TEST_CASE("a full disk leaves the old file whole") {
    Folder folder;
    const std::string path = folder / "plan.hither";
    saved(titled("one"), path);
    const std::string before = bytesOf(path);
    const pid_t child = fork();
    if (child == 0) {
        signal(SIGXFSZ, SIG_IGN);
        const rlimit few{20000, 20000};
        setrlimit(RLIMIT_FSIZE, &few);
        const auto problems = savePlanFile(titled("two"), path);
        _exit(problems.size() == 1 && problems[0].code == Code::cannotWrite && problems[0].facts.at("allowed") == "room for the file" ? 0 : 1);
    }
    int status = 0;
    REQUIRE(waitpid(child, &status, 0) == child);
    REQUIRE(before.size() > 20000);
    CHECK(WIFEXITED(status));
    CHECK(WEXITSTATUS(status) == 0);
    CHECK(bytesOf(path) == before);
    CHECK(filesIn(folder) == 1);
}

TEST_CASE("a file changed between writing and reading back is not let through") {
    Folder folder;
    const std::string path = folder / "plan.hither";
    saved(titled("one"), path);
    SaveOptions options;
    options.after = [&](SaveStep step) {
        if (step != SaveStep::synced) return;
        for (const auto& entry : std::filesystem::directory_iterator(folder.path()))
            if (entry.path().filename().string().find(".saving-") != std::string::npos) {
                std::string b = bytesOf(entry.path().string());
                b[b.size() / 2] = static_cast<char>(b[b.size() / 2] ^ 1);
                writeBytes(entry.path().string(), b);
            }
    };
    const auto problems = savePlanFile(titled("two"), path, options);
    REQUIRE(problems.size() == 1);
    CHECK(problems[0].code == Code::cannotVerify);
    CHECK(openPlanFile(path).plan->title == "one");
    CHECK(filesIn(folder) == 1);
}

TEST_CASE("places that cannot be written to are said to be") {
    Folder folder;
    CHECK(savePlanFile(titled("x"), folder / "none/plan.hither").at(0).code == Code::cannotWrite);
    CHECK(savePlanFile(titled("x"), folder.path()).at(0).code == Code::notAFile);
    saved(titled("one"), folder / "plan.hither");
    std::filesystem::create_symlink(folder / "plan.hither", folder / "link.hither");
    CHECK(savePlanFile(titled("x"), folder / "link.hither").at(0).code == Code::notAFile);
    CHECK(std::filesystem::is_symlink(folder / "link.hither"));
}

TEST_CASE("a folder without write permission leaves the old file whole") {
    Folder folder;
    saved(titled("one"), folder / "plan.hither");
    REQUIRE(chmod(folder.path().c_str(), 0555) == 0);
    const pid_t child = fork();
    if (child == 0) {
        // Root may write anywhere: become nobody in particular first.
        if (getuid() == 0 && (setgid(65534) != 0 || setuid(65534) != 0)) _exit(2);
        const auto problems = savePlanFile(titled("two"), folder / "plan.hither");
        _exit(problems.size() == 1 && problems[0].code == Code::cannotWrite ? 0 : 1);
    }
    int status = 0;
    REQUIRE(waitpid(child, &status, 0) == child);
    REQUIRE(chmod(folder.path().c_str(), 0755) == 0);
    CHECK(WIFEXITED(status));
    CHECK(WEXITSTATUS(status) == 0);
    CHECK(openPlanFile(folder / "plan.hither").plan->title == "one");
}
