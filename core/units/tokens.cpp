#include "core/units/tokens.h"

#include <algorithm>
#include <array>
#include <charconv>

namespace hither {
namespace {

constexpr std::size_t longestText = 1000;

bool isDigit(char c) { return c >= '0' && c <= '9'; }
bool isLetter(char c) { return (c >= 'a' && c <= 'z') || (c >= 'A' && c <= 'Z'); }
char lower(char c) { return c >= 'A' && c <= 'Z' ? static_cast<char>(c - 'A' + 'a') : c; }

struct Spelling { std::string_view bytes; Token::Kind kind; std::string_view text; double value; };
// Characters beyond ASCII that people type or that a keyboard puts in for them.
constexpr std::array<Spelling, 20> spellings{{
    {"\xE2\x80\xB2", Token::Kind::word, "'", 0},      // prime
    {"\xE2\x80\x99", Token::Kind::word, "'", 0},      // right single quotation mark
    {"\xE2\x80\x98", Token::Kind::word, "'", 0},
    {"\xE2\x80\xB3", Token::Kind::word, "\"", 0},     // double prime
    {"\xE2\x80\x9D", Token::Kind::word, "\"", 0},     // right double quotation mark
    {"\xE2\x80\x9C", Token::Kind::word, "\"", 0},
    {"\xC2\xBD", Token::Kind::fraction, "1/2", 1.0 / 2},
    {"\xC2\xBC", Token::Kind::fraction, "1/4", 1.0 / 4},
    {"\xC2\xBE", Token::Kind::fraction, "3/4", 3.0 / 4},
    {"\xE2\x85\x9B", Token::Kind::fraction, "1/8", 1.0 / 8},
    {"\xE2\x85\x9C", Token::Kind::fraction, "3/8", 3.0 / 8},
    {"\xE2\x85\x9D", Token::Kind::fraction, "5/8", 5.0 / 8},
    {"\xE2\x85\x9E", Token::Kind::fraction, "7/8", 7.0 / 8},
    {"\xE2\x81\x84", Token::Kind::slash, "/", 0},     // fraction slash
    {"\xE2\x88\x92", Token::Kind::minus, "-", 0},     // minus sign
    {"\xE2\x80\x91", Token::Kind::minus, "-", 0},     // non-breaking hyphen
    {"\xC2\xB0", Token::Kind::degree, "\xC2\xB0", 0},
    {"\xC2\xB7", Token::Kind::dot, ".", 0},           // middle dot
    {"\xE2\x8B\x85", Token::Kind::dot, ".", 0},       // dot operator
    {"\xC3\x97", Token::Kind::times, "x", 0},         // multiplication sign
}};
constexpr std::array<std::string_view, 3> wideSpaces{"\xC2\xA0", "\xE2\x80\xAF", "\xE2\x80\x89"};

}  // namespace

std::string quoted(std::string_view text) {
    std::string out = "\"";
    for (const char c : text.substr(0, std::min<std::size_t>(text.size(), 24)))
        if (c >= 0x20 && c < 0x7f) out += c;
    if (text.size() > 24) out += "...";
    return out + "\"";
}

Parsed<std::vector<Token>> tokenize(std::string_view text) {
    using Result = Parsed<std::vector<Token>>;
    if (text.size() > longestText) return Result::refused("the text is too long");
    std::vector<Token> tokens;
    bool space = false;
    std::size_t i = 0;
    const auto push = [&](Token::Kind kind, std::string_view t, double value = 0, bool whole = false) {
        tokens.push_back({kind, std::string(t), value, whole, space});
        space = false;
    };
    while (i < text.size()) {
        const char c = text[i];
        const std::string_view rest = text.substr(i);
        if (c == ' ' || c == '\t' || c == '\n' || c == '\r') { space = true; ++i; continue; }
        const auto wide = std::find_if(wideSpaces.begin(), wideSpaces.end(), [&](std::string_view s) { return rest.substr(0, s.size()) == s; });
        if (wide != wideSpaces.end()) { space = true; i += wide->size(); continue; }
        const bool pointThenDigit = (c == '.' || c == ',') && i + 1 < text.size() && isDigit(text[i + 1]);
        if (isDigit(c) || pointThenDigit) {
            std::string number;
            int signs = 0;
            std::size_t j = i;
            for (; j < text.size() && (isDigit(text[j]) || text[j] == '.' || text[j] == ','); ++j) {
                if (isDigit(text[j])) number += text[j];
                else if (++signs == 1) number += '.';
            }
            if (signs > 1)
                return Result::refused(quoted(text.substr(i, j - i)) + " has more than one decimal sign; a number is written without separators between thousands");
            double value = 0;
            const auto [end, error] = std::from_chars(number.data(), number.data() + number.size(), value, std::chars_format::fixed);
            // A long run of zeros after the point is out of range as well: it is as good as zero to nobody.
            if (error == std::errc::result_out_of_range) return Result::refused(quoted(number) + " is too large or too small a number");
            if (error != std::errc{} || end != number.data() + number.size()) return Result::refused(quoted(number) + " is not a number");
            push(Token::Kind::number, number, value, signs == 0);
            i = j;
            continue;
        }
        if (isLetter(c)) {
            std::string word;
            std::size_t j = i;
            for (; j < text.size() && isLetter(text[j]); ++j) word += lower(text[j]);
            if (j < text.size() && text[j] == '.' && !(j + 1 < text.size() && isLetter(text[j + 1]))) ++j;  // "in.", "No."
            push(Token::Kind::word, word);
            i = j;
            continue;
        }
        switch (c) {
            case '\'': push(Token::Kind::word, "'"); ++i; break;
            case '"': push(Token::Kind::word, "\""); ++i; break;
            case '/': push(Token::Kind::slash, "/"); ++i; break;
            case '-': push(Token::Kind::minus, "-"); ++i; break;
            case '+': push(Token::Kind::plus, "+"); ++i; break;
            case '.': case '*': push(Token::Kind::dot, "."); ++i; break;
            case '#': push(Token::Kind::hash, "#"); ++i; break;
            default: {
                const auto s = std::find_if(spellings.begin(), spellings.end(), [&](const Spelling& p) { return rest.substr(0, p.bytes.size()) == p.bytes; });
                if (s == spellings.end())
                    return Result::refused(c > 0x20 && c < 0x7f ? quoted(text.substr(i, 1)) + " has no meaning here" : "there is a character that has no meaning here");
                push(s->kind, s->text, s->value);
                i += s->bytes.size();
            }
        }
        // Two apostrophes are an inch mark.
        if (tokens.size() > 1 && tokens.back().text == "'" && !tokens.back().spaceBefore && tokens[tokens.size() - 2].text == "'") {
            tokens.pop_back();
            tokens.back().text = std::string("\"");
        }
    }
    return Result::of(std::move(tokens));
}

}  // namespace hither
