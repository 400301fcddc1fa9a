#include "core/units/thread.h"

#include <algorithm>
#include <array>
#include <optional>

#include "core/units/amount.h"
#include "core/units/quantity.h"

namespace hither {
namespace {

/// Outside diameters in inches by trade size. Pipe: ASME B36.10M / ASTM D1785 (the same outside);
/// conduit: ANSI C80.3. `dn`: the metric name of the same pipe (ISO 6708).
struct TubeRow { double trade; const char* words; double pipe, conduit; int dn; };
constexpr std::array<TubeRow, 11> rows{{
    {0.125, "1/8", 0.405, 0, 6},      {0.25, "1/4", 0.540, 0, 8},      {0.375, "3/8", 0.675, 0, 10},
    {0.5, "1/2", 0.840, 0.706, 15},   {0.75, "3/4", 1.050, 0.922, 20}, {1.0, "1", 1.315, 1.163, 25},
    {1.25, "1 1/4", 1.660, 1.510, 32},{1.5, "1 1/2", 1.900, 1.740, 40},{2.0, "2", 2.375, 2.197, 50},
    {2.5, "2 1/2", 2.875, 0, 65},     {3.0, "3", 3.500, 0, 80},
}};
constexpr double inch = 0.0254;
constexpr double largestTube_m = 0.5;

const TubeRow* rowOf(double trade) {
    const auto row = std::find_if(rows.begin(), rows.end(), [&](const TubeRow& r) { return r.trade == trade; });
    return row == rows.end() ? nullptr : &*row;
}

std::string trimmed(std::string_view text) {
    const auto first = text.find_first_not_of(" \t\r\n");
    if (first == std::string_view::npos) return {};
    return std::string(text.substr(first, text.find_last_not_of(" \t\r\n") - first + 1));
}

/// A bare size may be a pipe, a conduit or a tube by its outside: which they could be, with sizes.
std::string whichTube(double value, const std::string& typed) {
    const TubeRow* row = rowOf(value);
    if (row == nullptr) return quoted(typed) + " has no unit; write " + typed + " mm or " + typed + " in for a tube measured across the outside";
    std::string text = quoted(typed) + " alone can be pipe NPS " + row->words + " (" + printLength(row->pipe * inch, UnitSystem::metric, 2) + " outside)";
    if (row->conduit > 0) text += ", conduit EMT " + std::string(row->words) + " (" + printLength(row->conduit * inch, UnitSystem::metric, 2) + ")";
    return text + " or tube " + row->words + " in (" + printLength(value * inch, UnitSystem::metric, 2) + "); write which";
}

}  // namespace

Parsed<TubeSize> parseTube(std::string_view text) {
    using Result = Parsed<TubeSize>;
    using Kind = Token::Kind;
    const auto scanned = tokenize(text);
    if (!scanned) return Result::refused(scanned.reason);
    std::vector<Token> tokens = *scanned.value;
    const std::string typed = trimmed(text);
    if (tokens.empty()) return Result::refused("nothing was typed");

    // The kind of tube may stand before or after the size.
    enum class Named { none, pipe, conduit, metricPipe, tube } named = Named::none;
    std::vector<Token> size;
    for (const Token& token : tokens) {
        Named kind = Named::none;
        if (token.kind == Kind::word) {
            if (token.text == "nps" || token.text == "pipe") kind = Named::pipe;
            else if (token.text == "emt" || token.text == "conduit") kind = Named::conduit;
            else if (token.text == "dn") kind = Named::metricPipe;
            else if (token.text == "tube" || token.text == "od") kind = Named::tube;
        }
        if (kind == Named::none) { size.push_back(token); continue; }
        if (named != Named::none && named != kind) return Result::refused("it is named as two kinds of tube");
        named = kind;
    }

    if (named == Named::none || named == Named::tube) {
        std::size_t at = 0;
        const auto bare = readAmount(size, at);
        if (!size.empty() && bare && at == size.size()) return Result::refused(named == Named::none ? whichTube(bare.value->value, typed) : "the tube's size has no unit; write mm or in");
        // Only the words that name the kind are left out of what is read as a length.
        std::string length;
        for (const Token& token : size) length += (token.spaceBefore ? " " : "") + (token.kind == Kind::fraction ? " " + token.text : token.text);
        const auto outside = parseLength_m(length);
        if (!outside) return Result::refused(outside.reason);
        if (*outside.value <= 0) return Result::refused("the outside of a tube must be more than zero");
        if (*outside.value > largestTube_m) return Result::refused("that is more than 500 mm across: not a tube that a clamp goes on");
        return Result::of({typed, *outside.value});
    }

    // A trade size is a name, not a measure: an inch mark after it is usual ("3/4 in pipe"), mm is not.
    if (size.size() > 1 && size.back().kind == Kind::word && (size.back().text == "in" || size.back().text == "\"" || size.back().text == "inch")) size.pop_back();
    std::size_t at = 0;
    const auto trade = readAmount(size, at);
    if (!trade) return Result::refused(trade.reason);
    if (at < size.size()) return Result::refused(quoted(size[at].text) + " does not belong to a trade size");
    const auto known = std::find_if(rows.begin(), rows.end(), [&](const TubeRow& r) {
        return named == Named::metricPipe ? r.dn == trade.value->value : r.trade == trade.value->value && (named == Named::pipe || r.conduit > 0);
    });
    if (known == rows.end()) return Result::refused("there is no such trade size among those known here");
    return Result::of({typed, (named == Named::conduit ? known->conduit : known->pipe) * inch});
}

}  // namespace hither
