#include "app/panels/finding_link.h"

#include <QEvent>

namespace hither {

LinkLabel::LinkLabel(QWidget* parent) : QLabel(parent) {
    setWordWrap(true);
    setTextFormat(Qt::RichText);
    setMinimumHeight(24);
    setTextInteractionFlags(Qt::LinksAccessibleByMouse | Qt::LinksAccessibleByKeyboard);
    setFocusPolicy(Qt::StrongFocus);
}

void LinkLabel::changeEvent(QEvent* event) {
    QLabel::changeEvent(event);
    if (event->type() != QEvent::PaletteChange) return;
    const QString words = text();
    clear();
    setText(words);
}

}  // namespace hither
