#pragma once
#include <optional>
#include <string>

namespace hither {

/// How far a figure about a part can be trusted, strongest first, so that the weakest of
/// several is their maximum. `unknown` means that the figure itself is missing.
enum class BasisKind { measured, published, assumed, unknown };

/// Where a figure comes from. `source` says who measured it and when ("KL, 2026-05-01") or
/// names the publication; it is empty for an assumed figure.
struct Basis {
    BasisKind kind = BasisKind::assumed;
    std::string source;
    bool operator==(const Basis&) const = default;
};

/// One figure about a part in SI units, or its absence. A missing value always has the
/// basis `unknown`; zero is a value like any other.
struct Figure {
    std::optional<double> value;
    Basis basis{BasisKind::unknown, {}};

    bool known() const { return value.has_value(); }
    bool operator==(const Figure&) const = default;
};

inline BasisKind weakest(BasisKind a, BasisKind b) { return a < b ? b : a; }

/// "measured", "published", "assumed", "unknown": the words used in files and on screen.
const char* word(BasisKind kind);
std::optional<BasisKind> basisFromWord(const std::string& text);

}  // namespace hither
