#pragma once
#include <string>
#include <string_view>
#include <vector>

#include "core/units/parsed.h"

namespace hither {

/// One piece of what a person typed. Spelling variants are made one: the primes (U+2032, U+2033),
/// typographic quotes and two apostrophes count as ' and ", U+2212 as a minus, the one-character
/// fractions from 1/8 to 7/8 as a fraction.
struct Token {
    enum class Kind { number, fraction, word, slash, minus, plus, dot, degree, times, hash };
    Kind kind = Kind::word;
    std::string text;          ///< number: digits with at most one '.'; word: lower case, or ' or "
    double value = 0;          ///< number, fraction
    bool whole = false;        ///< number without a decimal sign
    bool spaceBefore = false;
};

/// Splits typed text (UTF-8) into tokens. Refused: bytes that are no text, characters that mean
/// nothing here, more than one decimal sign in a number, a number beyond double.
Parsed<std::vector<Token>> tokenize(std::string_view text);

/// `"abc"` for a sentence: cut after a few characters, anything but plain ASCII left out.
std::string quoted(std::string_view text);

}  // namespace hither
