#include <algorithm>
#include <cmath>

#include <QPushButton>
#include <QVBoxLayout>

#include "app/panels/givens_pieces.h"
#include "app/panels/person_panel.h"
#include "app/panels/person_range_field.h"
#include "app/panels/person_words.h"
#include "app/widgets/field_row.h"
#include "app/widgets/fold.h"
#include "app/widgets/slider_field.h"
#include "app/widgets/words_label.h"

namespace hither {
namespace {

QString degreeWords(double angle) { return printNumber(angle, {NumberOf::angle, UnitSystem::metric, 0, false}); }

const JointRange* activeIn(const Plan& plan, const std::string& joint) {
    if (!plan.person) return nullptr;
    const auto found = plan.person->activeRanges.find(joint);
    return found == plan.person->activeRanges.end() ? nullptr : &found->second;
}

/// "Set: elbow flexion, right; neck rotation", or what it means that nothing is.
template <class Values>
QString listed(const Values& values, const QString& whenNone) {
    QStringList names;
    for (const auto& [joint, value] : values) names << jointName(joint, true);
    return names.isEmpty() ? whenNone : GivensPanel::tr("Set by hand: %1.").arg(names.join("; "));
}

}  // namespace

void PersonPanel::buildPosture(QVBoxLayout* form) {
    form->addWidget(new SectionHeading(tr("Posture")));
    QLabel* which = wordsLabel({}, true);
    form->addWidget(which);
    keep([this, which] { if (plan().person) which->setText(listed(plan().person->posture, tr("Every joint is as the person rests on this support (grey)."))); });
    std::vector<std::string> all;
    for (const Limb& limb : limbs()) {
        Fold* joints = fold(form, limb.name);
        for (const std::string& joint : limb.joints) buildJoint(joints->inside(), joint);
        all.insert(all.end(), limb.joints.begin(), limb.joints.end());
    }
    problemLine(form, all);
    auto* rest = changes(new QPushButton(tr("Rest every joint")));
    rest->setObjectName("rest");
    connect(rest, &QPushButton::clicked, this, [this] { document().apply(tr("Rest every joint"), change(plan(), [](PersonSpec& p) { p.posture.clear(); })); });
    keep([this, rest] { rest->setVisible(plan().person && !plan().person->posture.empty()); });
    form->addWidget(rest, 0, Qt::AlignLeading);
}

void PersonPanel::buildJoint(QVBoxLayout* form, const std::string& joint) {
    const JointRange& range = publishedRanges().at(joint);
    auto* field = new SliderField(NumberField::Of::angle);
    field->setObjectName("posture " + QString::fromStdString(joint));
    field->numberField()->setObjectName("posture field " + QString::fromStdString(joint));
    field->slider()->setObjectName("posture slider " + QString::fromStdString(joint));
    field->setRange(range.min, range.max);
    field->setStep(radians(1));
    field->setOptional({});
    tie(field, {setLabel(jointName(joint, true)), [joint](const Plan& in) -> std::optional<double> {
                    if (!in.person) return std::nullopt;
                    const auto set = in.person->posture.find(joint);
                    return set == in.person->posture.end() ? std::nullopt : std::optional(set->second);
                },
                [this, joint](const Plan& in, std::optional<double> value) {
                    return change(in, [&](PersonSpec& p) {
                        if (value) p.posture[joint] = *value;
                        else p.posture.erase(joint);
                    });
                }});
    auto* row = new FieldRow(jointName(joint, false), field);
    field->setNames(jointName(joint, true));
    field->setToolTip(tr("%1 Published range %2. Empty: as the person rests.").arg(jointMeaning(joint), field->numberField()->rangeWords()));
    field->numberField()->setAccessibleDescription(field->toolTip());
    keep([this, field, row, joint] {
        const auto rest = made_.rest.find(joint);
        if (rest != made_.rest.end()) field->setUsual(radians(std::round(degrees(rest->second))));
        const JointRange* active = activeIn(plan(), joint);
        const std::optional<double> set = plan().person && plan().person->posture.count(joint) ? std::optional(plan().person->posture.at(joint)) : std::nullopt;
        const double now = set.value_or(rest != made_.rest.end() ? rest->second : 0);
        const bool beyond = active && (now < active->min - 1e-9 || now > active->max + 1e-9);
        row->setNote(beyond ? tr("Beyond the active range, %1 to %2.").arg(degreeWords(active->min), degreeWords(active->max)) : QString());
    });
    form->addWidget(row);
}

void PersonPanel::buildRanges(QVBoxLayout* form) {
    form->addWidget(new SectionHeading(tr("Active range of motion")));
    QLabel* which = wordsLabel({}, true);
    form->addWidget(which);
    keep([this, which] { if (plan().person) which->setText(listed(plan().person->activeRanges, tr("Every joint moves as far as published for healthy adults (grey). Type what the person reaches by their own effort."))); });
    for (const Limb& limb : limbs()) {
        Fold* ranges = fold(form, tr("%1: range").arg(limb.name));
        for (const std::string& joint : limb.joints) buildRange(ranges->inside(), joint);
    }
}

void PersonPanel::buildRange(QVBoxLayout* form, const std::string& joint) {
    const JointRange& published = publishedRanges().at(joint);
    auto* field = new RangeField;
    field->least()->setObjectName("least " + QString::fromStdString(joint));
    field->most()->setObjectName("most " + QString::fromStdString(joint));
    field->least()->setUsual(published.min);
    field->most()->setUsual(published.max);
    keep([this, field, joint, &published] {
        const JointRange* active = activeIn(plan(), joint);
        // An end of its own keeps the other end from passing it.
        field->least()->setRange(-pi, active ? active->max : published.max);
        field->most()->setRange(active ? active->min : published.min, pi);
    });
    tieEnd(field, joint, true);
    tieEnd(field, joint, false);
    auto* row = new FieldRow(jointName(joint, false), field);
    field->setNames(jointName(joint, true));
    const QString words = tr("As published: %1 to %2.").arg(degreeWords(published.min), degreeWords(published.max));
    const QString source = tr("%1 %2 Source: %3.").arg(jointMeaning(joint), words, fromCore(published.source));
    for (NumberField* end : {field->least(), field->most()}) {
        end->setToolTip(source);
        end->setAccessibleDescription(words);
    }
    keep([this, row, joint, words] {
        const bool set = activeIn(plan(), joint) != nullptr;
        row->setBasis(set ? BasisKind::measured : BasisKind::published);
        row->setNote(set ? words : QString());
    });
    form->addWidget(row);
}

void PersonPanel::tieEnd(RangeField* field, const std::string& joint, bool least) {
    const JointRange& published = publishedRanges().at(joint);
    const auto end = [least](const JointRange& range) { return least ? range.min : range.max; };
    tie(least ? field->least() : field->most(),
        {setLabel(tr("Active range: %1").arg(jointName(joint, true))), [joint, end, &published](const Plan& in) -> std::optional<double> {
             const JointRange* active = activeIn(in, joint);
             return active && end(*active) != end(published) ? std::optional(end(*active)) : std::nullopt;
         },
         [this, joint, least, end, &published](const Plan& in, std::optional<double> value) {
             return change(in, [&](PersonSpec& p) {
                 const auto found = p.activeRanges.find(joint);
                 JointRange next = found == p.activeRanges.end() ? published : found->second;
                 (least ? next.min : next.max) = value.value_or(end(published));
                 next.source = "typed";
                 if (next.min == published.min && next.max == published.max) p.activeRanges.erase(joint);
                 else p.activeRanges[joint] = next;
             });
         }});
}

}  // namespace hither
