#include "app/analysis/analysis.h"

#include <condition_variable>
#include <mutex>
#include <optional>
#include <thread>
#include <utility>

namespace hither {

struct Analysis::Made {
    quint64 revision = 0;
    std::string option;
    std::shared_ptr<const Setup> setup;
    std::shared_ptr<const Situation> situation;
    std::vector<PlanProblem> problems;
};

/// The thread: waits for the newest job, leaves one that has been overtaken.
class Analysis::Worker {
public:
    struct Job { quint64 revision = 0; std::string option; std::size_t index = 0; std::shared_ptr<const Plan> plan; };

    Worker(std::shared_ptr<const Shipped> shipped, std::function<void(std::shared_ptr<const Analysed>)> done)
        : shipped_(std::move(shipped)), done_(std::move(done)), thread_([this] { run(); }) {}
    ~Worker() {
        {
            std::lock_guard guard(mutex_);
            ending_ = true;
            next_.reset();
        }
        wake_.notify_one();
        thread_.join();
    }
    void ask(Job job) {
        {
            std::lock_guard guard(mutex_);
            next_ = std::move(job);
        }
        wake_.notify_one();
    }

private:
    void run() {
        for (;;) {
            Job job;
            {
                std::unique_lock lock(mutex_);
                wake_.wait(lock, [&] { return ending_ || next_; });
                if (ending_) return;
                job = std::move(*next_);
                next_.reset();
            }
            auto out = std::make_shared<Analysed>();
            out->revision = job.revision;
            out->option = job.option;
            out->plan = job.plan;
            SetupMade made = makeSetup(*job.plan, job.index, shipped_->body);
            out->problems = std::move(made.problems);
            if (made.setup) {
                CheckContext context = contextFor(*job.plan, *shipped_);
                context.cancelled = [this] {
                    std::lock_guard guard(mutex_);
                    return ending_;
                };
                out->findings = checkAll(*made.setup, context);
                out->setup = std::make_shared<const Setup>(std::move(*made.setup));
            }
            done_(std::move(out));
        }
    }

    std::shared_ptr<const Shipped> shipped_;
    std::function<void(std::shared_ptr<const Analysed>)> done_;
    std::mutex mutex_;
    std::condition_variable wake_;
    std::optional<Job> next_;
    bool ending_ = false;
    std::thread thread_;
};

Analysis::Analysis(Document& document, ViewState& view, std::shared_ptr<const Shipped> shipped, QObject* parent)
    : QObject(parent), document_(document), view_(view), shipped_(std::move(shipped)) {
    worker_ = std::make_unique<Worker>(shipped_, [this](std::shared_ptr<const Analysed> result) {
        QMetaObject::invokeMethod(this, [this, result = std::move(result)] {
            if (latest_ && result->revision < latest_->revision) return;
            latest_ = result;
            emit analysed();
        }, Qt::QueuedConnection);
    });
    connect(&document_, &Document::changed, this, &Analysis::request);
    connect(&view_, &ViewState::optionChanged, this, &Analysis::request);
    request();
}

Analysis::~Analysis() { worker_.reset(); }

void Analysis::request() {
    const int index = view_.optionIndex();
    if (index < 0) {
        auto empty = std::make_shared<Analysed>();
        empty->revision = document_.revision();
        empty->plan = document_.shared();
        latest_ = std::move(empty);
        emit analysed();
        return;
    }
    worker_->ask({document_.revision(), view_.option(), static_cast<std::size_t>(index), document_.shared()});
}

const Analysis::Made& Analysis::made() const {
    if (made_ && made_->revision == document_.revision() && made_->option == view_.option()) return *made_;
    made_ = std::make_unique<Made>();
    made_->revision = document_.revision();
    made_->option = view_.option();
    const Plan& plan = document_.plan();
    if (const int index = view_.optionIndex(); index >= 0) {
        SetupMade setup = makeSetup(plan, static_cast<std::size_t>(index), shipped_->body);
        made_->problems = std::move(setup.problems);
        if (setup.setup) {
            made_->setup = std::make_shared<const Setup>(std::move(*setup.setup));
            made_->situation = std::shared_ptr<const Situation>(made_->setup, &made_->setup->situation);
            return *made_;
        }
    }
    SituationMade situation = makeSituation(plan.supports, plan.person, plan.sites, shipped_->body);
    if (situation.situation) made_->situation = std::make_shared<const Situation>(std::move(*situation.situation));
    else if (made_->problems.empty())
        for (const SituationProblem& p : situation.problems) made_->problems.push_back({p.where, p.what});
    return *made_;
}

std::shared_ptr<const Setup> Analysis::setup() const { return made().setup; }
std::shared_ptr<const Situation> Analysis::situation() const { return made().situation; }
const std::vector<PlanProblem>& Analysis::problems() const { return made().problems; }

bool Analysis::upToDate() const { return latest_ && latest_->revision == document_.revision() && latest_->option == view_.option(); }

const Finding* Analysis::finding(const QString& id) const {
    if (!latest_ || id.isEmpty()) return nullptr;
    const std::string key = id.toStdString();
    for (const Finding& f : latest_->findings) if (f.id == key) return &f;
    return nullptr;
}

}  // namespace hither
