#pragma once
#include <QAbstractListModel>
#include <QStyledItemDelegate>

#include "app/actions/action_table.h"

namespace hither {

/// The commands that match what was typed. Display: words; ToolTip: help; the keys by `keysRole`; what is not
/// possible now is not enabled. One text of all three for screen readers.
class CommandModel : public QAbstractListModel {
    Q_OBJECT

public:
    static constexpr int keysRole = Qt::UserRole;
    CommandModel(const ActionTable& table, QObject* parent) : QAbstractListModel(parent), table_(table) { find({}); }
    void find(const QString& typed);
    QAction* actionAt(int row) const;
    /// The first that can be run; -1: none.
    int firstPossible() const;
    int rowCount(const QModelIndex& parent = {}) const override { return parent.isValid() ? 0 : static_cast<int>(rows_.size()); }
    QVariant data(const QModelIndex& index, int role) const override;
    Qt::ItemFlags flags(const QModelIndex& index) const override;

private:
    const ActionTable& table_;
    std::vector<QString> rows_;   ///< ids: entries may move when the table grows
};

/// Words in bold with the keys at the right, help below, wrapped.
class CommandDelegate : public QStyledItemDelegate {
    Q_OBJECT

public:
    using QStyledItemDelegate::QStyledItemDelegate;
    void paint(QPainter* painter, const QStyleOptionViewItem& option, const QModelIndex& index) const override;
    QSize sizeHint(const QStyleOptionViewItem& option, const QModelIndex& index) const override;
};

}  // namespace hither
