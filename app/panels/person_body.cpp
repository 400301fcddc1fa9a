#include <algorithm>
#include <cmath>

#include <QVBoxLayout>

#include "app/panels/givens_pieces.h"
#include "app/panels/person_panel.h"
#include "app/panels/person_words.h"
#include "app/widgets/choice_box.h"
#include "app/widgets/field_row.h"
#include "app/widgets/fold.h"
#include "app/widgets/words_label.h"

namespace hither {
namespace {

std::optional<double> typedIn(const Plan& plan, const std::string& dimension) {
    if (!plan.person) return std::nullopt;
    const auto typed = plan.person->body.typed.find(dimension);
    return typed == plan.person->body.typed.end() ? std::nullopt : std::optional(typed->second);
}

}  // namespace

/// Dimensions that were typed though the form has no row for them: they get one, so that they can be seen.
std::vector<std::string> PersonPanel::otherDimensions() const {
    std::vector<std::string> others;
    if (!plan().person) return others;
    const auto regions = bodyRegions();
    for (const auto& typed : plan().person->body.typed) {
        const std::string& name = typed.first;
        const bool shown = name == "stature" || name == "weightkg" || std::any_of(regions.begin(), regions.end(), [&](const BodyRegion& r) {
            return std::find(r.dimensions.begin(), r.dimensions.end(), name) != r.dimensions.end();
        });
        if (!shown) others.push_back(name);
    }
    return others;
}

void PersonPanel::buildBody(QVBoxLayout* form) {
    form->addWidget(new SectionHeading(tr("Size of the body")));
    problemLine(form, {});
    auto* table = new ChoiceBox;
    table->setObjectName("body table");
    for (const BodyTable each : {BodyTable::woman, BodyTable::man, BodyTable::child}) table->addItem(tableName(each), QString::number(static_cast<int>(each)));
    tie(table, tr("Choose the body table"), [](const Plan& in) { return std::to_string(in.person ? static_cast<int>(in.person->body.table) : 0); },
        [this](const Plan& in, const std::string& choice) { return change(in, [&](PersonSpec& p) { p.body.table = static_cast<BodyTable>(std::stoi(choice)); }); });
    FieldRow* row = addChoice(form, tr("Estimate as for a"), table);
    const bool child = plan().person->body.table == BodyTable::child;
    row->setNote(child ? tr("From shares of the stature: measure what matters.") : tr("From a survey of adult soldiers: measure what matters."));
    if (!child) buildPercentile(form);
    buildDimension(form, "stature");
    buildDimension(form, "weightkg");
}

void PersonPanel::buildPercentile(QVBoxLayout* form) {
    const auto& percentiles = data().tables.at(plan().person->body.table).statistics.at("stature").percentiles;
    auto* percentile = new NumberField(NumberField::Of::count);
    percentile->setObjectName("percentile");
    if (!percentiles.empty()) percentile->setRange(percentiles.begin()->first, percentiles.rbegin()->first);
    percentile->setStep(5);
    percentile->setUsual(50);
    tie(percentile, {setLabel(tr("Percentile")), [](const Plan& in) { return in.person ? in.person->body.percentile : std::nullopt; },
                     [this](const Plan& in, std::optional<double> value) { return change(in, [&](PersonSpec& p) { p.body.percentile = value; }); }});
    auto* row = new FieldRow(tr("Percentile of stature"), percentile);
    keep([this, row, percentile] {
        percentile->setPlaceholderText(tr("mean"));
        row->setNote(typedIn(plan(), "stature") ? tr("Not used: the stature is typed.") : tr("Of 100 people, how many are shorter."));
    });
    form->addWidget(row);
    problemLine(form, {"percentile"});
}

void PersonPanel::buildDimensions(QVBoxLayout* form) {
    Fold* dimensions = fold(form, tr("Body dimensions"));
    QVBoxLayout* inside = dimensions->inside();
    inside->addWidget(wordsLabel(tr("As ISO 7250-1 names and measures them. Grey figures are estimated from what is typed."), true));
    std::vector<std::string> all;
    std::vector<BodyRegion> regions = bodyRegions();
    if (const auto others = otherDimensions(); !others.empty()) regions.push_back({tr("Others"), others});
    for (const BodyRegion& region : regions) {
        inside->addWidget(new SectionHeading(region.name));
        for (const std::string& dimension : region.dimensions) buildDimension(inside, dimension);
        all.insert(all.end(), region.dimensions.begin(), region.dimensions.end());
    }
    problemLine(form, all, dimensions);
}

void PersonPanel::buildDimension(QVBoxLayout* form, const std::string& dimension) {
    const bool mass = dimension == "weightkg";
    const QString name = bodyDimensionName(dimension);
    auto* field = new NumberField(mass ? NumberField::Of::mass : NumberField::Of::length);
    field->setObjectName("body " + QString::fromStdString(dimension));
    field->setStep(mass ? 1 : dimension == "stature" ? 0.010 : 0.005);
    const auto limit = [this, field, dimension] {
        if (!plan().person) return;
        const BodyLimits limits = bodyLimits(dimension, plan().person->body, data());
        field->setRange(limits.min, limits.max);
    };
    keep(limit);
    field->setOptional(tr("unknown"));
    tie(field, {setLabel(name), [dimension](const Plan& in) { return typedIn(in, dimension); },
                [this, dimension](const Plan& in, std::optional<double> value) {
                    return change(in, [&](PersonSpec& p) {
                        if (value) p.body.typed[dimension] = *value;
                        else p.body.typed.erase(dimension);
                    });
                }});
    auto* row = new FieldRow(name, field);
    keep([this, row, field, dimension, mass] {
        const auto estimate = made_.size.dimensions.find(dimension);
        const bool known = estimate != made_.size.dimensions.end();
        const bool typed = typedIn(plan(), dimension).has_value();
        // Grams and single bits of a millimetre are no part of an estimate.
        const double grain = mass ? 0.1 : 0.001;
        if (known && !typed) field->setUsual(std::round(estimate->second.value / grain) * grain);
        else field->setPlaceholderText(tr("unknown"));
        row->setBasis(typed ? BasisKind::measured : known ? estimate->second.basis : BasisKind::unknown);
        const QString from = typed ? tr("Typed.") : known ? nameFromCore(estimate->second.from) + '.' : tr("Not known: measure it.");
        row->field()->setToolTip(from);
        if (!field->property("refused").toBool()) field->setAccessibleDescription(from);
    });
    form->addWidget(row);
    problemLine(form, {dimension});
}

}  // namespace hither
