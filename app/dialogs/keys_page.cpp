#include "app/dialogs/keys_page.h"

#include <algorithm>

#include <QDialogButtonBox>
#include <QHeaderView>
#include <QLabel>
#include <QLineEdit>
#include <QPushButton>
#include <QTableWidget>
#include <QVBoxLayout>

#include "app/dialogs/dialog_text.h"

namespace hither {

KeysPage::KeysPage(const ActionTable& table, QWidget* parent) : QDialog(parent), commands_(table) {
    setWindowTitle(tr("Commands and their keys"));
    auto* column = new QVBoxLayout(this);
    auto* label = new QLabel(tr("&Show commands with these words"), this);
    auto* field = new QLineEdit(this);
    field->setClearButtonEnabled(true);
    label->setBuddy(field);
    column->addWidget(label);
    column->addWidget(field);
    rows_ = new QTableWidget(0, 3, this);
    rows_->setHorizontalHeaderLabels({tr("Command"), tr("Keys"), tr("What it does")});
    rows_->setAccessibleName(tr("Commands and their keys"));
    rows_->verticalHeader()->hide();
    rows_->horizontalHeader()->setSectionResizeMode(0, QHeaderView::Interactive);
    rows_->horizontalHeader()->setSectionResizeMode(1, QHeaderView::ResizeToContents);
    rows_->horizontalHeader()->setSectionResizeMode(2, QHeaderView::Stretch);
    rows_->horizontalHeader()->setDefaultAlignment(Qt::AlignLeft | Qt::AlignVCenter);
    rows_->setEditTriggers(QAbstractItemView::NoEditTriggers);
    rows_->setSelectionBehavior(QAbstractItemView::SelectRows);
    rows_->setSelectionMode(QAbstractItemView::SingleSelection);
    rows_->setTabKeyNavigation(false);
    rows_->setWordWrap(true);
    rows_->setTextElideMode(Qt::ElideNone);
    rows_->setHorizontalScrollBarPolicy(Qt::ScrollBarAlwaysOff);
    rows_->setVerticalScrollMode(QAbstractItemView::ScrollPerPixel);
    rows_->setShowGrid(false);
    rows_->setAlternatingRowColors(true);
    column->addWidget(rows_, 1);
    auto* buttons = new QDialogButtonBox(QDialogButtonBox::Close, this);
    connect(buttons, &QDialogButtonBox::rejected, this, &QDialog::reject);
    column->addWidget(buttons);
    connect(field, &QLineEdit::textChanged, this, &KeysPage::showMatching);
    sizeByText(*this, 96, 32);
    showMatching({});
    roomyButtons(*this);
    field->setFocus();
}

void KeysPage::showMatching(const QString& typed) {
    // In the table's order, groups together, those with keys and without alike.
    std::vector<const ActionEntry*> found = commands_.matching(typed);
    std::sort(found.begin(), found.end());
    rows_->setRowCount(static_cast<int>(found.size()));
    for (int row = 0; row < rows_->rowCount(); ++row) {
        const ActionEntry& e = *found[static_cast<std::size_t>(row)];
        const QString keys = e.keys.toString(QKeySequence::NativeText);
        const QString texts[] = {e.words, keys.isEmpty() ? tr("none") : keys, e.help};
        for (int i = 0; i < 3; ++i) {
            auto* item = new QTableWidgetItem(texts[i]);
            item->setTextAlignment(Qt::AlignLeft | Qt::AlignVCenter);
            if (i == 1 && keys.isEmpty()) item->setForeground(palette().placeholderText());
            if (i == 0) item->setFont(boldFont(rows_->font()));
            rows_->setItem(row, i, item);
        }
    }
    fitRows();
}

void KeysPage::fitRows() {
    rows_->setColumnWidth(0, rows_->viewport()->width() * 2 / 5);
    rows_->resizeRowsToContents();
    const int least = std::max(24, rows_->fontMetrics().height() * 3 / 2);
    for (int row = 0; row < rows_->rowCount(); ++row) rows_->setRowHeight(row, std::max(least, rows_->rowHeight(row) + rows_->fontMetrics().height() / 2));
}

void KeysPage::resizeEvent(QResizeEvent* event) {
    QDialog::resizeEvent(event);
    QMetaObject::invokeMethod(this, &KeysPage::fitRows, Qt::QueuedConnection);  // when the layout has given the width
}

}  // namespace hither
