#include "app/panels/build_rows.h"

#include <algorithm>

#include <QKeyEvent>
#include <QPainter>
#include <QScrollBar>

#include "app/widgets/theme.h"

namespace hither {
namespace {

enum Role { keyRole = Qt::UserRole, leadRole, detailRole, rightRole, toneRole };
constexpr int leastTarget = 24;   // px, the least a pointer target may be (WCAG 2.2, 2.5.8)

BuildRow::Tone toneOf(const QModelIndex& index) { return static_cast<BuildRow::Tone>(index.data(toneRole).toInt()); }
QFont bold(QFont font) {
    font.setBold(true);
    return font;
}

}  // namespace

QString BuildRow::spoken() const {
    QString all = lead.isEmpty() ? title : lead + ", " + title;
    for (const QString& more : {detail, right}) if (!more.isEmpty()) all += ", " + more;
    return all;
}

BuildRowList::BuildRowList(QWidget* parent) : QListWidget(parent) {
    setItemDelegate(new BuildRowDelegate(this));
    setResizeMode(QListView::Adjust);
    setVerticalScrollMode(QAbstractItemView::ScrollPerPixel);
    setHorizontalScrollBarPolicy(Qt::ScrollBarAlwaysOff);
    setSelectionMode(QAbstractItemView::SingleSelection);
    connect(this, &QListWidget::currentRowChanged, this, [this](int row) {
        if (!quiet_ && row >= 0) emit chosen(keyAt(row));
    });
    connect(this, &QListWidget::itemDoubleClicked, this, [this](QListWidgetItem* item) { emit entered(item->data(keyRole).toString()); });
    // A click on the row that is picked already says so again: what it stands for may have been left.
    connect(this, &QListWidget::itemClicked, this, [this](QListWidgetItem* item) { emit chosen(item->data(keyRole).toString()); });
}

void BuildRowList::show(const std::vector<std::pair<QString, BuildRow>>& keyed) {
    const QString current = currentKey();
    quiet_ = true;
    const int count = static_cast<int>(keyed.size());
    bool changed = this->count() != count;
    while (this->count() > count) delete takeItem(this->count() - 1);
    while (this->count() < count) addItem(new QListWidgetItem);
    for (int i = 0; i < count; ++i) {
        const auto& [key, row] = keyed[static_cast<std::size_t>(i)];
        QListWidgetItem* it = item(i);
        const auto set = [&](int role, const QVariant& value) {
            if (it->data(role) == value) return;
            it->setData(role, value);
            changed = true;
        };
        set(keyRole, key);
        set(Qt::DisplayRole, row.title);
        set(leadRole, row.lead);
        set(detailRole, row.detail);
        set(rightRole, row.right);
        set(toneRole, static_cast<int>(row.tone));
        set(Qt::AccessibleTextRole, row.spoken());
        const bool heading = row.tone == BuildRow::Tone::heading;
        const Qt::ItemFlags flags = heading ? Qt::ItemFlags(Qt::NoItemFlags) : Qt::ItemIsEnabled | Qt::ItemIsSelectable;
        if (it->flags() != flags) it->setFlags(flags);
    }
    const int row = rowOf(current);
    if (row != currentRow()) setCurrentRow(row);
    quiet_ = false;
    if (!changed) return;
    scheduleDelayedItemsLayout();
    updateGeometry();
}

QString BuildRowList::keyAt(int row) const { return row >= 0 && row < count() ? item(row)->data(keyRole).toString() : QString(); }

int BuildRowList::rowOf(const QString& key) const {
    if (!key.isEmpty())
        for (int i = 0; i < count(); ++i) if (keyAt(i) == key) return i;
    return -1;
}

void BuildRowList::pickKey(const QString& key) {
    quiet_ = true;
    setCurrentRow(rowOf(key));
    quiet_ = false;
}

void BuildRowList::fitToRows(int most) {
    most_ = most;
    setSizePolicy(QSizePolicy::Preferred, QSizePolicy::Fixed);
    setVerticalScrollBarPolicy(most == 0 ? Qt::ScrollBarAlwaysOff : Qt::ScrollBarAsNeeded);
    updateGeometry();
}

int BuildRowList::rowsHeight() const {
    int height = 0;
    for (int i = 0; i < count(); ++i) height += itemDelegate()->sizeHint({}, model()->index(i, 0)).height();
    return height + 2 * std::max(2, frameWidth());   // the focus ring takes two pixels on each side
}

QSize BuildRowList::sizeHint() const {
    const int width = fontMetrics().averageCharWidth() * 20, least = std::max(leastTarget, fontMetrics().height() * 2);
    if (most_ < 0) return {width, fontMetrics().height() * 8};
    const int all = std::max(rowsHeight(), least);
    return {width, most_ == 0 ? all : std::min(all, fontMetrics().height() * most_)};
}

void BuildRowList::resizeEvent(QResizeEvent* event) {
    QListWidget::resizeEvent(event);
    scheduleDelayedItemsLayout();
    if (most_ >= 0 && event->oldSize().width() != event->size().width()) updateGeometry();
}

void BuildRowList::changeEvent(QEvent* event) {
    QListWidget::changeEvent(event);
    if (event->type() == QEvent::FontChange) updateGeometry();
}

void BuildRowList::keyPressEvent(QKeyEvent* event) {
    if ((event->key() == Qt::Key_Return || event->key() == Qt::Key_Enter) && currentRow() >= 0) {
        emit entered(currentKey());
        event->accept();
        return;
    }
    // The first row is often a heading, which cannot be picked.
    if (event->key() == Qt::Key_Home || event->key() == Qt::Key_End) {
        const bool home = event->key() == Qt::Key_Home;
        int row = home ? 0 : count() - 1;
        while (row >= 0 && row < count() && !(item(row)->flags() & Qt::ItemIsSelectable)) row += home ? 1 : -1;
        if (row >= 0 && row < count()) setCurrentRow(row);
        event->accept();
        return;
    }
    QListWidget::keyPressEvent(event);
}

void BuildRowList::focusInEvent(QFocusEvent* event) {
    // Going through with Tab picks nothing.
    const bool none = currentRow() < 0;
    quiet_ = true;
    QListWidget::focusInEvent(event);
    if (none) setCurrentRow(-1);
    quiet_ = false;
}

struct BuildRowDelegate::Laid { QRect lead, title, right, detail; int height = 0; };

BuildRowDelegate::BuildRowDelegate(QListWidget* list) : QStyledItemDelegate(list), list_(list) {}

BuildRowDelegate::Laid BuildRowDelegate::lay(const QModelIndex& index, int width) const {
    const bool heading = toneOf(index) == BuildRow::Tone::heading;
    const QFontMetrics plain(list_->font()), strong(bold(list_->font()));
    const int space = std::max(4, plain.height() / 4);
    const auto high = [&](const QFontMetrics& m, const QString& text, int room) {
        return text.isEmpty() ? 0 : m.boundingRect(QRect(0, 0, room, 100000), Qt::TextWordWrap, text).height();
    };
    Laid out;
    int x = 2 * space, y = space;
    const QString lead = index.data(leadRole).toString(), right = index.data(rightRole).toString();
    if (!lead.isEmpty()) {
        out.lead = QRect(x, y, strong.horizontalAdvance(lead) + 2, strong.height());
        x += std::max(out.lead.width(), plain.averageCharWidth() * 2) + space;
    }
    const int room = std::max(plain.averageCharWidth() * 6, width - x - 2 * space);
    const int rightWidth = right.isEmpty() ? 0 : plain.horizontalAdvance(right) + 2;
    const QString title = index.data(Qt::DisplayRole).toString();
    // The price stands beside the name; where that leaves the name too little room it goes below.
    const bool beside = rightWidth > 0 && rightWidth + 2 * space < room * 2 / 5;
    const int titleRoom = beside ? room - rightWidth - 2 * space : room;
    const QFontMetrics& titleMetrics = heading ? strong : plain;
    out.title = QRect(x, y, titleRoom, high(titleMetrics, title, titleRoom));
    if (beside) out.right = QRect(x + room - rightWidth, y, rightWidth, plain.height());
    y = out.title.bottom() + 1;
    const QString detail = index.data(detailRole).toString();
    if (!detail.isEmpty()) {
        out.detail = QRect(x, y, room, high(plain, detail, room));
        y = out.detail.bottom() + 1;
    }
    if (rightWidth > 0 && !beside) {
        out.right = QRect(x, y, room, high(plain, right, room));
        y = out.right.bottom() + 1;
    }
    out.height = std::max(leastTarget, y + space);
    return out;
}

QSize BuildRowDelegate::sizeHint(const QStyleOptionViewItem&, const QModelIndex& index) const {
    const int width = list_->viewport()->width();
    return {width, lay(index, width).height};
}

void BuildRowDelegate::paint(QPainter* painter, const QStyleOptionViewItem& option, const QModelIndex& index) const {
    const Theme& theme = Theme::current();
    const BuildRow::Tone tone = toneOf(index);
    const Laid laid = lay(index, option.rect.width());
    const QPoint at = option.rect.topLeft();
    const bool picked = option.state & QStyle::State_Selected, focused = picked && list_->hasFocus();
    painter->save();
    painter->fillRect(option.rect, picked ? theme.raised : tone == BuildRow::Tone::heading ? theme.window : theme.surface);
    if (picked) painter->fillRect(QRect(at, QSize(3, option.rect.height())), theme.accent);
    const bool quiet = tone == BuildRow::Tone::quiet;
    painter->setFont(bold(list_->font()));
    painter->setPen(theme.quietText);
    painter->drawText(laid.lead.translated(at), Qt::AlignLeft | Qt::AlignTop, index.data(leadRole).toString());
    if (tone != BuildRow::Tone::heading) painter->setFont(list_->font());
    painter->setPen(quiet ? theme.quietText : theme.text);
    painter->drawText(laid.title.translated(at), Qt::TextWordWrap, index.data(Qt::DisplayRole).toString());
    painter->drawText(laid.right.translated(at), Qt::AlignLeft | Qt::AlignTop | Qt::TextWordWrap, index.data(rightRole).toString());
    painter->setPen(tone == BuildRow::Tone::bad ? theme.misses : theme.quietText);
    painter->drawText(laid.detail.translated(at), Qt::TextWordWrap, index.data(detailRole).toString());
    painter->setPen(theme.border);
    painter->drawLine(option.rect.bottomLeft(), option.rect.bottomRight());
    if (focused) {
        painter->setPen(QPen(theme.focus, 2));
        painter->drawRect(option.rect.adjusted(1, 1, -1, -2));
    }
    painter->restore();
}

}  // namespace hither
