#include "app/panels/build_flow.h"

#include <algorithm>

#include <QWidget>

namespace hither {

BuildFlow::BuildFlow(QWidget* parent) : QLayout(parent) {
    setContentsMargins(0, 0, 0, 0);
    setSpacing(6);
}

BuildFlow::~BuildFlow() { qDeleteAll(items_); }

void BuildFlow::addItem(QLayoutItem* item) { items_.append(item); }

QLayoutItem* BuildFlow::itemAt(int index) const { return index >= 0 && index < items_.size() ? items_[index] : nullptr; }

QLayoutItem* BuildFlow::takeAt(int index) { return index >= 0 && index < items_.size() ? items_.takeAt(index) : nullptr; }

int BuildFlow::heightForWidth(int width) const { return lay(QRect(0, 0, width, 0), false); }

QSize BuildFlow::minimumSize() const {
    QSize size;
    for (const QLayoutItem* item : items_) if (!item->isEmpty()) size = size.expandedTo(item->minimumSize());
    const QMargins m = contentsMargins();
    return size + QSize(m.left() + m.right(), m.top() + m.bottom());
}

void BuildFlow::setGeometry(const QRect& rect) {
    QLayout::setGeometry(rect);
    lay(rect, true);
}

int BuildFlow::lay(const QRect& rect, bool place) const {
    const QRect inside = rect.marginsRemoved(contentsMargins());
    int x = inside.x(), y = inside.y(), line = 0;
    for (QLayoutItem* item : items_) {
        if (item->isEmpty()) continue;
        const QSize hint = item->sizeHint().expandedTo(item->minimumSize());
        const int width = std::min(hint.width(), std::max(inside.width(), item->minimumSize().width()));
        if (x > inside.x() && x + width > inside.right() + 1) {
            x = inside.x();
            y += line + spacing();
            line = 0;
        }
        if (place) item->setGeometry(QRect(x, y, width, hint.height()));
        x += width + spacing();
        line = std::max(line, hint.height());
    }
    return y + line - rect.y() + contentsMargins().bottom();
}

}  // namespace hither
