#include "app/panels/hand_over_rows.h"

#include <utility>

#include <QStringList>

#include "app/widgets/field_row.h"

namespace hither {
namespace {

QString priceWords(const std::optional<Money>& money) {
    return money ? QString::fromStdString(printMoney(*money)) : HandOverRows::tr("no price");
}

}  // namespace

void HandOverRows::show(PartsList list) {
    // The rows' own kind and number stay while only figures change, so that whoever types stays there.
    bool same = list.rows.size() == list_.rows.size();
    for (std::size_t i = 0; same && i < list.rows.size(); ++i) same = list.rows[i].id == list_.rows[i].id && list.rows[i].kind == list_.rows[i].kind;
    if (!same) beginResetModel();
    list_ = std::move(list);
    if (!same) endResetModel();
    else if (!list_.rows.empty()) emit dataChanged(index(0, 0), index(rowCount() - 1, columns - 1));
}

int HandOverRows::rowCount(const QModelIndex& parent) const { return parent.isValid() ? 0 : static_cast<int>(list_.rows.size()); }
int HandOverRows::columnCount(const QModelIndex& parent) const { return parent.isValid() ? 0 : static_cast<int>(columns); }

QVariant HandOverRows::data(const QModelIndex& at, int role) const {
    if (!at.isValid()) return {};
    const PartsRow& row = list_.rows[static_cast<std::size_t>(at.row())];
    if (role == Qt::TextAlignmentRole && (at.column() == count || at.column() == each || at.column() == total)) return QVariant(Qt::AlignRight | Qt::AlignVCenter);
    if (role == Qt::AccessibleTextRole)
        return QString("%1: %2").arg(headerData(at.column(), Qt::Horizontal, Qt::DisplayRole).toString(), data(at, Qt::DisplayRole).toString());
    if (role == Qt::EditRole && at.column() == each) return row.each ? QString::fromStdString(printMoney(*row.each)) : QString();
    if (role == Qt::ToolTipRole && at.column() == basis && !row.priceBasis.source.empty()) return QString::fromStdString(row.priceBasis.source);
    if (role == Qt::ToolTipRole && at.column() == each) return tr("Enter or F2 to type a price");
    if (role != Qt::DisplayRole) return {};
    switch (at.column()) {
        case name: return QString::fromStdString(row.name);
        case count: return row.count;
        case each: return priceWords(row.each);
        case total: return row.total ? QString::fromStdString(printMoney(*row.total)) : QString("–");
        case basis: return basisWord(row.each ? row.priceBasis.kind : BasisKind::unknown);
        case tools: {
            QStringList words;
            for (const std::string& tool : row.tools) words << QString::fromStdString(tool);
            return words.isEmpty() ? QString("–") : words.join(tr(", "));
        }
        default: return {};
    }
}

bool HandOverRows::setData(const QModelIndex& at, const QVariant& value, int role) {
    if (role != Qt::EditRole || !at.isValid() || at.column() != each) return false;
    if (value.toString() == data(at, Qt::EditRole).toString()) return false;
    emit priceTyped(at.row(), value.toString());
    return true;
}

QVariant HandOverRows::headerData(int section, Qt::Orientation orientation, int role) const {
    if (role != Qt::DisplayRole || orientation != Qt::Horizontal) return {};
    switch (section) {
        case name: return tr("Part");
        case count: return tr("Count");
        case each: return tr("Each");
        case total: return tr("Total");
        case basis: return tr("Price is");
        case tools: return tr("Tools");
        default: return {};
    }
}

Qt::ItemFlags HandOverRows::flags(const QModelIndex& at) const {
    Qt::ItemFlags flags = Qt::ItemIsEnabled | Qt::ItemIsSelectable;
    if (at.column() == each) flags |= Qt::ItemIsEditable;
    return flags;
}

}  // namespace hither
