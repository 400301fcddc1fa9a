#pragma once
#include <string>
#include <vector>

#include <nlohmann/json_fwd.hpp>

#include "core/plan/plan.h"

namespace hither {

/// What has to be at hand to build some of a plan's options: one row a kind of part, counted over
/// every mount, then the plan's extra items.
struct PartsRow {
    std::string id, name;
    std::optional<PartKind> kind;        ///< empty: an extra item
    int count = 0;
    std::optional<Money> each, total;    ///< empty: no price is known
    Basis priceBasis{BasisKind::unknown, {}};
    std::vector<std::string> tools;
    std::vector<std::string> usedIn;     ///< "option/mount", in plan order
    std::string whereToBuy, notes;
};
struct PartsList {
    std::vector<std::string> options;    ///< the options it is for, by id
    std::vector<PartsRow> rows;          ///< in the order support to switch, then by name; extra items last
    std::vector<Money> totals;           ///< of the priced rows, one a currency, by code
    std::vector<std::string> notPriced;  ///< names of the rows that no total holds
    std::vector<std::string> toolsNeeded;///< each once, in alphabetical order
    BasisKind priceBasis = BasisKind::measured;  ///< the weakest price in the totals; unknown when something has no price
};

/// How several options share parts: they are built one after the other with the same parts (the most
/// that any of them needs), or stand at the same time (the sum).
enum class BuiltAs { oneAtATime, allAtOnce };

/// For one option, for some, or for all of them (`options` empty). Ids that are not there are left out.
PartsList partsList(const Plan& plan, const std::vector<std::string>& options = {}, BuiltAs builtAs = BuiltAs::oneAtATime);

/// RFC 4180 with a header line; numbers with a decimal point. No cell can become a formula in a
/// spreadsheet: text whose first character could start one gets an apostrophe before it, also where
/// a program that splits at semicolons or tabs would see a new cell begin.
std::string partsListCsv(const PartsList& list);
nlohmann::json partsListJson(const PartsList& list);

/// The text as one CSV cell, made harmless as above and quoted where needed.
std::string csvText(const std::string& text);

}  // namespace hither
