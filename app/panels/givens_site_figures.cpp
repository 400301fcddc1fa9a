#include <QVBoxLayout>

#include "app/panels/givens_pieces.h"
#include "app/panels/site_panel.h"
#include "app/widgets/choice_box.h"
#include "app/widgets/field_row.h"
#include "app/widgets/text_field.h"
#include "app/widgets/words_label.h"

namespace hither {
namespace {

/// A figure of a site: what it is called and means, and its place in the spec.
struct SiteFigure {
    const char* id;
    NumberField::Of of;
    QString name, means;
    double min, max, step;
    Figure SiteSpec::*figure;    ///< may be unknown
    double SiteSpec::*number;    ///< always known; one of the two
};

std::vector<SiteFigure> figures() {
    const auto tr = [](const char* text) { return SitePanel::tr(text); };
    return {{"movement", NumberField::Of::length, tr("Movement"), tr("How far the body part moves when it presses: travel and give of the mount must be less."), 0.001, 2, 0.005, &SiteSpec::movement_m, nullptr},
            {"force", NumberField::Of::force, tr("Force"), tr("What the person can press with there, all day, not once: the switch must ask for clearly less."), 0, 2000, 0.5, &SiteSpec::force_N, nullptr},
            {"spread", NumberField::Of::length, tr("Spread of hits"), tr("How far the hits lie apart (one standard deviation): a larger spread needs a larger switch."), 0, 1, 0.002, &SiteSpec::spread_m, nullptr},
            {"tolerance", NumberField::Of::length, tr("Place within"), tr("How far from the site the middle of the switch may be and still be hit."), 0.001, 1, 0.001, nullptr, &SiteSpec::tolerance_m},
            {"angle tolerance", NumberField::Of::angle, tr("Facing within"), tr("How much the switch may be turned away from the movement and still be pressed."), radians(0.5), radians(90), radians(1), nullptr, &SiteSpec::angleTolerance_rad}};
}

/// Another number: known as the one before was, measured when there was none. Who measured the one before, and
/// when, is not true of it.
Figure typedOver(const Figure& before, std::optional<double> value) {
    if (!value) return {};
    if (value == before.value) return before;
    return {value, {before.known() ? before.basis.kind : BasisKind::measured, {}}};
}

}  // namespace

void SitePanel::buildFigures(QVBoxLayout* form) {
    auto* name = new TextField;
    name->setObjectName("site name");
    name->setSizePolicy(QSizePolicy::Expanding, QSizePolicy::Fixed);
    tie(name, tr("Rename a site"), [this](const Plan& in) { const SiteSpec* s = specIn(in); return s ? s->name : std::string(); },
        [this](const Plan& in, const std::string& words) { return change(in, [&](SiteSpec& s) { s.name = words; }); });
    form->addWidget(new FieldRow(tr("Name"), name));
    form->addWidget(new SectionHeading(tr("The movement")));
    for (const SiteFigure& f : figures()) {
        auto* field = new NumberField(f.of);
        field->setObjectName("site " + QString(f.id));
        field->setRange(f.min, f.max);
        field->setStep(f.step);
        if (f.figure) field->setOptional(tr("not known"));
        tie(field, {setLabel(f.name), [this, f](const Plan& in) -> std::optional<double> {
                        const SiteSpec* s = specIn(in);
                        if (!s) return std::nullopt;
                        return f.figure ? (s->*f.figure).value : std::optional(s->*f.number);
                    },
                    [this, f](const Plan& in, std::optional<double> value) {
                        return change(in, [&](SiteSpec& s) {
                            if (f.number) s.*f.number = value.value_or(s.*f.number);
                            else s.*f.figure = typedOver(s.*f.figure, value);
                        });
                    }});
        auto* row = new FieldRow(f.name, field);
        row->setNote(f.means);
        if (f.figure)
            keep([this, row, field, f] {
                const SiteSpec* s = spec();
                if (!s) return;
                BasisKind basis = (s->*f.figure).basis.kind;
                if (f.figure == &SiteSpec::movement_m && !s->movement_m.known()) {   // what is usual at this control site is taken
                    const ControlSite* control = body() ? body()->site(s->controlSite) : nullptr;
                    if (control) field->setUsual(control->usual_m);
                    else field->setOptional(tr("not known"));
                    basis = control ? BasisKind::assumed : BasisKind::unknown;
                }
                row->setBasis(basis);
            });
        form->addWidget(row);
        if (!f.figure) continue;
        auto* basis = new ChoiceBox;
        basis->setObjectName(field->objectName() + " basis");
        for (const BasisKind kind : {BasisKind::measured, BasisKind::published, BasisKind::assumed}) basis->addItem(basisWord(kind), word(kind));
        tie(basis, tr("Set how a figure is known"), [this, f](const Plan& in) { const SiteSpec* s = specIn(in); return std::string(s ? word((s->*f.figure).basis.kind) : ""); },
            [this, f](const Plan& in, const std::string& choice) {
                const auto kind = basisFromWord(choice);
                return change(in, [&](SiteSpec& s) { if (kind && (s.*f.figure).basis.kind != *kind) (s.*f.figure).basis = {*kind, {}}; });
            });
        auto* basisRow = new FieldRow(tr("%1 is").arg(f.name), basis);
        keep([this, basisRow, f] { const SiteSpec* s = spec(); basisRow->setVisible(s && (s->*f.figure).known()); });
        form->addWidget(basisRow);
    }
}

}  // namespace hither
