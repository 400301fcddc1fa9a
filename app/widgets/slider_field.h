#pragma once
#include <optional>

#include <QSlider>
#include <QWidget>

#include "app/widgets/number_field.h"

namespace hither {

/// A slider that steps by keys and wheel only with focus and tells when it is held, let go and given up.
class HeldSlider : public QSlider {
    Q_OBJECT

public:
    explicit HeldSlider(QWidget* parent = nullptr);

signals:
    void moved(int value);   ///< by hand: mouse, keys or wheel
    void settled();          ///< let go, left, or Enter
    void givenUp();          ///< Esc

protected:
    void keyPressEvent(QKeyEvent* event) override;
    void wheelEvent(QWheelEvent* event) override;
    void focusOutEvent(QFocusEvent* event) override;
    void mousePressEvent(QMouseEvent* event) override;
    void mouseReleaseEvent(QMouseEvent* event) override;
    void sliderChange(SliderChange change) override;

private:
    bool byHand_ = false, touched_ = false;
    int before_ = 0;
};

/// A number within a range by slider and by field, side by side. While it is being changed it says
/// `tried`; let go, left or entered it says `committed`, once; given up it says `abandoned`.
class SliderField : public QWidget {
    Q_OBJECT

public:
    explicit SliderField(NumberField::Of of, QWidget* parent = nullptr);

    void setUnits(UnitSystem units);
    void setRange(double min, double max);
    void setStep(double step);                ///< SI, of slider and field
    void setDigits(int digits);
    void setOptional(const QString& wordsWhenEmpty);
    /// As for a number field; the slider stands there while nothing is typed.
    void setUsual(double usual);
    void setValue(std::optional<double> value);
    std::optional<double> value() const { return field_->value(); }
    NumberField* numberField() const { return field_; }
    HeldSlider* slider() const { return slider_; }
    /// Names both for screen readers.
    void setNames(const QString& name);

signals:
    void tried(double value);
    void committed(std::optional<double> value);
    void abandoned();

private:
    double valueAt(int position) const;
    int positionOf(double value) const;
    void showOnSlider(double value);

    HeldSlider* slider_;
    NumberField* field_;
    double atUsual() const;
    double min_ = 0, max_ = 1, step_ = 0.01;
    std::optional<double> usual_;
    bool sliding_ = false;
};

}  // namespace hither
