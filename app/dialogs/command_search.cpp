#include "app/dialogs/command_search.h"

#include <QAction>
#include <QKeyEvent>
#include <QLabel>
#include <QLineEdit>
#include <QListView>
#include <QVBoxLayout>

#include "app/dialogs/command_list.h"
#include "app/dialogs/dialog_text.h"

namespace hither {

CommandSearch::CommandSearch(const ActionTable& table, QWidget* parent) : QDialog(parent), model_(new CommandModel(table, this)) {
    setWindowTitle(tr("Find a command"));
    auto* column = new QVBoxLayout(this);
    auto* label = new QLabel(tr("What do you want to &do?"), this);
    column->addWidget(label);
    field_ = new QLineEdit(this);
    field_->setPlaceholderText(tr("Words of the command, in any order"));
    field_->setClearButtonEnabled(true);
    field_->setAccessibleDescription(tr("Up and down choose, Enter does it"));
    label->setBuddy(field_);
    field_->installEventFilter(this);
    column->addWidget(field_);
    list_ = new QListView(this);
    list_->setModel(model_);
    list_->setItemDelegate(new CommandDelegate(list_));
    list_->setAccessibleName(tr("Commands found"));
    list_->setResizeMode(QListView::Adjust);
    list_->setHorizontalScrollBarPolicy(Qt::ScrollBarAlwaysOff);
    list_->setVerticalScrollMode(QListView::ScrollPerPixel);
    column->addWidget(list_, 1);
    count_ = quietParagraph({}, this);
    column->addWidget(count_);
    connect(field_, &QLineEdit::textChanged, this, &CommandSearch::match);
    connect(field_, &QLineEdit::returnPressed, this, [this] { run(list_->currentIndex()); });
    connect(list_, &QListView::activated, this, &CommandSearch::run);
    connect(list_, &QListView::clicked, this, &CommandSearch::run);
    match({});
    field_->setFocus();
    sizeByText(*this, 70, 26);
}

void CommandSearch::match(const QString& typed) {
    model_->find(typed);
    list_->setCurrentIndex(model_->index(model_->firstPossible()));
    list_->scrollToTop();
    const int n = model_->rowCount();
    count_->setText(n == 0 ? tr("No command has these words. Try fewer or others.") : tr("%n command(s). Up and down choose, Enter does it, Esc leaves.", nullptr, n));
}

void CommandSearch::run(const QModelIndex& index) {
    QAction* action = model_->actionAt(index.row());
    if (!action || !action->isEnabled()) return;
    accept();
    QMetaObject::invokeMethod(action, &QAction::trigger, Qt::QueuedConnection);
}

/// To the next row that can be run; it stops at the ends.
void CommandSearch::step(int by) {
    const int from = list_->currentIndex().row();
    int row = from;
    for (int left = std::abs(by); left > 0; --left) {
        const int next = row + (by > 0 ? 1 : -1);
        if (next < 0 || next >= model_->rowCount() || !model_->actionAt(next)->isEnabled()) break;
        row = next;
    }
    if (row != from) list_->setCurrentIndex(model_->index(row));
}

bool CommandSearch::eventFilter(QObject* watched, QEvent* event) {
    if (watched == field_ && event->type() == QEvent::KeyPress) {
        switch (static_cast<QKeyEvent*>(event)->key()) {
            case Qt::Key_Down: step(1); return true;
            case Qt::Key_Up: step(-1); return true;
            case Qt::Key_PageDown: step(5); return true;
            case Qt::Key_PageUp: step(-5); return true;
            default: break;
        }
    }
    return QDialog::eventFilter(watched, event);
}

}  // namespace hither
