#include "app/widgets/fold.h"

#include <QVBoxLayout>

namespace hither {

Fold::Fold(const QString& words, bool open, QWidget* parent) : QWidget(parent), button_(new QToolButton(this)), content_(new QWidget(this)) {
    auto* column = new QVBoxLayout(this);
    column->setContentsMargins(0, 4, 0, 0);
    column->setSpacing(4);
    button_->setCheckable(true);
    button_->setToolButtonStyle(Qt::ToolButtonTextBesideIcon);
    button_->setFocusPolicy(Qt::StrongFocus);
    button_->setProperty("plain", true);
    QFont bold;  // its weight alone: the size follows the text size chosen
    bold.setWeight(QFont::DemiBold);
    button_->setFont(bold);
    column->addWidget(button_, 0, Qt::AlignLeading);
    inside_ = new QVBoxLayout(content_);
    inside_->setContentsMargins(8, 0, 0, 4);
    inside_->setSpacing(6);
    column->addWidget(content_);
    setWords(words);
    connect(button_, &QToolButton::toggled, this, &Fold::setOpen);
    button_->setChecked(open);
    setOpen(open);
}

void Fold::setWords(const QString& words) {
    button_->setText(words);
    button_->setAccessibleName(words);
    button_->setObjectName("fold " + words);
}

void Fold::setOpen(bool open) {
    if (button_->isChecked() != open) { button_->setChecked(open); return; }
    button_->setArrowType(open ? Qt::DownArrow : layoutDirection() == Qt::RightToLeft ? Qt::LeftArrow : Qt::RightArrow);
    button_->setAccessibleDescription(open ? tr("open") : tr("closed"));
    content_->setVisible(open);
}

}  // namespace hither
