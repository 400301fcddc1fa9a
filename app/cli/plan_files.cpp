#include <ostream>

#include "app/cli/program.h"
#include "app/words/storage_words.h"
#include "core/storage/any_form.h"
#include "core/storage/next_revision.h"
#include "core/storage/plan_json.h"
#include "core/storage/plan_lock.h"
#include "core/storage/plan_save.h"

namespace hither::cli {
namespace {

bool endsWith(const std::string& text, const std::string& end) {
    return text.size() >= end.size() && text.compare(text.size() - end.size(), end.size(), end) == 0;
}

[[noreturn]] void refuse(const std::vector<StorageError>& problems, const std::string& path) { throw Refused{sentence(problems, path)}; }

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

Plan openPlan(const std::string& path, const Shipped& shipped) {
    PlanJsonContext context;
    context.catalogue = &shipped.catalogue;
    PlanRead read = openAnyForm(path, context);
    if (!read.plan) refuse(read.problems, path);
    return std::move(*read.plan);
}

void savePlan(Plan plan, const std::string& path, const std::string& what) {
    const PlanLock lock = locked(path);
    write(nextRevision(std::move(plan), what), path, isJsonForm(path));
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
