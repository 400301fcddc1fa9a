#include "app/panels/person_range_field.h"

#include <QHBoxLayout>
#include <QLabel>

#include "core/units/quantity.h"

namespace hither {

RangeField::RangeField(QWidget* parent) : QWidget(parent), least_(new NumberField(NumberField::Of::angle, this)), most_(new NumberField(NumberField::Of::angle, this)) {
    auto* row = new QHBoxLayout(this);
    row->setContentsMargins(0, 0, 0, 0);
    row->setSpacing(6);
    row->addWidget(least_);
    row->addWidget(new QLabel(tr("to", "between the ends of a range"), this));
    row->addWidget(most_);
    for (NumberField* field : {least_, most_}) field->setStep(radians(1));
}

void RangeField::setNames(const QString& name) {
    setAccessibleName(name);
    least_->setAccessibleName(tr("%1, least").arg(name));
    most_->setAccessibleName(tr("%1, greatest").arg(name));
}

}  // namespace hither
