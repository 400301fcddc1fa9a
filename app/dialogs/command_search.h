#pragma once
#include <QDialog>

#include "app/actions/action_table.h"

class QLabel;
class QLineEdit;
class QListView;

namespace hither {

class CommandModel;

/// Finds a command by any of its words and runs it: type, up and down, Enter. The command runs after the dialog
/// has closed, so that what it opens is not below it.
class CommandSearch : public QDialog {
    Q_OBJECT

public:
    explicit CommandSearch(const ActionTable& table, QWidget* parent = nullptr);

protected:
    bool eventFilter(QObject* watched, QEvent* event) override;

private:
    void match(const QString& typed);
    void run(const QModelIndex& index);
    void step(int by);

    CommandModel* model_;
    QLineEdit* field_;
    QListView* list_;
    QLabel* count_;
};

}  // namespace hither
