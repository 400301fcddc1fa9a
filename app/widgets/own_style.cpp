#include "app/widgets/own_style.h"

#include <algorithm>

#include <QPainter>
#include <QStyleFactory>
#include <QStyleOptionComboBox>

#include "app/widgets/theme.h"

namespace hither {
namespace {

constexpr int leastTarget = 26;   // px

void drawChoice(QPainter* painter, const QStyleOptionComboBox& box, const QRect& arrow) {
    const Theme& theme = Theme::current();
    const bool enabled = box.state & QStyle::State_Enabled, focus = box.state & QStyle::State_HasFocus;
    const bool over = enabled && (box.state & (QStyle::State_MouseOver | QStyle::State_On));
    painter->save();
    painter->setRenderHint(QPainter::Antialiasing);
    const double pen = focus ? 2 : 1;
    painter->setPen(QPen(focus ? theme.focus : enabled ? theme.strongBorder : theme.border, pen));
    painter->setBrush(!enabled ? theme.window : over ? theme.raised : theme.surface);
    painter->drawRoundedRect(QRectF(box.rect).adjusted(pen / 2, pen / 2, -pen / 2, -pen / 2), 5, 5);
    const double size = 0.28 * std::min(box.fontMetrics.height(), arrow.width());
    const QPointF middle = QRectF(arrow).center();
    painter->setPen(QPen(enabled ? theme.text : theme.quietText, 1.6, Qt::SolidLine, Qt::RoundCap, Qt::RoundJoin));
    painter->setBrush(Qt::NoBrush);
    painter->drawPolyline(QPolygonF({middle + QPointF(-size, -0.5 * size), middle + QPointF(0, 0.5 * size), middle + QPointF(size, -0.5 * size)}));
    painter->restore();
}

}  // namespace

OwnStyle::OwnStyle() : QProxyStyle(QStyleFactory::create("Fusion")) {}

void OwnStyle::drawComplexControl(ComplexControl control, const QStyleOptionComplex* option, QPainter* painter, const QWidget* widget) const {
    const auto* box = qstyleoption_cast<const QStyleOptionComboBox*>(option);
    if (control != CC_ComboBox || !box || box->editable || !box->frame) {
        QProxyStyle::drawComplexControl(control, option, painter, widget);
        return;
    }
    drawChoice(painter, *box, subControlRect(CC_ComboBox, option, SC_ComboBoxArrow, widget));
}

void OwnStyle::drawControl(ControlElement element, const QStyleOption* option, QPainter* painter, const QWidget* widget) const {
    const auto* box = qstyleoption_cast<const QStyleOptionComboBox*>(option);
    if (element != CE_ComboBoxLabel || !box || box->editable) {
        QProxyStyle::drawControl(element, option, painter, widget);
        return;
    }
    QStyleOptionComboBox shortened(*box);
    const QRect room = subControlRect(CC_ComboBox, box, SC_ComboBoxEditField, widget);
    const int icon = box->currentIcon.isNull() ? 0 : box->iconSize.width() + 4;
    shortened.currentText = box->fontMetrics.elidedText(box->currentText, Qt::ElideRight, std::max(0, room.width() - icon - 4));
    QProxyStyle::drawControl(element, &shortened, painter, widget);
}

QSize OwnStyle::sizeFromContents(ContentsType type, const QStyleOption* option, const QSize& contents, const QWidget* widget) const {
    QSize size = QProxyStyle::sizeFromContents(type, option, contents, widget);
    if (type == CT_ComboBox) size.setHeight(std::max({size.height(), leastTarget, option ? option->fontMetrics.height() + 10 : 0}));
    return size;
}

}  // namespace hither
