#include "app/analysis/ways_finder.h"

#include <exception>
#include <utility>

#include <QMetaObject>

namespace hither {

/// One search. The thread keeps what it works on alive; the finder only tells it to stop.
struct WaysFinder::Run {
    quint64 number = 0;   ///< an answer that was on its way when its search was dropped is told by it
    std::atomic<bool> cancelled{false};
    std::thread thread;
    ~Run() {
        cancelled = true;
        if (thread.joinable()) thread.join();
    }
};

WaysFinder::WaysFinder(std::shared_ptr<const Shipped> shipped, QObject* parent) : QObject(parent), shipped_(std::move(shipped)) {}

WaysFinder::~WaysFinder() { run_.reset(); }

bool WaysFinder::running() const { return run_ != nullptr; }

void WaysFinder::cancel() {
    if (!run_) return;
    run_.reset();
    emit runningChanged();
}

void WaysFinder::find(std::shared_ptr<const Setup> setup, const std::string& mount, const CheckLimits& limits) {
    const bool ran = running();
    run_.reset();
    std::size_t index = 0;
    while (setup && index < setup->mounts.size() && setup->mounts[index].mount.id != mount) ++index;
    if (!setup || !canBringToSite(*setup, index)) {
        if (ran) emit runningChanged();
        return;
    }
    run_ = std::make_shared<Run>();
    run_->number = ++searches_;
    Run* const run = run_.get();  // lives until its thread has ended: ~Run joins it
    run->thread = std::thread([this, run, shipped = shipped_, catalogue = shipped_->catalogue, setup = std::move(setup), mount, limits, index] {
        CheckContext context;
        context.limits = limits;
        context.catalogue = &catalogue;  // a copy: the other one may get more parts meanwhile
        context.materials = &shipped->materials;
        SolveOptions options;
        options.cancelled = [run] { return run->cancelled.load(); };
        std::shared_ptr<const Ways> ways;
        QString why;
        try {
            ways = std::make_shared<const Ways>(findWays(*setup, index, context, options));
        } catch (const std::exception& error) {
            why = QString::fromUtf8(error.what());
        }
        if (run->cancelled) return;
        QMetaObject::invokeMethod(this, [this, number = run->number, mount, ways = std::move(ways), why] {
            if (!run_ || run_->number != number) return;
            run_.reset();
            emit runningChanged();
            if (ways) emit found(mount, ways);
            else emit failed(mount, tr("The search stopped: %1").arg(why));
        }, Qt::QueuedConnection);
    });
    if (!ran) emit runningChanged();
}

}  // namespace hither
