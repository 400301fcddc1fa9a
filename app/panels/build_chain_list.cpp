#include "app/panels/build_chain_list.h"

#include <QLabel>
#include <QPushButton>
#include <QVBoxLayout>

#include "app/panels/build_flow.h"
#include "app/panels/build_rows.h"
#include "app/panels/build_words.h"
#include "core/offers/offer.h"
#include "core/offers/offer_words.h"
#include "core/plan/edits/mounts.h"
#include "core/plan/edits/parts.h"

namespace hither {
namespace {

QString partKey(int part) { return QStringLiteral("part/%1").arg(part); }
const char* const freeEnd = "free end";

}  // namespace

BuildChainList::BuildChainList(const EditorContext& context, QWidget* parent) : QWidget(parent), context_(context) {
    auto* column = new QVBoxLayout(this);
    column->setContentsMargins(0, 0, 0, 0);
    column->setSpacing(4);
    heading_ = new QLabel(tr("Parts, from support to switch"), this);
    heading_->setWordWrap(true);
    list_ = new BuildRowList(this);
    list_->setAccessibleName(heading_->text());
    list_->fitToRows(0);
    heading_->setBuddy(list_);
    column->addWidget(heading_);
    column->addWidget(list_);
    buttons_ = new QWidget(this);
    auto* flow = new BuildFlow(buttons_);
    const auto button = [&](const QString& words, const QString& help) {
        auto* b = new QPushButton(words, buttons_);
        b->setToolTip(help);
        b->setAccessibleDescription(help);
        b->setMinimumHeight(24);
        flow->addWidget(b);
        return b;
    };
    behind_ = button(tr("Add behind"), tr("Shows what can go behind the part picked, on the switch's side"));
    replace_ = button(tr("Replace"), tr("Shows what can take the place of the part picked"));
    turn_ = button(tr("Turn end for end"), tr("Builds the part picked the other way round"));
    remove_ = button(tr("Remove"), tr("Takes the part picked out of the mount"));
    figures_ = button(tr("Its figures"), tr("Shows mass, hold, price and where each figure comes from"));
    column->addWidget(buttons_);
    connect(behind_, &QPushButton::clicked, this, &BuildChainList::offerBehind);
    connect(replace_, &QPushButton::clicked, this, &BuildChainList::offerInPlace);
    connect(turn_, &QPushButton::clicked, this, &BuildChainList::turn);
    connect(remove_, &QPushButton::clicked, this, &BuildChainList::remove);
    connect(figures_, &QPushButton::clicked, this, [this] {
        const Mount* mount = context_.view.mount();
        if (mount && part() >= 0) emit partFiguresWanted(QString::fromStdString(mount->parts[static_cast<std::size_t>(part())].part));
    });
    connect(list_, &BuildRowList::chosen, this, &BuildChainList::choose);
    connect(list_, &BuildRowList::entered, this, [this](const QString& key) {
        choose(key);
        offerBehind();
    });
}

int BuildChainList::part() const {
    const Mount* mount = context_.view.mount();
    const Picked& picked = context_.view.picked();
    if (!mount || picked.id != mount->id || picked.part < 0 || static_cast<std::size_t>(picked.part) >= mount->parts.size()) return -1;
    return picked.kind == Picked::Kind::part || picked.kind == Picked::Kind::joint || picked.kind == Picked::Kind::outlet ? picked.part : -1;
}

int BuildChainList::lastPart() const {
    const Mount* mount = context_.view.mount();
    return mount ? static_cast<int>(mount->parts.size()) - 1 : -1;
}

bool BuildChainList::canAdd() const {
    const Mount* mount = context_.view.mount();
    const int at = part() >= 0 ? part() : lastPart();
    const auto built = at >= 0 ? builtPart(context_.document.plan(), mount->parts[static_cast<std::size_t>(at)]) : nullptr;
    return built && built->outlet;
}

bool BuildChainList::canRemove() const { return part() > 0 || (part() == 0 && lastPart() == 0); }

bool BuildChainList::canTurn() const {
    const Mount* mount = context_.view.mount();
    const Part* turned = mount && part() > 0 ? context_.document.plan().part(mount->parts[static_cast<std::size_t>(part())].part) : nullptr;
    return turned && turnsAbout(*turned);
}

void BuildChainList::refresh() {
    const Plan& plan = context_.document.plan();
    const Mount* mount = context_.view.mount();
    std::vector<std::pair<QString, BuildRow>> rows;
    std::shared_ptr<const Part> before;
    for (int i = 0; i <= lastPart(); ++i) {
        const MountPart& here = mount->parts[static_cast<std::size_t>(i)];
        const auto built = builtPart(plan, here);
        BuildRow row;
        row.lead = QString::number(i + 1);
        row.title = built ? QString::fromStdString(built->name) : QString::fromStdString(here.part);
        if (here.reversed) row.title = tr("%1, end for end").arg(row.title);
        if (!built) {
            row.tone = BuildRow::Tone::bad;
            row.detail = tr("The plan does not know this part.");
        } else if (i == 0) {
            const std::shared_ptr<const Situation> situation = context_.analysis.situation();
            const Support* support = situation ? situation->support(mount->support) : nullptr;
            const Attachment* at = support ? support->attachment(mount->attachment) : nullptr;
            row.detail = at ? tr("on %1 of %2").arg(QString::fromStdString(at->name), QString::fromStdString(support->name)) : tr("fixed to %1").arg(QString::fromStdString(mount->attachment));
        } else if (before && before->outlet) {
            const BestMate best = mateWith(*before->outlet, *built);
            row.detail = QString::fromStdString(mateWords(*before->outlet, *built, best, plan.display));
            if (best.base < 0 || !best.mate.goesTogether()) {
                row.tone = BuildRow::Tone::bad;
                row.detail = tr("Does not go together: %1").arg(row.detail);
            }
        }
        rows.emplace_back(partKey(i), row);
        before = built;
    }
    if (before && before->outlet) {
        BuildRow row;
        row.lead = QStringLiteral("+");
        row.title = tr("Free end: %1").arg(QString::fromStdString(portWords(*before->outlet, plan.display)));
        row.detail = tr("Choose what goes on it");
        rows.emplace_back(freeEnd, row);
    }
    list_->show(rows);
    setVisible(mount);
    followPick();
}

void BuildChainList::followPick() {
    const Picked& picked = context_.view.picked();
    const bool atEnd = part() == lastPart() && picked.kind == Picked::Kind::outlet;
    const QString key = part() < 0 ? QString() : atEnd && list_->rowOf(freeEnd) >= 0 ? QString(freeEnd) : partKey(part());
    if (list_->currentKey() != key) list_->pickKey(key);
    const bool any = part() >= 0;
    behind_->setEnabled(canAdd());
    replace_->setEnabled(any);
    turn_->setEnabled(canTurn());
    remove_->setEnabled(canRemove());
    figures_->setEnabled(any);
}

void BuildChainList::choose(const QString& key) {
    const Mount* mount = context_.view.mount();
    if (!mount) return;
    if (key == freeEnd) {
        context_.view.pick(Picked::outletOf(mount->id, lastPart()));
        offerBehind();
    } else {
        context_.view.pick(Picked::partOf(mount->id, key.mid(5).toInt()));
    }
}

void BuildChainList::offerBehind() {
    const Mount* mount = context_.view.mount();
    if (!canAdd()) return;
    OfferFor offer;
    offer.kind = OfferFor::Kind::outlet;
    offer.mount = mount->id;
    offer.part = part() >= 0 ? part() : lastPart();
    context_.view.setOfferFor(offer);
    emit offersWanted();
}

void BuildChainList::offerInPlace() {
    const Mount* mount = context_.view.mount();
    if (!mount || part() < 0) return;
    OfferFor offer;
    offer.kind = OfferFor::Kind::replacement;
    offer.mount = mount->id;
    offer.part = part();
    context_.view.setOfferFor(offer);
    emit offersWanted();
}

void BuildChainList::remove() {
    const Mount* mount = context_.view.mount();
    if (!mount || !canRemove()) return;
    const int at = part();
    const std::string id = mount->id;
    const QString name = list_->item(at)->text();
    Document& d = context_.document;
    if (at == 0) d.apply(tr("Remove %1").arg(QString::fromStdString(mount->name)), removeMount(d.plan(), context_.view.option(), id));
    else if (d.apply(tr("Remove %1").arg(name), removePart(d.plan(), context_.view.option(), id, static_cast<std::size_t>(at)))) context_.view.pick(Picked::partOf(id, at - 1));
}

void BuildChainList::turn() {
    const Mount* mount = context_.view.mount();
    if (!mount || !canTurn()) return;
    const int at = part();
    context_.document.apply(tr("Turn %1 end for end").arg(list_->item(at)->text()),
                            reversePart(context_.document.plan(), context_.view.option(), mount->id, static_cast<std::size_t>(at)));
}

}  // namespace hither
