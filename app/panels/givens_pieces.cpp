#include "app/panels/givens_pieces.h"

#include <algorithm>

#include <QCoreApplication>
#include <QListWidget>

namespace hither {

QListWidget* pickList(const QString& accessibleName, int rows) {
    auto* list = new QListWidget;
    list->setAccessibleName(accessibleName);
    list->setWordWrap(false);
    list->setTextElideMode(Qt::ElideMiddle);
    list->setHorizontalScrollBarPolicy(Qt::ScrollBarAlwaysOff);
    list->setUniformItemSizes(true);
    const int row = std::max(26, list->fontMetrics().height() + 10);
    list->setStyleSheet(QString("QListWidget::item { min-height: %1px; padding: 0px 6px; }").arg(row));
    list->setFixedHeight(std::clamp(rows, 1, 6) * row + 4);
    return list;
}

QString setLabel(const QString& what) {
    QString lower = what;
    if (lower.size() > 1 && lower[1].isLower()) lower[0] = lower[0].toLower();
    return QCoreApplication::translate("hither::GivensPanel", "Set: %1").arg(lower);
}

}  // namespace hither
