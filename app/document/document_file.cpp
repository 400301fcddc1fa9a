#include <utility>

#include <QFile>
#include <QFileInfo>
#include <QStringList>

#include "app/document/autosave_writer.h"
#include "app/document/document.h"
#include "app/document/unsaved_plans.h"
#include "app/words/storage_words.h"
#include "core/storage/any_form.h"
#include "core/storage/fresh.h"
#include "core/storage/next_revision.h"
#include "core/storage/plan_file.h"
#include "core/storage/plan_save.h"

namespace hither {
namespace {

using Opened = Document::Opened;

std::string bytesOf(const QString& path) { return QFile::encodeName(path).toStdString(); }

Opened failed(const std::vector<StorageError>& problems, const std::string& file) {
    return {Opened::How::failed, QString::fromStdString(sentence(problems, file)), {}};
}

/// Who it was when the lock was asked for: the lock itself may be gone by now.
LockHolder holderIn(const StorageError& fault) {
    const auto fact = [&](const char* key) {
        const auto found = fault.facts.find(key);
        return found == fault.facts.end() ? std::string() : found->second;
    };
    return {fact("host"), fact("user"), fact("since_utc"), {}, {}, std::strtol(fact("pid").c_str(), nullptr, 10)};
}

/// What was done to an older format on the way in.
QString migrated(const PlanRead& read) {
    QStringList lines;
    for (const std::string& line : read.log) lines << QString::fromStdString(line);
    return lines.isEmpty() ? QString() : Document::tr("This file is of an older form: %1. Saving writes the present form; the old file stays as .bak.").arg(lines.join("; "));
}

}  // namespace

Document::Opened Document::open(const QString& given, Access access) {
    const QString path = QFileInfo(given).absoluteFilePath();
    const std::string file = bytesOf(path);
    if (isJsonForm(file)) {
        PlanJsonContext context;
        context.catalogue = catalogue_.get();
        PlanRead read = openAnyForm(file, context);
        if (!read.plan) return failed(read.problems, file);
        startWith(std::move(*read.plan), true);
        return {Opened::How::opened, migrated(read), {}};
    }
    Begin with;
    with.path = path;
    with.readOnly = access == Access::readOnly;
    QString note;
    const bool own = lock_ && path == path_ && lock_->stillHeld();
    if (!with.readOnly && !own) {
        PlanLock::Taken taken = access == Access::takeOver ? PlanLock::takeOver(file) : PlanLock::take(file);
        if (!taken.lock && taken.fault->code == StorageError::Code::lockedByOther)
            return {Opened::How::lockedByOther, QString::fromStdString(sentence(*taken.fault)), holderIn(*taken.fault)};
        with.lock = std::move(taken.lock);
        if (!with.lock || !QFileInfo(path).isWritable()) {
            with.lock.reset();
            with.readOnly = true;
            note = tr("The file or its folder cannot be written to, so the plan is open to read only. Save it in another file to change it there.");
        }
    }
    with.sum = fileSum(file).value_or(std::string());
    PlanRead read = openPlanFile(file);
    if (!read.plan) return failed(read.problems, file);
    if (const QString log = migrated(read); !log.isEmpty()) note = note.isEmpty() ? log : log + "\n" + note;
    if (own && !with.readOnly) with.lock = std::move(lock_);
    begin(std::move(*read.plan), std::move(with));
    return {Opened::How::opened, note, {}};
}

Document::Opened Document::openCopy(const QString& path) {
    const std::string file = bytesOf(QFileInfo(path).absoluteFilePath());
    PlanJsonContext context;
    context.catalogue = catalogue_.get();
    PlanRead read = openAnyForm(file, context);
    if (!read.plan) return failed(read.problems, file);
    Plan plan = std::move(*read.plan);
    plan.id = randomUuid();
    plan.revision = 0;
    plan.made_utc = plan.changed_utc = utcNow();
    plan.history.clear();
    startWith(std::move(plan), false);
    return {Opened::How::opened, migrated(read), {}};
}

Document::Conflict Document::conflict() const {
    if (path_.isEmpty() || readOnly_) return Conflict::none;
    const std::string file = bytesOf(path_);
    if (!(lock_ && lock_->stillHeld()) && PlanLock::holder(file)) return Conflict::takenOver;
    const std::optional<std::string> sum = fileSum(file);
    return sum && *sum != fileSum_ ? Conflict::changedOnDisk : Conflict::none;
}

QString Document::save(Over over) {
    if (path_.isEmpty()) return tr("This plan has no file yet: choose one.");
    if (readOnly_) return tr("This plan is open to read only: save it in another file.");
    endGesture();
    const std::string file = bytesOf(path_);
    if (over == Over::ownFileOnly) {
        switch (conflict()) {
            case Conflict::none: break;
            case Conflict::takenOver: {
                const std::optional<LockHolder> holder = PlanLock::holder(file);
                return tr("%1 on %2 has taken this plan over since it was opened here, so it was not written over. Save yours in another file.")
                    .arg(QString::fromStdString(holder ? holder->user : "somebody"), QString::fromStdString(holder ? holder->host : "another computer"));
            }
            case Conflict::changedOnDisk: return tr("The file has been changed by somebody else since it was opened here, so it was not written over. Save yours in another file.");
        }
        if (!modified() && fileSum(file) == fileSum_) return {};  // it is there as it is here
    }
    if (lock_ && lock_->stillHeld()) return write(path_, std::nullopt);
    PlanLock::Taken taken = over == Over::whateverIsThere ? PlanLock::takeOver(file) : PlanLock::take(file);
    if (!taken.lock) return QString::fromStdString(sentence(*taken.fault)) + "\n" + tr("Save it in another file.");
    return write(path_, std::move(taken.lock));
}

QString Document::saveAs(const QString& given, Over over) {
    const QString path = QFileInfo(given).absoluteFilePath();
    if (path == path_) return save(over);
    if (QFileInfo(path).suffix().compare("hither", Qt::CaseInsensitive) != 0) return tr("The name of a plan's file ends in .hither.");
    endGesture();
    const std::string file = bytesOf(path);
    PlanLock::Taken taken = over == Over::whateverIsThere ? PlanLock::takeOver(file) : PlanLock::take(file);
    if (!taken.lock) return QString::fromStdString(sentence(*taken.fault)) + "\n" + tr("Save it under another name or in another folder.");
    return write(path, std::move(taken.lock));
}

/// `lock`: when it is not the one that the document has.
QString Document::write(const QString& path, std::optional<PlanLock> lock) {
    const std::string file = bytesOf(path);
    auto plan = std::make_shared<const Plan>(nextRevision(*steps_[at_].plan, doneSinceSaved().toStdString()));
    if (const std::vector<StorageError> problems = savePlanFile(*plan, file); !problems.empty())
        return QString::fromStdString(sentence(problems, file)) + "\n" + tr("Nothing is lost: save it under another name or in another folder.");
    discardUnsaved();
    steps_[at_].plan = plan;
    saved_ = plan;
    savedAt_ = at_;
    path_ = path;
    fileSum_ = fileSum(file).value_or(std::string());
    if (lock) lock_ = std::move(lock);
    readOnly_ = false;
    show(std::move(plan));
    emit fileChanged();
    emit historyChanged();
    return {};
}

QString Document::doneSinceSaved() const {
    if (!saved_) return tr("First saved");
    if (!savedAt_) return tr("Changed");
    if (*savedAt_ > at_) return tr("Took back: %1").arg(steps_[at_ + 1].label);
    QStringList labels;
    for (std::size_t i = *savedAt_ + 1; i <= at_; ++i) if (!labels.contains(steps_[i].label)) labels << steps_[i].label;
    if (labels.isEmpty()) return path_.isEmpty() ? tr("First saved") : tr("Saved in another file");
    constexpr qsizetype most = 4;
    const qsizetype more = labels.size() - most;
    const QString shown = labels.mid(0, most).join("; ");
    return more > 0 ? tr("%1; and %n more", nullptr, static_cast<int>(more)).arg(shown) : shown;
}

Document::Opened Document::recover(const Leftover& leftover) {
    if (!leftover.plan) return failed(leftover.problems, leftover.path);
    QString note;
    Begin with;
    with.unsaved = true;
    std::optional<Plan> inFile;
    if (!leftover.file.empty()) {
        PlanLock::Taken taken;
        if (lock_ && lock_->stillHeld() && bytesOf(path_) == leftover.file) taken.lock = std::exchange(lock_, std::nullopt);  // open here already
        else taken = PlanLock::take(leftover.file);
        with.lock = std::move(taken.lock);
        if (with.lock) with.path = QFile::decodeName(leftover.file.c_str());
        else note = QString::fromStdString(sentence(*taken.fault)) + "\n" + tr("The plan goes on without a file: Save asks for one.");
        if (with.lock) inFile = openPlanFile(leftover.file).plan;
        // A file that is not the one this plan came from stays one: saving asks first.
        if (leftover.against == Leftover::Against::sameFile) with.sum = fileSum(leftover.file).value_or(std::string());
    }
    begin(inFile ? *inFile : *leftover.plan, std::move(with));
    if (inFile && !(*inFile == *leftover.plan)) {
        saved_ = steps_.front().plan;
        savedAt_ = 0;
        Plan plan = *leftover.plan;
        takeSaves(plan, *inFile);
        auto kept = std::make_shared<const Plan>(std::move(plan));
        push(tr("Continue with what was kept"), kept);
        show(std::move(kept));
        emit historyChanged();
    }
    // Kept here before it goes there.
    keepNow();
    if (writer_ && writer_->finish().empty()) discardLeftover(leftover);
    return {Opened::How::opened, note, {}};
}

}  // namespace hither
