#include "app/widgets/sticky.h"

#include <algorithm>

#include <QApplication>
#include <QEvent>
#include <QScrollArea>
#include <QScrollBar>
#include <QTimer>

namespace hither {

Sticky::Sticky(QWidget* inside, QWidget* parent) : QWidget(parent), inside_(inside) {
    QSizePolicy policy(QSizePolicy::Preferred, QSizePolicy::Preferred);
    policy.setHeightForWidth(true);
    setSizePolicy(policy);
    inside_->setParent(this);
    inside_->show();
    connect(qApp, &QApplication::focusChanged, this, [this](QWidget*, QWidget* now) {
        // After the scroll area itself has brought the field into sight.
        if (now) QTimer::singleShot(0, this, [this, field = QPointer<QWidget>(now)] { clear(field); });
    });
}

Sticky::~Sticky() { delete inside_; }

int Sticky::heightForWidth(int width) const { return inside_ ? inside_->heightForWidth(width) : 0; }
QSize Sticky::sizeHint() const { return inside_ ? inside_->sizeHint() : QSize(); }
QSize Sticky::minimumSizeHint() const { return inside_ ? inside_->minimumSizeHint() : QSize(); }

void Sticky::showEvent(QShowEvent* event) {
    QWidget::showEvent(event);
    if (!area_) {
        for (QWidget* up = parentWidget(); up && !area_; up = up->parentWidget()) area_ = qobject_cast<QScrollArea*>(up);
        if (area_) connect(area_->verticalScrollBar(), &QScrollBar::valueChanged, this, &Sticky::follow);
    }
    if (inside_) inside_->show();
    follow();
}

void Sticky::hideEvent(QHideEvent* event) {
    QWidget::hideEvent(event);
    if (inside_ && inside_->parentWidget() != this) inside_->hide();
}

void Sticky::moveEvent(QMoveEvent* event) { QWidget::moveEvent(event); follow(); }
void Sticky::resizeEvent(QResizeEvent* event) { QWidget::resizeEvent(event); follow(); }

bool Sticky::event(QEvent* event) {
    const bool done = QWidget::event(event);
    if (event->type() == QEvent::LayoutRequest) { updateGeometry(); follow(); }
    return done;
}

void Sticky::follow() {
    if (!inside_) return;
    QWidget* content = area_ ? area_->widget() : nullptr;
    if (!content || !content->isAncestorOf(this)) {
        inside_->setGeometry(rect());
        return;
    }
    if (inside_->parentWidget() != content) {
        inside_->setParent(content);
        inside_->setVisible(isVisible());
    }
    const QPoint place = mapTo(content, QPoint(0, 0));
    const int seenFrom = -content->y();
    const bool worthIt = height() * 2 < area_->viewport()->height();   // it must leave the form most of the room
    const int y = worthIt ? std::max(place.y(), seenFrom + 2) : place.y();
    inside_->setGeometry(place.x(), y, width(), height());
    inside_->raise();
}

void Sticky::clear(QWidget* focus) {
    QWidget* content = area_ ? area_->widget() : nullptr;
    if (!focus || !content || !isVisible() || !inside_ || !content->isAncestorOf(focus) || inside_->isAncestorOf(focus)) return;
    const QPoint place = mapTo(content, QPoint(0, 0));
    const int top = focus->mapTo(content, QPoint(0, 0)).y(), under = inside_->geometry().bottom() + 6;
    if (top < place.y() + height() || top >= under) return;
    area_->verticalScrollBar()->setValue(area_->verticalScrollBar()->value() - (under - top));
}

}  // namespace hither
