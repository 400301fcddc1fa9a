#include "app/dialogs/part_figures_dialog.h"

#include <QDialogButtonBox>
#include <QLabel>
#include <QPushButton>
#include <QVBoxLayout>

#include "app/dialogs/own_part_dialog.h"
#include "app/dialogs/part_figures_grid.h"
#include "app/dialogs/part_figures_who.h"
#include "app/dialogs/part_figures_words.h"
#include "core/plan/edits/part_figures.h"

namespace hither {

PartFiguresDialog::PartFiguresDialog(const EditorContext& context, std::string part, const std::string& place, QWidget* parent)
    : QDialog(parent), context_(context), part_(std::move(part)) {
    auto* column = new QVBoxLayout(this);
    auto* about = new QLabel(tr("A figure typed here counts as measured and is used wherever this plan uses the part."), this);
    about->setWordWrap(true);
    column->addWidget(about);
    grid_ = new PartFiguresGrid(this);
    grid_->setInitials(knownInitials(context_.document.plan()));
    column->addWidget(grid_, 1);
    why_ = new QLabel(this);
    why_->setWordWrap(true);
    why_->setTextFormat(Qt::PlainText);
    why_->hide();
    column->addWidget(why_);
    auto* buttons = new QDialogButtonBox(QDialogButtonBox::Close, this);
    QPushButton* own = buttons->addButton(tr("Copy as my own part …"), QDialogButtonBox::ActionRole);
    // Enter in a field takes the figure; it must press no button.
    for (QAbstractButton* b : buttons->buttons()) static_cast<QPushButton*>(b)->setAutoDefault(false);
    connect(own, &QPushButton::clicked, this, &PartFiguresDialog::copyAsOwn);
    connect(buttons, &QDialogButtonBox::rejected, this, &QDialog::reject);
    column->addWidget(buttons);
    connect(grid_, &PartFiguresGrid::measured, this, [this](const QString& at, double value, const QString& source) {
        const Part* p = context_.document.plan().part(part_);
        if (!p) return;
        why_->hide();
        context_.document.apply(tr("Measure %1: %2").arg(QString::fromStdString(p->name), figureWords(*p, at.toStdString()).name),
                                useMeasuredFigure(context_.document.plan(), part_, at.toStdString(), value, source.toStdString()));
    });
    connect(&context_.document, &Document::refused, this, [this](const QString& why) {
        why_->setText(why);
        why_->show();
        refresh();
    });
    connect(&context_.document, &Document::changed, this, &PartFiguresDialog::refresh);
    refresh();
    grid_->focusOn(place);
    const int em = fontMetrics().averageCharWidth();
    resize(em * 84, em * 84);
}

void PartFiguresDialog::refresh() {
    const Part* part = context_.document.plan().part(part_);
    if (!part) return reject();
    setWindowTitle(tr("Figures of %1").arg(QString::fromStdString(part->name)));
    grid_->showPart(*part, context_.document.plan().display);
}

void PartFiguresDialog::copyAsOwn() {
    const Part* part = context_.document.plan().part(part_);
    if (!part) return;
    OwnPartDialog dialog(*part, {}, context_.shipped->catalogue, context_.document.plan().display, this);
    dialog.exec();
}

}  // namespace hither
