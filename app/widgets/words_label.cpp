#include "app/widgets/words_label.h"

#include <QEvent>

namespace hither {

QLabel* wordsLabel(const QString& text, bool quiet, QWidget* parent) {
    auto* label = new QLabel(text, parent);
    label->setTextFormat(Qt::PlainText);
    label->setWordWrap(true);
    QSizePolicy policy(QSizePolicy::Preferred, QSizePolicy::Minimum);
    policy.setHeightForWidth(true);
    label->setSizePolicy(policy);
    if (quiet) label->setProperty("quiet", true);
    return label;
}

SectionHeading::SectionHeading(const QString& text, QWidget* parent) : QLabel(text, parent) {
    setTextFormat(Qt::PlainText);
    setWordWrap(true);
    QSizePolicy policy(QSizePolicy::Preferred, QSizePolicy::Minimum);
    policy.setHeightForWidth(true);
    setSizePolicy(policy);
    setContentsMargins(0, 8, 0, 0);
    embolden();
}

void SectionHeading::embolden() {
    QFont f = font();
    if (f.weight() == QFont::DemiBold) return;
    f.setWeight(QFont::DemiBold);
    setFont(f);
}

void SectionHeading::changeEvent(QEvent* event) {
    QLabel::changeEvent(event);
    if (event->type() == QEvent::FontChange) embolden();
}

}  // namespace hither
