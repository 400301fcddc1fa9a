#pragma once
#include <optional>
#include <string>
#include <vector>

#include "core/catalogue/catalogue.h"

namespace hither {

/// Why two ports do or do not go together.
enum class MateFault { none, interfaceDiffers, genderSame, threadDiffers, patternDiffers, bottoms, tooFewTurns, lengthUnknown };
struct Mate {
    MateFault fault = MateFault::none;
    double engaged_m = 0;     ///< thread: length engaged
    double turns = 0;         ///< thread: engaged / pitch
    bool threaded = false;    ///< gives a clocking freedom
    bool locked = false;      ///< the clocking has a ring or nut
    int clockingSteps = 0;    ///< bolt pattern: it fits in this many turns of 360/steps; 0: any angle or none
    BasisKind basis = BasisKind::measured;
    bool goesTogether() const { return fault == MateFault::none || fault == MateFault::lengthUnknown; }
};
/// Judges an outlet against one base port. A screw longer than its socket bottoms before it
/// clamps; fewer than 3 full turns do not hold.
Mate mate(const Port& outlet, const Port& base);

/// The best of a part's base ports for an outlet (goesTogether first, then most turns), or -1 when it has none.
struct BestMate { int base = -1; Mate mate; };
BestMate mateWith(const Port& outlet, const Part& next);

/// The cheapest chain of at most `atMost` adapters from `outlet` to a base of `next`; empty when
/// none is known. Price unknown counts as dear (after every priced chain), then fewer parts, then id order.
struct AdapterStep { const Part* part = nullptr; bool reversed = false; };
std::vector<AdapterStep> cheapestAdapters(const Port& outlet, const Part& next, const Catalogue& catalogue, int atMost = 3);

}  // namespace hither
