#include "app/panels/finding_limits.h"

#include <QVBoxLayout>

#include "app/panels/finding_button.h"
#include "app/widgets/field_row.h"
#include "app/widgets/number_field.h"
#include "core/plan/edits/about.h"

namespace hither {
namespace {

QString changeLabel() { return FindingLimits::tr("Change what the checks ask"); }

NumberField* fieldOf(NumberField::Of of, double min, double max, double step, int digits) {
    auto* field = new NumberField(of);
    field->setRange(min, max);
    field->setStep(step);
    field->setDigits(digits);
    return field;
}

}  // namespace

FindingLimits::FindingLimits(const EditorContext& context, QWidget* parent) : QWidget(parent), context_(context) {
    auto* column = new QVBoxLayout(this);
    column->setContentsMargins(0, 0, 0, 0);
    using Of = NumberField::Of;
    add(&CheckLimits::clearanceBody_m, tr("Room to the body"), tr("least distance of the mount from the person"), fieldOf(Of::length, 0, 0.5, 0.001, 0));
    add(&CheckLimits::clearanceSupport_m, tr("Room to the support"), tr("least distance from chair, bed, tray or table"), fieldOf(Of::length, 0, 0.5, 0.001, 0));
    add(&CheckLimits::clearanceMount_m, tr("Room to other mounts"), tr("least distance from another mount"), fieldOf(Of::length, 0, 0.5, 0.001, 0));
    add(&CheckLimits::pressFactor, tr("Press"), tr("how many times the force that sets the switch off is pressed"), fieldOf(Of::ratio, 0, 100, 0.5, 1));
    add(&CheckLimits::knock_N, tr("Knock"), tr("force of a bump at the switch"), fieldOf(Of::force, 0, 1000, 1, 1));
    add(&CheckLimits::threadTurns, tr("Thread turns"), tr("full turns of a screw that must engage"), fieldOf(Of::ratio, 0, 50, 0.5, 1));
    add(&CheckLimits::threadFactor, tr("Thread strength"), tr("how many times the pull a thread must hold"), fieldOf(Of::ratio, 0, 50, 0.5, 1));
    reset_ = new WrappedButton(this);
    reset_->setText(tr("Back to common practice"));
    column->addWidget(reset_);
    connect(reset_, &QPushButton::clicked, this, [this] {
        context_.document.cancelGesture();
        context_.document.apply(changeLabel(), setLimits(context_.document.plan(), CheckLimits{}));
    });
    connect(&context_.document, &Document::changed, this, &FindingLimits::refresh);
    refresh();
}

void FindingLimits::add(double CheckLimits::*limit, const QString& words, const QString& means, NumberField* field) {
    auto* row = new FieldRow(words, field, this);
    layout()->addWidget(row);
    rows_.push_back({limit, means, field, row});
    connect(field, &NumberField::tried, this, [this, limit](double value) { type(limit, value, false); });
    connect(field, &NumberField::committed, this, [this, limit](std::optional<double> value) { if (value) type(limit, *value, true); });
    connect(field, &NumberField::abandoned, this, [this] { if (context_.document.gestureLabel() == changeLabel()) context_.document.cancelGesture(); });
}

void FindingLimits::type(double CheckLimits::*limit, double value, bool finished) {
    Document& document = context_.document;
    if (!document.inGesture() || document.gestureLabel() != changeLabel()) {
        document.cancelGesture();
        document.beginGesture(changeLabel());
    }
    CheckLimits limits = document.gestureStart().limits;
    limits.*limit = value;
    document.preview(setLimits(document.gestureStart(), limits));
    if (finished) document.endGesture();
}

void FindingLimits::refresh() {
    const CheckLimits& limits = context_.document.plan().limits;
    const CheckLimits usual;
    for (const Row& row : rows_) {
        row.field->setUnits(context_.view.units());
        row.field->setValue(limits.*row.limit);
        const bool isUsual = limits.*row.limit == usual.*row.limit;
        row.row->setNote(isUsual ? tr("%1; common practice, no source").arg(row.means) : tr("%1; chosen for this plan").arg(row.means));
    }
    reset_->setEnabled(!(limits == usual));
}

}  // namespace hither
