#include "core/storage/autosave.h"

#include <algorithm>
#include <filesystem>

#include "core/storage/checksum.h"
#include "core/storage/file_bytes.h"
#include "core/storage/fresh.h"
#include "core/storage/json_value.h"
#include "core/storage/plan_file.h"
#include "core/storage/plan_save.h"

namespace hither {
namespace {

namespace fs = std::filesystem;

/// The same file by whatever relative path it is called.
std::string absolute(const std::string& file) {
    if (file.empty()) return {};
    std::error_code ignored;
    const fs::path p = fs::absolute(file, ignored);
    return ignored ? file : p.lexically_normal().string();
}

std::string noteOf(const std::string& path) { return path + ".json"; }

void remove(const std::string& path) {
    std::error_code ignored;
    for (const std::string& name : {path, noteOf(path)}) fs::remove(name, ignored);
}

}  // namespace

const char* word(Leftover::Against against) {
    switch (against) {
        case Leftover::Against::unnamed: return "unnamed";
        case Leftover::Against::sameFile: return "same_file";
        case Leftover::Against::otherFile: return "other_file";
        case Leftover::Against::missingFile: return "missing_file";
    }
    return "unnamed";
}

std::optional<std::string> fileSum(const std::string& path) {
    const FileBytes read = readWholeFile(path, largestPlanFile);
    if (!read.bytes) return std::nullopt;
    return sha256(*read.bytes);
}

std::string Autosave::pathFor(const Plan& plan, const std::string& file) const {
    return folder_ + "/" + sha256(plan.id + "\n" + absolute(file)).substr(0, 24) + ".hither";
}

std::vector<StorageError> Autosave::keep(const Plan& plan, const std::string& file, const std::string& sum) const {
    std::error_code failed;
    fs::create_directories(folder_, failed);
    if (failed) return {StorageError{StorageError::Code::cannotWrite, folder_, {}, {{"found", failed.message()}, {"allowed", "a folder that can be made"}}}};
    const std::string path = pathFor(plan, file);
    // The note first: an autosave without one would pass for an unnamed plan.
    JsonValue note = JsonValue::object();
    note.add("file", JsonValue::ofText(absolute(file))).add("file_sha256", JsonValue::ofText(sum)).add("saved_utc", JsonValue::ofText(utcNow()));
    if (std::vector<StorageError> problems = saveText(printJsonValue(note), noteOf(path)); !problems.empty()) return problems;
    SaveOptions options;
    options.keepBackup = false;
    return savePlanFile(plan, path, options);
}

void Autosave::discard(const Plan& plan, const std::string& file) const { remove(pathFor(plan, file)); }
void Autosave::discard(const Leftover& leftover) const { remove(leftover.path); }

std::vector<Leftover> Autosave::leftovers() const {
    std::vector<std::string> paths;
    std::error_code ignored;
    for (fs::directory_iterator it(folder_, ignored), end; !ignored && it != end; it.increment(ignored)) {
        const fs::path& p = it->path();
        if (p.extension() == ".hither" && p.filename().string().front() != '.') paths.push_back(p.string());
    }
    std::sort(paths.begin(), paths.end());
    std::vector<Leftover> out;
    for (const std::string& path : paths) {
        Leftover l;
        l.path = path;
        std::string bound;
        if (const FileBytes note = readWholeFile(noteOf(path), 65536); note.bytes) {
            if (const JsonValueRead json = readJsonValue(*note.bytes); json.value) {
                const auto get = [&](const char* key) {
                    const JsonValue* v = json.value->find(key);
                    return v == nullptr ? std::string() : v->text;
                };
                l.file = get("file");
                bound = get("file_sha256");
                l.saved_utc = get("saved_utc");
            }
        }
        PlanRead read = openPlanFile(path);
        l.plan = std::move(read.plan);
        l.problems = std::move(read.problems);
        if (!l.file.empty()) {
            const std::optional<std::string> sum = fileSum(l.file);
            l.against = !sum ? Leftover::Against::missingFile : *sum == bound ? Leftover::Against::sameFile : Leftover::Against::otherFile;
            if (l.plan && sum)
                if (const PlanRead own = openPlanFile(l.file); own.plan) l.differences = planDifferences(*own.plan, *l.plan);
        }
        out.push_back(std::move(l));
    }
    return out;
}

}  // namespace hither
