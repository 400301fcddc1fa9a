#include "app/widgets/number_field.h"

#include <algorithm>
#include <cmath>
#include <limits>

#include <QAbstractScrollArea>
#include <QAccessible>
#include <QFocusEvent>
#include <QKeyEvent>
#include <QLabel>
#include <QStyle>
#include <QWheelEvent>

#include "core/units/tolerances.h"

namespace hither {
namespace {

constexpr double unbounded = std::numeric_limits<double>::infinity();
constexpr int leastTarget = 24;   // px, the least a pointer target may be (WCAG 2.2, 2.5.8)

struct Usual { double step; int digits; };
Usual usual(NumberOf of) {
    switch (of) {
        case NumberOf::length: return {0.005, 0};
        case NumberOf::angle: return {radians(1), 0};
        case NumberOf::mass: return {0.010, 0};
        case NumberOf::force: return {0.1, 1};
        case NumberOf::moment: return {0.1, 2};
        case NumberOf::perMetre: return {0.1, 2};
        case NumberOf::count: return {1, 0};
        case NumberOf::ratio: break;
    }
    return {0.05, 2};
}

QString asSentence(QString clause) {
    if (!clause.isEmpty()) clause[0] = clause[0].toUpper();
    return clause.endsWith('.') || clause.isEmpty() ? clause : clause + '.';
}

/// Where a bubble may lie: what scrolls together with the field, else its window.
QWidget* bubbleHost(QWidget* field) {
    QWidget* host = field;
    while (QWidget* up = host->parentWidget()) {
        const auto* area = qobject_cast<const QAbstractScrollArea*>(up->parentWidget());
        if ((area && area->viewport() == up) || host->isWindow()) break;
        host = up;
    }
    return host;
}

}  // namespace

NumberField::NumberField(Of of, QWidget* parent) : QLineEdit(parent), min_(-unbounded), max_(unbounded), step_(usual(of).step) {
    form_.of = of;
    form_.digits = usual(of).digits;
    setMaxLength(200);
    connect(this, &QLineEdit::textEdited, this, [this] { tryText(); });
}

void NumberField::setUnits(UnitSystem units) {
    if (form_.units == units) return;
    form_.units = units;
    if (usual_) setUsual(*usual_);
    if (!typing()) showText();
}

void NumberField::setRange(double min, double max) {
    min_ = min;
    max_ = max;
    form_.heavy = form_.of == Of::mass && max_ > 20 && std::isfinite(max_);
}

void NumberField::setStep(double step) { step_ = step; }

void NumberField::setDigits(int digits) {
    form_.digits = digits;
    if (usual_) setUsual(*usual_);
    if (!typing()) showText();
}

void NumberField::setOptional(const QString& wordsWhenEmpty) {
    optional_ = true;
    usual_.reset();
    if (placeholderText() != wordsWhenEmpty) setPlaceholderText(wordsWhenEmpty);
}

void NumberField::setUsual(double usual) {
    optional_ = true;
    usual_ = usual;
    const QString words = printNumber(usual, form_);
    if (placeholderText() != words) setPlaceholderText(words);
}

void NumberField::setValue(std::optional<double> value) {
    if (typing() && (hasFocus() || triedAny_)) { later_ = value; return; }
    const bool stuck = typing();   // left with a text that is refused: it stays until the value itself changes
    if (stuck && value == value_) return;
    value_ = value;
    later_.reset();
    complain({});
    showText();
}

QString NumberField::rangeWords() const {
    const bool low = std::isfinite(min_), high = std::isfinite(max_);
    if (low && high) return tr("%1 to %2").arg(printLimit(min_, false, form_), printLimit(max_, true, form_));
    if (low) return tr("at least %1").arg(printLimit(min_, false, form_));
    if (high) return tr("at most %1").arg(printLimit(max_, true, form_));
    return {};
}

QString NumberField::complaint() const { return asSentence(read(text()).why); }

NumberField::Read NumberField::read(const QString& text) const {
    if (text.trimmed().isEmpty()) return {std::nullopt, true, optional_ ? QString() : tr("a number is needed here")};
    const Parsed<double> parsed = readNumber(text, form_);
    if (!parsed) return {std::nullopt, false, QString::fromStdString(parsed.reason)};
    const double value = *parsed.value, slack = tolerance::limitSlack;
    if (value < min_ - slack || value > max_ + slack) return {std::nullopt, false, tr("%1 is not in the range %2").arg(printNumber(value, form_), rangeWords())};
    return {std::clamp(value, min_, max_), false, {}};
}

void NumberField::showText() {
    setText(value_ ? printNumber(*value_, form_) : QString());
    setModified(false);
    setCursorPosition(0);
    triedAny_ = false;
}

void NumberField::tryText() {
    const Read now = read(text());
    if (now.why.isEmpty()) complain({});
    if (!now.value) return;
    triedAny_ = true;
    emit tried(*now.value);
}

void NumberField::abandon() {
    if (!triedAny_) return;
    triedAny_ = false;
    emit abandoned();
}

bool NumberField::commit() {
    if (!typing()) return true;
    const Read now = read(text());
    if (!now.why.isEmpty()) {
        complain(now.why);
        abandon();
        return false;
    }
    complain({});
    const bool same = now.value.has_value() == value_.has_value() && (!now.value || *now.value == *value_ || text() == printNumber(*value_, form_));
    if (same) {
        restore();
        return true;
    }
    value_ = now.value;
    later_.reset();
    showText();
    emit committed(value_);
    return true;
}

void NumberField::restore() {
    complain({});
    if (later_ && !triedAny_) value_ = *later_;
    later_.reset();
    const bool toldOthers = triedAny_;
    showText();
    triedAny_ = toldOthers;
    abandon();
}

void NumberField::stepBy(int steps) {
    if (isReadOnly() || steps == 0) return;
    const Read now = read(text());
    double start = now.value ? *now.value : value_.value_or(usual_.value_or(std::clamp(0.0, min_, max_)));
    start = std::clamp(start + steps * roundStep(step_, form_), min_, max_);
    setText(printNumber(start, form_));
    setModified(true);
    selectAll();
    tryText();
}

void NumberField::keyPressEvent(QKeyEvent* event) {
    switch (event->key()) {
        case Qt::Key_Return:
        case Qt::Key_Enter:
            if (commit()) selectAll();
            event->accept();
            return;
        case Qt::Key_Escape:
            if (!typing() && !triedAny_) break;
            restore();
            selectAll();
            event->accept();
            return;
        case Qt::Key_Up: stepBy(1); event->accept(); return;
        case Qt::Key_Down: stepBy(-1); event->accept(); return;
        case Qt::Key_PageUp: stepBy(10); event->accept(); return;
        case Qt::Key_PageDown: stepBy(-10); event->accept(); return;
        default: break;
    }
    QLineEdit::keyPressEvent(event);
}

void NumberField::focusOutEvent(QFocusEvent* event) {
    if (event->reason() != Qt::PopupFocusReason) commit();
    QLineEdit::focusOutEvent(event);
}

void NumberField::focusInEvent(QFocusEvent* event) {
    QLineEdit::focusInEvent(event);
    if (typing() && event->reason() != Qt::PopupFocusReason) complain(read(text()).why);
}

void NumberField::wheelEvent(QWheelEvent* event) {
    if (!hasFocus() || isReadOnly()) { event->ignore(); return; }
    wheel_ += event->angleDelta().y();
    const int steps = wheel_ / 120;
    wheel_ -= steps * 120;
    stepBy(steps);
    event->accept();
}

void NumberField::hideEvent(QHideEvent* event) {
    if (bubble_) bubble_->hide();
    QLineEdit::hideEvent(event);
}

void NumberField::complain(const QString& why) {
    const bool was = property("refused").toBool(), is = !why.isEmpty();
    if (!was && !is) return;
    if (was != is) {
        setProperty("refused", is);
        style()->unpolish(this);
        style()->polish(this);
    }
    if (!is) {
        delete bubble_;
        setAccessibleDescription(descriptionWhenFine_);
        return;
    }
    if (!was) descriptionWhenFine_ = accessibleDescription();
    const QString words = asSentence(why);
    setAccessibleDescription(words);
    QWidget* host = bubbleHost(this);
    if (host != this) {
        if (!bubble_) {
            bubble_ = new QLabel(host);
            bubble_->setObjectName("refusal");
            bubble_->setTextFormat(Qt::PlainText);
            bubble_->setWordWrap(true);
            bubble_->setAttribute(Qt::WA_TransparentForMouseEvents);
            bubble_->setAutoFillBackground(true);
        }
        bubble_->setText(words);
        const int most = std::max(width(), fontMetrics().averageCharWidth() * 34);
        const int wide = std::min({most, host->width() - 8, bubble_->sizeHint().width() + 8});
        const int wrapped = std::max(wide, std::min(host->width() - 8, width()));
        const int high = bubble_->heightForWidth(wrapped);
        const QPoint at = mapTo(host, QPoint(0, height() + 2));
        const int x = std::clamp(at.x(), 4, std::max(4, host->width() - wrapped - 4));
        const bool below = at.y() + high <= host->height();
        bubble_->setGeometry(x, below ? at.y() : std::max(0, at.y() - height() - high - 4), wrapped, high);
        bubble_->raise();
        bubble_->show();
    }
    QAccessibleEvent alert(this, QAccessible::Alert);
    QAccessible::updateAccessibility(&alert);
}

QSize NumberField::minimumSizeHint() const {
    const QSize base = QLineEdit::sizeHint();
    const int around = base.width() - fontMetrics().horizontalAdvance(QLatin1Char('x')) * 17;   // frame and margins as the style has them
    const QString shown = value_ ? printNumber(*value_, form_) : placeholderText();
    const int words = std::max({fontMetrics().horizontalAdvance(shown), fontMetrics().horizontalAdvance(QStringLiteral("000 mm"))});
    return {words + std::max(around, 12) + fontMetrics().averageCharWidth(), std::max(base.height(), leastTarget)};
}

QSize NumberField::sizeHint() const {
    const QSize least = minimumSizeHint();
    return {std::max(least.width(), least.width() - fontMetrics().horizontalAdvance(QStringLiteral("000 mm")) + fontMetrics().horizontalAdvance(QStringLiteral("0000.0 mm"))), least.height()};
}

}  // namespace hither
