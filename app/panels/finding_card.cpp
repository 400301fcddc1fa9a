#include "app/panels/finding_card.h"

#include <QHBoxLayout>
#include <QLabel>
#include <QPushButton>
#include <QVBoxLayout>

#include "app/panels/finding_accept.h"
#include "app/panels/finding_at.h"
#include "app/panels/finding_bar.h"
#include "app/panels/finding_button.h"
#include "app/panels/finding_figures.h"
#include "app/panels/finding_link.h"
#include "app/panels/finding_remedy.h"
#include "app/panels/finding_words.h"
#include "app/widgets/verdict_mark.h"
#include "core/remedy/remedy.h"

namespace hither {
namespace {

void setTextOnce(QLabel* label, const QString& text) {
    if (label->text() != text) label->setText(text);
}
QString link(const QString& href, const QString& words) { return QString("<a href=\"%1\">%2</a>").arg(href.toHtmlEscaped(), words.toHtmlEscaped()); }

/// Leads to where the size of what is gripped is typed: with the support, not with a part.
const char* const sizeLink = "size";

/// The piece of the support whose size a finding misses; null: none.
const Subject* sizeMissing(const Finding& f) {
    const std::string end = ".size_unknown";
    if (f.key.size() < end.size() || f.key.compare(f.key.size() - end.size(), end.size(), end) != 0) return nullptr;
    for (const Subject& s : f.subjects) if (s.kind == Subject::Kind::support) return &s;
    return nullptr;
}

QString basisWords(BasisKind basis) {
    switch (basis) {
        case BasisKind::measured: return FindingCard::tr("Every figure it rests on was measured.");
        case BasisKind::published: return FindingCard::tr("The weakest figure it rests on is published, not measured.");
        case BasisKind::assumed: return FindingCard::tr("It rests on figures that are assumed: nobody has measured them.");
        case BasisKind::unknown: break;
    }
    return FindingCard::tr("A figure that it needs is unknown.");
}

}  // namespace

FindingCard::FindingCard(const EditorContext& context, QWidget* parent) : QWidget(parent), context_(context) {
    auto* outer = new QVBoxLayout(this);
    outer->setContentsMargins(0, 0, 0, 0);
    nothing_ = addText(outer);
    toMissed_ = new WrappedButton(this);
    toMissed_->setText(tr("Go to the first missed finding"));
    outer->addWidget(toMissed_);
    connect(toMissed_, &QPushButton::clicked, this, [this] { context_.actions.action("check.next")->trigger(); });

    whole_ = new QWidget(this);
    auto* column = new QVBoxLayout(whole_);
    column->setContentsMargins(0, 0, 0, 0);
    auto* head = new QHBoxLayout;
    verdict_ = new VerdictMark(whole_);
    head->addWidget(verdict_);
    check_ = new QLabel(whole_);
    QFont bold;  // its weight alone: the size follows the text size chosen
    bold.setBold(true);
    check_->setFont(bold);
    check_->setWordWrap(true);
    head->addWidget(check_, 1);
    column->addLayout(head);
    sentence_ = addText(column);
    bar_ = new FindingBar(whole_);
    column->addWidget(bar_);
    value_ = addText(column);
    about_ = addText(column);
    about_->setText(tr("What it is about:"));
    subjects_ = new QWidget(whole_);
    subjectColumn_ = new QVBoxLayout(subjects_);
    subjectColumn_->setContentsMargins(0, 0, 0, 0);
    subjectColumn_->setSpacing(0);
    column->addWidget(subjects_);
    at_ = new FindingAt(context_, whole_);
    column->addWidget(at_);
    basis_ = addText(column);
    figures_ = new QWidget(whole_);
    figureColumn_ = new QVBoxLayout(figures_);
    figureColumn_->setContentsMargins(0, 0, 0, 0);
    figureColumn_->setSpacing(0);
    column->addWidget(figures_);
    remedy_ = new WrappedButton(whole_);
    column->addWidget(remedy_);
    connect(remedy_, &QPushButton::clicked, this, &FindingCard::takeRemedy);
    accept_ = new FindingAccept(context_, whole_);
    column->addWidget(accept_);
    outer->addWidget(whole_);
}

QLabel* FindingCard::addText(QVBoxLayout* to) {
    auto* label = new QLabel(to->parentWidget());
    label->setWordWrap(true);
    label->setTextFormat(Qt::PlainText);
    to->addWidget(label);
    return label;
}

QLabel* FindingCard::linkLabel(std::vector<QLabel*>& pool, std::size_t number, QVBoxLayout* into) {
    while (pool.size() <= number) {
        auto* label = new LinkLabel(into->parentWidget());
        into->addWidget(label);
        const bool subject = &pool == &subjectLinks_;
        connect(label, &QLabel::linkActivated, this, [this, subject](const QString& href) {
            const Finding* f = context_.analysis.finding(context_.view.finding());
            if (href == sizeLink) return f ? goToSize(*f) : void();
            if (!subject) return emit figureWanted(href.section('|', 0, 0), href.section('|', 1));
            const auto i = href.toUInt();
            if (f && i < f->subjects.size()) context_.view.pick(pickedOf(f->subjects[i], context_.analysis.situation().get()));
        });
        pool.push_back(label);
    }
    pool[number]->show();
    return pool[number];
}

void FindingCard::showSubjects(const Finding& f) {
    for (std::size_t i = 0; i < f.subjects.size(); ++i) {
        const QString name = QString::fromStdString(f.subjects[i].name);
        QLabel* label = linkLabel(subjectLinks_, i, subjectColumn_);
        setTextOnce(label, link(QString::number(i), name));
        label->setAccessibleName(tr("Pick %1").arg(name));
    }
    for (std::size_t i = f.subjects.size(); i < subjectLinks_.size(); ++i) subjectLinks_[i]->hide();
    about_->setVisible(!f.subjects.empty());
    subjects_->setVisible(!f.subjects.empty());
}

void FindingCard::showBasis(const Finding& f) {
    std::vector<FigureBehind> figures;
    if (f.basis != BasisKind::measured) figures = figuresBehind(f, context_.document.plan(), context_.view.option());
    setTextOnce(basis_, figures.empty() ? basisWords(f.basis) : tr("%1 To measure:").arg(basisWords(f.basis)));
    for (std::size_t i = 0; i < figures.size(); ++i) {
        QLabel* label = linkLabel(figureLinks_, i, figureColumn_);
        setTextOnce(label, link(QString::fromStdString(figures[i].part + "|" + figures[i].place), figures[i].name) + QString(" (%1)").arg(FindingWords::basis(figures[i].basis)));
        label->setAccessibleName(tr("Type %1").arg(figures[i].name));
    }
    std::size_t shown = figures.size();
    if (const Subject* place = sizeMissing(f)) {
        QLabel* label = linkLabel(figureLinks_, shown++, figureColumn_);
        const QString words = tr("Type the size of %1").arg(QString::fromStdString(place->name));
        setTextOnce(label, link(sizeLink, words));
        label->setAccessibleName(words);
    }
    for (std::size_t i = shown; i < figureLinks_.size(); ++i) figureLinks_[i]->hide();
    figures_->setVisible(shown > 0);
}

void FindingCard::goToSize(const Finding& f) {
    const Subject* place = sizeMissing(f);
    if (!place) return;
    const Picked picked = pickedOf(*place, context_.analysis.situation().get());
    at_->back();
    context_.view.pick(picked);
    context_.view.setStep(JobStep::support);
}

void FindingCard::showRemedy(const Finding& f) {
    remedy_->setVisible(f.remedy.has_value());
    if (!f.remedy) return;
    const QString words = QString::fromStdString(remedySentence(f, context_.view.units())).replace('&', "&&");
    if (remedy_->text() == words) return;
    remedy_->setText(words);
    remedy_->setAccessibleName(words);
    remedy_->updateGeometry();
}

void FindingCard::takeRemedy() {
    const QString id = context_.view.finding();
    const Finding* f = context_.analysis.finding(id);
    if (!f || !f->remedy) return;
    at_->back();
    if (changesPlan(f->remedy->kind)) {
        mend(context_, id);
    } else if (f->remedy->kind == Remedy::Kind::measure) {
        const std::vector<FigureBehind> figures = figuresBehind(*f, context_.document.plan(), context_.view.option());
        if (!figures.empty()) emit figureWanted(QString::fromStdString(figures.front().part), QString::fromStdString(figures.front().place));
    } else {
        context_.view.pick(Picked::mount(f->remedy->mount));
        context_.view.setStep(JobStep::build);
    }
}

void FindingCard::refresh() {
    const QString id = context_.view.finding();
    const Finding* f = context_.analysis.finding(id);
    if (!f) {
        // While a setting is looked at, the finding may be gone from the results: its card stays.
        if (at_->lookingAt(id.toStdString())) return;
        at_->showFor(nullptr);
        setTextOnce(nothing_, id.isEmpty() ? tr("Go to a finding in the list to see it in full.") : tr("The finding you looked at is no longer there: the plan has changed."));
        QAction* next = nullptr;
        for (const ActionEntry& e : context_.actions.entries()) if (e.id == "check.next") next = context_.actions.action(e.id);
        toMissed_->setVisible(next && next->isEnabled());
        nothing_->show();
        whole_->hide();
        return;
    }
    nothing_->hide();
    toMissed_->hide();
    whole_->show();
    verdict_->setVerdict(f->verdict);
    const UnitSystem units = context_.view.units();
    setTextOnce(check_, checkWord(f->check));
    setTextOnce(sentence_, QString::fromStdString(sentence(*f, units)));
    const QString value = FindingWords::valueAgainstLimit(*f, units);
    setTextOnce(value_, value);
    value_->setVisible(!value.isEmpty());
    bar_->setVisible(FindingBar::says(*f));
    bar_->show(*f, value);
    showSubjects(*f);
    at_->showFor(f);
    showBasis(*f);
    showRemedy(*f);
    accept_->showFor(*f);
}

}  // namespace hither
