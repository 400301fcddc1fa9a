#include "core/storage/exact_number.h"

#include <array>
#include <charconv>
#include <cmath>
#include <cstdlib>

#include "core/units/quantity.h"

namespace hither {
namespace {

constexpr long double radiansPerDegree = 3.14159265358979323846264338327950288L / 180.0L;

/// Digits from the first that is not zero to the last that is not zero.
int significantDigits(std::string_view text) {
    int count = 0, zeros = 0;
    for (char c : text) {
        if (c == 'e' || c == 'E') break;
        if (c < '0' || c > '9') continue;
        if (c == '0') {
            if (count > 0) ++zeros;
        } else {
            count += zeros + 1;
            zeros = 0;
        }
    }
    return count;
}

template <class T>
std::optional<T> parse(std::string_view text) {
    T value{};
    const auto [end, fault] = std::from_chars(text.data(), text.data() + text.size(), value);
    if (end != text.data() + text.size()) return std::nullopt;
    if (fault == std::errc::result_out_of_range) {
        // Too small for a double is zero; too large is refused. The exponent's sign tells which.
        const std::size_t e = text.find_first_of("eE");
        if (e != std::string_view::npos && e + 1 < text.size() && text[e + 1] == '-') return T{0};
        return text.find('.') != std::string_view::npos && text.find_first_not_of("-0.") != std::string_view::npos &&
                       text.substr(0, text.find('.')).find_first_not_of("-0") == std::string_view::npos
                   ? std::optional<T>(T{0}) : std::nullopt;
    }
    if (fault != std::errc{} || !std::isfinite(value)) return std::nullopt;
    return value;
}

/// -?digits(.digits)?([eE][+-]?digits)?
bool isNumber(std::string_view text) {
    std::size_t i = 0;
    const auto digits = [&] {
        const std::size_t from = i;
        while (i < text.size() && text[i] >= '0' && text[i] <= '9') ++i;
        return i > from;
    };
    if (i < text.size() && text[i] == '-') ++i;
    if (!digits()) return false;
    if (i < text.size() && text[i] == '.') {
        ++i;
        if (!digits()) return false;
    }
    if (i < text.size() && (text[i] == 'e' || text[i] == 'E')) {
        ++i;
        if (i < text.size() && (text[i] == '+' || text[i] == '-')) ++i;
        if (!digits()) return false;
    }
    return i == text.size();
}

/// The same number with its decimal exponent changed by `shift`.
std::optional<std::string> shifted(std::string_view text, int shift) {
    const std::size_t e = text.find_first_of("eE");
    long exponent = 0;
    if (e != std::string_view::npos) {
        std::string_view digits = text.substr(e + 1);
        if (!digits.empty() && digits[0] == '+') digits.remove_prefix(1);
        const auto [end, fault] = std::from_chars(digits.data(), digits.data() + digits.size(), exponent);
        if (fault != std::errc{} || end != digits.data() + digits.size() || std::labs(exponent) > 100000) return std::nullopt;
    }
    return std::string(text.substr(0, e)) + "e" + std::to_string(exponent + shift);
}

/// Plain decimal digits ("212.5", "0.0004") where that is not longer than people can read.
std::string plain(std::string_view scientific) {
    const bool negative = scientific[0] == '-';
    if (negative) scientific.remove_prefix(1);
    const std::size_t e = scientific.find('e');
    std::string digits(scientific.substr(0, e));
    int exponent = 0;
    if (e != std::string_view::npos) exponent = std::atoi(std::string(scientific.substr(e + 1)).c_str());
    if (digits.size() > 1) digits.erase(1, 1);  // the point after the first digit
    while (digits.size() > 1 && digits.back() == '0') digits.pop_back();
    const int count = static_cast<int>(digits.size());
    std::string out;
    if (exponent >= count - 1 && exponent <= 17) {
        out = digits + std::string(static_cast<std::size_t>(exponent - count + 1), '0');
    } else if (exponent >= 0 && exponent < count - 1) {
        out = digits.substr(0, static_cast<std::size_t>(exponent + 1)) + "." + digits.substr(static_cast<std::size_t>(exponent + 1));
    } else if (exponent < 0 && exponent >= -6) {
        out = "0." + std::string(static_cast<std::size_t>(-exponent - 1), '0') + digits;
    } else {
        out = digits.substr(0, 1) + (count > 1 ? "." + digits.substr(1) : "") + "e" + std::to_string(exponent);
    }
    return negative ? "-" + out : out;
}

}  // namespace

std::optional<double> siFromText(std::string_view text, Scale scale) {
    if (text.size() > 400 || !isNumber(text)) return std::nullopt;
    std::optional<double> value;
    if (scale == Scale::one) {
        value = parse<double>(text);
    } else if (significantDigits(text) <= 15) {
        if (const std::optional<double> v = parse<double>(text)) value = scale == Scale::milli ? *v / 1000.0 : radians(*v);
    } else if (scale == Scale::milli) {
        if (const std::optional<std::string> moved = shifted(text, -3)) value = parse<double>(*moved);
    } else if (const std::optional<long double> deg = parse<long double>(text)) {
        value = static_cast<double>(*deg * radiansPerDegree);
    }
    if (!value || !std::isfinite(*value)) return std::nullopt;
    return *value == 0.0 ? 0.0 : *value;
}

std::string textFromSi(double si, Scale scale) {
    if (si == 0.0) return "0";
    std::array<char, 64> buffer{};
    char* const first = buffer.data();
    char* const last = first + buffer.size();
    const auto scientific = [&](auto value, auto... digits) {
        return std::string(first, std::to_chars(first, last, value, std::chars_format::scientific, digits...).ptr);
    };
    if (scale == Scale::one) return plain(scientific(si));
    // Most lengths and angles come from a few digits; the others need more, at worst 17 or 21.
    const long double unit = scale == Scale::milli ? 1e-3L : radiansPerDegree;
    const long double value = static_cast<long double>(si) / unit;
    for (int digits = 0; digits < 15; ++digits) {
        const std::string text = plain(scientific(value, digits));
        if (siFromText(text, scale) == si) return text;
    }
    const auto longer = [&](int digits) {
        return scale == Scale::milli ? plain(shifted(scientific(si, digits), 3).value_or("0")) : plain(scientific(value, digits));
    };
    for (int digits = 15; digits < 21; ++digits)
        if (const std::string text = longer(digits); siFromText(text, scale) == si) return text;
    return longer(21);
}

}  // namespace hither
