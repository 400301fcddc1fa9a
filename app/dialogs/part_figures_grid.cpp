#include "app/dialogs/part_figures_grid.h"

#include <algorithm>
#include <limits>

#include <QAccessible>
#include <QGridLayout>
#include <QLabel>
#include <QLineEdit>
#include <QScrollArea>
#include <QVBoxLayout>

#include "app/dialogs/part_figures_who.h"
#include "app/dialogs/part_figures_words.h"
#include "app/widgets/number_field.h"
#include "core/plan/edits/part_figures.h"

namespace hither {
namespace {

QLabel* wrappedLabel(const QString& text, QWidget* parent) {
    auto* label = new QLabel(text, parent);
    label->setWordWrap(true);
    label->setTextFormat(Qt::PlainText);
    return label;
}

void makeQuiet(QLabel* label) {
    label->setForegroundRole(QPalette::PlaceholderText);
}

QString basisWords(const Basis& basis) {
    const QString source = QString::fromStdString(basis.source);
    switch (basis.kind) {
        case BasisKind::measured: return source.isEmpty() ? PartFiguresGrid::tr("measured") : PartFiguresGrid::tr("measured: %1").arg(source);
        case BasisKind::published: return source.isEmpty() ? PartFiguresGrid::tr("published") : PartFiguresGrid::tr("published: %1").arg(source);
        case BasisKind::assumed: return PartFiguresGrid::tr("assumed");
        case BasisKind::unknown: break;
    }
    return PartFiguresGrid::tr("unknown");
}

}  // namespace

PartFiguresGrid::PartFiguresGrid(QWidget* parent) : QWidget(parent) {
    auto* column = new QVBoxLayout(this);
    column->setContentsMargins(0, 0, 0, 0);
    auto* initialsRow = new QGridLayout;
    auto* label = new QLabel(tr("Measured by (initials)"), this);
    initials_ = new QLineEdit(this);
    initials_->setMaxLength(40);
    initials_->setMinimumHeight(24);
    label->setBuddy(initials_);
    initials_->setAccessibleName(label->text());
    initialsRow->addWidget(label, 0, 0);
    initialsRow->addWidget(initials_, 0, 1);
    ask_ = wrappedLabel(tr("Type your initials, so that others know who measured the figure. It is taken then."), this);
    ask_->hide();
    initialsRow->addWidget(ask_, 1, 0, 1, 2);
    column->addLayout(initialsRow);
    connect(initials_, &QLineEdit::editingFinished, this, &PartFiguresGrid::takeWaiting);

    auto* area = new QScrollArea(this);
    area->setWidgetResizable(true);
    area->setFrameShape(QFrame::NoFrame);
    auto* inside = new QWidget;
    grid_ = new QGridLayout(inside);
    grid_->setColumnStretch(0, 3);
    grid_->setColumnStretch(1, 2);
    grid_->setColumnStretch(2, 2);
    area->setWidget(inside);
    column->addWidget(area, 1);
}

void PartFiguresGrid::setInitials(const QString& initials) { initials_->setText(initials); }

void PartFiguresGrid::addRow(const Part& part, const std::string& place) {
    const FigureWords words = figureWords(part, place);
    QWidget* inside = grid_->parentWidget();
    const int row = grid_->rowCount();
    QLabel* name = wrappedLabel(words.name, inside);
    auto* field = new NumberField(words.of, inside);
    field->setRange(0, std::numeric_limits<double>::infinity());
    field->setDigits(words.of == NumberOf::length || words.of == NumberOf::angle ? 1 : 2);
    field->setOptional(tr("unknown"));
    field->setAccessibleName(words.name);
    field->setAccessibleDescription(words.measure);
    name->setBuddy(field);
    QLabel* basis = wrappedLabel({}, inside);
    QLabel* how = wrappedLabel(words.measure, inside);
    makeQuiet(how);
    grid_->addWidget(name, row, 0);
    grid_->addWidget(field, row, 1);
    grid_->addWidget(basis, row, 2);
    grid_->addWidget(how, row + 1, 0, 1, 3);
    grid_->setRowMinimumHeight(row + 2, fontMetrics().height() / 2);
    rows_[place] = {field, basis, how};
    connect(field, &NumberField::committed, this, [this, place](std::optional<double> value) { take(place, value); });
}

void PartFiguresGrid::build(const Part& part) {
    for (QObject* child : QList<QObject*>(grid_->parentWidget()->children())) if (child->isWidgetType()) delete child;
    rows_.clear();
    waiting_.clear();
    for (const bool known : {false, true})
        for (const NamedFigure& f : figuresOf(part)) if (f.figure.known() == known) addRow(part, f.place);
    grid_->setRowStretch(grid_->rowCount(), 1);
}

void PartFiguresGrid::showPart(const Part& part, UnitSystem units) {
    const std::vector<NamedFigure> figures = figuresOf(part);
    std::vector<std::string> places;
    for (const NamedFigure& f : figures) places.push_back(f.place);
    if (places != places_) {
        build(part);
        places_ = places;
    }
    for (const NamedFigure& f : figures) {
        const Row& row = rows_.at(f.place);
        shown_[f.place] = f.figure.value;
        row.field->setUnits(units);
        if (!waiting_.count(f.place)) row.field->setValue(f.figure.value);
        row.basis->setText(basisWords(f.figure.basis));
        row.how->setVisible(f.figure.basis.kind != BasisKind::measured && !row.how->text().isEmpty());
    }
}

void PartFiguresGrid::take(const std::string& place, std::optional<double> value) {
    if (!value) {   // a figure can be measured anew, not forgotten
        rows_.at(place).field->setValue(shown_[place]);
        return;
    }
    if (initials_->text().trimmed().isEmpty()) {
        waiting_[place] = *value;
        ask_->show();
        initials_->setFocus();
        return;
    }
    rememberInitials(initials_->text());
    emit measured(QString::fromStdString(place), *value, measuredToday(initials_->text()));
}

void PartFiguresGrid::takeWaiting() {
    if (initials_->text().trimmed().isEmpty()) return;
    rememberInitials(initials_->text());
    ask_->hide();
    const std::map<std::string, double> waiting = std::exchange(waiting_, {});
    for (const auto& [place, value] : waiting) emit measured(QString::fromStdString(place), value, measuredToday(initials_->text()));
}

void PartFiguresGrid::focusOn(const std::string& place) {
    const auto found = rows_.find(place);
    if (found != rows_.end()) return found->second.field->setFocus();
    if (NumberField* first = findChild<NumberField*>()) first->setFocus();
}

}  // namespace hither
