#pragma once
#include <QAbstractTableModel>

#include "core/plan/parts_list.h"

namespace hither {

/// The parts list as a table: part, count, price each, total, basis of the price, tools. A price is typed
/// in its cell.
class HandOverRows : public QAbstractTableModel {
    Q_OBJECT

public:
    enum Column { name, count, each, total, basis, tools, columns };

    using QAbstractTableModel::QAbstractTableModel;

    void show(PartsList list);
    const PartsList& list() const { return list_; }

    int rowCount(const QModelIndex& parent = {}) const override;
    int columnCount(const QModelIndex& parent = {}) const override;
    QVariant data(const QModelIndex& index, int role) const override;
    bool setData(const QModelIndex& index, const QVariant& value, int role) override;
    QVariant headerData(int section, Qt::Orientation orientation, int role) const override;
    Qt::ItemFlags flags(const QModelIndex& index) const override;

signals:
    /// A price was typed; the text as it is.
    void priceTyped(int row, const QString& text);

private:
    PartsList list_;
};

}  // namespace hither
