#include "core/catalogue/json_text.h"

#include <fstream>
#include <set>
#include <vector>

namespace hither {

using nlohmann::json;

namespace {

std::string place(std::string_view text, std::size_t byte) {
    std::size_t line = 1, column = 1;
    for (std::size_t i = 0; i < byte && i < text.size(); ++i) {
        if (text[i] == '\n') { ++line; column = 1; }
        else if ((static_cast<unsigned char>(text[i]) & 0xC0u) != 0x80u) ++column;  // counts letters, not bytes
    }
    return "line " + std::to_string(line) + ", column " + std::to_string(column);
}

/// Byte at which the brackets become too deep.
std::optional<std::size_t> tooDeepAt(std::string_view text) {
    int depth = 0;
    bool inText = false;
    for (std::size_t i = 0; i < text.size(); ++i) {
        const char c = text[i];
        if (inText) {
            if (c == '\\') ++i;
            else if (c == '"') inText = false;
        } else if (c == '"') inText = true;
        else if (c == '{' || c == '[') {
            if (++depth > deepestJson) return i;
        } else if (c == '}' || c == ']') --depth;
    }
    return std::nullopt;
}

/// What the JSON library says after its own code and place.
std::string clause(const std::string& what) {
    const auto column = what.find(", column ");
    auto from = column == std::string::npos ? what.find("] ") : what.find(": ", column);
    from = from == std::string::npos ? 0 : from + 2;
    return what.substr(from);
}

}  // namespace

JsonRead parseJson(std::string_view text, std::size_t largest) {
    if (text.size() > largest) return {std::nullopt, "larger than " + std::to_string(largest >> 20) + " MB"};
    if (text.find_first_not_of(" \t\r\n") == std::string_view::npos) return {std::nullopt, "empty: no JSON in it"};
    if (const auto byte = tooDeepAt(text))
        return {std::nullopt, place(text, *byte) + ": more than " + std::to_string(deepestJson) + " brackets inside each other"};
    std::vector<std::set<std::string>> keys;
    std::string twice;
    const auto watch = [&](int, json::parse_event_t event, json& parsed) {
        if (event == json::parse_event_t::object_start) keys.emplace_back();
        if (event == json::parse_event_t::object_end && !keys.empty()) keys.pop_back();
        if (event == json::parse_event_t::key && !keys.empty()) {
            const std::string& key = parsed.get_ref<const std::string&>();
            if (!keys.back().insert(key).second && twice.empty()) twice = key.substr(0, 60);
        }
        return true;
    };
    try {
        json value = json::parse(text, watch);
        if (!twice.empty()) return {std::nullopt, "the key \"" + twice + "\" stands twice in one object"};
        return {std::move(value), {}};
    } catch (const json::parse_error& error) {
        const std::size_t byte = error.byte > 0 ? error.byte - 1 : 0;
        return {std::nullopt, place(text, byte) + ": not JSON: " + clause(error.what())};
    } catch (const json::exception& error) {  // a number beyond all range has no place of its own
        return {std::nullopt, "not JSON: " + clause(error.what())};
    }
}

JsonRead readJsonFile(const std::filesystem::path& file, std::size_t largest) {
    std::error_code error;
    const auto status = std::filesystem::status(file, error);
    if (error || !std::filesystem::exists(status)) return {std::nullopt, "no such file"};
    if (!std::filesystem::is_regular_file(status)) return {std::nullopt, "not a file with text"};
    const auto size = std::filesystem::file_size(file, error);
    if (error) return {std::nullopt, "cannot be opened"};
    if (size > largest) return {std::nullopt, "larger than " + std::to_string(largest >> 20) + " MB"};
    std::ifstream in(file, std::ios::binary);
    if (!in) return {std::nullopt, "cannot be opened"};
    std::string text(static_cast<std::size_t>(size) + 1, '\0');  // one more, to see a file that grew
    in.read(text.data(), static_cast<std::streamsize>(text.size()));
    text.resize(static_cast<std::size_t>(in.gcount()));
    if (in.bad()) return {std::nullopt, "cannot be read to its end"};
    return parseJson(text, largest);
}

}  // namespace hither
