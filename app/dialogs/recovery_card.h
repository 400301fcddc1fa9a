#pragma once
#include <QFrame>

#include "core/storage/autosave.h"

class QLabel;
class QPushButton;
class QVBoxLayout;

namespace hither {

/// One plan that was left unsaved: which, when, what became of its file, what differs; and what to do with it.
/// Discarding is asked once more in the same place.
class RecoveryCard : public QFrame {
    Q_OBJECT

public:
    RecoveryCard(const Leftover& leftover, int number, QWidget* parent);
    bool discarded() const { return discarded_; }
    QPushButton* first() const;   ///< what gets the keyboard

signals:
    void continueWith();
    void discard();

private:
    void addDifferences(const Leftover& leftover, QVBoxLayout* column);
    void askOnceMore(bool ask);

    QPushButton* continue_ = nullptr;
    QPushButton* discard_;
    QPushButton* forGood_;
    QPushButton* not_;
    QLabel* asked_;
    bool discarded_ = false;
};

}  // namespace hither
