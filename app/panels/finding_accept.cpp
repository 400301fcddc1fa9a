#include "app/panels/finding_accept.h"

#include <QLabel>
#include <QLineEdit>
#include <QPlainTextEdit>
#include <QPushButton>
#include <QVBoxLayout>

#include "app/dialogs/part_figures_who.h"
#include "app/panels/finding_button.h"
#include "app/panels/finding_words.h"
#include "core/plan/edits/findings.h"
#include "core/storage/fresh.h"

namespace hither {

FindingAccept::FindingAccept(const EditorContext& context, QWidget* parent) : QWidget(parent), context_(context) {
    auto* column = new QVBoxLayout(this);
    column->setContentsMargins(0, 0, 0, 0);
    words_ = new QLabel(this);
    words_->setWordWrap(true);
    words_->setTextFormat(Qt::PlainText);
    column->addWidget(words_);
    withdraw_ = new QPushButton(tr("Withdraw"), this);
    withdraw_->setAccessibleDescription(tr("The finding is not accepted any longer"));
    column->addWidget(withdraw_, 0, Qt::AlignLeft);
    form_ = new QWidget(this);
    auto* form = new QVBoxLayout(form_);
    form->setContentsMargins(0, 0, 0, 0);
    auto* noteLabel = new QLabel(tr("Why it is acceptable here"), form_);
    note_ = new QPlainTextEdit(form_);
    note_->setTabChangesFocus(true);
    note_->setAccessibleName(noteLabel->text());
    note_->setFixedHeight(note_->fontMetrics().lineSpacing() * 3 + 14);
    noteLabel->setBuddy(note_);
    auto* whoLabel = new QLabel(tr("Your initials"), form_);
    initials_ = new QLineEdit(form_);
    initials_->setMaxLength(40);
    initials_->setMinimumHeight(24);
    initials_->setAccessibleName(whoLabel->text());
    whoLabel->setBuddy(initials_);
    why_ = new QLabel(form_);
    why_->setWordWrap(true);
    why_->hide();
    auto* acceptButton = new WrappedButton(form_);
    acceptButton->setText(tr("Accept with this note"));
    for (QWidget* w : std::initializer_list<QWidget*>{noteLabel, note_, whoLabel, initials_, why_}) form->addWidget(w);
    form->addWidget(acceptButton);
    column->addWidget(form_);
    connect(acceptButton, &QPushButton::clicked, this, &FindingAccept::accept);
    connect(initials_, &QLineEdit::returnPressed, this, &FindingAccept::accept);
    connect(withdraw_, &QPushButton::clicked, this, &FindingAccept::withdraw);
}

void FindingAccept::showFor(const Finding& f) {
    const Plan& plan = context_.document.plan();
    const AcceptedFinding* accepted = acceptanceOf(plan, context_.view.option(), f.id);
    if (f.id != finding_) {
        finding_ = f.id;
        note_->clear();
        why_->hide();
        if (initials_->text().isEmpty()) initials_->setText(knownInitials(plan));
    }
    words_->setText(accepted ? FindingWords::accepted(*accepted) : tr("It keeps its verdict and stays in the list; your note stands beside it."));
    withdraw_->setVisible(accepted);
    form_->setVisible(!accepted);
    setVisible(accepted || f.verdict != Verdict::meets);
}

void FindingAccept::accept() {
    const QString note = note_->toPlainText().trimmed(), who = initials_->text().trimmed();
    QString why;
    if (note.isEmpty()) why = tr("Say why it is acceptable.");
    else if (who.isEmpty()) why = tr("Type your initials.");
    why_->setText(why);
    why_->setVisible(!why.isEmpty());
    if (!why.isEmpty()) return (note.isEmpty() ? static_cast<QWidget*>(note_) : initials_)->setFocus();
    rememberInitials(who);
    const AcceptedFinding accepted{context_.view.option(), finding_, note.toStdString(), who.toStdString(), utcNow()};
    // A setting that is being looked at is not part of the step.
    context_.document.cancelGesture();
    if (context_.document.apply(tr("Accept a finding"), acceptFinding(context_.document.plan(), accepted))) note_->clear();
}

void FindingAccept::withdraw() {
    context_.document.cancelGesture();
    context_.document.apply(tr("Withdraw the acceptance of a finding"), withdrawAcceptance(context_.document.plan(), context_.view.option(), finding_));
}

}  // namespace hither
