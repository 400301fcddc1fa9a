#pragma once
#include <optional>

#include <QLineEdit>

#include "core/units/quantity.h"

namespace hither {

/// The one field for every number with a unit. Takes typed units ("3/4 in", "19 mm", "0,75\""), a decimal
/// comma or point, inch fractions and small sums ("430 + 12 mm - 1/2 in"); a bare number has the display's
/// unit. Commits on Enter or on leaving; Esc brings the last value back. Says why it refuses in a bubble
/// below it and to screen readers, and keeps what was typed. The wheel and the up and down keys step it,
/// the wheel only while it has the focus.
class NumberField : public QLineEdit {
    Q_OBJECT

public:
    enum class Of { length, angle, mass, force, moment, perMetre, count, ratio };
    explicit NumberField(Of of, QWidget* parent = nullptr);

    void setUnits(UnitSystem units);
    void setRange(double min, double max);            ///< SI; outside is refused with the range in words
    void setStep(double step);                        ///< SI, of wheel and keys
    void setDigits(int digits);                       ///< decimals of the metric print
    void setOptional(const QString& wordsWhenEmpty);  ///< empty text is a value: nothing known
    /// Shows a value; nothing is signalled. While somebody types in it the text stays.
    void setValue(std::optional<double> value);
    std::optional<double> value() const { return value_; }
    /// Why the text as typed is refused; empty when it is fine.
    QString complaint() const;

signals:
    void tried(double value);                   ///< the text as it is being typed is a value in range
    void committed(std::optional<double> value);///< another value than before was entered
    void abandoned();                           ///< Esc after `tried`

protected:
    void keyPressEvent(QKeyEvent* event) override;
    void focusOutEvent(QFocusEvent* event) override;
    void focusInEvent(QFocusEvent* event) override;
    void wheelEvent(QWheelEvent* event) override;
    QSize sizeHint() const override;
    QSize minimumSizeHint() const override;

private:
    struct Read { std::optional<double> value; bool empty = false; QString why; };
    Read read(const QString& text) const;
    QString print(double value) const;
    bool commit();
    void showText();
    void complain(const QString& why);
    void stepBy(int steps);

    Of of_;
    UnitSystem units_ = UnitSystem::metric;
    double min_, max_;
    double step_;
    int digits_;
    bool optional_ = false;
    std::optional<double> value_;
    bool triedAny_ = false;
};

}  // namespace hither
