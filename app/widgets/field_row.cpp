#include "app/widgets/field_row.h"

#include <algorithm>

#include <QCoreApplication>
#include <QEvent>
#include <QResizeEvent>
#include <QStyle>

#include "app/widgets/slider_field.h"
#include "app/widgets/words_label.h"

namespace hither {
namespace {

constexpr int gap = 8;       // px between label, field and mark
constexpr int lineGap = 3;   // px between the lines of a row
constexpr int roomy = 4000;  // px, a width at which nothing is stacked

}  // namespace

QString basisWord(BasisKind basis) {
    const auto tr = [](const char* text) { return QCoreApplication::translate("hither::BasisChip", text); };
    switch (basis) {
        case BasisKind::measured: return tr("measured");
        case BasisKind::published: return tr("published");
        case BasisKind::assumed: return tr("assumed");
        case BasisKind::unknown: break;
    }
    return tr("unknown");
}

BasisChip::BasisChip(QWidget* parent) : QLabel(parent) {
    setProperty("chip", true);
    setBasis(BasisKind::unknown);
}

void BasisChip::setBasis(BasisKind basis) {
    if (basis == basis_ && !text().isEmpty()) return;
    basis_ = basis;
    setText(basisWord(basis));
    setProperty("strong", basis == BasisKind::measured);
    style()->unpolish(this);
    style()->polish(this);
    updateGeometry();
}

/// Where the pieces of a row go at one width.
struct FieldRow::Plan {
    QRect label, field, chip, note;
    int height = 0;
};

FieldRow::FieldRow(const QString& words, QWidget* field, QWidget* parent) : QWidget(parent), label_(wordsLabel(words, false, this)), field_(field) {
    field_->setParent(this);
    auto* both = qobject_cast<SliderField*>(field_);
    label_->setBuddy(both ? both->numberField() : field_);
    QSizePolicy policy(QSizePolicy::Preferred, QSizePolicy::Preferred);
    policy.setHeightForWidth(true);
    setSizePolicy(policy);
    setWords(words);
}

void FieldRow::setWords(const QString& words) {
    label_->setText(words);
    if (auto* both = qobject_cast<SliderField*>(field_)) both->setNames(words);
    else field_->setAccessibleName(words);
    updateGeometry();
}

void FieldRow::setNote(const QString& note) {
    if (note_ ? note_->text() == note : note.isEmpty()) return;
    if (!note_) {
        note_ = wordsLabel(note, true, this);
        note_->show();
    }
    note_->setText(note);
    note_->setVisible(!note.isEmpty());
    if (!field_->property("refused").toBool()) field_->setAccessibleDescription(note);
    updateGeometry();
}

void FieldRow::setBasis(std::optional<BasisKind> basis) {
    if (!chip_ && !basis) return;
    const bool first = !chip_;
    if (first) chip_ = new BasisChip(this);
    const bool same = !first && chip_->isHidden() == !basis && (!basis || chip_->basis() == *basis);
    if (same) return;
    if (basis) chip_->setBasis(*basis);
    chip_->setVisible(basis.has_value());
    updateGeometry();
}

std::optional<BasisKind> FieldRow::basis() const {
    if (!chip_ || chip_->isHidden()) return std::nullopt;
    return chip_->basis();
}

FieldRow::Plan FieldRow::planFor(int width) const {
    const QSize fieldLeast = field_->minimumSizeHint(), fieldWished = field_->sizeHint();
    const QSize chip = chip_ && !chip_->isHidden() ? chip_->sizeHint() : QSize(0, 0);
    // The mark keeps its place when another word stands in it, so that the fields of a form stay in line.
    const int chipRoom = chip.width() ? std::max(chip.width(), fontMetrics().horizontalAdvance(basisWord(BasisKind::published)) + 16) : 0;
    const int besideChip = chipRoom ? chipRoom + gap : 0;
    const int comfortable = fontMetrics().averageCharWidth() * 13;
    const bool stretches = field_->sizePolicy().horizontalPolicy() & QSizePolicy::ExpandFlag;
    Plan plan;
    int y = 0;
    if (width >= comfortable + gap + fieldWished.width() + besideChip) {
        const int fieldWidth = stretches ? std::max(fieldWished.width(), (width - besideChip) * 6 / 10 - gap) : fieldWished.width();
        const int labelWidth = width - gap - fieldWidth - besideChip;
        const int labelHeight = label_->heightForWidth(labelWidth);
        const int high = std::max({labelHeight, fieldWished.height(), chip.height()});
        plan.label = {0, (high - labelHeight) / 2, labelWidth, labelHeight};
        plan.field = {labelWidth + gap, (high - fieldWished.height()) / 2, fieldWidth, fieldWished.height()};
        plan.chip = {labelWidth + gap + fieldWidth + gap, (high - chip.height()) / 2, chip.width(), chip.height()};
        y = high;
    } else {
        const int labelHeight = label_->heightForWidth(width);
        plan.label = {0, 0, width, labelHeight};
        const bool chipBeside = width >= fieldLeast.width() + besideChip;
        const int room = chipBeside ? width - besideChip : width;
        const int fieldWidth = stretches ? std::max(room, fieldLeast.width()) : std::clamp(room, fieldLeast.width(), std::max(fieldLeast.width(), fieldWished.width() * 3 / 2));
        plan.field = {0, labelHeight + lineGap, fieldWidth, fieldWished.height()};
        y = labelHeight + lineGap + fieldWished.height();
        if (chipBeside) {
            plan.chip = {fieldWidth + gap, plan.field.top() + (fieldWished.height() - chip.height()) / 2, chip.width(), chip.height()};
        } else {
            plan.chip = {0, y + lineGap, chip.width(), chip.height()};
            y += lineGap + chip.height();
        }
    }
    if (note_ && !note_->isHidden()) {
        const int noteHeight = note_->heightForWidth(width);
        plan.note = {0, y + lineGap, width, noteHeight};
        y += lineGap + noteHeight;
    }
    plan.height = y;
    return plan;
}

int FieldRow::heightForWidth(int width) const { return planFor(width).height; }

QSize FieldRow::minimumSizeHint() const {
    int least = std::max(field_->minimumSizeHint().width(), label_->minimumSizeHint().width());
    if (chip_ && !chip_->isHidden()) least = std::max(least, chip_->sizeHint().width());
    return {least, planFor(roomy).height};   // a layout asks for the height for its width besides
}

QSize FieldRow::sizeHint() const {
    const int wished = fontMetrics().averageCharWidth() * 13 + gap + field_->sizeHint().width() + (chip_ && !chip_->isHidden() ? chip_->sizeHint().width() + gap : 0);
    return {wished, planFor(wished).height};
}

void FieldRow::resizeEvent(QResizeEvent* event) {
    QWidget::resizeEvent(event);
    const Plan plan = planFor(width());
    const auto place = [&](QWidget* widget, const QRect& at) {
        if (widget) widget->setGeometry(QStyle::visualRect(layoutDirection(), rect(), at));
    };
    place(label_, plan.label);
    place(field_, plan.field);
    place(chip_, plan.chip);
    place(note_, plan.note);
}

bool FieldRow::event(QEvent* event) {
    const bool done = QWidget::event(event);
    if (event->type() == QEvent::LayoutRequest || event->type() == QEvent::FontChange || event->type() == QEvent::StyleChange || event->type() == QEvent::Show) {
        updateGeometry();
        QResizeEvent again(size(), size());
        resizeEvent(&again);
    }
    return done;
}

}  // namespace hither
