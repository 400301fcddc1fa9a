#include <catch2/catch.hpp>

#include <csignal>
#include <filesystem>
#include <vector>

#include <sys/wait.h>
#include <unistd.h>

#include "core/storage/plan_lock.h"
#include "sample.h"

using namespace hither;
using namespace hither::test;

namespace {

/// A child process that takes the lock, says so and then waits to be killed.
struct Other {
    pid_t pid = -1;
    bool has = false;
    explicit Other(const std::string& plan) {
        int ends[2];
        REQUIRE(pipe(ends) == 0);
        pid = fork();
        if (pid == 0) {
            const auto taken = PlanLock::take(plan);
            const char said = taken.lock ? 'y' : 'n';
            if (write(ends[1], &said, 1) != 1) _exit(1);
            for (;;) pause();
        }
        char said = 0;
        REQUIRE(read(ends[0], &said, 1) == 1);
        has = said == 'y';
        close(ends[0]);
        close(ends[1]);
    }
    void end() {
        if (pid < 0) return;
        kill(pid, SIGKILL);
        waitpid(pid, nullptr, 0);
        pid = -1;
    }
    ~Other() { end(); }
};

std::string lockText(const std::string& host, long pid, const std::string& boot = "", const std::string& started = "") {
    return "{\"host\": \"" + host + "\", \"user\": \"kl\", \"pid\": " + std::to_string(pid) + ", \"since_utc\": \"2026-05-01T08:00:00Z\", \"boot\": \"" + boot + "\", \"started\": \"" + started + "\"}\n";
}

std::string thisHost() {
    char name[256] = {};
    gethostname(name, sizeof name - 1);
    return name;
}

}  // namespace

TEST_CASE("two programs on one plan are told so, a dead one's lock is taken over") {
    Folder folder;
    const std::string plan = folder / "plan.hither";
    Other other(plan);
    REQUIRE(other.has);
    const auto refused = PlanLock::take(plan);
    REQUIRE_FALSE(refused.lock);
    CHECK(refused.fault->code == StorageError::Code::lockedByOther);
    CHECK(refused.fault->facts.at("pid") == std::to_string(other.pid));
    CHECK(refused.fault->facts.at("host") == thisHost());
    CHECK(refused.fault->facts.at("same_host") == "yes");
    CHECK(refused.fault->facts.at("since_utc").size() == 20);
    CHECK(PlanLock::holder(plan)->pid == other.pid);
    other.end();
    CHECK_FALSE(PlanLock::holder(plan));
    const auto taken = PlanLock::take(plan);
    REQUIRE(taken.lock);
    CHECK(taken.lock->stillHeld());
    CHECK(PlanLock::holder(plan)->pid == getpid());
}

TEST_CASE("a lock goes with its object and can be moved") {
    Folder folder;
    const std::string plan = folder / "plan.hither";
    {
        auto first = PlanLock::take(plan);
        REQUIRE(first.lock);
        PlanLock moved = std::move(*first.lock);
        CHECK_FALSE(first.lock->stillHeld());
        CHECK(moved.stillHeld());
        CHECK_FALSE(PlanLock::take(plan).lock);
        CHECK(std::filesystem::exists(PlanLock::lockPath(plan)));
    }
    CHECK(std::filesystem::is_empty(folder.path()));
    CHECK(PlanLock::take(plan).lock);
}

TEST_CASE("another computer's lock stays until the person takes over") {
    Folder folder;
    const std::string plan = folder / "plan.hither";
    writeBytes(PlanLock::lockPath(plan), lockText("a-host-elsewhere", 4242));
    const auto refused = PlanLock::take(plan);
    REQUIRE_FALSE(refused.lock);
    CHECK(refused.fault->facts.at("host") == "a-host-elsewhere");
    CHECK(refused.fault->facts.at("user") == "kl");
    CHECK(refused.fault->facts.at("same_host") == "no");
    auto forced = PlanLock::takeOver(plan);
    REQUIRE(forced.lock);
    // Who was taken over sees it and leaves the lock alone.
    auto again = PlanLock::takeOver(plan);
    REQUIRE(again.lock);
    CHECK_FALSE(forced.lock->stillHeld());
    forced.lock->release();
    CHECK(again.lock->stillHeld());
}

TEST_CASE("a later process of the same number is not the holder") {
    Folder folder;
    const std::string plan = folder / "plan.hither";
    writeBytes(PlanLock::lockPath(plan), lockText(thisHost(), getpid(), "", "1"));
    CHECK(PlanLock::take(plan).lock);
    writeBytes(PlanLock::lockPath(plan), lockText(thisHost(), getpid(), "another-start-of-the-computer"));
    CHECK(PlanLock::take(plan).lock);
    writeBytes(PlanLock::lockPath(plan), lockText(thisHost(), getpid()));
    CHECK_FALSE(PlanLock::take(plan).lock);
}

TEST_CASE("a lock that cannot be read is somebody's") {
    Folder folder;
    const std::string plan = folder / "plan.hither";
    for (const char* text : {"", "{", "{\"host\": 3}", "\x07"}) {
        writeBytes(PlanLock::lockPath(plan), text);
        const auto refused = PlanLock::take(plan);
        REQUIRE_FALSE(refused.lock);
        CHECK(refused.fault->facts.at("host") == "unknown");
    }
    CHECK(PlanLock::takeOver(plan).lock);
}

TEST_CASE("a folder that is not there gives an error, not a lock") {
    Folder folder;
    const auto none = PlanLock::take(folder / "none/plan.hither");
    REQUIRE_FALSE(none.lock);
    CHECK(none.fault->code == StorageError::Code::cannotWrite);
}

TEST_CASE("of many that find one stale lock exactly one wins") {
    Folder folder;
    const std::string plan = folder / "plan.hither";
    for (int round = 0; round < 5; ++round) {
        writeBytes(PlanLock::lockPath(plan), lockText(thisHost(), getpid(), "another-start-of-the-computer"));
        int gate[2];
        REQUIRE(pipe(gate) == 0);
        int said[2];
        REQUIRE(pipe(said) == 0);
        std::vector<pid_t> children;
        for (int i = 0; i < 8; ++i) {
            const pid_t child = fork();
            if (child == 0) {
                close(gate[1]);
                char go = 0;
                const ssize_t opened = read(gate[0], &go, 1);  // ends when the gate is closed
                const auto taken = PlanLock::take(plan);
                const char answer = opened == 0 && taken.lock ? 'y' : 'n';
                if (write(said[1], &answer, 1) != 1) _exit(1);
                for (;;) pause();
            }
            children.push_back(child);
        }
        close(gate[0]);
        close(gate[1]);
        int winners = 0;
        for (int i = 0; i < 8; ++i) {
            char answer = 0;
            REQUIRE(read(said[0], &answer, 1) == 1);
            winners += answer == 'y' ? 1 : 0;
        }
        for (const pid_t child : children) {
            kill(child, SIGKILL);
            waitpid(child, nullptr, 0);
        }
        close(said[0]);
        close(said[1]);
        CHECK(winners == 1);
    }
}
