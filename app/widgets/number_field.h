#pragma once
#include <optional>

#include <QLineEdit>
#include <QPointer>

#include "app/widgets/number_words.h"
#include "core/units/quantity.h"

class QLabel;

namespace hither {

/// The one field for every number with a unit. Takes typed units ("3/4 in", "19 mm", "0,75\""), a decimal
/// comma or point, inch fractions and small sums ("430 + 12 mm - 1/2 in"); a bare number has the display's
/// unit. Commits on Enter or on leaving; Esc brings the last value back. Says why it refuses in a bubble
/// below it and to screen readers, and keeps what was typed. The wheel and the up and down keys step it
/// (page up and page down ten steps), the wheel only while it has the focus; steps count as typing: they
/// are tried at once and committed on Enter or on leaving.
class NumberField : public QLineEdit {
    Q_OBJECT

public:
    using Of = NumberOf;
    explicit NumberField(Of of, QWidget* parent = nullptr);

    void setUnits(UnitSystem units);
    void setRange(double min, double max);            ///< SI; outside is refused with the range in words
    void setStep(double step);                        ///< SI, of wheel and keys
    void setDigits(int digits);                       ///< decimals of the metric print
    void setOptional(const QString& wordsWhenEmpty);  ///< empty text is a value: nothing known
    /// Optional, and this is what counts while nothing is typed: shown greyly, steps begin there.
    void setUsual(double usual);
    /// Shows a value; nothing is signalled. While somebody types in it the text stays.
    void setValue(std::optional<double> value);
    std::optional<double> value() const { return value_; }
    double min() const { return min_; }
    double max() const { return max_; }
    /// The range in words ("300 mm to 560 mm"); empty when there is none.
    QString rangeWords() const;
    /// Why the text as typed is refused; empty when it is fine.
    QString complaint() const;

    QSize sizeHint() const override;
    QSize minimumSizeHint() const override;

signals:
    void tried(double value);                   ///< the text as it is being typed is a value in range
    void committed(std::optional<double> value);///< another value than before was entered
    /// After `tried`: Esc, left with a text that is refused, or with the value that it had.
    void abandoned();

protected:
    void keyPressEvent(QKeyEvent* event) override;
    void focusOutEvent(QFocusEvent* event) override;
    void focusInEvent(QFocusEvent* event) override;
    void wheelEvent(QWheelEvent* event) override;
    void hideEvent(QHideEvent* event) override;

private:
    struct Read { std::optional<double> value; bool empty = false; QString why; };
    Read read(const QString& text) const;
    bool typing() const { return isModified(); }
    bool commit();
    void restore();
    void showText();
    void tryText();
    void complain(const QString& why);
    void abandon();
    void stepBy(int steps);

    NumberForm form_;
    double min_, max_;
    double step_;
    bool optional_ = false;
    std::optional<double> usual_;
    std::optional<double> value_;                     ///< as last shown or committed
    std::optional<std::optional<double>> later_;      ///< set by setValue while somebody typed
    bool triedAny_ = false;
    int wheel_ = 0;                                   ///< eighths of a degree not yet turned into a step
    QPointer<QLabel> bubble_;
    QString descriptionWhenFine_;
};

}  // namespace hither
