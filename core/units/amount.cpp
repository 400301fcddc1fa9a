#include "core/units/amount.h"

#include <algorithm>
#include <cmath>

namespace hither {
namespace {

using Kind = Token::Kind;

bool isA(const std::vector<Token>& tokens, std::size_t at, Kind kind) { return at < tokens.size() && tokens[at].kind == kind; }

std::string named(const Token& token) { return token.kind == Kind::degree ? "a degree sign" : quoted(token.text); }

/// "3 / 4" at `at`, or a one-character fraction; `at` moves only when there is one.
Parsed<double> readFraction(const std::vector<Token>& tokens, std::size_t& at) {
    if (isA(tokens, at, Kind::fraction)) return Parsed<double>::of(tokens[at++].value);
    const Token& above = tokens[at];
    const Token& below = tokens[at + 2];
    if (!above.whole || !below.whole) return Parsed<double>::refused("a fraction is made of two whole numbers");
    if (below.value == 0) return Parsed<double>::refused("the lower number of the fraction is zero");
    at += 3;
    return Parsed<double>::of(above.value / below.value);
}
bool fractionAt(const std::vector<Token>& tokens, std::size_t at) {
    return isA(tokens, at, Kind::fraction) || (isA(tokens, at, Kind::number) && isA(tokens, at + 1, Kind::slash) && isA(tokens, at + 2, Kind::number));
}

}  // namespace

Parsed<Amount> readAmount(const std::vector<Token>& tokens, std::size_t& at) {
    using Result = Parsed<Amount>;
    if (at >= tokens.size()) return Result::refused("there is no number");
    if (fractionAt(tokens, at)) {
        const auto f = readFraction(tokens, at);
        if (!f) return Result::refused(f.reason);
        return Result::of({*f.value, false});
    }
    if (!isA(tokens, at, Kind::number)) return Result::refused("there is " + named(tokens[at]) + " where a number should be");
    const Token& number = tokens[at];
    if (isA(tokens, at + 1, Kind::slash)) return Result::refused("the fraction has no lower number");
    ++at;
    // "1-1/2": the hyphen joins only when it touches both; "1 -1/2" could be a difference.
    const bool joined = isA(tokens, at, Kind::minus) && !tokens[at].spaceBefore && at + 1 < tokens.size() && !tokens[at + 1].spaceBefore && fractionAt(tokens, at + 1);
    std::size_t next = joined ? at + 1 : at;
    if (!fractionAt(tokens, next)) return Result::of({number.value, number.whole});
    if (!number.whole) return Result::refused("a decimal number and a fraction stand together");
    const auto f = readFraction(tokens, next);
    if (!f) return Result::refused(f.reason);
    if (*f.value >= 1) return Result::refused("the fraction after a whole number must be less than one");
    at = next;
    return Result::of({number.value + *f.value, false});
}

Parsed<double> parseQuantity(std::string_view text, const QuantityKind& kind) {
    using Result = Parsed<double>;
    const auto scanned = tokenize(text);
    if (!scanned) return Result::refused(scanned.reason);
    const std::vector<Token>& tokens = *scanned.value;
    const std::string what(kind.what);
    if (tokens.empty()) return Result::refused("nothing was typed");

    std::size_t at = 0;
    double sign = 1;
    if (tokens[0].kind == Kind::minus || tokens[0].kind == Kind::plus) {
        if (tokens.size() == 1) return Result::refused("there is a sign but no number");
        sign = tokens[0].kind == Kind::minus ? -1 : 1;
        at = 1;
    }
    if (tokens[at].kind == Kind::word && (tokens[at].text == "nan" || tokens[at].text == "inf" || tokens[at].text == "infinity"))
        return Result::refused(quoted(tokens[at].text) + " is not a number that can be used");
    if (tokens[at].kind == Kind::word || tokens[at].kind == Kind::degree) return Result::refused("there is no number before " + named(tokens[at]));

    struct Term { Amount amount; double si; bool bare; };
    std::vector<Term> terms;
    while (at < tokens.size()) {
        if (!terms.empty() && (tokens[at].kind == Kind::minus || tokens[at].kind == Kind::plus))
            return Result::refused("a sign can stand only at the front");
        const auto amount = readAmount(tokens, at);
        if (!amount) return Result::refused(terms.empty() ? amount.reason : amount.reason + " after the " + what);
        if (at < tokens.size() && (tokens[at].kind == Kind::number || tokens[at].kind == Kind::fraction))
            return Result::refused("two numbers stand side by side; thousands are written without a space");
        std::string unit;
        if (at < tokens.size() && (tokens[at].kind == Kind::word || tokens[at].kind == Kind::degree)) {
            unit = tokens[at++].text;
            while (kind.unitsOfSeveralWords && at < tokens.size()) {
                const std::size_t word = tokens[at].kind == Kind::dot ? at + 1 : at;
                if (!isA(tokens, word, Kind::word)) break;
                unit += tokens[word].text;
                at = word + 1;
            }
        }
        if (unit.empty()) {
            terms.push_back({*amount.value, kind.bare, true});
        } else {
            const auto known = std::find_if(kind.units.begin(), kind.units.end(), [&](const UnitName& u) { return u.name == unit; });
            if (known == kind.units.end()) return Result::refused(quoted(unit) + " is not a unit of " + what);
            terms.push_back({*amount.value, known->si, false});
        }
    }
    double value = 0;
    if (terms.size() == 1) {
        // 9 mm is the double nearest to 0.009, as in the files: a thousandth is divided by, not multiplied with.
        const double parts = std::round(1.0 / terms[0].si);
        value = terms[0].si < 1.0 && terms[0].si * parts == 1.0 ? terms[0].amount.value / parts : terms[0].amount.value * terms[0].si;
    } else {
        const bool two = terms.size() == 2 && kind.compoundFirst > 0 && !terms[0].bare && terms[0].si == kind.compoundFirst &&
                         (terms[1].bare ? kind.compoundSecondMayBeBare : terms[1].si == kind.compoundSecond);
        if (!two)
            return Result::refused(kind.compoundFirst > 0 ? "only " + std::string(kind.compoundWords) + " can stand together in one " + what : "there is more than one " + what);
        if (!terms[0].amount.whole) return Result::refused("in " + std::string(kind.compoundWords) + " the first must be a whole number");
        value = terms[0].amount.value * kind.compoundFirst + terms[1].amount.value * kind.compoundSecond;
    }
    value *= sign;
    if (!std::isfinite(value) || std::abs(value) > kind.largest) return Result::refused("that is more than " + std::string(kind.largestWords));
    if (value < 0 && !kind.mayBeNegative) return Result::refused("a " + what + " cannot be negative");
    return Result::of(value == 0 ? 0.0 : value);
}

}  // namespace hither
