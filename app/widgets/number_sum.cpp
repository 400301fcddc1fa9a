#include "app/widgets/number_sum.h"

#include <QCoreApplication>

namespace hither {
namespace {

constexpr std::size_t mostTerms = 20;

QString tr(const char* text) { return QCoreApplication::translate("hither::NumberField", text); }
bool isFraction(QChar c) { return (c >= QChar(0x00BC) && c <= QChar(0x00BE)) || (c >= QChar(0x215B) && c <= QChar(0x215E)); }
bool isSlash(QChar c) { return c == '/' || c == QChar(0x2044); }

/// "1/2" or a one-character fraction begins at `at`.
bool fractionAt(const QString& text, qsizetype at) {
    if (at < text.size() && isFraction(text[at])) return true;
    qsizetype i = at;
    while (i < text.size() && text[i].isDigit()) ++i;
    return i > at && i < text.size() && isSlash(text[i]);
}

/// What stands before the hyphen ends in a whole number without a unit: "2 1" of "2 1-1/2" or "1".
bool wholeNumberBefore(const QString& term) {
    qsizetype i = term.size();
    while (i > 0 && term[i - 1].isDigit()) --i;
    return i < term.size() && (i == 0 || term[i - 1].isSpace() || term[i - 1] == '-' || term[i - 1] == '+');
}

bool endsInFeet(const QString& term) {
    const QString end = term.trimmed().toLower();
    const bool inchMark = end.endsWith("''");
    return !inchMark && (end.endsWith('\'') || end.endsWith(QChar(0x2032)) || end.endsWith(QChar(0x2019)) || end.endsWith("ft") || end.endsWith("feet") || end.endsWith("foot"));
}

}  // namespace

SumTerms splitSum(const QString& typed) {
    QString text = typed;
    text.replace(QChar(0x2212), '-').replace(QChar(0x2011), '-');
    SumTerms out;
    SumTerm term;
    bool content = false;
    for (qsizetype i = 0; i < text.size(); ++i) {
        const QChar c = text[i];
        const bool touches = i > 0 && i + 1 < text.size() && !text[i - 1].isSpace() && !text[i + 1].isSpace();
        const bool sign = content && (c == '+' || c == '-');
        const bool joins = c == '-' && touches && fractionAt(text, i + 1) && wholeNumberBefore(term.text);
        if (!sign || joins) {
            term.text += c;
            content = content || !(c.isSpace() || c == '+' || c == '-');
            continue;
        }
        if (c == '-' && touches && endsInFeet(term.text))
            return {{}, tr("write feet and inches without a hyphen (2 ft 3 in), or put spaces round the minus")};
        out.terms.push_back(term);
        term = {QString(), c == '-'};
        content = false;
    }
    if (!out.terms.empty() && !content) return {{}, term.minus ? tr("there is nothing after the minus") : tr("there is nothing after the plus")};
    out.terms.push_back(term);
    if (out.terms.size() > mostTerms) return {{}, tr("the sum is too long")};
    return out;
}

}  // namespace hither
