#pragma once
#include <memory>
#include <optional>
#include <string>

#include "core/storage/storage_error.h"

namespace hither {

/// Who works on a plan, as its lock file says. `boot` and `started` tell a process from a later one that
/// got the same number.
struct LockHolder {
    std::string host, user, since_utc, boot, started;
    long pid = 0;
};

/// That one program has a plan open for changing. It stands for a file ".NAME.lock" beside the plan
/// which is made in one step, with host, user, process and time in it, and goes when this object
/// does. It keeps programs of good will out of each other's way; it is no protection.
/// A lock whose process on this computer has ended is stale and is taken over. One of another
/// computer cannot be judged: the answer is `lockedByOther` with who and since when, and the person
/// decides whether to read only or to `takeOver`.
class PlanLock {
public:
    struct Taken;
    static Taken take(const std::string& planPath);
    /// Takes the plan whoever holds it: only after the person said so.
    static Taken takeOver(const std::string& planPath);
    /// Who holds the plan now, if anybody living does.
    static std::optional<LockHolder> holder(const std::string& planPath);
    static std::string lockPath(const std::string& planPath);

    PlanLock(PlanLock&&) noexcept;
    PlanLock& operator=(PlanLock&&) noexcept;
    ~PlanLock();
    /// Whether the lock file is still this one's: false after somebody took over.
    bool stillHeld() const;
    void release();

private:
    PlanLock() = default;
    static Taken attempt(const std::string& planPath, bool force);
    std::string path_;
    unsigned long long device_ = 0, node_ = 0;
};
struct PlanLock::Taken { std::optional<PlanLock> lock; std::optional<StorageError> fault; };

}  // namespace hither
