#include "core/storage/plan_save.h"

#include <cerrno>
#include <csignal>
#include <cstdlib>
#include <filesystem>

#include <fcntl.h>
#include <sys/stat.h>
#include <unistd.h>

#include "core/storage/file_bytes.h"
#include "core/storage/fresh.h"
#include "core/storage/plan_file.h"

namespace hither {
namespace {

using Code = StorageError::Code;
namespace fs = std::filesystem;

/// The folder and the plain name of a path.
struct Place {
    std::string folder, name, path;
    std::string beside(const std::string& what) const { return folder + "/." + name + what; }
};

Place placeOf(const std::string& path) {
    const fs::path p(path);
    const std::string folder = p.parent_path().string();
    return {folder.empty() ? "." : folder, p.filename().string(), path};
}

/// A file that is removed again unless it is kept.
class Passing {
public:
    explicit Passing(std::string path) : path_(std::move(path)) {}
    ~Passing() { if (!kept_) unlink(path_.c_str()); }
    Passing(const Passing&) = delete;
    Passing& operator=(const Passing&) = delete;
    const std::string& path() const { return path_; }
    void keep() { kept_ = true; }
private:
    std::string path_;
    bool kept_ = false;
};

class Saver {
public:
    Saver(const std::string& path, const SaveOptions& options) : place_(placeOf(path)), options_(options) {}

    std::vector<StorageError> save(const std::string& bytes, const std::function<std::vector<StorageError>(const std::string& path)>& verify) {
        struct stat old{};
        const bool there = lstat(place_.path.c_str(), &old) == 0;
        if (!there && errno != ENOENT) return {fault(Code::cannotWrite, errno)};
        if (place_.name.empty() || (there && !S_ISREG(old.st_mode)))
            return {StorageError{Code::notAFile, place_.path, {}, {{"found", there && S_ISLNK(old.st_mode) ? "a symbolic link" : "a folder or device"}, {"allowed", "a regular file"}}}};
        step(SaveStep::built);
        sweep();

        // Owned by this process by its number, so that a later save knows whether its maker still lives.
        Passing fresh(place_.beside(".saving-" + std::to_string(getpid()) + "-" + randomUuid().substr(0, 8)));
        const mode_t mode = there ? (old.st_mode & 0777) | S_IRUSR | S_IWUSR : 0666;
        const int fd = open(fresh.path().c_str(), O_WRONLY | O_CREAT | O_EXCL | O_NOFOLLOW | O_CLOEXEC, mode);
        if (fd < 0) {
            const int why = errno;
            fresh.keep();  // it is not ours
            return {fault(Code::cannotWrite, why)};
        }
        step(SaveStep::made);
        int why = there && fchmod(fd, old.st_mode & 0777) != 0 && errno != EPERM ? errno : 0;
        for (std::size_t have = 0; why == 0 && have < bytes.size();) {
            const ssize_t put = write(fd, bytes.data() + have, bytes.size() - have);
            if (put > 0) have += static_cast<std::size_t>(put);
            else if (put == 0) why = ENOSPC;
            else if (errno != EINTR) why = errno;
        }
        if (why == 0) step(SaveStep::written);
        if (why == 0 && fsync(fd) != 0) why = errno;
        if (close(fd) != 0 && why == 0 && errno != EINTR) why = errno;
        if (why != 0) return {fault(Code::cannotWrite, why)};
        step(SaveStep::synced);
        if (std::vector<StorageError> problems = verify(fresh.path()); !problems.empty()) {
            for (StorageError& p : problems) {
                p.facts["why"] = word(p.code);
                p.code = Code::cannotVerify;
                p.file = place_.path;
            }
            return problems;
        }
        step(SaveStep::verified);
        if (there && options_.keepBackup) {
            Passing second(place_.beside(".keeping-" + std::to_string(getpid()) + "-" + randomUuid().substr(0, 8)));
            if (const int failed = secondName(second.path(), old.st_mode)) return {fault(Code::cannotWrite, failed)};
            step(SaveStep::linked);
            if (rename(second.path().c_str(), (place_.path + ".bak").c_str()) != 0) return {fault(Code::cannotWrite, errno)};
            // Renaming one name of a file onto another of the same file does nothing: then the first is still there, and goes.
            step(SaveStep::backedUp);
        }
        if (rename(fresh.path().c_str(), place_.path.c_str()) != 0) return {fault(Code::cannotWrite, errno)};
        fresh.keep();
        step(SaveStep::replaced);
        if (const int failed = syncFolder()) return {fault(Code::ioError, failed)};
        step(SaveStep::done);
        return {};
    }

private:
    void step(SaveStep s) const { if (options_.after) options_.after(s); }

