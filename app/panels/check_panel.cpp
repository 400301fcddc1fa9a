#include "app/panels/check_panel.h"

#include <QVBoxLayout>

#include "app/dialogs/cautions_dialog.h"
#include "app/dialogs/part_figures_dialog.h"
#include "app/panels/finding_card.h"
#include "app/panels/finding_limits.h"
#include "app/panels/finding_link.h"
#include "app/widgets/fold.h"
#include "app/widgets/words_label.h"
#include "app/words/cautions.h"

namespace hither {

CheckPanel::CheckPanel(const EditorContext& context, QWidget* parent) : QWidget(parent), context_(context) {
    auto* column = new QVBoxLayout(this);
    column->addWidget(new SectionHeading(tr("The finding"), this));
    card_ = new FindingCard(context_, this);
    column->addWidget(card_);

    auto* asked = new Fold(tr("What the checks ask"), false, this);
    asked->inside()->addWidget(new FindingLimits(context_, asked));
    column->addWidget(asked);

    column->addWidget(new SectionHeading(tr("Cautions"), this));
    column->addWidget(wordsLabel(QString::fromStdString(planningAidOnly()), false, this));
    auto* all = new LinkLabel(this);
    all->setText(QString("<a href=\"cautions\">%1</a>").arg(tr("Read all cautions")));
    all->setAccessibleName(tr("Read all cautions"));
    connect(all, &QLabel::linkActivated, this, [this] { CautionsDialog(this).exec(); });
    column->addWidget(all);
    column->addStretch(1);

    connect(card_, &FindingCard::figureWanted, this, [this](const QString& part, const QString& place) {
        auto* dialog = new PartFiguresDialog(context_, part.toStdString(), place.toStdString(), this);
        dialog->setAttribute(Qt::WA_DeleteOnClose);
        dialog->open();
    });
    connect(&context_.analysis, &Analysis::analysed, card_, &FindingCard::refresh);
    connect(&context_.view, &ViewState::findingChanged, card_, &FindingCard::refresh);
    card_->refresh();
}

}  // namespace hither
