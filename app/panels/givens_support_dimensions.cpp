#include <algorithm>

#include <QVBoxLayout>

#include "app/panels/givens_pieces.h"
#include "app/panels/support_panel.h"
#include "app/widgets/dimension_picture.h"
#include "app/widgets/field_row.h"
#include "app/widgets/slider_field.h"
#include "app/widgets/sticky.h"
#include "app/widgets/words_label.h"

namespace hither {
namespace {

const SupportKind& kindOf(const std::string& kind) {
    static const SupportKind none;
    for (const SupportKind& k : supportKinds()) if (k.kind == kind) return k;
    return none;
}

std::optional<double> typedIn(const SupportSpec* spec, const std::string& key) {
    if (!spec) return std::nullopt;
    const auto typed = spec->dimensions.find(key);
    return typed == spec->dimensions.end() ? std::nullopt : std::optional(typed->second);
}

}  // namespace

void SupportPanel::buildDimensions(QVBoxLayout* form) {
    const SupportKind& kind = kindOf(spec()->kind);
    if (kind.dimensions.empty()) return;
    form->addWidget(new SectionHeading(tr("Dimensions")));
    picture_ = new DimensionPicture;
    picture_->setObjectName("dimension picture");
    form->addWidget(new Sticky(picture_));
    for (const SupportDimension& d : kind.dimensions) {
        const QString name = dimensionName(d.key);
        auto* field = new NumberField(d.angle ? NumberField::Of::angle : NumberField::Of::length);
        field->setObjectName("dimension " + QString::fromStdString(d.key));
        field->setProperty("dimension", QString::fromStdString(d.key));
        field->setRange(d.min, d.max);
        field->setUsual(d.standard);
        tie(field, {setLabel(name), [this, key = d.key](const Plan& in) { return typedIn(specIn(in), key); },
                    [this, key = d.key](const Plan& in, std::optional<double> value) {
                        return change(in, [&](SupportSpec& s) {
                            if (value) s.dimensions[key] = *value;
                            else s.dimensions.erase(key);
                        });
                    }});
        auto* row = new FieldRow(name, field);
        field->setToolTip(tr("%1. %2. Empty: what is usual is assumed.").arg(nameFromCore(d.means), field->rangeWords()));
        field->setAccessibleDescription(nameFromCore(d.means));
        keep([this, row, key = d.key] { row->setBasis(typedIn(spec(), key) ? BasisKind::measured : BasisKind::assumed); });
        form->addWidget(row);
    }
    keep([this] {
        if (const auto support = made(true)) picture_->setSupport(support);
        showDimension();
    });
}

void SupportPanel::showDimension() {
    const SupportSpec* now = spec();
    if (!picture_ || !now) return;
    for (const SupportDimension& d : kindOf(now->kind).dimensions) {
        if (d.key != dimension_) continue;
        const double value = typedIn(now, d.key).value_or(d.standard);
        const NumberForm form{d.angle ? NumberOf::angle : NumberOf::length, plan().display, 0, false};
        picture_->setDimension(d.key, printNumber(value, form), fromCore(d.means));
        return;
    }
    picture_->setDimension({}, {}, {});
}

void SupportPanel::buildMoving(QVBoxLayout* form) {
    const auto support = made(false);
    if (!support || support->groups.empty()) return;
    form->addWidget(new SectionHeading(tr("What moves, and how it is set now")));
    for (const MovingGroup& group : support->groups) {
        const QString name = fromCore(group.name);
        auto* field = new SliderField(group.slides ? NumberField::Of::length : NumberField::Of::angle);
        field->setObjectName("setting " + QString::fromStdString(group.id));
        field->numberField()->setObjectName("setting field " + QString::fromStdString(group.id));
        field->slider()->setObjectName("setting slider " + QString::fromStdString(group.id));
        field->setUnits(plan().display);
        field->setRange(group.min, group.max);
        field->setStep(group.slides ? 0.005 : radians(1));
        tie(field, {setLabel(name), [this, id = group.id](const Plan& in) -> std::optional<double> {
                        const SupportSpec* s = specIn(in);
                        if (!s) return std::nullopt;
                        const auto set = s->settings.find(id);
                        return set == s->settings.end() ? 0.0 : set->second;
                    },
                    [this, id = group.id](const Plan& in, std::optional<double> value) { return change(in, [&](SupportSpec& s) { s.settings[id] = value.value_or(0); }); }});
        auto* row = new FieldRow(name, field);
        keep([row, field] { row->setNote(field->numberField()->rangeWords()); });
        form->addWidget(row);
    }
}

}  // namespace hither
