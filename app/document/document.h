#pragma once
#include <memory>
#include <optional>
#include <vector>

#include <QObject>
#include <QString>

#include "core/plan/edits/edited.h"
#include "core/plan/plan.h"
#include "core/storage/autosave.h"
#include "core/storage/plan_lock.h"

namespace hither {

/// The plan that a person works on: its present value, the steps by which it came about, its file,
/// its lock and its autosave. Everything else in the editor reads `plan()` and asks for changes here.
///
/// A step is one edit with the words for undoing it. A gesture (dragging, a slider held) changes the
/// plan many times and becomes one step when it ends; cancelled, it leaves no trace. Whether there is
/// something to save follows from the steps alone: undoing back to what was saved is "saved" again.
class Document : public QObject {
    Q_OBJECT

public:
    /// `autosaveFolder` empty: no autosave.
    explicit Document(QString autosaveFolder, QObject* parent = nullptr);
    ~Document() override;

    const Plan& plan() const { return *now_; }
    std::shared_ptr<const Plan> shared() const { return now_; }
    /// Counts every change of `plan()`, previews included; results are stamped with it.
    quint64 revision() const { return revision_; }

    /// Takes an edit as one step; a gesture that is going on ends first. False when the edit was
    /// refused: `refused` then tells why.
    bool apply(const QString& label, const Edited& edited);

    void beginGesture(const QString& label);
    /// Shows an edit of `gestureStart()`. False, and nothing changes, when it was refused (quietly:
    /// what a drag passes over on its way is no mistake).
    bool preview(const Edited& edited);
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
    /// changes unless it was opened.
    Opened open(const QString& path, Access access = Access::change);
    /// Empty when saved, otherwise why not.
    QString save();
    QString saveAs(const QString& path);
    /// Continues with an autosaved plan in place of what its file holds.
    QString recover(const Leftover& leftover);

signals:
    void changed(quint64 revision);   ///< plan() has another value
    void historyChanged();            ///< what can be undone or redone, or whether it is modified
    void fileChanged();               ///< another plan, path, lock
    void refused(const QString& why);

private:
    struct Step { QString label; std::shared_ptr<const Plan> plan; };
    void show(std::shared_ptr<const Plan> plan);
    void push(const QString& label, std::shared_ptr<const Plan> plan);

    std::vector<Step> steps_;         ///< steps_[0] is what the work began with
    std::size_t at_ = 0;
    std::shared_ptr<const Plan> saved_;
    std::shared_ptr<const Plan> now_;
    std::shared_ptr<const Plan> gesture_;
    QString gestureLabel_;
    quint64 revision_ = 0;
    QString path_;
    bool readOnly_ = false;
    std::string fileSum_;
    std::optional<PlanLock> lock_;
    QString autosaveFolder_;
};

}  // namespace hither
