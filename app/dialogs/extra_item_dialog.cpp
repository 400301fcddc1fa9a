#include "app/dialogs/extra_item_dialog.h"

#include <cmath>

#include <QDialogButtonBox>
#include <QLabel>
#include <QLineEdit>
#include <QPlainTextEdit>
#include <QVBoxLayout>

#include "app/widgets/number_field.h"

namespace hither {

ExtraItemDialog::ExtraItemDialog(const ExtraItem& item, const std::string& currency, QWidget* parent) : QDialog(parent), item_(item), currency_(currency) {
    setWindowTitle(item.name.empty() ? tr("Add an extra item") : tr("Change an extra item"));
    auto* column = new QVBoxLayout(this);
    const auto add = [&](const QString& words, auto* field) {
        auto* label = new QLabel(words, this);
        label->setBuddy(field);
        field->setAccessibleName(words);
        column->addWidget(label);
        column->addWidget(field);
        return field;
    };
    name_ = add(tr("What (batteries, tape, a strap)"), new QLineEdit(QString::fromStdString(item.name), this));
    name_->setMaxLength(200);
    count_ = add(tr("How many"), new NumberField(NumberField::Of::count, this));
    count_->setRange(1, 10000);
    count_->setValue(item.count);
    price_ = add(tr("Price each, in %1 (empty: not known)").arg(QString::fromStdString(currency)), new QLineEdit(this));
    if (item.price) price_->setText(QString::fromStdString(item.price->currency == currency ? printAmount(*item.price) : printMoney(*item.price)));
    notes_ = add(tr("Notes"), new QPlainTextEdit(QString::fromStdString(item.notes), this));
    notes_->setTabChangesFocus(true);
    why_ = new QLabel(this);
    why_->setWordWrap(true);
    why_->setTextFormat(Qt::PlainText);
    why_->hide();
    column->addWidget(why_);
    auto* buttons = new QDialogButtonBox(QDialogButtonBox::Ok | QDialogButtonBox::Cancel, this);
    column->addWidget(buttons);
    connect(buttons, &QDialogButtonBox::accepted, this, &ExtraItemDialog::take);
    connect(buttons, &QDialogButtonBox::rejected, this, &QDialog::reject);
    resize(fontMetrics().averageCharWidth() * 56, sizeHint().height());
}

void ExtraItemDialog::take() {
    QString why;
    const QString name = name_->text().trimmed(), price = price_->text().trimmed();
    const Parsed<Money> money = parseMoney(price.toStdString(), currency_);
    if (name.isEmpty()) why = tr("Say what it is.");
    else if (!count_->complaint().isEmpty()) why = count_->complaint();
    else if (!price.isEmpty() && !money) why = tr("The price cannot be read: %1.").arg(QString::fromStdString(money.reason));
    why_->setText(why);
    why_->setVisible(!why.isEmpty());
    if (!why.isEmpty()) return;
    item_.name = name.toStdString();
    item_.count = static_cast<int>(std::lround(count_->value().value_or(1)));
    item_.price = price.isEmpty() ? std::nullopt : money.value;
    item_.notes = notes_->toPlainText().toStdString();
    accept();
}

}  // namespace hither
