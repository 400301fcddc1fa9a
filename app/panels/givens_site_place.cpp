#include <QVBoxLayout>

#include "app/panels/givens_pieces.h"
#include "app/panels/givens_words.h"
#include "app/panels/site_panel.h"
#include "app/widgets/choice_box.h"
#include "app/widgets/field_row.h"
#include "app/widgets/words_label.h"
#include "core/plan/edits/sites.h"

namespace hither {

void SitePanel::buildGiven(QVBoxLayout* form) {
    form->addWidget(new SectionHeading(tr("Where it is")));
    auto* problem = wordsLabel({});
    problem->setObjectName("site problem");
    form->addWidget(problem);
    keep([this, problem] {
        QString words;
        if (!placed()) {
            words = tr("It cannot be placed yet.");
            for (const PlanProblem& p : context_.analysis.problems()) words += ' ' + nameFromCore(p.what) + '.';
        }
        problem->setText(words);
        problem->setVisible(!words.isEmpty());
    });

    auto* given = changes(new ChoiceBox);
    given->setObjectName("given");
    const SiteSpec now = *spec();
    if (plan().person && !now.controlSite.empty()) given->addItem(tr("By the posture"), static_cast<int>(SiteGiven::fromPosture));
    if (plan().person) given->addItem(tr("Fixed on the body"), static_cast<int>(SiteGiven::onBody));
    given->addItem(tr("As a typed point"), static_cast<int>(SiteGiven::typed));
    keep([this, given] { if (const SiteSpec* s = spec()) given->setChoice(static_cast<int>(s->given)); });
    connect(given, &ChoiceBox::activated, this, [this, given](int) { give(static_cast<SiteGiven>(given->currentData().toInt())); });
    auto* givenRow = new FieldRow(tr("Given"), given);
    givenRow->setNote(tr("By the posture it follows the control site when the body changes; fixed on the body it stays at the spot that was picked."));
    form->addWidget(givenRow);

    auto* control = new ChoiceBox;
    control->setObjectName("control site");
    if (now.given == SiteGiven::typed) control->addItem(tr("None"), QString());
    for (const auto& [id, name] : controlSites()) control->addItem(nameFromCore(name), QString::fromStdString(id));
    tie(control, tr("Set the control site"), [this](const Plan& in) { const SiteSpec* s = specIn(in); return s ? s->controlSite : std::string(); },
        [this](const Plan& in, const std::string& id) { return change(in, [&](SiteSpec& s) { s.controlSite = id; }); });
    auto* controlRow = new FieldRow(tr("Control site"), control);
    controlRow->setNote(tr("The body part that operates the switch."));
    form->addWidget(controlRow);

    const bool typed = now.given == SiteGiven::typed;
    form->addWidget(wordsLabel(typed                                   ? tr("The point, from where the first support stands.")
                               : now.given == SiteGiven::fromPosture ? tr("Moved from the control site, along the body part's own axes (as the person stands with hanging arms, palms inward).")
                                                                       : tr("The point from the body part's upper joint, along its own axes (as the person stands with hanging arms, palms inward)."), true));
    const std::pair<QString, int> axes[] = {{tr("Forward"), 0}, {tr("To the left"), 1}, {tr("Up"), 2}};
    for (const auto& [name, axis] : axes) {
        auto* field = new NumberField(NumberField::Of::length);
        field->setObjectName(QString("site point %1").arg(axis));
        field->setRange(typed ? -20 : -2, typed ? 20 : 2);
        tie(field, {setLabel(tr("Place of a site")), [this, axis = axis](const Plan& in) -> std::optional<double> {
                        const SiteSpec* s = specIn(in);
                        return s ? std::optional(s->point[axis]) : std::nullopt;
                    },
                    [this, axis = axis](const Plan& in, std::optional<double> value) { return change(in, [&](SiteSpec& s) { s.point[axis] = value.value_or(0); }); }});
        form->addWidget(new FieldRow(name, field));
    }
    buildDirection(form);
    if (typed && now.controlSite.empty()) buildGoesWith(form);
}

void SitePanel::buildDirection(QVBoxLayout* form) {
    form->addWidget(new SectionHeading(tr("Which way it moves")));
    auto* words = wordsLabel({});
    words->setObjectName("direction words");
    form->addWidget(words);
    keep([this, words] {
        const Site* site = placed();
        words->setText(site ? tr("The body part moves %1.").arg(movementWords(site->d_W)) : QString());
        words->setVisible(site != nullptr);
    });
    const SiteSpec now = *spec();
    if (now.given == SiteGiven::fromPosture) {
        auto* how = changes(new ChoiceBox);
        how->setObjectName("direction given");
        how->addItem(tr("As usual there"), false);
        how->addItem(tr("Typed"), true);
        how->setChoice(now.directionTyped);
        connect(how, &ChoiceBox::activated, this, [this, how](int) {
            const bool own = how->currentData().toBool();
            const Site* site = placed();
            const SiteSpec* s = spec();
            const auto frame = s ? frameOf(*s) : std::nullopt;
            if (!site || !frame) return;
            const Vec3 direction = frame->linear().transpose() * site->d_W;   // goes on from where it is
            document().apply(tr("Set how the direction is given"), change(plan(), [&](SiteSpec& next) {
                next.directionTyped = own;
                if (own) next.direction = direction;
            }));
        });
        form->addWidget(new FieldRow(tr("Direction"), how));
        if (!now.directionTyped) return;
    }
    for (const bool level : {true, false}) {
        auto* field = new NumberField(NumberField::Of::angle);
        field->setObjectName(level ? "direction azimuth" : "direction elevation");
        field->setRange(level ? -pi : -pi / 2, level ? pi : pi / 2);
        field->setStep(radians(5));
        // The direction is typed in W and kept in the frame that the site is given in.
        tie(field, {setLabel(tr("Direction of a movement")), [this, level](const Plan& in) -> std::optional<double> {
                        const SiteSpec* s = specIn(in);
                        const auto frame = s ? frameOf(*s) : std::nullopt;
                        if (!frame) return std::nullopt;
                        const Bearing b = bearingOf(frame->linear() * s->direction);
                        return level ? b.azimuth : b.elevation;
                    },
                    [this, level](const Plan& in, std::optional<double> value) -> Edited {
                        const SiteSpec* s = specIn(in);
                        const auto frame = s ? frameOf(*s) : std::nullopt;
                        if (!frame) return {std::nullopt, tr("The body part cannot be placed yet.").toStdString()};
                        Bearing b = bearingOf(frame->linear() * s->direction);
                        (level ? b.azimuth : b.elevation) = value.value_or(0);
                        return change(in, [&](SiteSpec& next) { next.direction = frame->linear().transpose() * directionOf(b); });
                    }});
        auto* row = new FieldRow(level ? tr("Turned to the left of forward") : tr("Upward"), field);
        row->setNote(level ? tr("90° is to the person's left, -90° to the right, 180° backward.") : tr("0° is level, 90° straight up, -90° straight down."));
        form->addWidget(row);
    }
}

void SitePanel::buildGoesWith(QVBoxLayout* form) {
    auto* with = new ChoiceBox;
    with->setObjectName("goes with");
    with->addItem(tr("Nothing: it stays where it is"), QString());
    for (const SupportSpec& spec : plan().supports) {
        const SupportMade made = makeSupport(spec);
        if (!made.support) continue;
        const QString name = fromCore(made.support->name);
        with->addItem(name, QString::fromStdString(spec.id + "\n"));
        for (const MovingGroup& g : made.support->groups) with->addItem(tr("%1: %2").arg(name, fromCore(g.name)), QString::fromStdString(spec.id + "\n" + g.id));
    }
    tie(with, tr("Set what a site goes with"), [this](const Plan& in) {
        const SiteSpec* s = specIn(in);
        return !s || s->goesWithSupport.empty() ? std::string() : s->goesWithSupport + "\n" + s->goesWithGroup;
    }, [this](const Plan& in, const std::string& choice) {
        return change(in, [&](SiteSpec& s) {
            const auto cut = choice.find('\n');
            s.goesWithSupport = choice.substr(0, cut);
            s.goesWithGroup = cut == std::string::npos ? std::string() : choice.substr(cut + 1);
        });
    });
    auto* row = new FieldRow(tr("Goes with"), with);
    row->setNote(tr("When this part of the support moves, the site moves with it."));
    form->addWidget(row);
}

void SitePanel::give(SiteGiven given) {
    const SiteSpec* s = spec();
    const Site* site = placed();
    if (!s || s->given == given) return;
    if (!site && given != SiteGiven::typed) { emit document().refused(tr("The site cannot be placed yet, so it cannot be given in another way.")); refreshSoon(); return; }
    SiteSpec next = *s;
    next.given = given;
    const Body* whole = body();
    const ControlSite* control = whole ? whole->site(s->controlSite) : nullptr;
    // It stays where it is, only said in another way.
    if (given == SiteGiven::typed && site) {
        next.point = site->p_W;
        next.direction = site->d_W;
        next.directionTyped = true;
    } else if (given == SiteGiven::onBody) {
        if (site->segment) next.segment = *site->segment;
        else if (control) next.segment = control->segment;
        else next.segment = {Segment::trunk, Side::none};
        const Pose X_W = whole->X_WSegment.at(next.segment);
        next.point = X_W.inverse() * site->p_W;
        next.direction = X_W.linear().transpose() * site->d_W;
        next.directionTyped = true;
    } else if (given == SiteGiven::fromPosture && control) {
        const Pose X_W = whole->X_WSegment.at(control->segment);
        next.point = X_W.inverse() * site->p_W - control->point;
        next.direction = X_W.linear().transpose() * site->d_W;
        next.directionTyped = true;
    }
    document().apply(tr("Set how a site is given"), replaceSite(plan(), shown_, next));
}

}  // namespace hither
