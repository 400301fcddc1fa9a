#include "app/dialogs/locked_dialog.h"

#include <algorithm>

#include <QFileInfo>
#include <QLabel>
#include <QPushButton>
#include <QScreen>
#include <QVBoxLayout>

#include "app/dialogs/dialog_text.h"

namespace hither {
namespace {

bool known(const std::string& fact) { return !fact.empty() && fact != "unknown"; }

QString whoWords(const LockHolder& holder) {
    const QString who = known(holder.user) ? QString::fromStdString(holder.user) : LockedDialog::tr("Somebody");
    const QString where = known(holder.host) ? LockedDialog::tr("on the computer “%1”").arg(QString::fromStdString(holder.host)) : LockedDialog::tr("on another computer");
    if (!known(holder.since_utc)) return LockedDialog::tr("%1 has it open %2.").arg(who, where);
    return LockedDialog::tr("%1 has it open %2, since %3.").arg(who, where, localTime(QString::fromStdString(holder.since_utc)));
}

/// Buttons one under the other: long words and large type have room.
QPushButton* button(const QString& words, const QString& help, QVBoxLayout* column) {
    auto* made = new QPushButton(words, column->parentWidget());
    made->setAccessibleDescription(help);
    made->setAutoDefault(true);
    column->addWidget(made);
    return made;
}

}  // namespace

LockedDialog::LockedDialog(const LockHolder& holder, const QString& fileName, QWidget* parent) : QDialog(parent) {
    setWindowTitle(tr("Open elsewhere"));
    auto* column = new QVBoxLayout(this);
    column->setSpacing(fontMetrics().height() * 2 / 3);
    column->addWidget(heading(tr("This plan is open elsewhere"), this));
    column->addWidget(paragraph(breakable(QFileInfo(fileName).fileName()), this));
    const QString who = whoWords(holder);
    column->addWidget(paragraph(who, this));
    setAccessibleDescription(who);

    first_ = new QWidget(this);
    auto* choices = new QVBoxLayout(first_);
    choices->setContentsMargins(0, 0, 0, 0);
    choices->addWidget(quietParagraph(tr("Opened to read only, you see everything and can save a copy under another name."), first_));
    readOnly_ = button(tr("Open to read only"), tr("Shows the plan; changes need a copy under another name"), choices);
    takeOver_ = button(tr("Take over …"), tr("Opens it for changing and takes it away from the other; asks once more"), choices);
    QPushButton* cancel = button(tr("Cancel"), tr("Opens nothing"), choices);
    column->addWidget(first_);

    sure_ = new QWidget(this);
    auto* asked = new QVBoxLayout(sure_);
    asked->setContentsMargins(0, 0, 0, 0);
    const QString warning = tr("Take over only when you know that nobody is working on it: a computer that was switched off, for example. "
                               "Otherwise two people change the same plan, and whoever saves last has to choose whose work stays.");
    asked->addWidget(paragraph(warning, sure_));
    forGood_ = button(tr("Take it over"), warning, asked);
    QPushButton* back = button(tr("Back"), tr("To the choices before"), asked);
    column->addWidget(sure_);
    sure_->hide();
    column->addStretch(1);

    connect(readOnly_, &QPushButton::clicked, this, [this] { choose(Choice::readOnly); });
    connect(takeOver_, &QPushButton::clicked, this, [this] { askOnceMore(true); });
    connect(forGood_, &QPushButton::clicked, this, [this] { choose(Choice::takeOver); });
    connect(back, &QPushButton::clicked, this, [this] { askOnceMore(false); });
    connect(cancel, &QPushButton::clicked, this, &QDialog::reject);
    readOnly_->setDefault(true);
    readOnly_->setFocus();
    markAsNext(*readOnly_);
    roomyButtons(*this);
    fitHeight(*this, 60);
}

void LockedDialog::choose(Choice choice) {
    choice_ = choice;
    accept();
}

void LockedDialog::askOnceMore(bool ask) {
    first_->setVisible(!ask);
    sure_->setVisible(ask);
    // Enter pressed twice must not take over.
    QPushButton* next = ask ? sure_->findChildren<QPushButton*>().last() : takeOver_;
    next->setDefault(true);
    next->setFocus();
    layout()->activate();
    const QSize room = screen()->availableGeometry().size() * 0.94;
    if (const int need = layout()->totalHeightForWidth(width()); need > height()) resize(width(), std::min(room.height(), need));
}

}  // namespace hither
