#pragma once
#include <cstddef>
#include <string>
#include <string_view>
#include <vector>

#include "core/units/tokens.h"

namespace hither {

/// A number as a person writes it: "0,75", "3/4", "1 1/2", "1-1/2".
struct Amount { double value = 0; bool whole = false; };

/// Reads an amount at `at` and moves past it.
Parsed<Amount> readAmount(const std::vector<Token>& tokens, std::size_t& at);

/// One name of a unit and how many SI units it is.
struct UnitName { std::string_view name; double si; };
/// What one kind of quantity accepts.
struct QuantityKind {
    std::string_view what;               ///< "length": for reasons
    std::vector<UnitName> units;         ///< lower case
    double bare = 1;                     ///< SI value of 1 without a unit
    double largest = 1;                  ///< SI; beyond it the text is refused
    std::string_view largestWords;       ///< "1 km"
    bool mayBeNegative = true;
    bool unitsOfSeveralWords = false;    ///< "lbf ft", "N·m": words and dots are joined
    /// Units that may follow one another in one quantity ("ft" then "in"), by SI value; 0: none.
    double compoundFirst = 0, compoundSecond = 0;
    std::string_view compoundWords;      ///< "feet and inches"
    bool compoundSecondMayBeBare = false;///< 2'3
};
Parsed<double> parseQuantity(std::string_view text, const QuantityKind& kind);

}  // namespace hither
