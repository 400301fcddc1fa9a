#include "app/dialogs/own_part_list.h"

#include <QDialogButtonBox>
#include <QLabel>
#include <QListWidget>
#include <QMessageBox>
#include <QPushButton>
#include <QVBoxLayout>

#include "app/dialogs/own_part_dialog.h"
#include "app/dialogs/own_part_store.h"

namespace hither {

OwnPartList::OwnPartList(const EditorContext& context, QWidget* parent) : QDialog(parent), context_(context) {
    setWindowTitle(tr("My own parts"));
    auto* column = new QVBoxLayout(this);
    auto* about = new QLabel(tr("Your own parts stand in the catalogue beside the shipped ones. A plan keeps its own copy of each part it uses: changing or deleting one here changes no plan."), this);
    about->setWordWrap(true);
    column->addWidget(about);
    list_ = new QListWidget(this);
    list_->setAccessibleName(tr("My own parts"));
    list_->setWordWrap(true);
    column->addWidget(list_, 1);
    words_ = new QLabel(this);
    words_->setWordWrap(true);
    words_->setTextFormat(Qt::PlainText);
    column->addWidget(words_);
    auto* buttons = new QDialogButtonBox(QDialogButtonBox::Close, this);
    change_ = buttons->addButton(tr("Change …"), QDialogButtonBox::ActionRole);
    delete_ = buttons->addButton(tr("Delete …"), QDialogButtonBox::ActionRole);
    column->addWidget(buttons);
    connect(change_, &QPushButton::clicked, this, &OwnPartList::change);
    connect(list_, &QListWidget::itemActivated, this, &OwnPartList::change);
    connect(delete_, &QPushButton::clicked, this, &OwnPartList::askAndRemove);
    connect(buttons, &QDialogButtonBox::rejected, this, &QDialog::reject);
    connect(list_, &QListWidget::currentRowChanged, this, [this](int row) {
        change_->setEnabled(row >= 0);
        delete_->setEnabled(row >= 0);
    });
    connect(&OwnPartsNotice::get(), &OwnPartsNotice::ownPartsChanged, this, &OwnPartList::refresh);
    refresh();
    const int em = fontMetrics().averageCharWidth();
    resize(em * 64, em * 56);
}

std::string OwnPartList::current() const { return list_->currentItem() ? list_->currentItem()->data(Qt::UserRole).toString().toStdString() : std::string(); }

void OwnPartList::refresh() {
    const std::string was = current();
    const OwnParts own = readOwnParts();
    list_->clear();
    for (const Part& p : own.parts) {
        auto* item = new QListWidgetItem(tr("%1 (%2)").arg(QString::fromStdString(p.name), QString::fromStdString(p.id)), list_);
        item->setData(Qt::UserRole, QString::fromStdString(p.id));
        if (p.id == was) list_->setCurrentItem(item);
    }
    if (!list_->currentItem() && list_->count() > 0) list_->setCurrentRow(0);
    QStringList lines;
    if (own.parts.empty()) lines << tr("None yet. Open the figures of a part in your plan and copy it as your own.");
    for (const std::string& line : own.unread) lines << tr("Cannot be read: %1").arg(QString::fromStdString(line));
    words_->setText(lines.join('\n'));
    words_->setVisible(!lines.isEmpty());
    change_->setEnabled(list_->currentItem());
    delete_->setEnabled(list_->currentItem());
}

void OwnPartList::change() {
    const std::string id = current();
    for (const Part& p : readOwnParts().parts)
        if (p.id == id) {
            OwnPartDialog(p, id, context_.shipped->catalogue, context_.document.plan().display, this).exec();
            return;
        }
}

void OwnPartList::askAndRemove() {
    const std::string id = current();
    if (id.empty()) return;
    const auto answer = QMessageBox::question(this, tr("Delete a part"), tr("Delete your own part “%1”? Plans that use it keep their copy.").arg(list_->currentItem()->text()),
                                              QMessageBox::Yes | QMessageBox::Cancel, QMessageBox::Cancel);
    if (answer == QMessageBox::Yes) remove(id);
}

void OwnPartList::remove(const std::string& id) {
    const QString why = removeOwnPart(id);
    if (!why.isEmpty()) QMessageBox::warning(this, tr("Not deleted"), why);
}

}  // namespace hither
