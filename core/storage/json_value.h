#pragma once
#include <optional>
#include <string>
#include <string_view>
#include <vector>

#include <nlohmann/json_fwd.hpp>

#include "core/storage/storage_error.h"

namespace hither {

/// A JSON value that keeps its numbers as they were written and its keys in their order, so that a
/// plan's lengths and angles are converted once, from the decimal text, and nothing is lost.
struct JsonValue {
    enum class Kind { null, boolean, number, text, list, object };
    Kind kind = Kind::null;
    bool flag = false;
    std::string text;               ///< number as written, or a string
    std::vector<std::string> keys;  ///< object: as many as items
    std::vector<JsonValue> items;   ///< of a list or object

    static JsonValue ofText(std::string value);
    static JsonValue ofNumber(std::string asWritten);
    static JsonValue ofFlag(bool value);
    static JsonValue list(std::vector<JsonValue> items = {});
    static JsonValue object();
    static JsonValue from(const nlohmann::json& json);   ///< doubles in their shortest form, keys in the order of `json`
    nlohmann::json toJson() const;                       ///< for readers that take the library's values

    JsonValue& add(std::string key, JsonValue value);    ///< appends; returns *this
    const JsonValue* find(std::string_view key) const;
    bool operator==(const JsonValue&) const = default;
};
const char* word(JsonValue::Kind kind);

/// Bounds of what is read at all, so that a hostile text ends in a sentence and not in a full memory.
struct JsonBounds {
    std::size_t bytes = 64u << 20;
    int depth = 32;
    std::size_t values = 2'000'000;
    std::size_t keysInObject = 2'000;
    std::size_t numberDigits = 400;
};

/// RFC 8259 text. Keys that occur twice in one object are refused. A fault carries line and column.
struct JsonValueRead { std::optional<JsonValue> value; std::optional<StorageError> fault; };
JsonValueRead readJsonValue(std::string_view text, const JsonBounds& bounds = {});

/// Two spaces an indent; a list or object that fits 100 columns stands on one line. Ends with a newline.
std::string printJsonValue(const JsonValue& value);

}  // namespace hither
