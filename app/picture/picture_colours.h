#pragma once
#include <QColor>
#include <QFont>

#include "app/picture/picture.h"

namespace hither {

/// The colours of a picture, light or dark.
struct PictureColours {
    bool dark = false;
    QColor skyTop, skyBottom, floorLine, floorLineStrong, edge, outline, labelBack, labelText, labelBorder;
    QFont labelFont;
    QColor of(Look look) const;

    static PictureColours light();
    static PictureColours darkOnes();
};

}  // namespace hither
