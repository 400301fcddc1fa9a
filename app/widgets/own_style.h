#pragma once
#include <QProxyStyle>

namespace hither {

/// What a style sheet cannot draw well: choices, in the theme's colours, with a ring when they have the
/// keyboard and their words shortened, not cut, where there is no room.
class OwnStyle : public QProxyStyle {
    Q_OBJECT

public:
    OwnStyle();

    void drawComplexControl(ComplexControl control, const QStyleOptionComplex* option, QPainter* painter, const QWidget* widget) const override;
    void drawControl(ControlElement element, const QStyleOption* option, QPainter* painter, const QWidget* widget) const override;
    QSize sizeFromContents(ContentsType type, const QStyleOption* option, const QSize& contents, const QWidget* widget) const override;
};

}  // namespace hither
