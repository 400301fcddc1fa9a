#pragma once
#include <QDialog>

#include "core/plan/plan.h"

class QLabel;
class QLineEdit;
class QPlainTextEdit;

namespace hither {

class NumberField;

/// One row of the parts list that is no part of a mount: what, how many, price each, notes.
class ExtraItemDialog : public QDialog {
    Q_OBJECT

public:
    ExtraItemDialog(const ExtraItem& item, const std::string& currency, QWidget* parent = nullptr);

    /// As typed, with the id it came with.
    const ExtraItem& item() const { return item_; }

private:
    void take();

    ExtraItem item_;
    std::string currency_;
    QLineEdit* name_;
    NumberField* count_;
    QLineEdit* price_;
    QPlainTextEdit* notes_;
    QLabel* why_;
};

}  // namespace hither
