#include "app/panels/person_panel.h"

#include <algorithm>

#include <QAbstractItemView>
#include <QPushButton>
#include <QTimer>
#include <QVBoxLayout>

#include "app/panels/givens_pieces.h"
#include "app/panels/person_words.h"
#include "app/widgets/choice_box.h"
#include "app/widgets/field_row.h"
#include "app/widgets/fold.h"
#include "app/widgets/text_field.h"
#include "app/widgets/words_label.h"
#include "core/plan/edits/supports.h"

namespace hither {
namespace {

/// By its own name, else by what it is: there is little room.
QString supportName(const SupportSpec& support) {
    if (!support.name.empty()) return QString::fromStdString(support.name);
    for (const SupportKind& kind : supportKinds())
        if (kind.kind == support.kind) return fromCore(kind.name);
    return QString::fromStdString(support.id);
}

const char* const lyingWords[] = {"back", "left", "right"};

}  // namespace

PersonPanel::PersonPanel(const EditorContext& context, QWidget* parent)
    : GivensPanel(context, JobStep::person, tr("Say how the person sits or lies, how large they are and how far they can move. What is not typed is estimated."), parent) {
    setAccessibleName(tr("Person"));
}

Edited PersonPanel::change(const Plan& in, const Change& make) const {
    if (!in.person) return {std::nullopt, tr("The person is no longer there.").toStdString()};
    PersonSpec next = *in.person;
    if (next.on.empty())
        if (const SupportSpec* on = supportToRestOn(in)) next.on = on->id;
    make(next);
    return setPerson(in, next);
}

QString PersonPanel::structure() const {
    QStringList all;
    for (const SupportSpec& s : plan().supports)
        if (canRestOn(s)) all << QString::fromStdString(s.id) << supportName(s);
    if (!plan().person) return (all << "nobody").join('\n');
    all << "on" << QString::fromStdString(plan().person->on) << QString::number(static_cast<int>(plan().person->body.table));
    if (const SupportSpec* on = supportToRestOn(plan())) {
        const SupportMade support = makeSupport(*on);
        all << (support.support ? QString::number(static_cast<int>(support.support->resting.posture)) : "cannot be made");
    }
    for (const std::string& name : otherDimensions()) all << QString::fromStdString(name);
    return all.join('\n');
}

void PersonPanel::build(QVBoxLayout* form) {
    keep([this] { made_ = personMade(plan(), data()); });
    if (!plan().person) {
        buildNobody(form);
        return;
    }
    buildWho(form);
    buildRest(form);
    buildBody(form);
    buildDimensions(form);
    buildPosture(form);
    buildRanges(form);
    auto* remove = changes(new QPushButton(tr("Remove the person")));
    remove->setObjectName("remove person");
    connect(remove, &QPushButton::clicked, this, [this] { document().apply(tr("Remove the person"), setPerson(plan(), std::nullopt)); });
    form->addSpacing(6);
    form->addWidget(remove, 0, Qt::AlignLeading);
}

void PersonPanel::buildNobody(QVBoxLayout* form) {
    if (supportToRestOn(plan())) {
        auto* button = changes(new QPushButton(tr("Add the person")));
        button->setObjectName("add person");
        button->setProperty("primary", true);
        connect(button, &QPushButton::clicked, this, &PersonPanel::add);
        form->addWidget(button);
        return;
    }
    form->addWidget(wordsLabel(tr("There is nothing yet that a person can sit or lie on.")));
    auto* support = new QPushButton(tr("Choose a support"));
    support->setObjectName("to support");
    support->setProperty("primary", true);
    connect(support, &QPushButton::clicked, this, [this] { context_.view.setStep(JobStep::support); });
    form->addWidget(support);
}

void PersonPanel::add() {
    const SupportSpec* on = supportToRestOn(plan());
    if (!on) return;
    PersonSpec person;
    person.on = on->id;
    justAdded_ = document().apply(tr("Add the person"), setPerson(plan(), person));
}

void PersonPanel::buildWho(QVBoxLayout* form) {
    auto* name = new TextField;
    name->setObjectName("person name");
    name->setPlaceholderText(tr("initials or a pseudonym"));
    name->setSizePolicy(QSizePolicy::Expanding, QSizePolicy::Fixed);
    tie(name, tr("Name the person"), [](const Plan& in) { return in.person ? in.person->name : std::string(); },
        [this](const Plan& in, const std::string& words) { return change(in, [&](PersonSpec& p) { p.name = words; }); });
    auto* row = new FieldRow(tr("Pseudonym"), name);
    row->setNote(tr("Initials or a pseudonym, never a full name: the plan is handed on."));
    form->addWidget(row);
    if (justAdded_) QTimer::singleShot(0, name, [name] { name->setFocus(Qt::OtherFocusReason); });
    justAdded_ = false;
}

void PersonPanel::buildRest(QVBoxLayout* form) {
    auto* on = new ChoiceBox;
    on->setObjectName("person on");
    for (const SupportSpec& s : plan().supports)
        if (canRestOn(s) || s.id == plan().person->on) on->addItem(supportName(s), QString::fromStdString(s.id));
    tie(on, tr("Choose what the person rests on"), [](const Plan& in) { const SupportSpec* s = supportToRestOn(in); return s ? s->id : std::string(); },
        [this](const Plan& in, const std::string& id) { return change(in, [&](PersonSpec& p) { p.on = id; }); });
    addChoice(form, tr("Sits or lies on"), on);
    const SupportSpec* spec = supportToRestOn(plan());
    const SupportMade support = spec ? makeSupport(*spec) : SupportMade{};
    const auto posture = support.support ? support.support->resting.posture : Resting::Posture::none;
    if (posture == Resting::Posture::lying) {
        auto* lying = new ChoiceBox;
        lying->setObjectName("person lying");
        for (const auto way : {PersonSpec::Lying::onBack, PersonSpec::Lying::onLeft, PersonSpec::Lying::onRight})
            lying->addItem(lyingName(way), lyingWords[static_cast<int>(way)]);
        tie(lying, tr("Choose how the person lies"), [](const Plan& in) { return std::string(lyingWords[in.person ? static_cast<int>(in.person->lying) : 0]); },
            [this](const Plan& in, const std::string& way) {
                const auto at = std::find(std::begin(lyingWords), std::end(lyingWords), way) - std::begin(lyingWords);
                return change(in, [&](PersonSpec& p) { p.lying = static_cast<PersonSpec::Lying>(at); });
            });
        addChoice(form, tr("Lies"), lying);
    }
    if (posture == Resting::Posture::seated) {
        auto* cushion = new NumberField(NumberField::Of::length);
        cushion->setObjectName("cushion");
        cushion->setRange(0, 0.5);
        cushion->setStep(0.005);
        tie(cushion, {setLabel(tr("Cushion thickness")), [](const Plan& in) { return in.person ? std::optional(in.person->cushion_m) : std::nullopt; },
                      [this](const Plan& in, std::optional<double> value) { return change(in, [&](PersonSpec& p) { p.cushion_m = value.value_or(0); }); }});
        auto* row = new FieldRow(tr("Cushion under the person"), cushion);
        row->setNote(tr("How thick it is while the person sits on it."));
        form->addWidget(row);
        problemLine(form, {"cushion"});
    }
}

FieldRow* PersonPanel::addChoice(QVBoxLayout* form, const QString& words, ChoiceBox* box) {
    auto* row = new FieldRow(words, box);
    box->view()->setAccessibleName(words);
    form->addWidget(row);
    return row;
}

Fold* PersonPanel::fold(QVBoxLayout* form, const QString& words) {
    QPointer<Fold>& kept = folds_[words];
    auto* made = new Fold(words, kept && kept->isOpen());
    kept = made;
    form->addWidget(made);
    return made;
}

void PersonPanel::problemLine(QVBoxLayout* form, const std::vector<std::string>& about, Fold* onlyWhenClosed) {
    QLabel* line = wordsLabel({});
    line->setObjectName("problem");
    line->hide();
    form->addWidget(line);
    const auto show = [this, line, about, onlyWhenClosed] {
        QStringList words;
        for (const std::string& problem : made_.problems) {
            const std::string key = problemKey(problem);
            if (about.empty() ? key.empty() : std::find(about.begin(), about.end(), key) != about.end()) words << tr("Look again: %1").arg(problemWords(problem));
        }
        line->setText(words.join('\n'));
        line->setVisible(!words.isEmpty() && !(onlyWhenClosed && onlyWhenClosed->isOpen()));
    };
    keep(show);
    if (onlyWhenClosed)
        for (auto* button : onlyWhenClosed->findChildren<QToolButton*>(QString(), Qt::FindDirectChildrenOnly)) connect(button, &QToolButton::toggled, line, show);
}

}  // namespace hither
