#include <cstdlib>

#include <QKeyEvent>
#include <QLineEdit>

#include "app/panels/build_offer_list.h"
#include "app/panels/build_rows.h"

namespace hither {

void BuildOfferList::moveBy(int rows) {
    const int direction = rows < 0 ? -1 : 1;
    int row = list_->currentRow(), left = std::abs(rows);
    for (int next = row + direction; left > 0 && next >= 0 && next < list_->count(); next += direction) {
        if (!(list_->item(next)->flags() & Qt::ItemIsSelectable)) continue;
        row = next;
        --left;
    }
    list_->setCurrentRow(row);
}

bool BuildOfferList::eventFilter(QObject* watched, QEvent* event) {
    if (watched != search_ || event->type() != QEvent::KeyPress) return QWidget::eventFilter(watched, event);
    switch (static_cast<QKeyEvent*>(event)->key()) {
        case Qt::Key_Down: moveBy(1); return true;
        case Qt::Key_Up: moveBy(-1); return true;
        case Qt::Key_PageDown: moveBy(8); return true;
        case Qt::Key_PageUp: moveBy(-8); return true;
        case Qt::Key_Return:
        case Qt::Key_Enter: take(); return true;
        case Qt::Key_Escape:
            if (search_->text().isEmpty()) context_.view.setOfferFor({});
            else search_->clear();
            return true;
        default: return QWidget::eventFilter(watched, event);
    }
}

}  // namespace hither
