#pragma once
#include <QWidget>

#include "app/actions/editor_context.h"

class QLabel;
class QLineEdit;
class QPlainTextEdit;
class QPushButton;

namespace hither {

/// Accepting a finding with a note and initials, and withdrawing that. It stays a finding with its verdict.
class FindingAccept : public QWidget {
    Q_OBJECT

public:
    explicit FindingAccept(const EditorContext& context, QWidget* parent = nullptr);

    /// What is being typed stays while it is the same finding.
    void showFor(const Finding& finding);

private:
    void accept();
    void withdraw();

    EditorContext context_;
    std::string finding_;
    QLabel* words_;
    QPushButton* withdraw_;
    QWidget* form_;
    QPlainTextEdit* note_;
    QLineEdit* initials_;
    QLabel* why_;
};

}  // namespace hither
