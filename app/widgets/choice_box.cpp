#include "app/widgets/choice_box.h"

#include <QSignalBlocker>
#include <QWheelEvent>

namespace hither {

ChoiceBox::ChoiceBox(QWidget* parent) : QComboBox(parent) {
    setFocusPolicy(Qt::StrongFocus);
    setSizeAdjustPolicy(QComboBox::AdjustToMinimumContentsLengthWithIcon);
    setMinimumContentsLength(9);
    setSizePolicy(QSizePolicy::Expanding, QSizePolicy::Fixed);
}

void ChoiceBox::setChoice(const QVariant& choice) {
    const QSignalBlocker quiet(this);
    const int at = findData(choice);
    if (at != currentIndex()) setCurrentIndex(at);
}

void ChoiceBox::wheelEvent(QWheelEvent* event) {
    if (hasFocus()) QComboBox::wheelEvent(event);
    else event->ignore();
}

}  // namespace hither
