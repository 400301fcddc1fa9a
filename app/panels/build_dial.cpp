#include "app/panels/build_dial.h"

#include <algorithm>
#include <cmath>
#include <utility>

#include <QGridLayout>
#include <QHBoxLayout>
#include <QKeyEvent>
#include <QLabel>
#include <QMouseEvent>
#include <QSignalBlocker>
#include <QStyle>
#include <QStyleOptionSlider>
#include <QWheelEvent>

namespace hither {
namespace {

constexpr int fineSteps = 1000;
constexpr int leastTarget = 24;   // px, the least a pointer target may be (WCAG 2.2, 2.5.8)

bool movesIt(int key) {
    switch (key) {
        case Qt::Key_Left: case Qt::Key_Right: case Qt::Key_Up: case Qt::Key_Down:
        case Qt::Key_PageUp: case Qt::Key_PageDown: case Qt::Key_Home: case Qt::Key_End: return true;
        default: return false;
    }
}

}  // namespace

BuildSlider::BuildSlider(QWidget* parent) : QSlider(Qt::Horizontal, parent) {
    setMinimumHeight(leastTarget);
    setFocusPolicy(Qt::StrongFocus);
    connect(this, &QSlider::valueChanged, this, [this](int position) {
        if (held_) emit movedTo(position);
    });
}

void BuildSlider::begin() {
    if (held_) return;
    held_ = true;
    emit began();
}

void BuildSlider::end() {
    if (!held_) return;
    held_ = false;
    emit ended();
}

void BuildSlider::mousePressEvent(QMouseEvent* event) {
    if (event->button() != Qt::LeftButton) return QSlider::mousePressEvent(event);
    begin();
    // The handle jumps to where it was pressed and follows from there.
    QStyleOptionSlider option;
    initStyleOption(&option);
    const QRect handle = style()->subControlRect(QStyle::CC_Slider, &option, QStyle::SC_SliderHandle, this);
    if (!handle.contains(event->position().toPoint())) {
        const QRect groove = style()->subControlRect(QStyle::CC_Slider, &option, QStyle::SC_SliderGroove, this);
        setValue(QStyle::sliderValueFromPosition(minimum(), maximum(), qRound(event->position().x()) - groove.x() - handle.width() / 2,
                                                 groove.width() - handle.width(), option.upsideDown));
    }
    QSlider::mousePressEvent(event);
}

void BuildSlider::mouseMoveEvent(QMouseEvent* event) {
    // After Esc it stays where it is, though the button is still down.
    if (held_) QSlider::mouseMoveEvent(event);
}

void BuildSlider::mouseReleaseEvent(QMouseEvent* event) {
    QSlider::mouseReleaseEvent(event);
    if (event->button() == Qt::LeftButton) end();
}

bool BuildSlider::event(QEvent* event) {
    // Esc is ours while it is held, whatever shortcut has it otherwise.
    if (event->type() == QEvent::ShortcutOverride && held_ && static_cast<QKeyEvent*>(event)->key() == Qt::Key_Escape) {
        event->accept();
        return true;
    }
    return QSlider::event(event);
}

void BuildSlider::keyPressEvent(QKeyEvent* event) {
    if (event->key() == Qt::Key_Escape && held_) {
        held_ = false;
        setSliderDown(false);
        emit cancelled();
        event->accept();
        return;
    }
    if (movesIt(event->key())) begin();
    QSlider::keyPressEvent(event);
}

void BuildSlider::keyReleaseEvent(QKeyEvent* event) {
    QSlider::keyReleaseEvent(event);
    if (!event->isAutoRepeat() && movesIt(event->key()) && !isSliderDown()) end();
}

void BuildSlider::focusOutEvent(QFocusEvent* event) {
    end();
    QSlider::focusOutEvent(event);
}

void BuildSlider::hideEvent(QHideEvent* event) {
    end();
    QSlider::hideEvent(event);
}

void BuildSlider::wheelEvent(QWheelEvent* event) { event->ignore(); }

BuildDial::BuildDial(QWidget* parent) : QWidget(parent) {
    name_ = new QLabel(this);
    name_->setWordWrap(true);
    slider_ = new BuildSlider(this);
    low_ = new QLabel(this);
    high_ = new QLabel(this);
    note_ = new QLabel(this);
    note_->setWordWrap(true);
    note_->setProperty("quiet", true);
    auto* grid = new QGridLayout(this);
    grid->setContentsMargins(0, 2, 0, 2);
    grid->setVerticalSpacing(0);
    grid->addWidget(name_, 0, 0);
    grid->setColumnStretch(0, 1);
    auto* ends = new QHBoxLayout;
    ends->setSpacing(6);
    ends->addWidget(low_);
    ends->addWidget(slider_, 1);
    ends->addWidget(high_);
    grid->addLayout(ends, 1, 0, 1, 2);
    grid->addWidget(note_, 2, 0, 1, 2);
    for (QLabel* label : {low_, high_}) label->setProperty("quiet", true);
    connect(slider_, &BuildSlider::began, this, &BuildDial::began);
    connect(slider_, &BuildSlider::movedTo, this, [this](int position) { emit tried(valueAt(position)); });
    connect(slider_, &BuildSlider::ended, this, &BuildDial::ended);
    connect(slider_, &BuildSlider::cancelled, this, &BuildDial::cancelled);
}

double BuildDial::valueAt(int position) const {
    if (dial_.step) {
        const double first = std::ceil((dial_.min - dial_.firstStep) / *dial_.step - 1e-9);
        return dial_.firstStep + (first + position) * *dial_.step;
    }
    return dial_.min + (dial_.max - dial_.min) * position / fineSteps;
}

int BuildDial::positionOf(double value) const {
    if (dial_.step) {
        const double first = std::ceil((dial_.min - dial_.firstStep) / *dial_.step - 1e-9);
        return static_cast<int>(std::lround((value - dial_.firstStep) / *dial_.step - first));
    }
    const double span = dial_.max - dial_.min;
    return span > 0 ? static_cast<int>(std::lround((value - dial_.min) / span * fineSteps)) : 0;
}

void BuildDial::note(double wanted, double taken) {
    QString text = dial_.step ? tr("Clicks every %1.").arg(dialWords(dial_, *dial_.step, units_)) : QString();
    if (dial_.step && std::abs(wanted - taken) > 1e-6)
        text = tr("%1 is between two clicks: set to %2.").arg(dialWords(dial_, wanted, units_), dialWords(dial_, taken, units_));
    note_->setText(text);
    note_->setVisible(!text.isEmpty());
}

void BuildDial::show(const Dial& dial, const QString& owner, UnitSystem units) {
    const bool newUnits = units != units_ || !field_;
    const bool newRange = newUnits || dial.min != dial_.min || dial.max != dial_.max || dial.name != dial_.name || dial.step != dial_.step;
    dial_ = dial;
    units_ = units;
    if (!field_) {
        field_ = new NumberField(dial.of, this);
        auto* grid = static_cast<QGridLayout*>(layout());
        grid->addWidget(field_, 0, 1);
        setTabOrder(field_, slider_);
        name_->setBuddy(field_);
        connect(field_, &NumberField::tried, this, [this](double value) {
            if (!fieldGesture_) {
                fieldGesture_ = true;
                emit began();
            }
            emit tried(value);
        });
        connect(field_, &NumberField::committed, this, [this](std::optional<double> value) {
            const bool going = std::exchange(fieldGesture_, false);
            if (!value) return;
            const double taken = settled(dial_, *value);
            if (going) {
                emit tried(*value);
                emit ended();
            } else {
                emit entered(*value);
            }
            field_->setValue(dial_.value);   // it may stand on a click beside what was typed
            note(*value, dial_.fullTurn ? *value + std::remainder(taken - *value, 2 * pi) : taken);
        });
        connect(field_, &NumberField::abandoned, this, [this] {
            if (std::exchange(fieldGesture_, false)) emit cancelled();
        });
    }
    if (newRange) {
        name_->setText(dial.name);
        field_->setUnits(units);
        if (dial.fullTurn) field_->setRange(-2 * pi, 2 * pi);
        else field_->setRange(dial.min, dial.max);
        field_->setStep(dial.step ? *dial.step : dial.of == NumberField::Of::angle ? radians(1) : 0.005);
        const QString whole = owner.isEmpty() ? dial.name : tr("%1, %2").arg(owner, dial.name);
        field_->setAccessibleName(whole);
        slider_->setAccessibleName(tr("%1, slider").arg(whole));
        low_->setText(dialWords(dial, dial.min, units));
        high_->setText(dialWords(dial, dial.max, units));
        const QString limits = dialLimits(dial, units);
        field_->setToolTip(limits);
        field_->setAccessibleDescription(limits);
        const QSignalBlocker quiet(slider_);
        if (dial.step) {
            const int last = static_cast<int>(std::floor((dial.max - valueAt(0)) / *dial.step + 1e-9));
            slider_->setRange(0, std::max(0, last));
            slider_->setPageStep(std::max(1, last / 6));
        } else {
            slider_->setRange(0, fineSteps);
            slider_->setSingleStep(dial.of == NumberField::Of::angle ? std::max(1, static_cast<int>(std::lround(radians(1) / std::max(1e-9, dial.max - dial.min) * fineSteps))) : 5);
            slider_->setPageStep(50);
        }
        note(dial.value, dial.value);
    }
    if (field_->isEnabled() != dial.usable) {
        field_->setEnabled(dial.usable);
        slider_->setEnabled(dial.usable);
    }
    if (field_->value() != dial.value || newUnits) field_->setValue(dial.value);
    const int position = positionOf(dial.value);
    if (!slider_->held() && slider_->value() != position) {
        const QSignalBlocker quiet(slider_);
        slider_->setValue(position);
    }
}

}  // namespace hither
