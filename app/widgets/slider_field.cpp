#include "app/widgets/slider_field.h"

#include <algorithm>
#include <cmath>

#include <QHBoxLayout>
#include <QKeyEvent>
#include <QSignalBlocker>
#include <QWheelEvent>

namespace hither {

HeldSlider::HeldSlider(QWidget* parent) : QSlider(Qt::Horizontal, parent) { setFocusPolicy(Qt::StrongFocus); }

void HeldSlider::sliderChange(SliderChange change) {
    QSlider::sliderChange(change);
    if (change != SliderValueChange || !byHand_ || signalsBlocked()) return;
    touched_ = true;
    emit moved(value());
}

void HeldSlider::keyPressEvent(QKeyEvent* event) {
    if (event->key() == Qt::Key_Escape && touched_) {
        touched_ = byHand_ = false;
        setSliderDown(false);
        emit givenUp();
        event->accept();
        return;
    }
    if ((event->key() == Qt::Key_Return || event->key() == Qt::Key_Enter) && touched_) {
        touched_ = false;
        emit settled();
        event->accept();
        return;
    }
    const bool before = byHand_;
    byHand_ = true;
    QSlider::keyPressEvent(event);
    byHand_ = before;
}

void HeldSlider::wheelEvent(QWheelEvent* event) {
    if (!hasFocus()) { event->ignore(); return; }
    byHand_ = true;
    QSlider::wheelEvent(event);
    byHand_ = false;
}

void HeldSlider::mousePressEvent(QMouseEvent* event) {
    byHand_ = true;
    QSlider::mousePressEvent(event);
}

void HeldSlider::mouseReleaseEvent(QMouseEvent* event) {
    QSlider::mouseReleaseEvent(event);
    byHand_ = false;
    if (!touched_) return;
    touched_ = false;
    emit settled();
}

void HeldSlider::focusOutEvent(QFocusEvent* event) {
    if (touched_ && event->reason() != Qt::PopupFocusReason) {
        touched_ = false;
        emit settled();
    }
    QSlider::focusOutEvent(event);
}

SliderField::SliderField(NumberField::Of of, QWidget* parent) : QWidget(parent), slider_(new HeldSlider(this)), field_(new NumberField(of, this)) {
    auto* row = new QHBoxLayout(this);
    row->setContentsMargins(0, 0, 0, 0);
    row->setSpacing(8);
    row->addWidget(slider_, 1);
    row->addWidget(field_);
    setSizePolicy(QSizePolicy::Expanding, QSizePolicy::Fixed);
    connect(slider_, &HeldSlider::moved, this, [this](int position) {
        sliding_ = true;
        const double value = valueAt(position);
        field_->setValue(value);
        emit tried(value);
    });
    connect(slider_, &HeldSlider::settled, this, [this] {
        sliding_ = false;
        emit committed(valueAt(slider_->value()));
    });
    connect(slider_, &HeldSlider::givenUp, this, [this] {
        sliding_ = false;
        emit abandoned();
    });
    connect(field_, &NumberField::tried, this, [this](double value) {
        showOnSlider(value);
        emit tried(value);
    });
    connect(field_, &NumberField::committed, this, &SliderField::committed);
    connect(field_, &NumberField::abandoned, this, &SliderField::abandoned);
}

void SliderField::setUnits(UnitSystem units) { field_->setUnits(units); }
void SliderField::setDigits(int digits) { field_->setDigits(digits); }
void SliderField::setOptional(const QString& wordsWhenEmpty) { field_->setOptional(wordsWhenEmpty); }

double SliderField::atUsual() const { return std::clamp(usual_.value_or(0.0), min_, max_); }

void SliderField::setUsual(double usual) {
    field_->setUsual(usual);
    usual_ = usual;
    if (!sliding_ && !field_->isModified() && !value()) showOnSlider(atUsual());
}

void SliderField::setRange(double min, double max) {
    min_ = min;
    max_ = std::max(min, max);
    field_->setRange(min_, max_);
    setStep(step_);
}

void SliderField::setStep(double step) {
    step_ = step;
    field_->setStep(step);
    const QSignalBlocker quiet(slider_);
    const int steps = std::max(1, static_cast<int>(std::ceil((max_ - min_) / step_ - 1e-9)));
    slider_->setRange(0, steps);
    slider_->setPageStep(std::max(1, std::min(10, steps / 4)));
    showOnSlider(value().value_or(atUsual()));
}

double SliderField::valueAt(int position) const { return std::clamp(position >= slider_->maximum() ? max_ : min_ + position * step_, min_, max_); }
int SliderField::positionOf(double value) const { return static_cast<int>(std::lround((std::clamp(value, min_, max_) - min_) / step_)); }

void SliderField::showOnSlider(double value) {
    const QSignalBlocker quiet(slider_);
    slider_->setValue(positionOf(value));
    slider_->update();
}

void SliderField::setValue(std::optional<double> value) {
    field_->setValue(value);
    if (!sliding_ && !field_->isModified()) showOnSlider(value.value_or(atUsual()));
}

void SliderField::setNames(const QString& name) {
    setAccessibleName(name);
    field_->setAccessibleName(name);
    slider_->setAccessibleName(tr("%1, slider").arg(name));
    slider_->setAccessibleDescription(field_->rangeWords());
}

}  // namespace hither
