#include "app/dialogs/recovery_dialog.h"

#include <algorithm>

#include <QDialogButtonBox>
#include <QLabel>
#include <QPushButton>
#include <QScrollArea>
#include <QVBoxLayout>

#include "app/dialogs/dialog_text.h"
#include "app/dialogs/recovery_card.h"

namespace hither {

RecoveryDialog::RecoveryDialog(const std::vector<Leftover>& leftovers, QWidget* parent) : QDialog(parent) {
    setWindowTitle(tr("Work that was not saved"));
    auto* column = new QVBoxLayout(this);
    column->addWidget(heading(tr("Work that was not saved is still here"), this));
    column->addWidget(paragraph(tr("The program ended with %n plan(s) not saved. Nothing of it is lost unless you discard it.", nullptr, static_cast<int>(leftovers.size())), this));
    auto* inside = new QWidget;
    auto* cards = new QVBoxLayout(inside);
    cards->setContentsMargins(0, 0, 0, 0);
    auto* buttons = new QDialogButtonBox(this);
    QPushButton* later = buttons->addButton(leftovers.size() > 1 ? tr("Keep them for later") : tr("Keep it for later"), QDialogButtonBox::RejectRole);
    later->setAutoDefault(true);
    for (std::size_t i = 0; i < leftovers.size(); ++i) {
        auto* card = new RecoveryCard(leftovers[i], static_cast<int>(i) + 1, inside);
        connect(card, &RecoveryCard::continueWith, this, [this, i] {
            continueWith_ = i;
            accept();
        });
        connect(card, &RecoveryCard::discard, this, [this, later] {
            if (std::all_of(cards_.begin(), cards_.end(), [](const RecoveryCard* c) { return c->discarded(); })) later->setText(tr("Close"));
            later->setFocus();
        });
        cards->addWidget(card);
        cards_.push_back(card);
    }
    cards->addStretch(1);
    column->addWidget(scrolling(inside, this), 1);
    column->addWidget(buttons);
    connect(buttons, &QDialogButtonBox::rejected, this, &QDialog::reject);
    if (!cards_.empty()) {
        cards_.front()->first()->setDefault(true);
        cards_.front()->first()->setFocus();
    }
    roomyButtons(*this);
    sizeByText(*this, 92, 38);
}

std::vector<std::size_t> RecoveryDialog::discarded() const {
    std::vector<std::size_t> out;
    for (std::size_t i = 0; i < cards_.size(); ++i) if (cards_[i]->discarded()) out.push_back(i);
    return out;
}

}  // namespace hither
