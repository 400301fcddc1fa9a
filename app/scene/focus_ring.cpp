#include "app/scene/focus_ring.h"

#include <QPainter>

#include "app/widgets/theme.h"

namespace hither {

void paintFocusRing(QWidget& widget) {
    QPainter painter(&widget);
    painter.fillRect(widget.rect(), widget.hasFocus() ? Theme::current().focus : Theme::current().window);
}

bool takesKey(int key) {
    switch (key) {
        case Qt::Key_Left: case Qt::Key_Right: case Qt::Key_Up: case Qt::Key_Down:
        case Qt::Key_Plus: case Qt::Key_Equal: case Qt::Key_Minus: case Qt::Key_Escape:
        case Qt::Key_F: return true;
        default: return false;
    }
}

}  // namespace hither
