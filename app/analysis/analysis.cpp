#include "app/analysis/analysis.h"

#include <atomic>
#include <condition_variable>
#include <exception>
#include <functional>
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
    struct Job { quint64 revision = 0; std::string option; std::size_t index = 0; std::shared_ptr<const Plan> plan; std::shared_ptr<const Catalogue> catalogue; };

    Worker(std::shared_ptr<const Shipped> shipped, Checks checks, std::function<void(std::shared_ptr<const Analysed>)> done)
        : shipped_(std::move(shipped)), checks_(std::move(checks)), done_(std::move(done)), thread_([this] { run(); }) {}
    ~Worker() {
        {
            std::lock_guard guard(mutex_);
            ending_ = true;
            dropped_ = true;
            next_.reset();
        }
        wake_.notify_one();
        thread_.join();
    }
    void ask(Job job) {
        {
            std::lock_guard guard(mutex_);
            // What is being judged is worth finishing when it is an earlier state of the same: it is newer than what is shown.
            if (job.option != judging_.option || !judging_.plan || job.plan->id != judging_.plan->id) dropped_ = true;
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
                judging_ = {};
                wake_.wait(lock, [&] { return ending_ || next_; });
                if (ending_) return;
                job = std::move(*next_);
                next_.reset();
                judging_ = job;
                dropped_ = false;
            }
            auto out = std::make_shared<Analysed>();
            out->revision = job.revision;
            out->option = job.option;
            out->plan = job.plan;
            try {
                judge(job, *out);
            } catch (const std::exception& error) {
                out->setup.reset();
                out->findings.clear();
                out->problems.push_back({{}, std::string("the checks stopped: ") + error.what()});
            }
            if (!dropped_) done_(std::move(out));
        }
    }

    void judge(const Job& job, Analysed& out) {
        SetupMade made = makeSetup(*job.plan, job.index, shipped_->body);
        out.problems = std::move(made.problems);
        if (!made.setup) return;
        CheckContext context = contextFor(*job.plan, *shipped_);
        context.catalogue = job.catalogue.get();
        context.cancelled = [this] { return dropped_.load(); };
        out.findings = checks_(*made.setup, context);
        out.setup = std::make_shared<const Setup>(std::move(*made.setup));
    }

    std::shared_ptr<const Shipped> shipped_;
    Checks checks_;
    std::function<void(std::shared_ptr<const Analysed>)> done_;
    std::mutex mutex_;
    std::condition_variable wake_;
    std::optional<Job> next_;
    Job judging_;                          ///< plan null: nothing
    bool ending_ = false;
    std::atomic<bool> dropped_{false};     ///< what is being judged is no longer wanted
    std::thread thread_;
};

Analysis::Analysis(Document& document, ViewState& view, std::shared_ptr<const Shipped> shipped, QObject* parent, Checks checks)
    : QObject(parent), document_(document), view_(view), shipped_(std::move(shipped)), catalogue_(std::make_shared<const Catalogue>(shipped_->catalogue)) {
    worker_ = std::make_unique<Worker>(shipped_, std::move(checks), [this](std::shared_ptr<const Analysed> result) {
        QMetaObject::invokeMethod(this, [this, result = std::move(result)] {
            take(std::move(result));
        }, Qt::QueuedConnection);
    });
    connect(&document_, &Document::changed, this, &Analysis::request);
    connect(&view_, &ViewState::optionChanged, this, &Analysis::request);
    request();
}

Analysis::~Analysis() { worker_.reset(); }

/// An earlier revision than the document's is better than none, but never one that is older than what is
/// shown, of another option, or of another plan.
void Analysis::take(std::shared_ptr<const Analysed> result) {
    if (result->option != view_.option() || result->plan->id != document_.plan().id) return;
    if (latest_ && result->revision < latest_->revision) return;
    latest_ = std::move(result);
    emit analysed();
}

void Analysis::catalogueChanged() {
    catalogue_ = std::make_shared<const Catalogue>(shipped_->catalogue);
    asked_ = {~quint64{0}, {}};
    request();
}

void Analysis::request() {
    const int index = view_.optionIndex();
    const quint64 revision = document_.revision();
    if (asked_ == std::pair(revision, view_.option())) return;  // told of the same twice
    asked_ = {revision, view_.option()};
    if (index < 0) {
        auto empty = std::make_shared<Analysed>();
        empty->revision = revision;
        empty->plan = document_.shared();
        latest_ = std::move(empty);
        emit analysed();
        return;
    }
    worker_->ask({revision, view_.option(), static_cast<std::size_t>(index), document_.shared(), catalogue_});
    if (latest_ && (latest_->option != view_.option() || latest_->plan->id != document_.plan().id)) {
        latest_.reset();
        emit analysed();
    }
}

const Analysis::Made& Analysis::made() const {
    if (made_ && made_->revision == document_.revision() && made_->option == view_.option()) return *made_;
    made_ = std::make_unique<Made>();
    made_->revision = document_.revision();
    made_->option = view_.option();
    try {
        make(*made_);
    } catch (const std::exception& error) {
        made_->setup.reset();
        made_->situation.reset();
        made_->problems.push_back({{}, std::string("setting up stopped: ") + error.what()});
    }
    return *made_;
}

void Analysis::make(Made& out) const {
    const Plan& plan = document_.plan();
    if (const int index = view_.optionIndex(); index >= 0) {
        SetupMade setup = makeSetup(plan, static_cast<std::size_t>(index), shipped_->body);
        out.problems = std::move(setup.problems);
        if (setup.setup) {
            out.setup = std::make_shared<const Setup>(std::move(*setup.setup));
            out.situation = std::shared_ptr<const Situation>(out.setup, &out.setup->situation);
            return;
        }
    }
    SituationMade situation = makeSituation(plan.supports, plan.person, plan.sites, shipped_->body);
    if (situation.situation) out.situation = std::make_shared<const Situation>(std::move(*situation.situation));
    else if (out.problems.empty())
        for (const SituationProblem& p : situation.problems) out.problems.push_back({p.where, p.what});
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
