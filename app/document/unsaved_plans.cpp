#include "app/document/unsaved_plans.h"

#include <algorithm>
#include <filesystem>
#include <utility>

#include "core/storage/fresh.h"

namespace hither {
namespace {

namespace fs = std::filesystem;

bool holdsPlan(const std::string& folder) {
    std::error_code ignored;
    for (fs::directory_iterator it(folder, ignored), end; !ignored && it != end; it.increment(ignored))
        if (it->path().extension() == ".hither" && it->path().filename().string().front() != '.') return true;
    return false;
}

/// With notes and halves of files that nobody will finish.
void removeIfWithoutPlan(const std::string& folder) {
    std::error_code ignored;
    if (!holdsPlan(folder)) fs::remove_all(folder, ignored);
}

}  // namespace

UnsavedPlans::UnsavedPlans(std::string folder) : folder_(std::move(folder)), own_(folder_ + "/program-" + randomUuid()) {}

UnsavedPlans::~UnsavedPlans() {
    removeIfWithoutPlan(own_);
    for (const auto& [folder, lock] : claimed_) removeIfWithoutPlan(folder);
}

std::vector<StorageError> UnsavedPlans::keep(const Plan& plan, const std::string& file, const std::string& fileSum) {
    if (!ownLock_) {
        std::error_code failed;
        fs::create_directories(folder_, failed);
        if (failed) return {StorageError{StorageError::Code::cannotWrite, folder_, {}, {{"found", failed.message()}, {"allowed", "a folder that can be made"}}}};
        PlanLock::Taken taken = PlanLock::take(own_);
        if (!taken.lock) return {*taken.fault};
        ownLock_ = std::move(taken.lock);
    }
    return Autosave(own_).keep(plan, file, fileSum);
}

void UnsavedPlans::discard(const Plan& plan, const std::string& file) {
    Autosave(own_).discard(plan, file);
}

std::vector<Leftover> UnsavedPlans::leftovers() {
    std::vector<std::string> folders;
    std::error_code ignored;
    for (fs::directory_iterator it(folder_, ignored), end; !ignored && it != end; it.increment(ignored))
        if (it->is_directory(ignored) && it->path().filename().string().rfind("program-", 0) == 0) folders.push_back(it->path().string());
    std::sort(folders.begin(), folders.end());
    std::vector<Leftover> out;
    for (const std::string& folder : folders) {
        if (folder == own_) continue;
        if (!claimed_.count(folder)) {
            PlanLock::Taken taken = PlanLock::take(folder);
            if (!taken.lock) continue;  // its program lives, or another one offers what it left
            claimed_.emplace(folder, std::move(*taken.lock));
        }
        std::vector<Leftover> left = Autosave(folder).leftovers();
        if (left.empty()) {
            removeIfWithoutPlan(folder);
            claimed_.erase(folder);
        }
        std::move(left.begin(), left.end(), std::back_inserter(out));
    }
    std::stable_sort(out.begin(), out.end(), [](const Leftover& a, const Leftover& b) { return a.saved_utc < b.saved_utc; });
    return out;
}

void UnsavedPlans::discard(const Leftover& leftover) {
    const std::string folder = fs::path(leftover.path).parent_path().string();
    if (!claimed_.count(folder)) return;  // another program's
    Autosave(folder).discard(leftover);
    if (holdsPlan(folder)) return;
    removeIfWithoutPlan(folder);
    claimed_.erase(folder);
}

}  // namespace hither
