#include "app/document/document.h"

#include <utility>

#include <QFile>
#include <QFileInfo>
#include <QMetaObject>

#include "app/document/autosave_writer.h"
#include "app/document/unsaved_plans.h"
#include "app/words/storage_words.h"
#include "core/storage/fresh.h"
#include "core/storage/next_revision.h"

namespace hither {
namespace {

using namespace std::chrono_literals;
/// A second less than what is promised: writing takes its time.
constexpr auto soonAfter = 2s;
constexpr auto latestAfter = 15s;

}  // namespace

Document::Document(const QString& autosaveFolder, std::shared_ptr<const Catalogue> catalogue, QObject* parent)
    : QObject(parent), catalogue_(std::move(catalogue)) {
    now_ = std::make_shared<const Plan>();
    saved_ = now_;
    savedAt_ = 0;
    steps_.push_back({QString(), now_});
    if (autosaveFolder.isEmpty()) return;
    unsaved_ = std::make_unique<UnsavedPlans>(QFile::encodeName(autosaveFolder).toStdString());
    writer_ = std::make_unique<AutosaveWriter>(*unsaved_, [this](std::vector<StorageError> problems) {
        QMetaObject::invokeMethod(this, [this, problems = std::move(problems)] {
            // Told once, not with every try.
            if (!problems.empty() && !keepFails_) emit notKept(QString::fromStdString(sentence(problems.front())));
            keepFails_ = !problems.empty();
        }, Qt::QueuedConnection);
    });
    soon_.setSingleShot(true);
    latest_.setSingleShot(true);
    connect(&soon_, &QTimer::timeout, this, &Document::keepNow);
    connect(&latest_, &QTimer::timeout, this, &Document::keepNow);
}

Document::~Document() {
    if (writer_ && (soon_.isActive() || latest_.isActive())) keepNow();
    writer_.reset();
}

void Document::show(std::shared_ptr<const Plan> plan) {
    now_ = std::move(plan);
    emit changed(++revision_);
}

void Document::push(const QString& label, std::shared_ptr<const Plan> plan) {
    steps_.erase(steps_.begin() + static_cast<std::ptrdiff_t>(at_) + 1, steps_.end());
    if (savedAt_ && *savedAt_ >= steps_.size()) savedAt_.reset();
    steps_.push_back({label, std::move(plan)});
    at_ = steps_.size() - 1;
    changeKept();
}

bool Document::refuseToChange() {
    if (!readOnly_) return false;
    emit refused(tr("This plan is open to read only. Save it in another file to change it there."));
    return true;
}

bool Document::apply(const QString& label, Edited edited) {
    endGesture();
    if (refuseToChange()) return false;
    if (!edited) {
        emit refused(QString::fromStdString(edited.whyNot));
        return false;
    }
    if (*edited.plan == *now_) return true;
    auto plan = std::make_shared<const Plan>(std::move(*edited.plan));
    push(label, plan);
    show(std::move(plan));
    emit historyChanged();
    return true;
}

void Document::beginGesture(const QString& label) {
    endGesture();
    if (refuseToChange()) return;
    gesture_ = now_;
    gestureLabel_ = label;
}

bool Document::preview(Edited edited) {
    if (!gesture_ || !edited) return false;
    if (*edited.plan == *now_) return true;
    show(std::make_shared<const Plan>(std::move(*edited.plan)));
    return true;
}

void Document::endGesture() {
    if (!gesture_) return;
    const std::shared_ptr<const Plan> start = std::exchange(gesture_, nullptr);
    if (start != now_ && *start == *now_) now_ = start;  // there and back again: one value, not two alike
    if (start != now_) push(gestureLabel_, now_);
    emit historyChanged();
}

void Document::cancelGesture() {
    if (!gesture_) return;
    std::shared_ptr<const Plan> start = std::exchange(gesture_, nullptr);
    if (start != now_) show(std::move(start));
    emit historyChanged();
}

QString Document::undoLabel() const { return canUndo() ? steps_[at_].label : QString(); }
QString Document::redoLabel() const { return canRedo() ? steps_[at_ + 1].label : QString(); }

void Document::stepTo(std::size_t at) {
    // What belongs to the saves stays as it is now.
    std::shared_ptr<const Plan>& plan = steps_[at].plan;
    if (!sameSaves(*plan, *now_)) {
        Plan copy = *plan;
        takeSaves(copy, *now_);
        plan = std::make_shared<const Plan>(std::move(copy));
    }
    at_ = at;
    show(plan);
    changeKept();
    emit historyChanged();
}

void Document::undo() {
    cancelGesture();
    if (canUndo()) stepTo(at_ - 1);
}

void Document::redo() {
    cancelGesture();
    if (canRedo()) stepTo(at_ + 1);
}

bool Document::modified() const { return savedAt_ != at_ && !(saved_ && *steps_[at_].plan == *saved_); }

QString Document::shownName() const {
    if (!plan().title.empty()) return QString::fromStdString(plan().title);
    return path_.isEmpty() ? tr("Plan without a title") : QFileInfo(path_).completeBaseName();
}

void Document::startWith(Plan plan, bool unsaved) {
    if (plan.id.empty()) plan.id = randomUuid();
    if (plan.made_utc.empty()) plan.made_utc = utcNow();
    if (plan.changed_utc.empty()) plan.changed_utc = plan.made_utc;
    Begin with;
    with.unsaved = unsaved;
    begin(std::move(plan), std::move(with));
}

void Document::begin(Plan plan, Begin with) {
    discardUnsaved();
    gesture_ = nullptr;
    path_ = with.path;
    fileSum_ = with.sum;
    lock_ = std::move(with.lock);
    readOnly_ = with.readOnly;
    auto value = std::make_shared<const Plan>(std::move(plan));
    steps_.assign(1, {QString(), value});
    at_ = 0;
    saved_ = with.unsaved ? nullptr : value;
    savedAt_.reset();
    if (!with.unsaved) savedAt_ = 0;
    show(std::move(value));
    if (with.unsaved) changeKept();
    emit fileChanged();
    emit historyChanged();
}

void Document::changeKept() {
    if (!writer_ || readOnly_) return;
    soon_.start(soonAfter);
    if (!latest_.isActive()) latest_.start(latestAfter);
}

void Document::keepNow() {
    soon_.stop();
    latest_.stop();
    if (!writer_ || readOnly_) return;
    const std::string file = QFile::encodeName(path_).toStdString();
    if (modified()) writer_->keep(steps_[at_].plan, file, fileSum_);
    else writer_->discard(steps_[at_].plan, file);
}

void Document::keepUnsaved() {
    keepNow();
    if (writer_) writer_->finish();
}

void Document::discardUnsaved() {
    soon_.stop();
    latest_.stop();
    if (writer_) writer_->discard(steps_[at_].plan, QFile::encodeName(path_).toStdString());
}

std::vector<Leftover> Document::leftovers() { return unsaved_ ? unsaved_->leftovers() : std::vector<Leftover>{}; }
void Document::discardLeftover(const Leftover& leftover) { if (unsaved_) unsaved_->discard(leftover); }

}  // namespace hither
