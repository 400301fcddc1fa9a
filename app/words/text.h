#pragma once
#include <string>

namespace hither {

/// Breaks a line of UTF-8 at spaces so that none is wider than `width` columns (where a word allows);
/// the lines after the first begin with `indent`. No newline at the end.
std::string wrapped(const std::string& line, const std::string& indent, std::size_t width);

/// Columns that UTF-8 text takes, counting one for each code point.
std::size_t columns(const std::string& text);
/// The text with spaces behind it until it is `width` columns wide.
std::string padded(const std::string& text, std::size_t width);
/// The text with spaces before it.
std::string rightAligned(const std::string& text, std::size_t width);

}  // namespace hither
