#pragma once
#include <filesystem>
#include <optional>
#include <string>
#include <string_view>

#include <nlohmann/json.hpp>

namespace hither {

/// Files with JSON come from anybody: larger or deeper ones are refused before they are built.
constexpr std::size_t largestJson_bytes = 4u << 20;
constexpr int deepestJson = 64;

/// JSON from text, or one sentence that says where and why it is none ("line 3, column 14: ...").
/// A key that stands twice in one object is refused as well. A leading byte order mark is skipped.
struct JsonRead { std::optional<nlohmann::json> json; std::string problem; };
JsonRead parseJson(std::string_view text, std::size_t largest = largestJson_bytes);
/// The same from a file: only a regular file, read once.
JsonRead readJsonFile(const std::filesystem::path& file, std::size_t largest = largestJson_bytes);

}  // namespace hither
