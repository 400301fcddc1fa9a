#pragma once
#include <QHash>
#include <QPair>
#include <QStyledItemDelegate>

#include "app/panels/finding_model.h"

namespace hither {

/// Paints the rows of the findings list, wrapped to the width of the view and as high as their words need.
class FindingDelegate : public QStyledItemDelegate {
    Q_OBJECT

public:
    explicit FindingDelegate(QAbstractItemView* view);

    void paint(QPainter* painter, const QStyleOptionViewItem& option, const QModelIndex& index) const override;
    QSize sizeHint(const QStyleOptionViewItem& option, const QModelIndex& index) const override;

private:
    struct Laid;
    Laid lay(const FindingRow& row, int width) const;
    int heightOf(const QString& text, int width, bool bold) const;
    void paintHeading(QPainter& painter, const QRect& rect, const FindingRow& row) const;

    QAbstractItemView* view_;
    mutable QHash<QPair<QString, int>, int> heights_;   ///< of wrapped texts, by text and width
    mutable QString font_;
};

}  // namespace hither
