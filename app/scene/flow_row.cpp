#include "app/scene/flow_row.h"

#include <algorithm>

#include <QWidget>

namespace hither {

FlowRow::FlowRow(QWidget* parent, int gap) : QLayout(parent), gap_(gap) {}

FlowRow::~FlowRow() { qDeleteAll(items_); }

void FlowRow::setGeometry(const QRect& rect) {
    QLayout::setGeometry(rect);
    lay(rect, true);
}

QSize FlowRow::sizeHint() const {
    int width = 0, height = 0;
    for (const QLayoutItem* item : items_) {
        width += item->sizeHint().width() + gap_;
        height = std::max(height, item->sizeHint().height());
    }
    const QMargins m = contentsMargins();
    return {width + m.left() + m.right(), height + m.top() + m.bottom()};
}

QSize FlowRow::minimumSize() const {
    QSize size;
    for (const QLayoutItem* item : items_) size = size.expandedTo(item->minimumSize());
    const QMargins m = contentsMargins();
    return size + QSize(m.left() + m.right(), m.top() + m.bottom());
}

int FlowRow::lay(const QRect& rect, bool move) const {
    const QRect inside = rect.marginsRemoved(contentsMargins());
    int x = inside.x(), y = inside.y(), row = 0;
    for (QLayoutItem* item : items_) {
        const QSize size = item->sizeHint();
        if (x > inside.x() && x + size.width() > inside.right() + 1) {
            x = inside.x();
            y += row + gap_;
            row = 0;
        }
        if (move) item->setGeometry(QRect(QPoint(x, y), size));
        x += size.width() + gap_;
        row = std::max(row, size.height());
    }
    return y + row - rect.y() + contentsMargins().bottom();
}

}  // namespace hither
