#include "app/document/autosave_writer.h"

#include <algorithm>
#include <exception>
#include <utility>

namespace hither {

AutosaveWriter::AutosaveWriter(UnsavedPlans& plans, std::function<void(std::vector<StorageError>)> told)
    : plans_(plans), told_(std::move(told)), thread_([this] { run(); }) {}

AutosaveWriter::~AutosaveWriter() {
    {
        std::lock_guard guard(mutex_);
        ending_ = true;
    }
    changed_.notify_all();
    thread_.join();
}

void AutosaveWriter::keep(std::shared_ptr<const Plan> plan, const std::string& file, const std::string& fileSum) { ask({true, std::move(plan), file, fileSum}); }
void AutosaveWriter::discard(std::shared_ptr<const Plan> plan, const std::string& file) { ask({false, std::move(plan), file, {}}); }

void AutosaveWriter::ask(Job job) {
    {
        std::lock_guard guard(mutex_);
        jobs_.erase(std::remove_if(jobs_.begin(), jobs_.end(), [&](const Job& j) { return j.plan->id == job.plan->id && j.file == job.file; }), jobs_.end());
        jobs_.push_back(std::move(job));
    }
    changed_.notify_all();
}

std::vector<StorageError> AutosaveWriter::finish() {
    std::unique_lock lock(mutex_);
    changed_.wait(lock, [this] { return jobs_.empty() && !busy_; });
    return last_;
}

void AutosaveWriter::run() {
    std::unique_lock lock(mutex_);
    for (;;) {
        changed_.wait(lock, [this] { return ending_ || !jobs_.empty(); });
        if (jobs_.empty()) return;
        const Job job = std::move(jobs_.front());
        jobs_.pop_front();
        busy_ = true;
        lock.unlock();
        std::vector<StorageError> problems;
        try {
            if (job.keep) problems = plans_.keep(*job.plan, job.file, job.fileSum);
            else plans_.discard(*job.plan, job.file);
        } catch (const std::exception& error) {
            problems.push_back({StorageError::Code::cannotWrite, job.file, {}, {{"found", error.what()}}});
        }
        if (job.keep) told_(problems);
        lock.lock();
        if (job.keep) last_ = std::move(problems);
        busy_ = false;
        changed_.notify_all();
    }
}

}  // namespace hither
