#include <catch2/catch.hpp>

#include <cstdlib>
#include <fstream>

#include "core/catalogue/json_text.h"

using namespace hither;

namespace {

std::string refusal(const std::string& text) {
    const JsonRead read = parseJson(text);
    CHECK_FALSE(read.json);
    return read.problem;
}
bool begins(const std::string& text, const std::string& with) { return text.rfind(with, 0) == 0; }

}  // namespace

TEST_CASE("JSON that cannot be read is refused with line and column", "[catalogue][json-text]") {
    CHECK(begins(refusal("{\n  \"a\": 1,\n  \"b\" 2\n}"), "line 3, column 7: not JSON:"));
    CHECK(begins(refusal("{\"größe\": 1 \"b\"}"), "line 1, column 15: not JSON:"));  // letters, not bytes, to the end of what is wrong
    CHECK(begins(refusal("{\"a\": NaN}"), "line 1, column 7: not JSON:"));
    CHECK(begins(refusal("[1, 2"), "line 1, column 6: not JSON:"));
    CHECK(begins(refusal("[1] x"), "line 1, column 5: not JSON:"));
    CHECK(begins(refusal("{'a': 1}"), "line 1, column 2: not JSON:"));
    CHECK(begins(refusal("\"\xff\""), "line 1, column 2: not JSON:"));
    CHECK(refusal("") == "empty: no JSON in it");
    CHECK(refusal(" \n ") == "empty: no JSON in it");
    CHECK(refusal("[1e999]").find("1e999") != std::string::npos);
    CHECK(refusal("{\"a\": 1, \"b\": {\"a\": 1}, \"a\": 2}") == "the key \"a\" stands twice in one object");
    for (const char* text : {"{", "[1, 2", "{\"a\"", "\"a"}) CHECK(refusal(text).find("json.exception") == std::string::npos);
}

TEST_CASE("JSON is read as deep and large as allowed and no further", "[catalogue][json-text]") {
    const auto nested = [](int depth) { return std::string(static_cast<std::size_t>(depth), '[') + std::string(static_cast<std::size_t>(depth), ']'); };
    CHECK(parseJson(nested(64)).json);
    CHECK(refusal(nested(65)) == "line 1, column 65: more than 64 brackets inside each other");
    CHECK(refusal(std::string(1'000'000, '[')) == "line 1, column 65: more than 64 brackets inside each other");
    CHECK(parseJson("[\"" + std::string(100, '[') + "\\\"" + std::string(100, '{') + "\"]").json);  // brackets in a text do not count
    CHECK(parseJson("[1]", 3).json);
    CHECK_FALSE(parseJson("[12]", 3).json);
    CHECK(parseJson("\xef\xbb\xbf{\"a\": 1}").json);  // byte order mark
    CHECK(parseJson("[\"a\", {\"a\": 1}, {\"a\": 2}]").json);  // the same key in two objects
}

TEST_CASE("files that are none are refused in words", "[catalogue][json-text]") {
    const auto folder = std::filesystem::temp_directory_path() / "hither json text test";
    std::filesystem::remove_all(folder);
    std::filesystem::create_directories(folder);
    CHECK(readJsonFile(folder / "missing.json").problem == "no such file");
    CHECK(readJsonFile(folder).problem == "not a file with text");
    CHECK(readJsonFile("/dev/zero").problem == "not a file with text");
    std::ofstream(folder / "good.json") << "{\"a\": 1}";
    CHECK(readJsonFile(folder / "good.json").json == nlohmann::json{{"a", 1}});
    std::ofstream(folder / "large.json") << std::string(largestJson_bytes + 1, ' ');
    CHECK(readJsonFile(folder / "large.json").problem == "larger than 4 MB");
    std::filesystem::remove_all(folder);
}
