#include <algorithm>
#include <fstream>
#include <ostream>

#include "app/cli/program.h"
#include "app/words/storage_words.h"
#include "core/storage/fresh.h"
#include "core/storage/plan_file.h"
#include "core/storage/plan_json.h"
#include "core/storage/plan_lock.h"
#include "core/storage/plan_save.h"

namespace hither::cli {
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

bool endsWith(const std::string& text, const std::string& end) {
    return text.size() >= end.size() && text.compare(text.size() - end.size(), end.size(), end) == 0;
}

[[noreturn]] void refuse(const std::vector<StorageError>& problems, const std::string& path) {
    if (problems.empty()) throw Refused{path + ": cannot be read"};
    // A misspelt key is the cause of what is then missing: it is told first.
    const auto first = std::find_if(problems.begin(), problems.end(), [](const StorageError& e) { return e.code == StorageError::Code::unknownKey; });
    std::string line = sentence(first == problems.end() ? problems.front() : *first);
    if (problems.size() > 1) line += " (and " + std::to_string(problems.size() - 1) + " more)";
    throw Refused{line};
}

Plan fromJson(const std::string& path, const Shipped& shipped) {
    PlanJsonContext context;
    context.catalogue = &shipped.catalogue;
    context.file = path;
    PlanRead read = planFromJsonFile(path, context);
    if (!read.plan) refuse(read.problems, path);
    return std::move(*read.plan);
}

void write(const Plan& plan, const std::string& path, bool json) {
    const std::vector<StorageError> problems = json ? saveText(planToJson(plan), path, true) : savePlanFile(plan, path);
    if (!problems.empty()) refuse(problems, path);
}

/// Holds the plan's lock while it is written.
PlanLock locked(const std::string& path) {
    PlanLock::Taken taken = PlanLock::take(path);
    if (!taken.lock) throw Refused{sentence(*taken.fault)};
    return std::move(*taken.lock);
}

/// A file is not written over unless the person said so.
void refuseIfThere(const std::string& path, bool overwrite) {
    std::error_code none;
    if (!overwrite && std::filesystem::exists(std::filesystem::symlink_status(path, none)))
        throw Refused{path + ": is already there (--replace writes over it and keeps the old one as .bak)"};
}

}  // namespace

bool isJsonText(const std::string& path) {
    std::error_code none;
    if (std::filesystem::is_regular_file(std::filesystem::symlink_status(path, none))) return beginsAsJson(path);
    return endsWith(path, ".json");
}

Plan openPlan(const std::string& path, const Shipped& shipped) {
    if (isJsonText(path)) return fromJson(path, shipped);
    PlanRead read = openPlanFile(path);
    if (!read.plan) refuse(read.problems, path);
    return std::move(*read.plan);
}

void savePlan(Plan plan, const std::string& path, const std::string& what) {
    const PlanLock lock = locked(path);
    ++plan.revision;
    plan.changed_utc = utcNow();
    plan.history.push_back({plan.revision, plan.changed_utc, {}, what});
    write(plan, path, isJsonText(path));
}

int runImport(const ImportArguments& arguments, std::ostream& out, std::ostream& err) {
    const Shipped shipped = loadShipped(err);
    const Plan plan = fromJson(arguments.from, shipped);
    if (endsWith(arguments.to, ".json")) throw Refused{arguments.to + ": a plan file ends in .hither; export writes JSON"};
    refuseIfThere(arguments.to, arguments.overwrite);
    const PlanLock lock = locked(arguments.to);
    write(plan, arguments.to, false);
    out << "Plan " << (plan.title.empty() ? plan.id : plan.title) << " written to " << arguments.to << ".\n";
    return fine;
}

int runExport(const ExportArguments& arguments, std::ostream& out, std::ostream& err) {
    const Shipped shipped = loadShipped(err);
    const Plan plan = openPlan(arguments.plan, shipped);
    if (arguments.to.empty()) out << planToJson(plan);
    else {
        refuseIfThere(arguments.to, arguments.overwrite);
        write(plan, arguments.to, true);
    }
    return fine;
}

}  // namespace hither::cli
