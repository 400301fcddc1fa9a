#include "app/panels/hand_over_parts.h"

#include <algorithm>

#include <QEvent>
#include <QFileDialog>
#include <QHBoxLayout>
#include <QHeaderView>
#include <QLabel>
#include <QLineEdit>
#include <QPushButton>
#include <QResizeEvent>
#include <QScrollBar>
#include <QTableView>
#include <QVBoxLayout>

#include <nlohmann/json.hpp>

#include "app/dialogs/extra_item_dialog.h"
#include "app/dialogs/own_part_list.h"
#include "app/dialogs/part_figures_dialog.h"
#include "app/dialogs/part_figures_who.h"
#include "app/panels/finding_button.h"
#include "app/widgets/choice_box.h"
#include "app/widgets/field_row.h"
#include "app/widgets/words_label.h"
#include "app/words/storage_words.h"
#include "core/plan/edits/extra_items.h"
#include "core/plan/edits/part_figures.h"
#include "core/storage/plan_save.h"

namespace hither {
namespace {

QString joined(const std::vector<std::string>& words) {
    QStringList list;
    for (const std::string& w : words) list << QString::fromStdString(w);
    return list.join(HandOverParts::tr(", "));
}

}  // namespace

HandOverParts::HandOverParts(const EditorContext& context, QWidget* parent) : QWidget(parent), context_(context) {
    auto* column = new QVBoxLayout(this);
    column->setContentsMargins(0, 0, 0, 0);
    which_ = new ChoiceBox(this);
    which_->addItem(tr("This option"), 0);
    which_->addItem(tr("All options, one at a time"), 1);
    which_->addItem(tr("All options at once"), 2);
    column->addWidget(new FieldRow(tr("For"), which_, this));

    table_ = new QTableView(this);
    table_->setModel(&rows_);
    table_->setAccessibleName(tr("Parts list"));
    table_->setSelectionBehavior(QAbstractItemView::SelectRows);
    table_->setSelectionMode(QAbstractItemView::SingleSelection);
    table_->setEditTriggers(QAbstractItemView::DoubleClicked | QAbstractItemView::EditKeyPressed | QAbstractItemView::AnyKeyPressed);
    table_->setTabKeyNavigation(false);
    table_->setWordWrap(true);
    table_->setHorizontalScrollMode(QAbstractItemView::ScrollPerPixel);
    table_->setVerticalScrollBarPolicy(Qt::ScrollBarAlwaysOff);
    table_->verticalHeader()->hide();
    table_->horizontalHeader()->setHighlightSections(false);
    table_->horizontalHeader()->setSectionResizeMode(QHeaderView::Fixed);
    column->addWidget(table_);

    totals_ = wordsLabel({}, false, this);
    notPriced_ = wordsLabel({}, false, this);
    tools_ = wordsLabel({}, false, this);
    initials_ = new QLineEdit(this);
    initials_->setMaxLength(40);
    auto* who = new FieldRow(tr("Your initials, for prices you type"), initials_, this);
    said_ = wordsLabel({}, false, this);
    said_->hide();
    for (QWidget* w : std::initializer_list<QWidget*>{totals_, notPriced_, tools_, who, said_}) column->addWidget(w);

    const auto button = [&](const QString& words) {
        auto* b = new WrappedButton(this);
        b->setText(words);
        column->addWidget(b);
        return b;
    };
    figures_ = button(tr("Figures of the picked part …"));
    connect(button(tr("My own parts …")), &QPushButton::clicked, this, [this] { OwnPartList(context_, this).exec(); });
    connect(button(tr("Add an extra item …")), &QPushButton::clicked, this, [this] { editExtra(true); });
    change_ = button(tr("Change the extra item …"));
    remove_ = button(tr("Remove the extra item"));
    connect(button(tr("Save the list for a spreadsheet (CSV) …")), &QPushButton::clicked, this, [this] { saveListAs(".csv", tr("Comma separated values (*.csv)")); });
    connect(button(tr("Save the list as JSON …")), &QPushButton::clicked, this, [this] { saveListAs(".json", tr("JSON (*.json)")); });
    connect(figures_, &QPushButton::clicked, this, &HandOverParts::showFigures);
    connect(change_, &QPushButton::clicked, this, [this] { editExtra(false); });
    connect(remove_, &QPushButton::clicked, this, &HandOverParts::removeExtra);
    connect(which_, &QComboBox::currentIndexChanged, this, &HandOverParts::refresh);
    connect(&rows_, &HandOverRows::priceTyped, this, &HandOverParts::takePrice);
    connect(initials_, &QLineEdit::editingFinished, this, [this] {
        if (initials_->text().trimmed().isEmpty()) return;
        rememberInitials(initials_->text());
        if (std::exchange(waitingForInitials_, false)) takePrice(waitingRow_, waitingText_);
    });
    connect(table_->selectionModel(), &QItemSelectionModel::currentChanged, this, &HandOverParts::refresh);
    const auto knowWho = [this] { if (initials_->text().isEmpty()) initials_->setText(knownInitials(context_.document.plan())); };
    connect(&context_.document, &Document::fileChanged, this, knowWho);
    knowWho();
    connect(&context_.document, &Document::changed, this, &HandOverParts::refresh);
    connect(&context_.view, &ViewState::optionChanged, this, &HandOverParts::refresh);
    connect(&context_.view, &ViewState::stepChanged, this, &HandOverParts::refresh);
    refresh();
}

const PartsRow* HandOverParts::current() const {
    const int row = table_->currentIndex().row();
    return row >= 0 && row < rows_.rowCount() ? &rows_.list().rows[static_cast<std::size_t>(row)] : nullptr;
}

void HandOverParts::refresh() {
    const Plan& plan = context_.document.plan();
    const int which = which_->currentIndex();
    std::vector<std::string> options;
    if (which == 0) options = {context_.view.option()};
    if (which == 0 && context_.view.option().empty()) rows_.show({});
    else rows_.show(partsList(plan, options, which == 2 ? BuiltAs::allAtOnce : BuiltAs::oneAtATime));
    const PartsList& list = rows_.list();
    QStringList totals;
    for (const Money& m : list.totals) totals << QString::fromStdString(printMoney(m));
    totals_->setText(totals.isEmpty() ? tr("Total: no price is known") : tr("Total: %1").arg(totals.join(tr(" and "))));
    QFont bold;  // its weight alone: the size follows the text size chosen
    bold.setBold(true);
    totals_->setFont(bold);
    notPriced_->setText(list.notPriced.empty() ? QString() : tr("Not in the total, no price: %1").arg(joined(list.notPriced)));
    notPriced_->setVisible(!list.notPriced.empty());
    tools_->setText(list.toolsNeeded.empty() ? tr("Tools needed: none named") : tr("Tools needed: %1").arg(joined(list.toolsNeeded)));
    const PartsRow* row = current();
    figures_->setEnabled(row && row->kind);
    change_->setVisible(row && !row->kind);
    remove_->setVisible(row && !row->kind);
    fitTable();
}

void HandOverParts::fitTable() {
    table_->resizeColumnsToContents();
    const int em = fontMetrics().averageCharWidth();
    // The name takes the room that the three columns beside it leave, as far as it can be read in it.
    int beside = 2 * table_->frameWidth() + 2;
    for (const int c : {HandOverRows::count, HandOverRows::each, HandOverRows::total}) beside += table_->columnWidth(c);
    table_->setColumnWidth(HandOverRows::name, std::clamp(table_->width() - beside, em * 17, em * 30));
    table_->setColumnWidth(HandOverRows::tools, std::min(table_->columnWidth(HandOverRows::tools), em * 24));
    table_->resizeRowsToContents();
    // As high as its rows: the panel scrolls, not the table.
    int height = table_->horizontalHeader()->sizeHint().height() + 2 * table_->frameWidth() + table_->horizontalScrollBar()->sizeHint().height();
    for (int i = 0; i < rows_.rowCount(); ++i) {
        if (table_->rowHeight(i) < 24) table_->setRowHeight(i, 24);
        height += table_->rowHeight(i);
    }
    table_->setFixedHeight(height + 2);
}

void HandOverParts::say(const QString& words) {
    said_->setText(words);
    said_->setVisible(!words.isEmpty());
}

void HandOverParts::takePrice(int number, const QString& typed) {
    if (number < 0 || number >= rows_.rowCount()) return;
    const PartsRow row = rows_.list().rows[static_cast<std::size_t>(number)];
    const Plan& plan = context_.document.plan();
    const QString name = QString::fromStdString(row.name), text = typed.trimmed();
    std::optional<Money> price;
    if (!text.isEmpty()) {
        const Parsed<Money> money = parseMoney(text.toStdString(), plan.currency);
        if (!money) return say(tr("The price of %1 cannot be read: %2.").arg(name, QString::fromStdString(money.reason)));
        price = money.value;
    }
    const QString label = tr("Price %1").arg(name);
    if (!row.kind) {
        for (const ExtraItem& e : plan.extraItems)
            if (e.id == row.id) {
                ExtraItem changed = e;
                changed.price = price;
                say({});
                context_.document.apply(label, replaceExtraItem(plan, e.id, changed));
                return;
            }
        return;
    }
    if (initials_->text().trimmed().isEmpty()) {
        waitingForInitials_ = true;
        waitingRow_ = number;
        waitingText_ = typed;
        say(tr("Type your initials, so that others know whose price it is. It is taken then."));
        initials_->setFocus();
        return;
    }
    const Part* part = plan.part(row.id);
    if (!part) return;
    Part changed = *part;
    changed.price = price;
    changed.priceBasis = price ? Basis{BasisKind::measured, measuredToday(initials_->text()).toStdString()} : Basis{};
    rememberInitials(initials_->text());
    say({});
    context_.document.apply(label, replacePartData(plan, changed));
}

void HandOverParts::editExtra(bool add) {
    const Plan& plan = context_.document.plan();
    ExtraItem item;
    if (add) {
        item.id = freeId("item", [&](const std::string& id) { return std::any_of(plan.extraItems.begin(), plan.extraItems.end(), [&](const ExtraItem& e) { return e.id == id; }); });
    } else {
        const PartsRow* row = current();
        for (const ExtraItem& e : plan.extraItems) if (row && !row->kind && e.id == row->id) item = e;
        if (item.id.empty()) return;
    }
    ExtraItemDialog dialog(item, plan.currency, this);
    if (dialog.exec() != QDialog::Accepted) return;
    const ExtraItem& typed = dialog.item();
    const QString name = QString::fromStdString(typed.name);
    context_.document.apply(add ? tr("Add %1").arg(name) : tr("Change %1").arg(name),
                            add ? addExtraItem(context_.document.plan(), typed) : replaceExtraItem(context_.document.plan(), typed.id, typed));
}

void HandOverParts::removeExtra() {
    const PartsRow* row = current();
    if (!row || row->kind) return;
    context_.document.apply(tr("Remove %1").arg(QString::fromStdString(row->name)), removeExtraItem(context_.document.plan(), row->id));
}

void HandOverParts::showFigures() {
    const PartsRow* row = current();
    if (!row || !row->kind) return;
    auto* dialog = new PartFiguresDialog(context_, row->id, {}, this);
    dialog->setAttribute(Qt::WA_DeleteOnClose);
    dialog->open();
}

QString HandOverParts::saveList(const QString& path) const {
    const std::string text = path.endsWith(".json", Qt::CaseInsensitive) ? partsListJson(rows_.list()).dump(2) + "\n" : partsListCsv(rows_.list());
    const std::vector<StorageError> problems = saveText(text, path.toStdString(), true);
    return problems.empty() ? QString() : QString::fromStdString(sentence(problems.front()));
}

void HandOverParts::saveListAs(const QString& suffix, const QString& filter) {
    // The file dialog asks before it names a file that is there; what is replaced stays as .bak.
    QFileDialog dialog(this, tr("Save the parts list"), {}, filter);
    dialog.setAcceptMode(QFileDialog::AcceptSave);
    dialog.setDefaultSuffix(suffix.mid(1));
    if (dialog.exec() != QDialog::Accepted || dialog.selectedFiles().isEmpty()) return;
    const QString path = dialog.selectedFiles().front(), why = saveList(path);
    say(why.isEmpty() ? tr("Saved in %1.").arg(path) : tr("Not saved: %1").arg(why));
}

void HandOverParts::resizeEvent(QResizeEvent* event) {
    QWidget::resizeEvent(event);
    if (event->size().width() != event->oldSize().width()) fitTable();
}

void HandOverParts::changeEvent(QEvent* event) {
    QWidget::changeEvent(event);
    if (event->type() == QEvent::FontChange) fitTable();
}

}  // namespace hither
