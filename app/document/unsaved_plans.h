#pragma once
#include <map>
#include <optional>
#include <string>
#include <vector>

#include "core/storage/autosave.h"
#include "core/storage/plan_lock.h"

namespace hither {

/// The unsaved plans of every program that runs or has run here. Each running program keeps its own in a
/// folder of its own, locked while it lives, so that two never delete each other's. What a program that
/// ended has left is claimed by the next one that asks and offered there only.
class UnsavedPlans {
public:
    explicit UnsavedPlans(std::string folder);
    ~UnsavedPlans();
    UnsavedPlans(const UnsavedPlans&) = delete;
    UnsavedPlans& operator=(const UnsavedPlans&) = delete;

    /// As Autosave's, in this program's folder, which is made at the first. For one thread.
    std::vector<StorageError> keep(const Plan& plan, const std::string& file, const std::string& fileSum);
    void discard(const Plan& plan, const std::string& file);

    /// What ended programs have left, oldest first; the same again until it is discarded. For another thread,
    /// or the same.
    std::vector<Leftover> leftovers();
    void discard(const Leftover& leftover);

private:
    const std::string folder_, own_;
    std::optional<PlanLock> ownLock_;
    std::map<std::string, PlanLock> claimed_;   ///< by folder
};

}  // namespace hither
