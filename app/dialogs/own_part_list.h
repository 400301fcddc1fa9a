#pragma once
#include <QDialog>

#include "app/actions/editor_context.h"

class QLabel;
class QListWidget;
class QPushButton;

namespace hither {

/// The person's own parts: to change, to delete, and what of their files could not be read.
class OwnPartList : public QDialog {
    Q_OBJECT

public:
    explicit OwnPartList(const EditorContext& context, QWidget* parent = nullptr);

    /// Deletes without asking; the button asks.
    void remove(const std::string& id);

private:
    void refresh();
    void change();
    void askAndRemove();
    std::string current() const;

    EditorContext context_;
    QListWidget* list_;
    QLabel* words_;
    QPushButton* change_;
    QPushButton* delete_;
};

}  // namespace hither
