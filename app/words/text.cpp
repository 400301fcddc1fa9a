#include "app/words/text.h"

namespace hither {

std::size_t columns(const std::string& text) {
    std::size_t n = 0;
    for (const char c : text) if ((static_cast<unsigned char>(c) & 0xC0u) != 0x80u) ++n;
    return n;
}

std::string padded(const std::string& text, std::size_t width) {
    const std::size_t n = columns(text);
    return n < width ? text + std::string(width - n, ' ') : text;
}

std::string rightAligned(const std::string& text, std::size_t width) {
    const std::size_t n = columns(text);
    return n < width ? std::string(width - n, ' ') + text : text;
}

std::string wrapped(const std::string& line, const std::string& indent, std::size_t width) {
    std::string out, current;
    std::size_t start = line.find_first_not_of(' ');
    if (start == std::string::npos) return line;
    current = line.substr(0, start);
    bool empty = true;
    while (start < line.size()) {
        std::size_t end = line.find(' ', start);
        if (end == std::string::npos) end = line.size();
        const std::string next = line.substr(start, end - start);
        // Runs of spaces inside the first line's head (columns) are kept.
        std::size_t after = line.find_first_not_of(' ', end);
        if (after == std::string::npos) after = line.size();
        if (!empty && columns(current) + columns(next) > width) {
            out += current.substr(0, current.find_last_not_of(' ') + 1) + "\n";
            current = indent;
        }
        current += next + std::string(after - end, ' ');
        empty = false;
        start = after;
    }
    return out + current.substr(0, current.find_last_not_of(' ') + 1);
}

}  // namespace hither
