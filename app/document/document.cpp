#include "app/document/document.h"

#include <utility>

#include <QFileInfo>

#include "app/words/storage_words.h"
#include "core/storage/plan_file.h"
#include "core/storage/plan_save.h"

namespace hither {

Document::Document(QString autosaveFolder, QObject* parent) : QObject(parent), autosaveFolder_(std::move(autosaveFolder)) {
    now_ = std::make_shared<const Plan>();
    saved_ = now_;
    steps_.push_back({QString(), now_});
}

Document::~Document() = default;

void Document::show(std::shared_ptr<const Plan> plan) {
    now_ = std::move(plan);
    emit changed(++revision_);
}

void Document::push(const QString& label, std::shared_ptr<const Plan> plan) {
    steps_.erase(steps_.begin() + static_cast<std::ptrdiff_t>(at_) + 1, steps_.end());
    steps_.push_back({label, std::move(plan)});
    at_ = steps_.size() - 1;
}

bool Document::apply(const QString& label, const Edited& edited) {
    endGesture();
    if (!edited) {
        emit refused(QString::fromStdString(edited.whyNot));
        return false;
    }
    if (*edited.plan == *now_) return true;
    auto plan = std::make_shared<const Plan>(*edited.plan);
    push(label, plan);
    show(std::move(plan));
    emit historyChanged();
    return true;
}

void Document::beginGesture(const QString& label) {
    endGesture();
    gesture_ = now_;
    gestureLabel_ = label;
}

bool Document::preview(const Edited& edited) {
    if (!gesture_ || !edited) return false;
    if (*edited.plan == *now_) return true;
    show(std::make_shared<const Plan>(*edited.plan));
    return true;
}

void Document::endGesture() {
    if (!gesture_) return;
    const std::shared_ptr<const Plan> start = std::exchange(gesture_, nullptr);
    if (!(*start == *now_)) push(gestureLabel_, now_);
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

void Document::undo() {
    cancelGesture();
    if (!canUndo()) return;
    show(steps_[--at_].plan);
    emit historyChanged();
}

void Document::redo() {
    cancelGesture();
    if (!canRedo()) return;
    show(steps_[++at_].plan);
    emit historyChanged();
}

bool Document::modified() const { return steps_[at_].plan != saved_ && !(saved_ && *steps_[at_].plan == *saved_); }

QString Document::shownName() const {
    if (!plan().title.empty()) return QString::fromStdString(plan().title);
    return path_.isEmpty() ? tr("Plan without a title") : QFileInfo(path_).completeBaseName();
}

void Document::startWith(Plan plan, bool unsaved) {
    gesture_ = nullptr;
    lock_.reset();
    path_.clear();
    fileSum_.clear();
    readOnly_ = false;
    auto value = std::make_shared<const Plan>(std::move(plan));
    steps_.assign(1, {QString(), value});
    at_ = 0;
    saved_ = unsaved ? nullptr : value;
    show(std::move(value));
    emit fileChanged();
    emit historyChanged();
}

Document::Opened Document::open(const QString& path, Access) {
    PlanRead read = openPlanFile(path.toStdString());
    if (!read.plan) return {Opened::How::failed, QString::fromStdString(sentence(read.problems.front())), {}};
    startWith(std::move(*read.plan), false);
    path_ = path;
    emit fileChanged();
    return {Opened::How::opened, {}, {}};
}

QString Document::save() { return saveAs(path_); }

QString Document::saveAs(const QString& path) {
    endGesture();
    const std::vector<StorageError> problems = savePlanFile(plan(), path.toStdString());
    if (!problems.empty()) return QString::fromStdString(sentence(problems.front()));
    path_ = path;
    saved_ = steps_[at_].plan;
    emit fileChanged();
    emit historyChanged();
    return {};
}

QString Document::recover(const Leftover& leftover) {
    if (!leftover.plan) return tr("What was kept cannot be read.");
    startWith(*leftover.plan, true);
    return {};
}

}  // namespace hither
