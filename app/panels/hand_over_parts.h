#pragma once
#include <QWidget>

#include "app/actions/editor_context.h"
#include "app/panels/hand_over_rows.h"

class QLabel;
class QLineEdit;
class QPushButton;
class QTableView;

namespace hither {

class ChoiceBox;

/// What has to be at hand to build the option in view, or all of them: parts, prices, tools, extra items; to
/// change prices in place, to add extra items, and to save the list for other programs.
class HandOverParts : public QWidget {
    Q_OBJECT

public:
    explicit HandOverParts(const EditorContext& context, QWidget* parent = nullptr);

    const PartsList& list() const { return rows_.list(); }
    /// Saves the list as CSV, or as JSON when the name ends so. Empty when saved, otherwise why not.
    QString saveList(const QString& path) const;

protected:
    void changeEvent(QEvent* event) override;
    void resizeEvent(QResizeEvent* event) override;

private:
    void refresh();
    void fitTable();
    void takePrice(int row, const QString& text);
    void saveListAs(const QString& suffix, const QString& filter);
    void editExtra(bool add);
    void removeExtra();
    void showFigures();
    const PartsRow* current() const;
    void say(const QString& words);

    EditorContext context_;
    HandOverRows rows_;
    ChoiceBox* which_;
    QTableView* table_;
    QLabel *totals_, *notPriced_, *tools_, *said_;
    QLineEdit* initials_;
    QPushButton *figures_, *change_, *remove_;
    bool waitingForInitials_ = false;
    int waitingRow_ = -1;
    QString waitingText_;
};

}  // namespace hither
