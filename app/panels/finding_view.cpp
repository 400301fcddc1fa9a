#include "app/panels/finding_view.h"

#include <QKeyEvent>
#include <QMouseEvent>
#include <QScrollBar>

#include "app/panels/finding_delegate.h"

namespace hither {

FindingView::FindingView(FindingModel& model, QWidget* parent) : QListView(parent), model_(model) {
    setModel(&model_);
    setItemDelegate(new FindingDelegate(this));
    setAccessibleName(tr("Findings"));
    setUniformItemSizes(false);
    setResizeMode(QListView::Adjust);
    setVerticalScrollMode(QAbstractItemView::ScrollPerPixel);
    // Rows are wrapped to the width: a bar that comes and goes would make them change for ever.
    setVerticalScrollBarPolicy(Qt::ScrollBarAlwaysOn);
    setHorizontalScrollBarPolicy(Qt::ScrollBarAlwaysOff);
    setSelectionMode(QAbstractItemView::SingleSelection);
    setEditTriggers(QAbstractItemView::NoEditTriggers);
    setTextElideMode(Qt::ElideNone);
}

/// The row that keeps its place on the screen: the picked one when it is in view, else the topmost.
template <class Change>
void FindingView::keepingPlace(Change change) {
    const QModelIndexList picked = selectionModel()->selectedIndexes();
    QPersistentModelIndex anchor = picked.isEmpty() ? QModelIndex() : picked.front();
    if (!anchor.isValid() || !viewport()->rect().intersects(visualRect(anchor))) anchor = indexAt(QPoint(1, 1));
    const int before = anchor.isValid() ? visualRect(anchor).top() : 0;
    const bool atTop = verticalScrollBar()->value() == 0;
    changing_ = true;
    change();
    changing_ = false;
    if (!anchor.isValid() || atTop) return;
    const int after = visualRect(anchor).top();
    verticalScrollBar()->setValue(verticalScrollBar()->value() + after - before);
}

void FindingView::show(std::shared_ptr<const Analysed> analysed) {
    keepingPlace([&] { model_.show(std::move(analysed)); });
}

void FindingView::mark(const std::string& id) {
    changing_ = true;
    if (const Finding* f = model_.finding(id)) model_.setOpen(f->verdict, true);
    const int row = model_.rowOf(id);
    if (row < 0) {
        selectionModel()->clearSelection();
    } else if (const QModelIndex at = model_.index(row); !selectionModel()->isSelected(at)) {
        selectionModel()->setCurrentIndex(at, QItemSelectionModel::ClearAndSelect);
        scrollTo(at);
    }
    changing_ = false;
}

const FindingRow* FindingView::currentRow() const { return currentIndex().isValid() ? &model_.row(currentIndex().row()) : nullptr; }

void FindingView::setOpen(const FindingRow& heading, bool open) {
    const Verdict verdict = heading.verdict;
    keepingPlace([&] { model_.setOpen(verdict, open); });
}

void FindingView::currentChanged(const QModelIndex& current, const QModelIndex& previous) {
    QListView::currentChanged(current, previous);
    if (changing_ || !current.isValid()) return;
    const FindingRow& row = model_.row(current.row());
    if (row.kind == FindingRow::Kind::finding) emit chosen(QString::fromStdString(row.key));
}

void FindingView::keyPressEvent(QKeyEvent* event) {
    const FindingRow* row = currentRow();
    const int key = event->key();
    const bool enter = key == Qt::Key_Return || key == Qt::Key_Enter;
    if (row && row->kind == FindingRow::Kind::heading && (enter || key == Qt::Key_Space)) return setOpen(*row, !row->open);
    if (row && row->kind == FindingRow::Kind::heading && (key == Qt::Key_Left || key == Qt::Key_Right)) return setOpen(*row, key == Qt::Key_Right);
    if (row && row->kind == FindingRow::Kind::finding && enter) {
        emit entered(QString::fromStdString(row->key));
        return;
    }
    QListView::keyPressEvent(event);
}

void FindingView::mousePressEvent(QMouseEvent* event) {
    const QModelIndex at = indexAt(event->position().toPoint());
    if (at.isValid() && event->button() == Qt::LeftButton && model_.row(at.row()).kind == FindingRow::Kind::heading) {
        selectionModel()->setCurrentIndex(at, QItemSelectionModel::NoUpdate);
        setOpen(model_.row(at.row()), !model_.row(at.row()).open);
        return;
    }
    QListView::mousePressEvent(event);
    // Going to the row that is current already shows it again, when something else was looked at since.
    if (at.isValid() && event->button() == Qt::LeftButton && model_.row(at.row()).kind == FindingRow::Kind::finding)
        emit chosen(QString::fromStdString(model_.row(at.row()).key));
}

void FindingView::mouseDoubleClickEvent(QMouseEvent* event) {
    const QModelIndex at = indexAt(event->position().toPoint());
    QListView::mouseDoubleClickEvent(event);
    if (at.isValid() && event->button() == Qt::LeftButton && model_.row(at.row()).kind == FindingRow::Kind::finding)
        emit entered(QString::fromStdString(model_.row(at.row()).key));
}

void FindingView::resizeEvent(QResizeEvent* event) {
    QListView::resizeEvent(event);
    scheduleDelayedItemsLayout();
}

void FindingView::changeEvent(QEvent* event) {
    QListView::changeEvent(event);
    if (event->type() == QEvent::FontChange || event->type() == QEvent::StyleChange || event->type() == QEvent::PaletteChange) scheduleDelayedItemsLayout();
}

}  // namespace hither
