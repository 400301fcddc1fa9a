#pragma once
#include <QDialog>

#include "app/actions/action_table.h"

class QTableWidget;

namespace hither {

/// Every command with its keys and what it does, made from the one table of commands; a field finds some.
class KeysPage : public QDialog {
    Q_OBJECT

public:
    explicit KeysPage(const ActionTable& table, QWidget* parent = nullptr);

protected:
    void resizeEvent(QResizeEvent* event) override;

private:
    void showMatching(const QString& typed);
    void fitRows();

    const ActionTable& commands_;
    QTableWidget* rows_;
};

}  // namespace hither
