#pragma once
#include <vector>

#include <QString>

namespace hither {

/// One term of a typed sum and whether it is taken away.
struct SumTerm { QString text; bool minus = false; };
struct SumTerms { std::vector<SumTerm> terms; QString why; };

/// Splits "430 + 12 mm - 1/2 in" at the plus and minus signs between its terms. A sign at the front of a
/// term stays with it ("5 - -3"), a hyphen that joins a whole number with its fraction is no sign
/// ("1-1/2 in"). Refused in words: a sign with nothing after it, and a hyphen between feet and inches,
/// which some read as "and" and some as "less".
SumTerms splitSum(const QString& typed);

}  // namespace hither
