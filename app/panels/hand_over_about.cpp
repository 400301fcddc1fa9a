#include "app/panels/hand_over_about.h"

#include <QEvent>
#include <QKeyEvent>
#include <QLabel>
#include <QPlainTextEdit>
#include <QSignalBlocker>
#include <QVBoxLayout>

#include "app/widgets/choice_box.h"
#include "app/widgets/field_row.h"
#include "app/widgets/text_field.h"
#include "core/plan/edits/about.h"

namespace hither {

HandOverAbout::HandOverAbout(const EditorContext& context, QWidget* parent) : QWidget(parent), context_(context) {
    auto* column = new QVBoxLayout(this);
    column->setContentsMargins(0, 0, 0, 0);
    const auto add = [&](const QString& words, QWidget* field) { column->addWidget(new FieldRow(words, field, this)); };
    title_ = new TextField(this);
    shows_ = new TextField(this);
    notes_ = new QPlainTextEdit(this);
    notes_->setTabChangesFocus(true);
    notes_->setFixedHeight(notes_->fontMetrics().lineSpacing() * 4 + 14);
    notes_->installEventFilter(this);
    currency_ = new TextField(this);
    currency_->setMaxLength(3);
    units_ = new ChoiceBox(this);
    units_->addItem(tr("Metric (mm, g)"), static_cast<int>(UnitSystem::metric));
    units_->addItem(tr("Inch (in, oz)"), static_cast<int>(UnitSystem::inch));
    add(tr("Title"), title_);
    add(tr("What it shows, in one line"), shows_);
    auto* notesLabel = new QLabel(tr("Notes"), this);
    notesLabel->setBuddy(notes_);
    notes_->setAccessibleName(notesLabel->text());
    column->addWidget(notesLabel);
    column->addWidget(notes_);
    add(tr("Currency (three letters)"), currency_);
    add(tr("Units shown"), units_);

    Document& d = context_.document;
    // A refused value goes back to what the plan has.
    const auto apply = [this](const QString& label, const Edited& edited) { if (!context_.document.apply(label, edited)) refresh(); };
    connect(title_, &TextField::committed, this, [apply, &d](const QString& t) { apply(tr("Change the title"), setTitle(d.plan(), t.trimmed().toStdString())); });
    connect(shows_, &TextField::committed, this, [apply, &d](const QString& t) { apply(tr("Change what the plan shows"), setShows(d.plan(), t.trimmed().toStdString())); });
    connect(currency_, &TextField::committed, this, [apply, &d](const QString& t) { apply(tr("Change the currency"), setCurrency(d.plan(), t.trimmed().toUpper().toStdString())); });
    connect(units_, &QComboBox::activated, this, [apply, this, &d] { apply(tr("Change the units shown"), setDisplay(d.plan(), static_cast<UnitSystem>(units_->currentData().toInt()))); });
    connect(&d, &Document::changed, this, &HandOverAbout::refresh);
    refresh();
}

void HandOverAbout::refresh() {
    const Plan& plan = context_.document.plan();
    title_->setWords(QString::fromStdString(plan.title));
    shows_->setWords(QString::fromStdString(plan.shows));
    currency_->setWords(QString::fromStdString(plan.currency));
    units_->setChoice(static_cast<int>(plan.display));
    const QString notes = QString::fromStdString(plan.notes);
    if (!notes_->hasFocus() && notes_->toPlainText() != notes) notes_->setPlainText(notes);
}

void HandOverAbout::takeNotes() {
    const std::string notes = notes_->toPlainText().toStdString();
    if (notes != context_.document.plan().notes) context_.document.apply(tr("Change the notes"), setNotes(context_.document.plan(), notes));
}

bool HandOverAbout::eventFilter(QObject* watched, QEvent* event) {
    if (watched == notes_ && event->type() == QEvent::FocusOut) takeNotes();
    if (watched == notes_ && event->type() == QEvent::KeyPress && static_cast<QKeyEvent*>(event)->key() == Qt::Key_Escape) {
        notes_->setPlainText(QString::fromStdString(context_.document.plan().notes));
        return true;
    }
    return QWidget::eventFilter(watched, event);
}

}  // namespace hither
