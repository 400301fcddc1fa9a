#pragma once
#include <optional>
#include <string>
#include <string_view>

namespace hither {

/// What one unit of a number in the JSON form is in SI: 1 (N, N·m, 1/m, kg ...), 1e-3 (mm, g) or
/// pi/180 (degrees).
enum class Scale { one, milli, degree };

/// A decimal number as written -> SI. Numbers of up to 15 digits are divided by 1000 or multiplied as
/// `radians` does, like numbers typed by a person; longer ones are converted without rounding twice
/// (the decimal point shifted, or in extended precision), so that every double has a text that
/// reads back to it. Null when the text is no JSON number or does not fit a double.
std::optional<double> siFromText(std::string_view text, Scale scale);

/// The shortest text (17 digits at most for 1 and 1e-3, 21 for degrees) that `siFromText` reads back
/// as the very same value. The value must be finite. Zero has no sign. Locale plays no part.
std::string textFromSi(double si, Scale scale);

}  // namespace hither
