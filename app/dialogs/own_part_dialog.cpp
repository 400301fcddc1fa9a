#include "app/dialogs/own_part_dialog.h"

#include <QDialogButtonBox>
#include <QLabel>
#include <QLineEdit>
#include <QPushButton>
#include <QVBoxLayout>

#include "app/dialogs/own_part_store.h"
#include "app/dialogs/part_figures_grid.h"
#include "app/dialogs/part_figures_who.h"
#include "core/plan/edits/part_figures.h"

namespace hither {

OwnPartDialog::OwnPartDialog(const Part& part, const std::string& replacing, const Catalogue& catalogue, UnitSystem units, QWidget* parent)
    : QDialog(parent), part_(part), replacing_(replacing), catalogue_(catalogue), units_(units) {
    setWindowTitle(replacing.empty() ? tr("Copy as my own part") : tr("Change my own part"));
    auto* column = new QVBoxLayout(this);
    const auto field = [&](const QString& words) {
        auto* label = new QLabel(words, this);
        auto* edit = new QLineEdit(this);
        edit->setMinimumHeight(24);
        edit->setMaxLength(200);
        edit->setAccessibleName(words);
        label->setBuddy(edit);
        column->addWidget(label);
        column->addWidget(edit);
        return edit;
    };
    name_ = field(tr("Name"));
    id_ = field(tr("Short name for files (a to z, 0 to 9, hyphens)"));
    id_->setMaxLength(64);
    grid_ = new PartFiguresGrid(this);
    grid_->setInitials(knownInitials({}));
    column->addWidget(grid_, 1);
    why_ = new QLabel(this);
    why_->setWordWrap(true);
    why_->setTextFormat(Qt::PlainText);
    why_->hide();
    column->addWidget(why_);
    auto* buttons = new QDialogButtonBox(QDialogButtonBox::Save | QDialogButtonBox::Cancel, this);
    for (QAbstractButton* b : buttons->buttons()) static_cast<QPushButton*>(b)->setAutoDefault(false);
    column->addWidget(buttons);

    name_->setText(replacing.empty() ? tr("%1 (mine)").arg(QString::fromStdString(part.name)) : QString::fromStdString(part.name));
    id_->setText(QString::fromStdString(replacing.empty() ? ownPartId(name_->text(), catalogue) : part.id));
    grid_->showPart(part_, units_);
    connect(name_, &QLineEdit::textEdited, this, [this](const QString& text) {
        if (replacing_.empty() && !id_->isModified()) id_->setText(QString::fromStdString(ownPartId(text, catalogue_)));
    });
    connect(grid_, &PartFiguresGrid::measured, this, &OwnPartDialog::take);
    connect(buttons, &QDialogButtonBox::accepted, this, &OwnPartDialog::save);
    connect(buttons, &QDialogButtonBox::rejected, this, &QDialog::reject);
    name_->selectAll();
    const int em = fontMetrics().averageCharWidth();
    resize(em * 84, em * 84);
}

void OwnPartDialog::take(const QString& place, double value, const QString& source) {
    Plan one;
    one.parts.push_back(std::make_shared<const Part>(part_));
    const Edited changed = useMeasuredFigure(one, part_.id, place.toStdString(), value, source.toStdString());
    if (changed) part_ = *changed.plan->part(part_.id);
    why_->setText(QString::fromStdString(changed.whyNot));
    why_->setVisible(!changed);
    grid_->showPart(part_, units_);
}

void OwnPartDialog::save() {
    Part part = part_;
    part.name = name_->text().trimmed().toStdString();
    part.id = id_->text().trimmed().toStdString();
    const QString why = saveOwnPart(part, replacing_, catalogue_);
    why_->setText(why);
    why_->setVisible(!why.isEmpty());
    if (!why.isEmpty()) return;
    part_ = std::move(part);
    accept();
}

}  // namespace hither
