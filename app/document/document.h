#pragma once
#include <memory>
#include <optional>
#include <vector>

#include <QObject>
#include <QString>
#include <QTimer>

#include "core/catalogue/catalogue.h"
#include "core/plan/edits/edited.h"
#include "core/plan/plan.h"
#include "core/storage/autosave.h"
#include "core/storage/plan_lock.h"

namespace hither {

class AutosaveWriter;
class UnsavedPlans;

/// The plan that a person works on: its present value, the steps by which it came about, its file,
/// its lock and its autosave. Everything else in the editor reads `plan()` and asks for changes here.
///
/// A step is one edit with the words for undoing it. A gesture (dragging, a slider held) changes the
/// plan many times and becomes one step when it ends; cancelled, it leaves no trace. Whether there is
/// something to save follows from the steps alone: undoing back to what was saved is "saved" again.
/// Revision, time of change and history belong to the saves: undoing does not touch them.
///
/// What is not saved is kept on the disk by a thread of its own: within 3 s of the last step and at least
/// every 20 s while steps go on; only whole steps, never a gesture half way.
class Document : public QObject {
    Q_OBJECT

public:
    /// `autosaveFolder` empty: no autosave. `catalogue`: where parts are taken from that a JSON form uses
    /// and does not hold.
    explicit Document(const QString& autosaveFolder, std::shared_ptr<const Catalogue> catalogue = nullptr, QObject* parent = nullptr);
    /// What is not saved stays kept, unless `discardUnsaved` was said.
    ~Document() override;

    const Plan& plan() const { return *now_; }
    std::shared_ptr<const Plan> shared() const { return now_; }
    /// Counts every change of `plan()`, previews included; results are stamped with it.
    quint64 revision() const { return revision_; }

    /// Takes an edit as one step; a gesture that is going on ends first. False when the edit was
    /// refused, or the plan is open to read only: `refused` then tells why.
    bool apply(const QString& label, Edited edited);

    /// Refused when the plan is open to read only: then there is no gesture and `preview` does nothing.
    void beginGesture(const QString& label);
    /// Shows an edit of `gestureStart()`. False, and nothing changes, when it was refused (quietly:
    /// what a drag passes over on its way is no mistake).
    bool preview(Edited edited);
    void endGesture();
    void cancelGesture();
    bool inGesture() const { return gesture_ != nullptr; }
    const QString& gestureLabel() const { return gestureLabel_; }
    /// The plan as it was when the gesture began; the present plan when there is none.
    const Plan& gestureStart() const { return gesture_ ? *gesture_ : *now_; }

    bool canUndo() const { return at_ > 0; }
    bool canRedo() const { return at_ + 1 < steps_.size(); }
    QString undoLabel() const;
    QString redoLabel() const;
    void undo();
    void redo();

    bool modified() const;
    bool readOnly() const { return readOnly_; }
    /// Absolute; empty: the plan has no file yet.
    const QString& path() const { return path_; }
    /// Title of the plan, or the file's name when it has none.
    QString shownName() const;

    /// Starts on another plan without a file. `modified` when it should be saved before it is lost.
    void startWith(Plan plan, bool unsaved);
    /// How a file was opened, or why not, in one line each.
    struct Opened {
        enum class How { opened, lockedByOther, failed } how = How::failed;
        QString words;                      ///< why not; or what a person should know (migrated)
        std::optional<LockHolder> holder;   ///< lockedByOther
    };
    enum class Access { change, readOnly, takeOver };
    /// Opens a plan file or its JSON form (which has no file of its own: Save asks for one). Nothing
    /// changes unless it was opened. A file in a folder that cannot be written to is opened to read only.
    /// Changes of the plan before that are not saved are discarded: ask first.
    Opened open(const QString& path, Access access = Access::change);
    /// Begins a plan of its own, without a file, from what a file holds: a sample.
    Opened openCopy(const QString& path);

    /// What stands in the way of writing over the plan's file.
    enum class Conflict { none, takenOver, changedOnDisk };
    Conflict conflict() const;
    enum class Over { ownFileOnly, whateverIsThere };
    /// Empty when saved, otherwise why not, and then everything is as it was. A file that somebody else
    /// has changed or taken over is written over only when that was said.
    QString save(Over over = Over::ownFileOnly);
    /// Under another name; the plan's file is then that one. The old one stays as it is.
    QString saveAs(const QString& path, Over over = Over::ownFileOnly);

    /// What programs that ended have left unsaved, to be offered.
    std::vector<Leftover> leftovers();
    void discardLeftover(const Leftover& leftover);
    /// Continues with an autosaved plan in place of what its file holds; undoing that step gives what the file
    /// holds. Without its file, or when somebody else has that, it is a plan without a file.
    Opened recover(const Leftover& leftover);
    /// Keeps what is not saved now, and returns when it is on the disk: before the session ends.
    void keepUnsaved();   ///< (`notKept` tells when it could not be)
    /// What is not saved may go: the person said so.
    void discardUnsaved();

signals:
    void changed(quint64 revision);   ///< plan() has another value
    void historyChanged();            ///< what can be undone or redone, or whether it is modified
    void fileChanged();               ///< another plan, path, lock
    void refused(const QString& why);
    void notKept(const QString& why); ///< what is not saved could not be kept on the disk

private:
    struct Step { QString label; std::shared_ptr<const Plan> plan; };
    struct Begin { QString path; std::string sum; std::optional<PlanLock> lock; bool readOnly = false, unsaved = false; };
    void show(std::shared_ptr<const Plan> plan);
    void push(const QString& label, std::shared_ptr<const Plan> plan);
    void stepTo(std::size_t at);
    bool refuseToChange();
    void begin(Plan plan, Begin with);
    QString write(const QString& path, std::optional<PlanLock> lock);
    QString doneSinceSaved() const;
    void changeKept();
    void keepNow();

    std::vector<Step> steps_;         ///< steps_[0] is what the work began with
    std::size_t at_ = 0;
    std::shared_ptr<const Plan> saved_;     ///< what its file holds; null: nothing yet
    std::optional<std::size_t> savedAt_;    ///< the step that was saved, while it can be gone back to
    std::shared_ptr<const Plan> now_;
    std::shared_ptr<const Plan> gesture_;
    QString gestureLabel_;
    quint64 revision_ = 0;
    QString path_;
    bool readOnly_ = false;
    std::string fileSum_;             ///< SHA-256 of the file as it was opened or saved here
    std::optional<PlanLock> lock_;

    std::shared_ptr<const Catalogue> catalogue_;
    std::unique_ptr<UnsavedPlans> unsaved_;
    std::unique_ptr<AutosaveWriter> writer_;
    QTimer soon_, latest_;            ///< since the last step; since the first that is not kept
    bool keepFails_ = false;
};

}  // namespace hither