    StorageError fault(Code code, int why) const {
        StorageError e{code, place_.path, {}, {{"found", systemWords(why)}, {"allowed", "a folder that can be written to"}}};
        if (why == ENOSPC || why == EDQUOT || why == EFBIG) e.facts["allowed"] = "room for the file";
        return e;
    }

    /// Gives the plan's present file a second name; where the file system has no hard links, a copy
    /// that is on the disk.
    int secondName(const std::string& name, mode_t mode) const {
        if (link(place_.path.c_str(), name.c_str()) == 0) return 0;
        if (errno != EPERM && errno != EOPNOTSUPP && errno != EMLINK && errno != ENOSYS) return errno;
        const FileBytes old = readWholeFile(place_.path, static_cast<std::size_t>(-1) / 2);
        if (!old.bytes) return EIO;
        const int fd = open(name.c_str(), O_WRONLY | O_CREAT | O_EXCL | O_NOFOLLOW | O_CLOEXEC, mode & 0777);
        if (fd < 0) return errno;
        int why = 0;
        for (std::size_t have = 0; why == 0 && have < old.bytes->size();) {
            const ssize_t put = write(fd, old.bytes->data() + have, old.bytes->size() - have);
            if (put > 0) have += static_cast<std::size_t>(put);
            else if (put == 0) why = ENOSPC;
            else if (errno != EINTR) why = errno;
        }
        if (why == 0 && fsync(fd) != 0) why = errno;
        if (close(fd) != 0 && why == 0 && errno != EINTR) why = errno;
        return why;
    }

    int syncFolder() const {
        const int fd = open(place_.folder.c_str(), O_RDONLY | O_DIRECTORY | O_CLOEXEC);
        if (fd < 0) return errno;
        // Some file systems have nothing to sync in a folder and say so.
        const int why = fsync(fd) == 0 || errno == EINVAL || errno == ENOTSUP ? 0 : errno;
        close(fd);
        return why;
    }

    /// Removes what saves of this plan that were cut short have left, but not what a living process writes.
    void sweep() const {
        std::error_code ignored;
        std::vector<fs::path> old;
        for (fs::directory_iterator it(place_.folder, ignored), end; !ignored && it != end; it.increment(ignored)) {
            const std::string name = it->path().filename().string();
            for (const char* kind : {".saving-", ".keeping-"}) {
                const std::string head = "." + place_.name + kind;
                if (name.compare(0, head.size(), head) != 0) continue;
                const long pid = std::strtol(name.c_str() + head.size(), nullptr, 10);
                if (pid > 0 && kill(static_cast<pid_t>(pid), 0) != 0 && errno == ESRCH) old.push_back(it->path());
            }
        }
        for (const fs::path& p : old) fs::remove(p, ignored);
    }

    Place place_;
    const SaveOptions& options_;
};

}  // namespace

const char* word(SaveStep step) {
    switch (step) {
        case SaveStep::built: return "built";
        case SaveStep::made: return "made";
        case SaveStep::written: return "written";
        case SaveStep::synced: return "synced";
        case SaveStep::verified: return "verified";
        case SaveStep::linked: return "linked";
        case SaveStep::backedUp: return "backed_up";
        case SaveStep::replaced: return "replaced";
        case SaveStep::done: return "done";
    }
    return "done";
}

std::vector<StorageError> savePlanFile(const Plan& plan, const std::string& path, const SaveOptions& options) {
    const PlanBytes built = planToBytes(plan);
    if (!built.bytes) {
        std::vector<StorageError> problems = built.problems;
        for (StorageError& p : problems) p.file = path;
        return problems;
    }
    return Saver(path, options).save(*built.bytes, [&](const std::string& written) -> std::vector<StorageError> {
        FileBytes back = readWholeFile(written, largestPlanFile);
        if (!back.bytes) return {*back.fault};
        if (*back.bytes != *built.bytes) return {StorageError{Code::ioError, {}, {}, {{"found", "other bytes than were written"}, {"allowed", "the same"}}}};
        PlanRead read = planFromBytes(std::move(*back.bytes), path, planFormats(), true);
        if (!read.plan) return read.problems;
        if (!(*read.plan == plan)) return {StorageError{Code::badValue, {}, {}, {{"found", "another plan than was saved"}, {"allowed", "the same"}}}};
        return {};
    });
}

std::vector<StorageError> saveText(const std::string& text, const std::string& path, bool keepBackup) {
    SaveOptions options;
    options.keepBackup = keepBackup;
    return Saver(path, options).save(text, [&](const std::string& written) -> std::vector<StorageError> {
        const FileBytes back = readWholeFile(written, text.size());
        if (!back.bytes) return {*back.fault};
        if (*back.bytes != text) return {StorageError{Code::ioError, {}, {}, {{"found", "other bytes than were written"}, {"allowed", "the same"}}}};
        return {};
    });
}

}  // namespace hither
