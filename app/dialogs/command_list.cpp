#include "app/dialogs/command_list.h"

#include <algorithm>

#include <QAbstractItemView>
#include <QPainter>
#include <QPainterPath>

#include "app/dialogs/dialog_text.h"
#include "app/widgets/theme.h"

namespace hither {
namespace {

/// The places of a row's three texts.
struct Places { QRect words, keys, help; int height = 0; };
Places places(const QRect& row, const QFont& font, const QModelIndex& index) {
    const QFontMetrics plain(font), bold(boldFont(font));
    const int pad = plain.height() / 2;
    const QString keys = index.data(CommandModel::keysRole).toString();
    const int keysWidth = keys.isEmpty() ? 0 : plain.horizontalAdvance(keys) + pad;
    const int wide = std::max(40, row.width() - 2 * pad);
    const int wordsWide = std::max(40, wide - keysWidth - (keysWidth ? pad : 0));
    Places p;
    const int wordsHigh = bold.boundingRect(QRect(0, 0, wordsWide, 10000), Qt::TextWordWrap, index.data().toString()).height();
    const int helpHigh = plain.boundingRect(QRect(0, 0, wide, 10000), Qt::TextWordWrap, index.data(Qt::ToolTipRole).toString()).height();
    p.words = QRect(row.left() + pad, row.top() + pad / 2, wordsWide, wordsHigh);
    p.keys = QRect(row.right() - pad - keysWidth, p.words.top(), keysWidth, plain.height());
    p.help = QRect(row.left() + pad, p.words.bottom() + 1, wide, helpHigh);
    p.height = std::max(24, wordsHigh + helpHigh + pad);
    return p;
}

}  // namespace

void CommandModel::find(const QString& typed) {
    beginResetModel();
    rows_.clear();
    // What can be done now stands first.
    std::vector<QString> notNow;
    for (const ActionEntry* e : table_.matching(typed)) (table_.action(e->id)->isEnabled() ? rows_ : notNow).push_back(e->id);
    rows_.insert(rows_.end(), notNow.begin(), notNow.end());
    endResetModel();
}

QAction* CommandModel::actionAt(int row) const { return row >= 0 && row < rowCount() ? table_.action(rows_[static_cast<std::size_t>(row)]) : nullptr; }

int CommandModel::firstPossible() const { return !rows_.empty() && actionAt(0)->isEnabled() ? 0 : -1; }

QVariant CommandModel::data(const QModelIndex& index, int role) const {
    const QAction* action = actionAt(index.row());
    if (!action) return {};
    const QString help = action->isEnabled() ? action->toolTip() : tr("Not possible now. %1").arg(action->toolTip());
    const QString keys = action->shortcut().toString(QKeySequence::NativeText);
    switch (role) {
        case Qt::DisplayRole: return action->text();
        case Qt::ToolTipRole: return help;
        case keysRole: return keys;
        case Qt::AccessibleTextRole: return keys.isEmpty() ? tr("%1. %2").arg(action->text(), help) : tr("%1. %2. Keys: %3").arg(action->text(), help, keys);
        default: return {};
    }
}

Qt::ItemFlags CommandModel::flags(const QModelIndex& index) const {
    const QAction* action = actionAt(index.row());
    return action && action->isEnabled() ? Qt::ItemIsEnabled | Qt::ItemIsSelectable : Qt::NoItemFlags;
}

void CommandDelegate::paint(QPainter* painter, const QStyleOptionViewItem& option, const QModelIndex& index) const {
    const Theme& t = Theme::current();
    const Places p = places(option.rect, option.font, index);
    const bool possible = index.flags() & Qt::ItemIsEnabled, chosen = option.state & QStyle::State_Selected;
    painter->save();
    if (chosen) {
        painter->setRenderHint(QPainter::Antialiasing);
        QPainterPath shape;
        shape.addRoundedRect(QRectF(option.rect).adjusted(1.5, 1.5, -1.5, -1.5), 4, 4);
        painter->fillPath(shape, t.raised);
        painter->setPen(QPen(t.focus, 2));
        painter->drawPath(shape);
    }
    painter->setPen(possible ? t.text : t.quietText);
    painter->setFont(boldFont(option.font));
    painter->drawText(p.words, Qt::TextWordWrap, index.data().toString());
    painter->setFont(option.font);
    painter->drawText(p.keys, Qt::AlignRight | Qt::AlignTop, index.data(CommandModel::keysRole).toString());
    painter->setPen(t.quietText);
    painter->drawText(p.help, Qt::TextWordWrap, index.data(Qt::ToolTipRole).toString());
    painter->restore();
}

QSize CommandDelegate::sizeHint(const QStyleOptionViewItem& option, const QModelIndex& index) const {
    const auto* view = qobject_cast<const QAbstractItemView*>(option.widget);
    const int width = view ? view->viewport()->width() : option.rect.width();
    return {width, places(QRect(0, 0, width, 0), option.font, index).height};
}

}  // namespace hither
