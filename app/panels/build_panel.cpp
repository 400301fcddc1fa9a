#include "app/panels/build_panel.h"

#include <algorithm>

#include <QEvent>
#include <QGridLayout>
#include <QPointer>
#include <QPushButton>
#include <QScrollArea>
#include <QScrollBar>
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

namespace hither {
namespace {

/// Everything that Tab stops at, in reading order as the layouts have it: also what was made later than
/// what stands below it.
void collectStops(QLayout* layout, std::vector<QWidget*>& stops) {
    if (!layout) return;
    std::vector<std::pair<std::pair<int, int>, QLayoutItem*>> items;
    for (int i = 0; i < layout->count(); ++i) {
        int row = i, column = 0, rows = 0, columns = 0;
        if (auto* grid = qobject_cast<QGridLayout*>(layout)) grid->getItemPosition(i, &row, &column, &rows, &columns);
        items.push_back({{row, column}, layout->itemAt(i)});
    }
    std::stable_sort(items.begin(), items.end(), [](const auto& a, const auto& b) { return a.first < b.first; });
    for (const auto& [place, item] : items) {
        if (QWidget* widget = item->widget()) {
            if (widget->focusPolicy() & Qt::TabFocus) stops.push_back(widget);
            collectStops(widget->layout(), stops);
        } else {
            collectStops(item->layout(), stops);
        }
    }
}

}  // namespace

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
    connect(ways_, &BuildWaysBar::stateChanged, this, [this] { QTimer::singleShot(0, this, &BuildPanel::orderTabs); });
    connect(&context_.document, &Document::changed, this, &BuildPanel::refresh);
    connect(&context_.view, &ViewState::optionChanged, this, &BuildPanel::refresh);
    connect(&context_.view, &ViewState::pickedChanged, this, &BuildPanel::followPick);
    connect(&context_.view, &ViewState::offerForChanged, this, &BuildPanel::followOffer);
    // Enter presses the button that has the keyboard, as Space does.
    for (QPushButton* button : findChildren<QPushButton*>()) button->setAutoDefault(true);
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
    showWhere();
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
    if (context_.view.picked().kind == Picked::Kind::keepOut) {
        keepOutsFold_->setOpen(true);
        reveal(keepOutsFold_);
    }
    context_.actions.refresh();
}

void BuildPanel::followOffer() {
    const bool wasShown = !offers_->isHidden();
    const bool hadFocus = offers_->isAncestorOf(window()->focusWidget());
    offers_->refresh();
    const bool open = context_.view.offerFor().kind != OfferFor::Kind::nothing;
    if (open) whereAsked_ = false;
    showWhere();
    if (open) reveal(offers_);
    else if (wasShown && hadFocus && where_->isHidden()) chain_->list()->setFocus(Qt::OtherFocusReason);
    else if (wasShown && hadFocus) where_->takeFocus();
    QTimer::singleShot(0, this, &BuildPanel::orderTabs);
    context_.actions.refresh();
}

void BuildPanel::chooseWhere() {
    context_.view.setStep(JobStep::build);
    context_.view.setOfferFor({});
    whereAsked_ = true;
    showWhere();
    where_->takeFocus();
    reveal(where_);
}

void BuildPanel::leaveWhere() {
    whereAsked_ = false;
    showWhere();
    if (context_.view.offerFor().kind != OfferFor::Kind::nothing) offers_->takeFocus();
    else if (context_.view.mount()) chain_->list()->setFocus(Qt::OtherFocusReason);
}

/// Where to fix a mount is asked for while there is none, and when another one is wanted.
void BuildPanel::showWhere() {
    const bool first = !context_.view.mount();
    const bool shown = (first || whereAsked_) && context_.view.offerFor().kind == OfferFor::Kind::nothing;
    if (shown) {
        where_->refresh();
        where_->setFirst(first);
    }
    const bool other = where_->isHidden() == shown;
    where_->setVisible(shown);
    mounts_->setVisible(!first);
    ways_->setVisible(!first);
    if (other) QTimer::singleShot(0, this, &BuildPanel::orderTabs);
}

/// Scrolls to what has just been opened: all of it, or its beginning when it is higher than what is seen.
void BuildPanel::reveal(QWidget* what) {
    QScrollArea* area = nullptr;
    for (QWidget* w = parentWidget(); w && !area; w = w->parentWidget()) area = qobject_cast<QScrollArea*>(w);
    if (!area) return;
    QTimer::singleShot(0, what, [area = QPointer<QScrollArea>(area), what] {
        if (!area || !area->widget()) return;
        if (QLayout* layout = area->widget()->layout()) layout->activate();
        const int top = what->mapTo(area->widget(), QPoint(0, 0)).y(), end = top + what->height() + 8;
        QScrollBar* bar = area->verticalScrollBar();
        if (end > bar->value() + area->viewport()->height()) bar->setValue(std::min(top, end - area->viewport()->height()));
        if (top < bar->value()) bar->setValue(top);
    });
}

void BuildPanel::orderTabs() {
    std::vector<QWidget*> stops;
    collectStops(layout(), stops);
    for (std::size_t i = 1; i < stops.size(); ++i) setTabOrder(stops[i - 1], stops[i]);
}

}  // namespace hither
