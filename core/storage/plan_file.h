#pragma once
#include <functional>
#include <string>
#include <vector>

#include "core/plan/plan.h"
#include "core/storage/plan_json.h"
#include "core/storage/plan_schema.h"
#include "core/storage/storage_error.h"

struct sqlite3;

namespace hither {

/// A plan file is one SQLite database (resources/plan_format.md lists its tables). Files come by e-mail:
/// nothing in one is believed before it has been looked at.
constexpr std::size_t largestPlanFile = 256u << 20;

/// One step from a format to the next. It works on a copy in memory; the file stays as it is until
/// somebody saves. Returns the words of what went wrong, empty when nothing did.
struct MigrationStep {
    int from = 0;
    std::string says;                                  ///< one line for the log
    std::function<std::string(sqlite3*)> apply;
};
/// The formats that this program reads: the tables that a file of each must have, and the steps up to
/// the newest. Tests put in their own.
struct PlanFormats {
    struct Known { int number = planFormat; const std::vector<PlanTable>* tables = nullptr; };
    std::vector<Known> known;                          ///< oldest first; the last is the present one
    std::vector<MigrationStep> steps;
};
const PlanFormats& planFormats();

/// The bytes of the file of a plan; the same for equal plans. Problems say why there are none.
struct PlanBytes { std::optional<std::string> bytes; std::vector<StorageError> problems; };
PlanBytes planToBytes(const Plan& plan);

/// Reads a plan file's bytes. In this order: SQLite's magic, application_id, format, no write-ahead
/// log, the size that the header promises; then, on a connection that is read-only, defensive, trusts no
/// schema, runs no triggers, views, extensions or functions and stops after a bounded number of
/// steps: quick_check (integrity_check when `thorough`), exactly the format's tables, the checksum over
/// all rows; then every value, and `planProblems`.
PlanRead planFromBytes(std::string bytes, const std::string& file = {}, const PlanFormats& formats = planFormats(), bool thorough = false);

/// Reads a plan file: a regular file of at most `largestPlanFile` bytes, read once and closed.
PlanRead openPlanFile(const std::string& path);

/// SHA-256 over every row of the tables but the checksum's own, in their order: names, types and
/// values. Independent of pages, free space and the version of the library that wrote the file.
std::string rowsChecksum(sqlite3* database, const std::vector<PlanTable>& tables, std::string& words);

}  // namespace hither
