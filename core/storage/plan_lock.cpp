#include "core/storage/plan_lock.h"

#include <array>
#include <cerrno>
#include <csignal>
#include <cstdlib>
#include <filesystem>
#include <fstream>
#include <sstream>

#include <fcntl.h>
#include <pwd.h>
#include <sys/file.h>
#include <sys/stat.h>
#include <unistd.h>

#include "core/storage/file_bytes.h"
#include "core/storage/fresh.h"
#include "core/storage/json_value.h"
#include "core/storage/plan_rules.h"

namespace hither {
namespace {

using Code = StorageError::Code;

std::string firstLine(const std::string& path) {
    std::ifstream in(path);
    std::string line;
    std::getline(in, line);
    return line;
}

/// When a process was started, in the kernel's ticks since the computer was: field 22 of its stat line.
std::string startOf(long pid) {
    const std::string line = firstLine("/proc/" + std::to_string(pid) + "/stat");
    const std::size_t name = line.rfind(')');  // the second field is in brackets and may hold anything
    if (name == std::string::npos) return {};
    std::istringstream fields(line.substr(name + 1));
    std::string field;
    for (int i = 3; i <= 22; ++i)
        if (!(fields >> field)) return {};
    return field;
}

LockHolder myself() {
    LockHolder me;
    std::array<char, 256> host{};
    if (gethostname(host.data(), host.size() - 1) == 0) me.host = host.data();
    if (const passwd* user = getpwuid(getuid())) me.user = user->pw_name;
    me.pid = static_cast<long>(getpid());
    me.since_utc = utcNow();
    me.boot = firstLine("/proc/sys/kernel/random/boot_id");
    me.started = startOf(me.pid);
    return me;
}

std::string written(const LockHolder& h) {
    JsonValue v = JsonValue::object();
    v.add("host", JsonValue::ofText(h.host)).add("user", JsonValue::ofText(h.user)).add("pid", JsonValue::ofNumber(std::to_string(h.pid)));
    v.add("since_utc", JsonValue::ofText(h.since_utc)).add("boot", JsonValue::ofText(h.boot)).add("started", JsonValue::ofText(h.started));
    return printJsonValue(v);
}

/// Null when the text is not a lock's: nobody knows then who made it.
std::optional<LockHolder> read(const std::string& text) {
    const JsonValueRead json = readJsonValue(text);
    if (!json.value) return std::nullopt;
    const auto get = [&](const char* key) {
        const JsonValue* v = json.value->find(key);
        return v == nullptr || !isPrintableText(v->text, false) ? std::string() : v->text.substr(0, 200);
    };
    LockHolder h{get("host"), get("user"), get("since_utc"), get("boot"), get("started"), 0};
    h.pid = std::strtol(get("pid").c_str(), nullptr, 10);
    if (h.host.empty() || h.pid <= 0) return std::nullopt;
    return h;
}

/// Whether the process that made a lock has ended. Only what runs on this computer can be judged.
bool isStale(const LockHolder& h) {
    const LockHolder me = myself();
    if (h.host != me.host) return false;
    if (!h.boot.empty() && !me.boot.empty() && h.boot != me.boot) return true;  // before the last start
    if (kill(static_cast<pid_t>(h.pid), 0) != 0 && errno == ESRCH) return true;
    const std::string started = startOf(h.pid);
    return !started.empty() && !h.started.empty() && started != h.started;
}

StorageError lockedBy(const std::string& planPath, const std::optional<LockHolder>& h) {
    StorageError e{Code::lockedByOther, planPath, {}, {}};
    e.facts["host"] = h ? h->host : "unknown";
    e.facts["user"] = h ? h->user : "unknown";
    e.facts["pid"] = h ? std::to_string(h->pid) : "unknown";
    e.facts["since_utc"] = h ? h->since_utc : "unknown";
    e.facts["same_host"] = h && h->host == myself().host ? "yes" : "no";
    return e;
}

struct Descriptor {
    int fd;
    ~Descriptor() { if (fd >= 0) close(fd); }
};

bool sameFile(int fd, const std::string& path) {
    struct stat a{}, b{};
    return fstat(fd, &a) == 0 && lstat(path.c_str(), &b) == 0 && a.st_dev == b.st_dev && a.st_ino == b.st_ino;
}

}  // namespace

std::string PlanLock::lockPath(const std::string& planPath) {
    const std::filesystem::path p(planPath);
    const std::string folder = p.parent_path().string();
    return (folder.empty() ? "." : folder) + "/." + p.filename().string() + ".lock";
}

PlanLock::Taken PlanLock::take(const std::string& planPath) { return attempt(planPath, false); }
PlanLock::Taken PlanLock::takeOver(const std::string& planPath) { return attempt(planPath, true); }

PlanLock::Taken PlanLock::attempt(const std::string& planPath, bool force) {
    const std::string path = lockPath(planPath);
    const auto cannot = [&](int why) { return Taken{std::nullopt, StorageError{Code::cannotWrite, planPath, {}, {{"found", systemWords(why)}, {"allowed", "a folder that can be written to"}}}}; };
    // Written in full under another name first: a lock file is never seen half made.
    const std::string fresh = path + "-" + std::to_string(getpid()) + "-" + randomUuid().substr(0, 8);
    struct stat mine{};
    {
        const Descriptor file{open(fresh.c_str(), O_WRONLY | O_CREAT | O_EXCL | O_NOFOLLOW | O_CLOEXEC, 0644)};
        if (file.fd < 0) return cannot(errno);
        const std::string text = written(myself());
        if (write(file.fd, text.data(), text.size()) != static_cast<ssize_t>(text.size()) || fstat(file.fd, &mine) != 0) {
            const int why = errno;
            unlink(fresh.c_str());
            return cannot(why == 0 ? ENOSPC : why);
        }
    }
    const auto given = [&] {
        PlanLock lock;
        lock.path_ = path;
        lock.device_ = mine.st_dev;
        lock.node_ = mine.st_ino;
        return Taken{std::move(lock), std::nullopt};
    };
    for (int tries = 0; tries < 20; ++tries) {
        if (link(fresh.c_str(), path.c_str()) == 0) {
            unlink(fresh.c_str());
            return given();
        }
        if (errno != EEXIST) {
            // A file system without hard links: exclusive all the same, if not in one step.
            const int why = errno;
            const bool noLinks = why == EPERM || why == EOPNOTSUPP || why == ENOSYS;
            if (noLinks) {
                const Descriptor file{open(path.c_str(), O_WRONLY | O_CREAT | O_EXCL | O_NOFOLLOW | O_CLOEXEC, 0644)};
                const std::string text = written(myself());
                if (file.fd >= 0 && write(file.fd, text.data(), text.size()) == static_cast<ssize_t>(text.size()) && fstat(file.fd, &mine) == 0) {
                    unlink(fresh.c_str());
                    return given();
                }
                if (file.fd < 0 && errno != EEXIST) {
                    unlink(fresh.c_str());
                    return cannot(errno);
                }
            } else {
                unlink(fresh.c_str());
                return cannot(why);
            }
        }
        // Somebody has it. Whoever replaces a stale lock holds its file's own lock meanwhile, so that two
        // that find the same stale one do not both win.
        const Descriptor old{open(path.c_str(), O_RDONLY | O_NOFOLLOW | O_NONBLOCK | O_CLOEXEC)};
        if (old.fd < 0) {
            if (errno == ENOENT) continue;  // just released
            unlink(fresh.c_str());
            return {std::nullopt, lockedBy(planPath, std::nullopt)};
        }
        if (flock(old.fd, LOCK_EX) != 0 || !sameFile(old.fd, path)) continue;
        const FileBytes bytes = readWholeFile(path, 65536);
        const std::optional<LockHolder> h = bytes.bytes ? read(*bytes.bytes) : std::nullopt;
        if (!force && !(h && isStale(*h))) {
            unlink(fresh.c_str());
            return {std::nullopt, lockedBy(planPath, h)};
        }
        if (rename(fresh.c_str(), path.c_str()) == 0) return given();
        const int why = errno;
        unlink(fresh.c_str());
        return cannot(why);
    }
    unlink(fresh.c_str());
    return {std::nullopt, lockedBy(planPath, holder(planPath))};
}

std::optional<LockHolder> PlanLock::holder(const std::string& planPath) {
    const FileBytes bytes = readWholeFile(lockPath(planPath), 65536);
    if (!bytes.bytes) return std::nullopt;
    const std::optional<LockHolder> h = read(*bytes.bytes);
    if (h && isStale(*h)) return std::nullopt;
    return h ? h : std::optional<LockHolder>(LockHolder{"unknown", "unknown", "unknown", {}, {}, 0});
}

PlanLock::PlanLock(PlanLock&& other) noexcept : path_(std::move(other.path_)), device_(other.device_), node_(other.node_) { other.path_.clear(); }
PlanLock& PlanLock::operator=(PlanLock&& other) noexcept {
    if (this != &other) {
        release();
        path_ = std::move(other.path_);
        device_ = other.device_;
        node_ = other.node_;
        other.path_.clear();
    }
    return *this;
}
PlanLock::~PlanLock() { release(); }

bool PlanLock::stillHeld() const {
    struct stat now{};
    return !path_.empty() && lstat(path_.c_str(), &now) == 0 && now.st_dev == device_ && now.st_ino == node_;
}

void PlanLock::release() {
    if (stillHeld()) unlink(path_.c_str());
    path_.clear();
}

}  // namespace hither
