#include "core/storage/any_form.h"

#include <filesystem>
#include <fstream>
#include <utility>

#include "core/storage/plan_file.h"

namespace hither {
namespace {

/// A JSON text begins, after white space or a byte order mark, with a brace; a plan file never does.
bool beginsAsJson(const std::string& path) {
    std::ifstream file(path, std::ios::binary);
    char c = 0;
    for (int i = 0; i < 4096 && file.get(c); ++i) {
        if (c == '{' || c == '[') return true;
        if (c != ' ' && c != '\n' && c != '\r' && c != '\t' && c != '\xEF' && c != '\xBB' && c != '\xBF') return false;
    }
    return false;
}

}  // namespace

bool isJsonForm(const std::string& path) {
    std::error_code none;
    if (std::filesystem::is_regular_file(std::filesystem::symlink_status(path, none))) return beginsAsJson(path);
    return std::filesystem::path(path).extension() == ".json";
}

PlanRead openAnyForm(const std::string& path, PlanJsonContext context) {
    if (!isJsonForm(path)) return openPlanFile(path);
    return planFromJsonFile(path, std::move(context));
}

}  // namespace hither
