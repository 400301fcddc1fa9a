#include "app/panels/build_offer_list.h"

#include <algorithm>
#include <array>

#include <QAbstractItemView>
#include <QComboBox>
#include <QLabel>
#include <QLineEdit>
#include <QPushButton>
#include <QResizeEvent>
#include <QSignalBlocker>
#include <QStringList>
#include <QVBoxLayout>

#include "app/panels/build_flow.h"
#include "app/panels/build_rows.h"
#include "app/panels/build_words.h"
#include "app/widgets/choice_box.h"

namespace hither {
namespace {

QString stepsWords(const Offer& offer) {
    QStringList names;
    for (const auto* steps : {&offer.before, &offer.after})
        for (const OfferStep& s : *steps) names << QString::fromStdString(s.part->name);
    return names.join(QStringLiteral(" + "));
}

}  // namespace

BuildOfferList::BuildOfferList(const EditorContext& context, QWidget* parent) : QWidget(parent), context_(context) {
    headline_ = new QLabel(this);
    headline_->setWordWrap(true);
    QFont bold = headline_->font();
    bold.setBold(true);
    headline_->setFont(bold);
    search_ = new QLineEdit(this);
    search_->setPlaceholderText(tr("Words: arm, 3/8, clamp …"));
    search_->setAccessibleName(tr("Search the parts by words"));
    search_->setAccessibleDescription(tr("Down goes into the list, Enter adds the part picked"));
    search_->setClearButtonEnabled(true);
    search_->installEventFilter(this);
    kinds_ = new ChoiceBox(this);
    kinds_->setAccessibleName(tr("Kind of part"));
    kinds_->view()->setAccessibleName(tr("Kind of part"));
    list_ = new BuildRowList(this);
    list_->setAccessibleName(tr("Parts on offer"));
    list_->fitToRows(22);
    count_ = new QLabel(this);
    count_->setWordWrap(true);
    count_->setProperty("quiet", true);
    add_ = new QPushButton(tr("Add"), this);
    add_->setMinimumHeight(24);
    add_->setProperty("primary", true);
    close_ = new QPushButton(tr("Close the list"), this);
    close_->setMinimumHeight(24);
    auto* column = new QVBoxLayout(this);
    column->setContentsMargins(0, 0, 0, 0);
    column->setSpacing(4);
    column->addWidget(headline_);
    column->addWidget(search_);
    column->addWidget(kinds_);
    column->addWidget(count_);
    column->addWidget(list_);
    auto* flow = new BuildFlow;
    flow->addWidget(add_);
    flow->addWidget(close_);
    column->addLayout(flow);
    connect(search_, &QLineEdit::textChanged, this, &BuildOfferList::showRows);
    connect(kinds_, &QComboBox::activated, this, &BuildOfferList::showRows);
    connect(list_, &BuildRowList::chosen, this, &BuildOfferList::followRow);
    connect(list_, &BuildRowList::entered, this, &BuildOfferList::take);
    connect(add_, &QPushButton::clicked, this, &BuildOfferList::take);
    connect(close_, &QPushButton::clicked, this, [this] { context_.view.setOfferFor({}); });
    refresh();
}

void BuildOfferList::takeFocus() {
    if (isVisible()) search_->setFocus(Qt::OtherFocusReason);
}

QString BuildOfferList::headline() const {
    const OfferFor& f = context_.view.offerFor();
    const std::shared_ptr<const Situation> situation = context_.analysis.situation();
    if (f.kind == OfferFor::Kind::attachment) {
        const Support* support = situation ? situation->support(f.support) : nullptr;
        const Attachment* at = support ? support->attachment(f.attachment) : nullptr;
        return at ? tr("What holds on to %1 (%2)").arg(QString::fromStdString(at->name), attachmentWords(*at, context_.view.units())) : QString();
    }
    const Mount* mount = mountIn(context_.document.plan(), context_.view.option(), f.mount);
    const Part* part = mount && static_cast<std::size_t>(f.part) < mount->parts.size() ? context_.document.plan().part(mount->parts[static_cast<std::size_t>(f.part)].part) : nullptr;
    if (!part) return {};
    const QString name = numbered(f.part, part->name);
    return f.kind == OfferFor::Kind::outlet ? tr("What goes behind %1").arg(name) : tr("What can take the place of %1").arg(name);
}

void BuildOfferList::refresh() {
    const OfferFor& f = context_.view.offerFor();
    const bool any = f.kind != OfferFor::Kind::nothing;
    if (!any) {
        offers_.clear();
        key_.clear();
        shownFor_ = {};
        setVisible(false);
        return;
    }
    // Everything that the offers depend on, so that turning a joint does not compute them anew.
    const Plan& plan = context_.document.plan();
    QString key = QStringLiteral("%1|%2|%3|%4|%5|%6|").arg(static_cast<int>(f.kind)).arg(QString::fromStdString(f.support), QString::fromStdString(f.attachment),
                                                               QString::fromStdString(f.mount)).arg(f.part).arg(static_cast<int>(plan.display));
    if (const Mount* m = mountIn(plan, context_.view.option(), f.mount)) {
        for (const MountPart& p : m->parts) key += QString::fromStdString(p.part) + (p.reversed ? '<' : '>');
        key += QString::number(m->place.yaw_rad);
    }
    for (const auto& p : plan.parts) key += QString::number(reinterpret_cast<quintptr>(p.get()), 16) + ',';
    const std::shared_ptr<const Situation> situation = context_.analysis.situation();
    if (f.kind != OfferFor::Kind::outlet && situation)
        for (const Support& s : situation->supports)
            for (const Attachment& a : s.attachments) key += QStringLiteral("%1;%2;%3;").arg(a.outside_m.value.value_or(-1)).arg(a.thickness_m.value.value_or(-1)).arg(a.length_m());
    if (key != key_) {
        key_ = key;
        const bool elsewhere = !(shownFor_ == f);
        shownFor_ = f;
        compute();
        if (elsewhere) {
            const QSignalBlocker quiet(search_);
            search_->clear();
        }
        headline_->setText(headline());
        list_->setAccessibleName(headline_->text());
        QSignalBlocker quiet(kinds_);
        kinds_->clear();
        kinds_->addItem(tr("All kinds"), -1);
        for (int k = 0; k <= static_cast<int>(PartKind::switchDevice); ++k)
            if (std::any_of(offers_.begin(), offers_.end(), [&](const Offer& o) { return static_cast<int>(o.part->kind) == k; })) kinds_->addItem(partKindsWord(static_cast<PartKind>(k)), k);
        kinds_->setVisible(kinds_->count() > 2);
        if (elsewhere) list_->pickKey({});
        showRows();
    }
    setVisible(true);
}

void BuildOfferList::compute() {
    offers_.clear();
    const OfferFor& f = context_.view.offerFor();
    const Plan& plan = context_.document.plan();
    const Catalogue all = cupboard(context_.shipped->catalogue, plan);
    const std::shared_ptr<const Situation> situation = context_.analysis.situation();
    const Mount* mount = mountIn(plan, context_.view.option(), f.mount);
    const auto attachment = [&](const std::string& support, const std::string& id) -> const Attachment* {
        const Support* s = situation ? situation->support(support) : nullptr;
        return s ? s->attachment(id) : nullptr;
    };
    if (f.kind == OfferFor::Kind::attachment) {
        if (const Attachment* at = attachment(f.support, f.attachment)) offers_ = gripOffers(*at, f.place, nullptr, all, plan.display);
    } else if (mount && f.kind == OfferFor::Kind::outlet) {
        offers_ = offersBehind(plan, *mount, f.part, all);
    } else if (mount) {
        offers_ = offersInPlaceOf(plan, *mount, f.part, attachment(mount->support, mount->attachment), all);
    }
}

void BuildOfferList::showRows() {
    const int kind = kinds_->currentData().toInt();
    const bool all = kinds_->currentIndex() <= 0;
    const std::string typed = search_->text().toStdString();
    std::array<int, 4> counts{};
    std::vector<std::pair<QString, BuildRow>> rows;
    int open = -1;
    const QString heads[] = {tr("Goes together"), tr("May go together: a figure is missing"), tr("Goes together with adapters"), tr("Does not go together")};
    for (std::size_t i = 0; i < offers_.size(); ++i) {
        const Offer& o = offers_[i];
        if ((!all && static_cast<int>(o.part->kind) != kind) || !matchesWords(*o.part, typed)) continue;
        const int fit = static_cast<int>(o.fit);
        ++counts[static_cast<std::size_t>(fit)];
        if (fit != open) {
            BuildRow head;
            head.title = heads[fit];
            head.tone = BuildRow::Tone::heading;
            rows.emplace_back(QStringLiteral("head/%1").arg(fit), head);
            open = fit;
        }
        BuildRow row;
        row.title = QString::fromStdString(o.part->name);
        if (o.reversed) row.title = tr("%1, end for end").arg(row.title);
        row.detail = QString::fromStdString(o.words);
        row.right = priceWords(o.part->price);
        if (o.fit == OfferFit::withAdapters)
            row.detail = o.adapterPrice ? tr("%1. With %2 (%3)").arg(row.detail, stepsWords(o), priceWords(o.adapterPrice)) : tr("%1. With %2").arg(row.detail, stepsWords(o));
        if (o.fit == OfferFit::withAdapters || o.fit == OfferFit::no) row.tone = BuildRow::Tone::quiet;
        rows.emplace_back(QString::fromStdString(o.part->id), row);
    }
    list_->show(rows);
    if (list_->currentRow() < 0 && list_->count() > 1) list_->pickKey(list_->keyAt(1));
    if (list_->currentRow() <= 1) list_->scrollToTop();   // with the heading
    else list_->scrollToItem(list_->currentItem());
    count_->setText(tr("%1 go together, %2 with adapters, %3 do not").arg(counts[0] + counts[1]).arg(counts[2]).arg(counts[3]));
    followRow();
}

const Offer* BuildOfferList::current() const {
    const std::string id = list_->currentKey().toStdString();
    for (const Offer& o : offers_) if (o.part->id == id) return &o;
    return nullptr;
}

void BuildOfferList::followRow() {
    const Offer* o = current();
    const bool replaces = context_.view.offerFor().kind == OfferFor::Kind::replacement;
    QString words = replaces ? tr("Put in its place") : tr("Add");
    if (o && o->fit == OfferFit::withAdapters) {
        const QString with = o->adapterPrice ? tr("%1 (%2)").arg(stepsWords(*o), priceWords(o->adapterPrice)) : stepsWords(*o);
        words = replaces ? tr("Put in its place with %1").arg(with) : tr("Add with %1").arg(with);
    }
    // The button has one line: where the names are too long for it they stand in the row.
    QStringList shorter{words};
    if (o && o->fit == OfferFit::withAdapters) {
        const int count = static_cast<int>(o->before.size() + o->after.size());
        const QString adapters = count == 1 ? tr("1 adapter") : tr("%n adapters", nullptr, count);
        const QString with = replaces ? tr("Put in with %1").arg(adapters) : tr("Add with %1").arg(adapters);
        if (o->adapterPrice) shorter << tr("%1 (%2)").arg(with, priceWords(o->adapterPrice));
        shorter << with;
    }
    QFont strong = add_->font();
    strong.setWeight(QFont::DemiBold);
    const QFontMetrics metrics(strong);
    const int room = std::max(width(), 24 * metrics.averageCharWidth()) - 4 * metrics.averageCharWidth() - 12;
    while (shorter.size() > 1 && metrics.horizontalAdvance(shorter.front()) > room) shorter.removeFirst();
    add_->setText(shorter.front());
    add_->setAccessibleName(words);
    add_->setToolTip(words);
    add_->setEnabled(o && (o->fit != OfferFit::no));
}

void BuildOfferList::resizeEvent(QResizeEvent* event) {
    QWidget::resizeEvent(event);
    if (event->oldSize().width() != width()) followRow();
}

void BuildOfferList::take() {
    const Offer* o = current();
    if (!o || o->fit == OfferFit::no) return;
    emit taken(Offer(*o));
}

}  // namespace hither
