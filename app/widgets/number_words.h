#pragma once
#include <optional>

#include <QString>

#include "core/units/quantity.h"

namespace hither {

/// What a number is of, and with that its units, its print and how it is read.
enum class NumberOf { length, angle, mass, force, moment, perMetre, count, ratio };

/// How one number field reads and prints.
struct NumberForm {
    NumberOf of = NumberOf::length;
    UnitSystem units = UnitSystem::metric;
    int digits = 0;             ///< decimals of the metric print; up to two more where the value is exactly that
    bool heavy = false;         ///< mass: a bare number is kg or lb, not g or oz
};

/// SI -> what the field shows.
QString printNumber(double value, const NumberForm& form);
/// Typed text, a sum of terms each with or without a unit -> SI, or one clause saying why not.
Parsed<double> readNumber(const QString& typed, const NumberForm& form);
/// The print of a limit, moved inward by one place when rounding had moved it out: it can be typed.
QString printLimit(double limit, bool upper, const NumberForm& form);
/// A step of about `step` that is a round number in the units shown (1/16 in, 1/4 in ...).
double roundStep(double step, const NumberForm& form);

}  // namespace hither
