#include "app/dialogs/cautions_dialog.h"

#include <QDialogButtonBox>
#include <QLabel>
#include <QListWidget>
#include <QPushButton>
#include <QVBoxLayout>

#include "app/dialogs/dialog_text.h"
#include "app/words/cautions.h"

namespace hither {

CautionsDialog::CautionsDialog(QWidget* parent) : QDialog(parent) {
    setWindowTitle(tr("Cautions"));
    auto* column = new QVBoxLayout(this);
    column->setSpacing(fontMetrics().height() * 2 / 3);
    column->addWidget(heading(tr("Before anybody uses it"), this));
    QLabel* aid = paragraph(QString::fromStdString(planningAidOnly()), this);
    aid->setFont(boldFont(aid->font()));
    column->addWidget(aid);
    // A list: it can be walked with the arrow keys and read out line by line.
    auto* list = new QListWidget(this);
    list->setAccessibleName(tr("Cautions"));
    list->setWordWrap(true);
    list->setTextElideMode(Qt::ElideNone);
    list->setHorizontalScrollBarPolicy(Qt::ScrollBarAlwaysOff);
    list->setResizeMode(QListView::Adjust);
    list->setSpacing(fontMetrics().height() / 4);
    for (const std::string& line : cautions()) list->addItem(QString::fromStdString(line));
    list->setCurrentRow(0);
    column->addWidget(list, 1);
    auto* buttons = new QDialogButtonBox(QDialogButtonBox::Close, this);
    connect(buttons, &QDialogButtonBox::rejected, this, &QDialog::reject);
    buttons->button(QDialogButtonBox::Close)->setDefault(true);
    column->addWidget(buttons);
    roomyButtons(*this);
    list->setFocus();
    sizeByText(*this, 76, 28);
}

}  // namespace hither
