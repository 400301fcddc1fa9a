#pragma once
#include <QListView>

#include "app/panels/finding_model.h"

namespace hither {

/// The list of findings: a heading opens and closes its group by a click, Enter, Space, left and right;
/// what is in view stays in its place while rows come and go above it.
class FindingView : public QListView {
    Q_OBJECT

public:
    explicit FindingView(FindingModel& model, QWidget* parent = nullptr);

    /// Shows new results.
    void show(std::shared_ptr<const Analysed> analysed);
    /// Whether rows are being changed by the program and not by the person.
    bool changing() const { return changing_; }
    /// Marks a finding's row as picked, opening its group; an id that is not listed clears the mark.
    void mark(const std::string& id);

    using QWidget::show;

signals:
    void chosen(const QString& finding);     ///< the person went to this row
    void entered(const QString& finding);    ///< Enter or a double click on it

protected:
    void currentChanged(const QModelIndex& current, const QModelIndex& previous) override;
    void keyPressEvent(QKeyEvent* event) override;
    void mousePressEvent(QMouseEvent* event) override;
    void mouseDoubleClickEvent(QMouseEvent* event) override;
    void resizeEvent(QResizeEvent* event) override;
    void changeEvent(QEvent* event) override;

private:
    const FindingRow* currentRow() const;
    void setOpen(const FindingRow& heading, bool open);
    template <class Change> void keepingPlace(Change change);

    FindingModel& model_;
    bool changing_ = false;
};

}  // namespace hither
