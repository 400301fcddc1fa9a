#include <QVBoxLayout>

#include "app/panels/givens_pieces.h"
#include "app/panels/support_panel.h"
#include "app/widgets/choice_box.h"
#include "app/widgets/field_row.h"
#include "app/widgets/fold.h"
#include "app/widgets/text_field.h"
#include "app/widgets/words_label.h"
#include "core/situation/support_typed.h"

namespace hither {
namespace {

QString tubeReading(const std::string& text, UnitSystem units) {
    const Parsed<double> outside_m = tubeOutside_m(text);
    if (!outside_m) return nameFromCore(outside_m.reason) + '.';
    return GivensPanel::tr("%1 outside").arg(printNumber(*outside_m.value, {NumberOf::length, units, 1, false}));
}

}  // namespace

void SupportPanel::buildTubes(QVBoxLayout* form) {
    const auto support = made(false);
    if (!support) return;
    std::vector<const Attachment*> rails;
    for (const Attachment& a : support->attachments) if (a.kind == AttachmentKind::rail) rails.push_back(&a);
    if (rails.empty()) return;
    SupportSpec bare = *spec();
    bare.tubes.clear();
    const SupportMade untyped = makeSupport(bare);
    auto* fold = new Fold(tr("Tube sizes (%n)", nullptr, static_cast<int>(rails.size())), false);
    fold->inside()->addWidget(wordsLabel(tr("Type the outside size as measured (22 mm, 7/8 in) or by name (NPS 3/4 is a pipe, EMT 1/2 a conduit). The tube is shown in the scene while its field has the keyboard."), true));
    for (const Attachment* rail : rails) {
        auto* field = new TextField;
        field->setObjectName("tube " + QString::fromStdString(rail->id));
        field->setProperty("rail", QString::fromStdString(rail->id));
        const Attachment* usual = untyped.support ? untyped.support->attachment(rail->id) : nullptr;
        if (usual) field->setPlaceholderText(QString::fromStdString(usual->tubeAsTyped));
        const std::string usualText = usual ? usual->tubeAsTyped : std::string();
        tie(field, tr("Set a tube size"), [this, id = rail->id](const Plan& in) {
            const SupportSpec* s = specIn(in);
            const auto typed = s ? s->tubes.find(id) : std::map<std::string, std::string>::const_iterator();
            return s && typed != s->tubes.end() ? typed->second : std::string();
        }, [this, id = rail->id](const Plan& in, const std::string& words) {
            return change(in, [&](SupportSpec& s) {
                if (words.empty()) s.tubes.erase(id);
                else s.tubes[id] = words;
            });
        });
        auto* row = new FieldRow(fromCore(rail->name), field);
        const auto read = [this, field, row, usualText] {
            const std::string text = field->text().trimmed().toStdString();
            if (!text.empty() || !usualText.empty()) row->setNote(tubeReading(text.empty() ? usualText : text, plan().display));
            row->setBasis(field->words().isEmpty() ? BasisKind::assumed : BasisKind::measured);
        };
        connect(field, &QLineEdit::textChanged, row, read);
        keep(read);
        fold->inside()->addWidget(row);
    }
    form->addWidget(fold);
}

void SupportPanel::buildPlace(QVBoxLayout* form) {
    auto* fold = new Fold(tr("Where it stands"), false);
    QVBoxLayout* inside = fold->inside();
    auto* carrier = new ChoiceBox;
    carrier->setObjectName("carried by");
    carrier->addItem(tr("Stands on the floor"), QString());
    for (const SupportSpec& other : plan().supports) {
        if (other.id == shown_) continue;
        const SupportMade result = makeSupport(other);
        if (!result.support) continue;
        const QString name = fromCore(result.support->name);
        carrier->addItem(tr("Goes with: %1").arg(name), QString::fromStdString(other.id + "\n"));
        for (const MovingGroup& g : result.support->groups) carrier->addItem(tr("Goes with: %1, %2").arg(name, fromCore(g.name)), QString::fromStdString(other.id + "\n" + g.id));
    }
    if (carrier->count() > 1) {
        tie(carrier, tr("Set what carries a support"), [this](const Plan& in) {
            const SupportSpec* s = specIn(in);
            return !s || s->carriedBy.empty() ? std::string() : s->carriedBy + "\n" + s->carriedByGroup;
        }, [this](const Plan& in, const std::string& choice) {
            return change(in, [&](SupportSpec& s) {
                const auto cut = choice.find('\n');
                s.carriedBy = choice.substr(0, cut);
                s.carriedByGroup = cut == std::string::npos ? std::string() : choice.substr(cut + 1);
            });
        });
        inside->addWidget(new FieldRow(tr("Carried by"), carrier));
    } else {
        delete carrier;
    }
    inside->addWidget(wordsLabel(tr("Forward is the way the person faces. A chair is placed by the middle of the line where seat and back meet, a bed by its hip pivot, a table or tray by the middle of the edge nearest the person."), true));
    const std::pair<QString, int> axes[] = {{tr("Forward"), 0}, {tr("To the left"), 1}, {tr("Up"), 2}};
    for (const auto& [name, axis] : axes) {
        auto* field = new NumberField(NumberField::Of::length);
        field->setObjectName(QString("place %1").arg(axis));
        field->setRange(-20, 20);
        field->setStep(0.010);
        tie(field, {setLabel(tr("Place of a support")), [this, axis = axis](const Plan& in) -> std::optional<double> {
                        const SupportSpec* s = specIn(in);
                        return s ? std::optional(s->at_m[axis]) : std::nullopt;
                    },
                    [this, axis = axis](const Plan& in, std::optional<double> value) { return change(in, [&](SupportSpec& s) { s.at_m[axis] = value.value_or(0); }); }});
        inside->addWidget(new FieldRow(name, field));
    }
    auto* yaw = new NumberField(NumberField::Of::angle);
    yaw->setObjectName("place yaw");
    yaw->setRange(-pi, pi);
    yaw->setStep(radians(5));
    tie(yaw, {setLabel(tr("Turn of a support")), [this](const Plan& in) -> std::optional<double> {
                  const SupportSpec* s = specIn(in);
                  return s ? std::optional(s->yaw_rad) : std::nullopt;
              },
              [this](const Plan& in, std::optional<double> value) { return change(in, [&](SupportSpec& s) { s.yaw_rad = value.value_or(0); }); }});
    inside->addWidget(new FieldRow(tr("Turned to the left"), yaw));
    form->addWidget(fold);
}

}  // namespace hither
