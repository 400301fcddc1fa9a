#include "core/units/quantity.h"

#include <algorithm>
#include <array>
#include <charconv>
#include <string>

#include "core/units/tokens.h"

namespace hither {
namespace {

// Minor units by ISO 4217 (from memory); every other code has two decimals.
constexpr std::array<std::string_view, 9> noDecimals{"CLP", "ISK", "JPY", "KRW", "PYG", "UGX", "VND", "XAF", "XOF"};
constexpr std::array<std::string_view, 7> threeDecimals{"BHD", "IQD", "JOD", "KWD", "LYD", "OMR", "TND"};
constexpr std::int64_t largestMinor = 1'000'000'000'000'000;

std::string upper(std::string text) {
    for (char& c : text) if (c >= 'a' && c <= 'z') c = static_cast<char>(c - 'a' + 'A');
    return text;
}

}  // namespace

int minorDigits(const std::string& currency) {
    if (std::find(noDecimals.begin(), noDecimals.end(), currency) != noDecimals.end()) return 0;
    if (std::find(threeDecimals.begin(), threeDecimals.end(), currency) != threeDecimals.end()) return 3;
    return 2;
}

Parsed<Money> parseMoney(std::string_view text, const std::string& defaultCurrency) {
    using Result = Parsed<Money>;
    const auto scanned = tokenize(text);
    if (!scanned) return Result::refused(scanned.reason == "there is a character that has no meaning here" || scanned.reason.substr(0, 3) == "\"$\""
                                             ? "there is a character that has no meaning here; write the currency as its three-letter code"
                                             : scanned.reason);
    const std::vector<Token>& tokens = *scanned.value;
    if (tokens.empty()) return Result::refused("nothing was typed");
    const Token* number = nullptr;
    std::string currency;
    for (const Token& token : tokens) {
        if (token.kind == Token::Kind::number && number == nullptr) number = &token;
        else if (token.kind == Token::Kind::number) return Result::refused("there is more than one number; thousands are written without a separator");
        else if (token.kind == Token::Kind::minus) return Result::refused("a price cannot be negative");
        else if (token.kind == Token::Kind::word && token.text.size() == 3 && currency.empty()) currency = upper(token.text);
        else if (token.kind == Token::Kind::word) return Result::refused(quoted(token.text) + " is not one three-letter currency code");
        else return Result::refused(quoted(token.text) + " has no meaning in a price");
    }
    if (number == nullptr) return Result::refused("there is no number");
    if (currency.empty()) currency = defaultCurrency;
    const int digits = minorDigits(currency);
    const std::size_t point = number->text.find('.');
    std::string minor = number->text.substr(0, point);
    std::string decimals = point == std::string::npos ? "" : number->text.substr(point + 1);
    if (decimals.size() > static_cast<std::size_t>(digits))
        return Result::refused(std::string("a price in ") + currency + " has at most " + std::to_string(digits) + " decimals, and thousands have no separator");
    decimals.resize(static_cast<std::size_t>(digits), '0');
    minor += decimals;
    std::int64_t value = 0;
    const auto [end, error] = std::from_chars(minor.data(), minor.data() + minor.size(), value);
    if (error != std::errc{} || value > largestMinor) return Result::refused("that is more than any price");
    return Result::of({value, currency});
}

std::string printAmount(const Money& money) {
    const int digits = minorDigits(money.currency);
    std::string text = std::to_string(money.minor);
    const bool negative = text.front() == '-';
    if (negative) text.erase(0, 1);
    if (digits > 0) {
        const auto least = static_cast<std::size_t>(digits) + 1;
        if (text.size() < least) text.insert(0, least - text.size(), '0');
        text.insert(text.size() - static_cast<std::size_t>(digits), ".");
    }
    return (negative ? "-" : "") + text;
}

std::string printMoney(const Money& money) { return printAmount(money) + " " + money.currency; }

}  // namespace hither
