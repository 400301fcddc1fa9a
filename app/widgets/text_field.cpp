#include "app/widgets/text_field.h"

#include <QFocusEvent>
#include <QKeyEvent>

namespace hither {

TextField::TextField(QWidget* parent) : QLineEdit(parent) { setMaxLength(400); }

void TextField::setWords(const QString& words) {
    words_ = words;
    if ((hasFocus() && isModified()) || text() == words) return;
    setText(words);
    setModified(false);
    setCursorPosition(0);
}

void TextField::commit() {
    if (!isModified()) return;
    setModified(false);
    const QString typed = text().trimmed();
    if (typed == words_) { setText(words_); return; }
    words_ = typed;
    emit committed(typed);
}

void TextField::keyPressEvent(QKeyEvent* event) {
    if (event->key() == Qt::Key_Return || event->key() == Qt::Key_Enter) {
        commit();
        selectAll();
        event->accept();
        return;
    }
    if (event->key() == Qt::Key_Escape && isModified()) {
        setText(words_);
        setModified(false);
        selectAll();
        event->accept();
        return;
    }
    QLineEdit::keyPressEvent(event);
}

void TextField::focusOutEvent(QFocusEvent* event) {
    if (event->reason() != Qt::PopupFocusReason) commit();
    QLineEdit::focusOutEvent(event);
}

}  // namespace hither
