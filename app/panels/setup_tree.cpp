#include "app/panels/setup_tree.h"

#include <QHeaderView>
#include <QKeyEvent>
#include <QLabel>
#include <QVBoxLayout>

#include "app/panels/build_where_list.h"
#include "app/panels/setup_tree_delegate.h"

namespace hither {
namespace {

/// An item with the row that it shows.
struct SetupItem : QTreeWidgetItem {
    SetupRow row;
};

bool sameDial(const std::optional<Dial>& a, const std::optional<Dial>& b) { return a.has_value() == b.has_value() && (!a || a->value == b->value); }

}  // namespace

SetupTree::SetupTree(const EditorContext& context, QWidget* parent) : QWidget(parent), context_(context) {
    auto* column = new QVBoxLayout(this);
    column->setContentsMargins(0, 0, 0, 0);
    column->setSpacing(2);
    auto* heading = new QLabel(tr("The setup in words"), this);
    heading->setWordWrap(true);
    heading->setMargin(6);
    QFont bold = heading->font();
    bold.setBold(true);
    heading->setFont(bold);
    tree_ = new QTreeWidget(this);
    heading->setBuddy(tree_);
    tree_->setAccessibleName(heading->text());
    tree_->setAccessibleDescription(tr("Enter goes to where the thing picked is worked on, or types a number in its place"));
    tree_->setHeaderHidden(true);
    tree_->setColumnCount(1);
    tree_->setFrameShape(QFrame::NoFrame);
    tree_->setVerticalScrollMode(QAbstractItemView::ScrollPerPixel);
    tree_->setHorizontalScrollBarPolicy(Qt::ScrollBarAlwaysOff);
    tree_->setEditTriggers(QAbstractItemView::NoEditTriggers);
    tree_->setExpandsOnDoubleClick(false);
    tree_->setIndentation(std::max(14, fontMetrics().height()));
    tree_->setItemDelegate(new SetupTreeDelegate(this));
    tree_->installEventFilter(this);
    column->addWidget(heading);
    column->addWidget(tree_, 1);
    setMinimumHeight(fontMetrics().height() * 8);
    // Words wrap at the column's width, which follows the view's a little later.
    connect(tree_->header(), &QHeaderView::sectionResized, tree_, [tree = tree_] { tree->doItemsLayout(); }, Qt::QueuedConnection);
    connect(tree_, &QTreeWidget::currentItemChanged, this, [this](QTreeWidgetItem* item) { if (!quiet_) choose(item); });
    connect(tree_, &QTreeWidget::itemClicked, this, [this](QTreeWidgetItem* item) { choose(item); });
    connect(tree_, &QTreeWidget::itemDoubleClicked, this, [this](QTreeWidgetItem* item) { enter(item); });
    connect(&context_.document, &Document::changed, this, &SetupTree::refresh);
    connect(&context_.view, &ViewState::optionChanged, this, &SetupTree::refresh);
    connect(&context_.view, &ViewState::pickedChanged, this, &SetupTree::follow);
    refresh();
}

void SetupTree::showEvent(QShowEvent* event) {
    QWidget::showEvent(event);
    if (stale_) refresh();
}

const SetupRow* SetupTree::rowOf(const QTreeWidgetItem* item) const { return item ? &static_cast<const SetupItem*>(item)->row : nullptr; }

void SetupTree::sync(QTreeWidgetItem* parent, const std::vector<SetupRow>& rows) {
    for (int i = 0; i < static_cast<int>(rows.size()); ++i) {
        const SetupRow& r = rows[static_cast<std::size_t>(i)];
        // The line of this key comes to its place; what stood there before it and is gone goes.
        int at = i;
        while (at < parent->childCount() && rowOf(parent->child(at))->key != r.key) ++at;
        SetupItem* item = nullptr;
        if (at == parent->childCount()) {
            item = new SetupItem;
            item->row.key = r.key;
            parent->insertChild(i, item);
            item->setExpanded(r.open);
        } else {
            for (; at > i; --at) delete parent->takeChild(i);
            item = static_cast<SetupItem*>(parent->child(i));
        }
        const bool otherWords = item->row.text != r.text, otherNumber = !sameDial(item->row.dial, r.dial);
        item->row.picked = r.picked;
        item->row.dial = r.dial;
        item->row.setting = r.setting;
        if (otherWords) {
            item->row.text = r.text;
            item->setText(0, r.text);
            item->setData(0, Qt::AccessibleTextRole, r.text);
        } else if (otherNumber) {
            item->setData(0, Qt::UserRole, r.dial ? r.dial->value : 0.0);   // an open field follows
        }
        const Qt::ItemFlags flags = Qt::ItemIsEnabled | Qt::ItemIsSelectable | (r.dial ? Qt::ItemIsEditable : Qt::NoItemFlags);
        if (item->flags() != flags) item->setFlags(flags);
        if (!r.children.empty() || item->childCount() > 0) {
            const bool first = item->childCount() == 0;
            sync(item, r.children);
            if (first && r.open) item->setExpanded(true);
        }
    }
    while (parent->childCount() > static_cast<int>(rows.size())) delete parent->takeChild(parent->childCount() - 1);
}

void SetupTree::refresh() {
    stale_ = !isVisible();
    if (stale_ && tree_->topLevelItemCount() > 0) return;
    quiet_ = true;
    sync(tree_->invisibleRootItem(), setupRows(context_));
    quiet_ = false;
    follow();
}

QTreeWidgetItem* SetupTree::find(const Picked& picked) const {
    QTreeWidgetItem* part = nullptr;
    for (QTreeWidgetItemIterator it(tree_); *it; ++it) {
        const Picked& here = rowOf(*it)->picked;
        if (here == picked) return *it;
        const bool pieceOf = here.kind == picked.kind && here.id == picked.id && here.piece.empty();   // a solid of a support, a limb of the person
        const bool end = picked.kind == Picked::Kind::outlet && here.kind == Picked::Kind::part && here.id == picked.id && here.part == picked.part;
        if (!part && (end || (pieceOf && (picked.kind == Picked::Kind::support || picked.kind == Picked::Kind::person)))) part = *it;
    }
    return part;
}

void SetupTree::follow() {
    const Picked& picked = context_.view.picked();
    QTreeWidgetItem* now = tree_->currentItem();
    if (now && rowOf(now)->picked == picked) return;
    QTreeWidgetItem* item = picked.nothing() ? nullptr : find(picked);
    quiet_ = true;
    if (item) {
        tree_->setCurrentItem(item);
        tree_->scrollToItem(item);
    } else if (!now || !rowOf(now)->picked.nothing()) {
        tree_->clearSelection();   // the keyboard stays where it is
    }
    quiet_ = false;
}

void SetupTree::choose(QTreeWidgetItem* item) {
    const SetupRow* row = rowOf(item);
    if (row && !row->picked.nothing()) context_.view.pick(Picked(row->picked));
}

void SetupTree::enter(QTreeWidgetItem* item) {
    const SetupRow* row = rowOf(item);
    if (!row) return;
    if (row->dial) {
        tree_->editItem(item);
        return;
    }
    using Kind = Picked::Kind;
    const Picked picked = row->picked;
    const bool opens = item->childCount() > 0;
    choose(item);
    switch (picked.kind) {
        case Kind::nothing: item->setExpanded(!item->isExpanded()); break;
        case Kind::support: context_.view.setStep(JobStep::support); break;
        case Kind::person: context_.view.setStep(JobStep::person); break;
        case Kind::site: context_.view.setStep(JobStep::site); break;
        case Kind::joint:
            if (opens) item->setExpanded(true);
            context_.view.setStep(JobStep::build);
            break;
        case Kind::mount:
        case Kind::part:
        case Kind::keepOut: context_.view.setStep(JobStep::build); break;
        case Kind::outlet: {
            OfferFor offer;
            offer.kind = OfferFor::Kind::outlet;
            offer.mount = picked.id;
            offer.part = picked.part;
            context_.view.setStep(JobStep::build);
            context_.view.setOfferFor(offer);
            break;
        }
        case Kind::attachment: {
            const std::shared_ptr<const Situation> situation = context_.analysis.situation();
            const Support* support = situation ? situation->support(picked.id) : nullptr;
            const Attachment* at = support ? support->attachment(picked.piece) : nullptr;
            if (!at) break;
            OfferFor offer;
            offer.kind = OfferFor::Kind::attachment;
            offer.support = picked.id;
            offer.attachment = picked.piece;
            offer.place = BuildWhereList::middleOf(*at);
            context_.view.setStep(JobStep::build);
            context_.view.setOfferFor(offer);
            break;
        }
    }
}

bool SetupTree::eventFilter(QObject* watched, QEvent* event) {
    if (watched != tree_ || event->type() != QEvent::KeyPress) return QWidget::eventFilter(watched, event);
    const int key = static_cast<QKeyEvent*>(event)->key();
    if (key != Qt::Key_Return && key != Qt::Key_Enter && key != Qt::Key_F2) return false;
    if (QTreeWidgetItem* item = tree_->currentItem()) enter(item);
    return true;
}

void SetupTree::tryValue(const SetupRow& row, double value) {
    Document& d = context_.document;
    if (!gesture_ || !d.inGesture()) {   // undoing, or another edit, has ended it
        gesture_ = true;
        d.beginGesture(settingLabel(d.plan(), context_.view.option(), row.picked.id, row.setting));
    }
    d.preview(withDial(d.gestureStart(), context_.view.option(), row.picked.id, row.setting.of, *row.dial, value));
}

void SetupTree::setValue(const SetupRow& row, double value) {
    Document& d = context_.document;
    if (gesture_ && d.inGesture()) {
        tryValue(row, value);
        gesture_ = false;
        d.endGesture();
    } else {
        gesture_ = false;
        d.apply(settingLabel(d.plan(), context_.view.option(), row.picked.id, row.setting), withDial(d.plan(), context_.view.option(), row.picked.id, row.setting.of, *row.dial, value));
    }
}

void SetupTree::leaveValue() {
    if (!gesture_) return;
    gesture_ = false;
    context_.document.cancelGesture();
}

}  // namespace hither
