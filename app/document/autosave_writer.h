#pragma once
#include <condition_variable>
#include <deque>
#include <functional>
#include <memory>
#include <mutex>
#include <string>
#include <thread>
#include <vector>

#include "app/document/unsaved_plans.h"

namespace hither {

/// Keeps and discards unsaved plans on a thread of its own, in the order asked. A plan that waits to be
/// written gives way to a newer one of the same plan and file.
class AutosaveWriter {
public:
    /// `told` is called on that thread after every writing: what went wrong, or nothing.
    AutosaveWriter(UnsavedPlans& plans, std::function<void(std::vector<StorageError>)> told);
    /// Does first what was asked.
    ~AutosaveWriter();

    void keep(std::shared_ptr<const Plan> plan, const std::string& file, const std::string& fileSum);
    void discard(std::shared_ptr<const Plan> plan, const std::string& file);
    /// Returns when everything asked so far is done: what went wrong with the last writing.
    std::vector<StorageError> finish();

private:
    struct Job { bool keep = false; std::shared_ptr<const Plan> plan; std::string file, fileSum; };
    void ask(Job job);
    void run();

    UnsavedPlans& plans_;
    std::function<void(std::vector<StorageError>)> told_;
    std::mutex mutex_;
    std::condition_variable changed_;
    std::deque<Job> jobs_;
    std::vector<StorageError> last_;
    bool busy_ = false, ending_ = false;
    std::thread thread_;
};

}  // namespace hither
