#pragma once
#include <string>

#include "core/catalogue/mating.h"
#include "core/units/quantity.h"

namespace hither {

/// A port in the fewest words that tell it from others: "1/4-20 socket", "2 screws M3, 30 mm apart".
std::string portWords(const Port& port, UnitSystem units);
/// How an outlet and a base go together, or why they do not: "screws on, 4.7 turns". `next` may have no base.
std::string mateWords(const Port& outlet, const Part& next, const BestMate& mate, UnitSystem units);
/// A length as short as it can be said: "8 mm", "4.5 mm", "3/8 in".
std::string lengthWords(double metres, UnitSystem units);

}  // namespace hither
