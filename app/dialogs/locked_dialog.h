#pragma once
#include <QDialog>

#include "core/storage/plan_lock.h"

class QPushButton;
class QWidget;

namespace hither {

/// Somebody has the plan open: who, on which computer, since when; and what to do. Taking over is asked
/// once more, with what it means.
class LockedDialog : public QDialog {
    Q_OBJECT

public:
    enum class Choice { cancel, readOnly, takeOver };
    LockedDialog(const LockHolder& holder, const QString& fileName, QWidget* parent = nullptr);
    Choice choice() const { return choice_; }

private:
    void choose(Choice choice);
    void askOnceMore(bool ask);

    Choice choice_ = Choice::cancel;
    QPushButton* readOnly_;
    QPushButton* takeOver_;
    QPushButton* forGood_;
    QWidget* first_;
    QWidget* sure_;
};

}  // namespace hither
