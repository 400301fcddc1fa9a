#include "app/widgets/number_words.h"

#include <algorithm>
#include <array>
#include <cmath>

#include <QCoreApplication>

#include "app/widgets/number_sum.h"
#include "core/units/amount.h"
#include "core/units/tolerances.h"

namespace hither {
namespace {

constexpr double inch = 0.0254;

QString tr(const char* text) { return QCoreApplication::translate("hither::NumberField", text); }

/// SI value of one of the unit that the metric print counts in.
double shownUnit(NumberOf of) {
    if (of == NumberOf::length) return 0.001;
    if (of == NumberOf::angle) return radians(1);
    return 1;
}

/// Decimals that show the value whole, when two more than asked for are enough; else as asked for.
int digitsFor(double value, const NumberForm& form) {
    const double shown = value / shownUnit(form.of);
    for (int more = 0; more <= 2; ++more) {
        const double scale = std::pow(10.0, form.digits + more);
        if (std::abs(std::round(shown * scale) / scale - shown) < 1e-9 * std::max(1.0, std::abs(shown))) return form.digits + more;
    }
    return form.digits;
}

QString plain(double value, int digits) { return QString::number(value == 0 ? 0.0 : value, 'f', digits); }

/// A number without a unit, "%" for ratios and "1/m" for curvatures; `what` is how refusals call it.
Parsed<double> readPlain(QString text, NumberOf of) {
    double scale = 1;
    text = text.trimmed();
    if (of == NumberOf::ratio && text.endsWith('%')) { text.chop(1); scale = 0.01; }
    if (of == NumberOf::perMetre)
        for (const char* unit : {"1/m", "/m", "per metre", "per m"})
            if (text.endsWith(QLatin1String(unit))) { text.chop(static_cast<qsizetype>(qstrlen(unit))); break; }
    static const QuantityKind kind{"number", {}, 1, 1e9, "1000 million", true, false, 0, 0, "", false};
    Parsed<double> read = parseQuantity(text.toStdString(), kind);
    if (read) *read.value *= scale;
    return read;
}

bool bare(const QString& term) {
    return std::none_of(term.begin(), term.end(), [](QChar c) { return c.isLetter() || c == '\'' || c == '"' || c == QChar(0x00B0) || c == QChar(0x2032) || c == QChar(0x2033) || c == QChar(0x2019) || c == QChar(0x201D); });
}

const char* bareUnit(const NumberForm& form) {
    const bool metric = form.units == UnitSystem::metric;
    switch (form.of) {
        case NumberOf::mass: return form.heavy ? (metric ? " kg" : " lb") : (metric ? " g" : " oz");
        case NumberOf::force: return metric ? " N" : " lbf";
        case NumberOf::moment: return metric ? " Nm" : " lbf in";
        default: return "";
    }
}

Parsed<double> readTerm(QString term, const NumberForm& form) {
    if (bare(term) && !term.trimmed().isEmpty()) term += bareUnit(form);
    const std::string text = term.toStdString();
    switch (form.of) {
        case NumberOf::length: return parseLength_m(text, form.units);
        case NumberOf::angle: return parseAngle_rad(text);
        case NumberOf::mass: return parseMass_kg(text);
        case NumberOf::force: return parseForce_N(text);
        case NumberOf::moment: return parseMoment_Nm(text);
        case NumberOf::perMetre: case NumberOf::count: case NumberOf::ratio: break;
    }
    return readPlain(term, form.of);
}

/// The least difference that the print shows.
double resolution(const NumberForm& form) {
    if (form.of == NumberOf::length && form.units == UnitSystem::inch) return inch / 16;
    return shownUnit(form.of) * std::pow(10.0, -form.digits);
}

}  // namespace

QString printNumber(double value, const NumberForm& form) {
    const int digits = digitsFor(value, form);
    switch (form.of) {
        case NumberOf::length: return QString::fromStdString(printLength(value, form.units, digits));
        case NumberOf::angle: return QString::fromStdString(printAngle(value, digits));
        case NumberOf::mass: return QString::fromStdString(printMass(value, form.units));
        case NumberOf::force: return QString::fromStdString(printForce(value, form.units, digits));
        case NumberOf::moment: return QString::fromStdString(printMoment(value, form.units, digits));
        case NumberOf::perMetre: return tr("%1 /m").arg(plain(value, digits));
        case NumberOf::count: return plain(value, 0);
        case NumberOf::ratio: break;
    }
    return plain(value, digits);
}

Parsed<double> readNumber(const QString& typed, const NumberForm& form) {
    const SumTerms sum = splitSum(typed);
    if (!sum.why.isEmpty()) return Parsed<double>::refused(sum.why.toStdString());
    double total = 0;
    for (const SumTerm& term : sum.terms) {
        const Parsed<double> value = readTerm(term.text, form);
        if (!value) return value;
        // The first is taken as it is: what was typed is what is kept, to the last bit.
        total = &term == &sum.terms.front() ? *value.value : term.minus ? total - *value.value : total + *value.value;
    }
    if (form.of == NumberOf::count && total != std::round(total)) return Parsed<double>::refused(tr("a whole number is asked for").toStdString());
    return Parsed<double>::of(total);
}

QString printLimit(double limit, bool upper, const NumberForm& form) {
    const QString text = printNumber(limit, form);
    const Parsed<double> again = readNumber(text, form);
    const double slack = tolerance::limitSlack;
    if (again && (upper ? *again.value <= limit + slack : *again.value >= limit - slack)) return text;
    return printNumber(upper ? limit - resolution(form) : limit + resolution(form), form);
}

double roundStep(double step, const NumberForm& form) {
    if (form.of != NumberOf::length || form.units == UnitSystem::metric) return step;
    static constexpr std::array<double, 6> steps{1.0 / 16, 1.0 / 8, 1.0 / 4, 1.0 / 2, 1, 2};
    const auto off = [step](double s) { return std::abs(std::log(s * inch / step)); };
    return inch * *std::min_element(steps.begin(), steps.end(), [&](double a, double b) { return off(a) < off(b); });
}

}  // namespace hither
