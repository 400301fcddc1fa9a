#include "app/panels/build_panel.h"

#include <algorithm>

#include <QEvent>
#include <QTimer>
#include <QVBoxLayout>

#include "app/panels/build_chain_list.h"
#include "app/panels/build_keep_outs.h"
#include "app/panels/build_mount_bar.h"
#include "app/panels/build_offer_list.h"
#include "app/panels/build_rows.h"
#include "app/panels/build_settings_form.h"
#include "app/panels/build_ways_bar.h"
#include "app/panels/build_where_list.h"
#include "app/panels/build_words.h"
#include "app/widgets/fold.h"
#include "core/offers/offer_edits.h"
#include "core/plan/edits/options.h"

namespace hither {

BuildPanel::BuildPanel(const EditorContext& context, QWidget* parent) : QWidget(parent), context_(context) {
    mounts_ = new BuildMountBar(context, this);
    where_ = new BuildWhereList(context, this);
    chain_ = new BuildChainList(context, this);
    offers_ = new BuildOfferList(context, this);
    ways_ = new BuildWaysBar(context, this);
    settings_ = new BuildSettingsForm(context, this);
    keepOuts_ = new BuildKeepOuts(context, this);
    where_->hide();
    auto* column = new QVBoxLayout(this);
    column->setSpacing(8);
    column->addWidget(mounts_);
    column->addWidget(where_);
    column->addWidget(chain_);
    column->addWidget(offers_);
    column->addWidget(ways_);
    settingsFold_ = new Fold(tr("Settings"), true, this);
    settingsFold_->inside()->addWidget(settings_);
    keepOutsFold_ = new Fold(tr("Keep free"), false, this);
    keepOutsFold_->inside()->addWidget(keepOuts_);
    for (QWidget* inside : {static_cast<QWidget*>(settings_), static_cast<QWidget*>(keepOuts_)}) inside->installEventFilter(this);
    column->addWidget(settingsFold_);
    column->addWidget(keepOutsFold_);
    column->addStretch(1);

    connect(mounts_, &BuildMountBar::wantsNew, this, &BuildPanel::chooseWhere);
    connect(where_, &BuildWhereList::done, this, &BuildPanel::leaveWhere);
    connect(chain_, &BuildChainList::partFiguresWanted, this, &BuildPanel::partFiguresWanted);
    connect(chain_, &BuildChainList::offersWanted, this, [this] {
        followOffer();
        offers_->takeFocus();
    });
    connect(offers_, &BuildOfferList::taken, this, &BuildPanel::take);
    connect(settings_, &BuildSettingsForm::rebuilt, this, [this] { QTimer::singleShot(0, this, &BuildPanel::orderTabs); });
    connect(ways_, &BuildWaysBar::stateChanged, &context_.actions, &ActionTable::refresh);
    connect(&context_.document, &Document::changed, this, &BuildPanel::refresh);
    connect(&context_.view, &ViewState::optionChanged, this, &BuildPanel::refresh);
    connect(&context_.view, &ViewState::pickedChanged, this, &BuildPanel::followPick);
    connect(&context_.view, &ViewState::offerForChanged, this, &BuildPanel::followOffer);
    addActions();
    refresh();
}

bool BuildPanel::eventFilter(QObject* watched, QEvent* event) {
    if (event->type() == QEvent::Show) QTimer::singleShot(0, this, &BuildPanel::orderTabs);
    return QWidget::eventFilter(watched, event);
}

void BuildPanel::showEvent(QShowEvent* event) {
    QWidget::showEvent(event);
    if (stale_) refresh();
    QTimer::singleShot(0, this, &BuildPanel::orderTabs);
}

void BuildPanel::refresh() {
    // What nobody sees is brought up to date when it is shown.
    stale_ = !isVisible();
    if (stale_ && context_.view.step() != JobStep::build) return;
    mounts_->refresh();
    if (!where_->isHidden()) where_->refresh();
    chain_->refresh();
    offers_->refresh();
    ways_->refresh();
    settings_->refresh();
    settingsFold_->setVisible(context_.view.mount());
    keepOuts_->refresh();
}

void BuildPanel::followPick() {
    if (!isVisible()) {
        stale_ = true;
        return;
    }
    mounts_->refresh();
    chain_->refresh();
    ways_->refresh();
    settings_->refresh();
    keepOuts_->refresh();
    if (context_.view.picked().kind == Picked::Kind::keepOut) keepOutsFold_->setOpen(true);
    context_.actions.refresh();
}

void BuildPanel::followOffer() {
    const bool wasShown = !offers_->isHidden();
    const bool hadFocus = offers_->isAncestorOf(window()->focusWidget());
    offers_->refresh();
    if (context_.view.offerFor().kind != OfferFor::Kind::nothing) {
        where_->hide();
    } else if (wasShown && hadFocus) {
        chain_->list()->setFocus(Qt::OtherFocusReason);
    }
    QTimer::singleShot(0, this, &BuildPanel::orderTabs);
    context_.actions.refresh();
}

void BuildPanel::chooseWhere() {
    context_.view.setStep(JobStep::build);
    context_.view.setOfferFor({});
    where_->refresh();
    where_->show();
    where_->takeFocus();
}

void BuildPanel::leaveWhere() {
    where_->hide();
    if (context_.view.offerFor().kind != OfferFor::Kind::nothing) offers_->takeFocus();
    else chain_->list()->setFocus(Qt::OtherFocusReason);
}

void BuildPanel::goOn(const std::string& mount, int part, bool offerNext) {
    OfferFor next;
    if (offerNext) {
        next.kind = OfferFor::Kind::outlet;
        next.mount = mount;
        next.part = part;
    }
    context_.view.pick(offerNext ? Picked::outletOf(mount, part) : Picked::partOf(mount, part));
    context_.view.setOfferFor(next);
    if (offerNext) offers_->takeFocus();
    else ways_->takeFocus();
}

void BuildPanel::take(const Offer& offer) {
    Document& d = context_.document;
    const OfferFor to = context_.view.offerFor();
    const QString name = QString::fromStdString(offer.part->name);
    const std::string option = context_.view.option();
    if (to.kind == OfferFor::Kind::attachment) {
        const std::shared_ptr<const Situation> situation = context_.analysis.situation();
        const Support* support = situation ? situation->support(to.support) : nullptr;
        const Attachment* at = support ? support->attachment(to.attachment) : nullptr;
        if (!at) return;
        // A plan without an option gets its first one with its first mount.
        const std::string optionId = option.empty() ? "option-1" : option;
        Edited edit = option.empty() ? addOption(d.plan(), optionId, tr("Option 1").toStdString()) : Edited{d.plan(), {}};
        const std::string id = edit ? newMountId(*edit.plan, optionId, to.attachment) : std::string();
        if (edit) edit = startMount(*edit.plan, optionId, {to.support, to.attachment, to.place}, *at, offer, freeMountName(context_.view.planOption()).toStdString());
        if (d.apply(tr("Put %1 on %2").arg(name, QString::fromStdString(at->name)), edit)) goOn(id, 0, offer.part->outlet.has_value());
        return;
    }
    const Mount* mount = mountIn(d.plan(), option, to.mount);
    if (!mount) return;
    const std::string id = mount->id;
    const bool atEnd = to.part + 1 == static_cast<int>(mount->parts.size());
    if (to.kind == OfferFor::Kind::outlet) {
        std::string site;
        const std::shared_ptr<const Setup> setup = context_.analysis.setup();
        if (setup && offer.part->face) site = nearestUnservedSite(*setup, id);
        if (d.apply(tr("Add %1").arg(name), putBehind(d.plan(), option, id, to.part, offer, site)))
            goOn(id, numberBehind(to.part, offer), atEnd && offer.part->outlet.has_value());
    } else if (to.kind == OfferFor::Kind::replacement) {
        const Part* old = d.plan().part(mount->parts[static_cast<std::size_t>(to.part)].part);
        const QString was = old ? QString::fromStdString(old->name) : QString();
        if (d.apply(tr("Replace %1 by %2").arg(was, name), putInPlaceOf(d.plan(), option, id, to.part, offer)))
            goOn(id, numberInPlaceOf(to.part, offer), atEnd && offer.part->outlet.has_value());
    }
}

void BuildPanel::orderTabs() {
    // In reading order, also for fields that were made later than what stands below them.
    std::vector<QWidget*> stops;
    for (QWidget* w : findChildren<QWidget*>())
        if (w->focusPolicy() & Qt::TabFocus && w->isVisibleTo(this)) stops.push_back(w);
    const auto at = [this](const QWidget* w) { return w->mapTo(this, QPoint(0, w->height() / 2)); };
    std::stable_sort(stops.begin(), stops.end(), [&](const QWidget* a, const QWidget* b) {
        const QPoint p = at(a), q = at(b);
        // Side by side when their middles are less than a line apart.
        if (std::abs(p.y() - q.y()) > 8) return p.y() < q.y();
        return p.x() < q.x();
    });
    for (std::size_t i = 1; i < stops.size(); ++i) setTabOrder(stops[i - 1], stops[i]);
}

}  // namespace hither
