#include "core/storage/plan_file.h"

#include <algorithm>
#include <cstring>

#include <sqlite3.h>

#include "core/storage/checksum.h"
#include "core/storage/database.h"
#include "core/storage/file_bytes.h"
#include "core/storage/plan_rows.h"
#include "core/storage/plan_rules.h"

namespace hither {
namespace {

using Code = StorageError::Code;

StorageError error(Code code, std::string place, std::string found, std::string allowed) {
    return {code, {}, std::move(place), {{"found", std::move(found)}, {"allowed", std::move(allowed)}}};
}

unsigned big32(const std::string& bytes, std::size_t at) {
    unsigned value = 0;
    for (std::size_t i = 0; i < 4; ++i) value = value << 8 | static_cast<unsigned char>(bytes[at + i]);
    return value;
}

struct HeaderRead { int format = 0; std::optional<StorageError> fault; };

/// What the first 100 bytes say (SQLite's file format, section 1.3), before the library sees any of them.
HeaderRead readHeader(const std::string& bytes, const PlanFormats& formats) {
    static const char magic[] = "SQLite format 3";
    const std::size_t compare = std::min(bytes.size(), sizeof magic);
    if (bytes.empty()) return {0, error(Code::notAPlan, "byte 0", "an empty file", "a plan file")};
    if (std::memcmp(bytes.data(), magic, compare) != 0) return {0, error(Code::notAPlan, "byte 0", "another kind of file", "a plan file")};
    if (bytes.size() < 512) return {0, error(Code::truncated, "byte " + std::to_string(bytes.size()), "the end of the file", "a whole plan file")};
    if (big32(bytes, 68) != planApplicationId) return {0, error(Code::notAPlan, "byte 68", "a database of another program", "a plan file")};
    const unsigned format = big32(bytes, 60);
    const int newest = formats.known.back().number;
    if (format > static_cast<unsigned>(newest) && format < 1'000'000) {
        StorageError e = error(Code::newerFormat, "byte 60", "format " + std::to_string(format), "up to format " + std::to_string(newest));
        e.facts["format"] = std::to_string(format);
        return {0, e};
    }
    const bool known = std::any_of(formats.known.begin(), formats.known.end(), [&](const PlanFormats::Known& k) { return static_cast<unsigned>(k.number) == format; });
    if (!known) return {0, error(Code::damaged, "byte 60", "format " + std::to_string(format), "a format that there is")};
    if (bytes[18] != 1 || bytes[19] != 1) return {0, error(Code::damaged, "byte 18", "a write-ahead log", "a file that is whole in itself")};
    unsigned page = static_cast<unsigned>(static_cast<unsigned char>(bytes[16])) << 8 | static_cast<unsigned char>(bytes[17]);
    if (page == 1) page = 65536;
    if (page < 512 || (page & (page - 1)) != 0) return {0, error(Code::damaged, "byte 16", "pages of " + std::to_string(page) + " bytes", "a power of two from 512 to 65536")};
    const std::size_t promised = static_cast<std::size_t>(big32(bytes, 28)) * page;
    if (bytes.size() < promised) return {0, error(Code::truncated, "byte " + std::to_string(bytes.size()), "the end of the file", std::to_string(promised) + " bytes")};
    if (bytes.size() > promised) return {0, error(Code::damaged, "byte 28", std::to_string(bytes.size()) + " bytes", std::to_string(promised) + " bytes")};
    return {static_cast<int>(format), std::nullopt};
}

int onlyReading(void*, int action, const char* first, const char*, const char*, const char*) {
    if (action == SQLITE_SELECT || action == SQLITE_READ) return SQLITE_OK;
    if (action == SQLITE_PRAGMA && first != nullptr && (std::strcmp(first, "quick_check") == 0 || std::strcmp(first, "integrity_check") == 0)) return SQLITE_OK;
    return SQLITE_DENY;
}

int countDown(void* left) { return --*static_cast<std::int64_t*>(left) < 0 ? 1 : 0; }

/// Everything that the library can be told to distrust.
void harden(sqlite3* c) {
    sqlite3_extended_result_codes(c, 1);
    for (const int option : {SQLITE_DBCONFIG_ENABLE_TRIGGER, SQLITE_DBCONFIG_ENABLE_VIEW, SQLITE_DBCONFIG_ENABLE_LOAD_EXTENSION, SQLITE_DBCONFIG_ENABLE_FTS3_TOKENIZER,
                             SQLITE_DBCONFIG_WRITABLE_SCHEMA, SQLITE_DBCONFIG_DQS_DDL, SQLITE_DBCONFIG_DQS_DML, SQLITE_DBCONFIG_TRUSTED_SCHEMA})
        sqlite3_db_config(c, option, 0, nullptr);
    sqlite3_db_config(c, SQLITE_DBCONFIG_DEFENSIVE, 1, nullptr);
    sqlite3_limit(c, SQLITE_LIMIT_LENGTH, 32 << 20);
    sqlite3_limit(c, SQLITE_LIMIT_SQL_LENGTH, 20'000);
    sqlite3_limit(c, SQLITE_LIMIT_COLUMN, 100);
    sqlite3_limit(c, SQLITE_LIMIT_EXPR_DEPTH, 20);
    sqlite3_limit(c, SQLITE_LIMIT_COMPOUND_SELECT, 3);
    sqlite3_limit(c, SQLITE_LIMIT_VDBE_OP, 25'000);
    sqlite3_limit(c, SQLITE_LIMIT_ATTACHED, 0);
    sqlite3_limit(c, SQLITE_LIMIT_TRIGGER_DEPTH, 1);
    sqlite3_limit(c, SQLITE_LIMIT_WORKER_THREADS, 0);
    sqlite3_exec(c, "PRAGMA cell_size_check = ON; PRAGMA mmap_size = 0; PRAGMA temp_store = MEMORY; PRAGMA query_only = ON", nullptr, nullptr, nullptr);
}

/// Texts of the rows of a one-column query; false when the library refuses.
bool texts(sqlite3* c, const char* sql, std::vector<std::string>& out, std::size_t most) {
    sqlite3_stmt* s = nullptr;
    if (sqlite3_prepare_v2(c, sql, -1, &s, nullptr) != SQLITE_OK) return false;
    int status = SQLITE_OK;
    while (out.size() < most && (status = sqlite3_step(s)) == SQLITE_ROW) {
        const auto* text = reinterpret_cast<const char*>(sqlite3_column_text(s, 0));
        out.emplace_back(text == nullptr ? "" : text);
    }
    sqlite3_finalize(s);
    return status == SQLITE_ROW || status == SQLITE_DONE;
}

std::optional<StorageError> checkPages(sqlite3* c, bool thorough) {
    std::vector<std::string> found;
    if (!texts(c, thorough ? "PRAGMA integrity_check(1)" : "PRAGMA quick_check(1)", found, 1)) return error(Code::damaged, "pages", sqlite3_errmsg(c), "pages in order");
    if (found.size() != 1 || found[0] != "ok") return error(Code::damaged, "pages", found.empty() ? "no answer" : found[0].substr(0, 200), "pages in order");
    return std::nullopt;
}

/// Exactly the tables of the format, by the very text that makes them; no index, view or trigger.
std::optional<StorageError> checkSchema(sqlite3* c, const std::vector<PlanTable>& tables) {
    sqlite3_stmt* s = nullptr;
    if (sqlite3_prepare_v2(c, "SELECT type, name, tbl_name, sql FROM sqlite_schema ORDER BY rowid", -1, &s, nullptr) != SQLITE_OK)
        return error(Code::damaged, "schema", sqlite3_errmsg(c), "the tables of the format");
    std::size_t next = 0;
    std::optional<StorageError> fault;
    int status = SQLITE_OK;
    while (!fault && (status = sqlite3_step(s)) == SQLITE_ROW) {
        const auto column = [&](int i) {
            const auto* text = reinterpret_cast<const char*>(sqlite3_column_text(s, i));
            return std::string(text == nullptr ? "" : text);
        };
        const std::string name = isPrintableText(column(1), false) ? column(1).substr(0, 100) : "a name with control characters";
        if (next >= tables.size() || column(0) != "table" || column(1) != tables[next].name || column(2) != tables[next].name || column(3) != tables[next].sql)
            fault = error(Code::unexpectedSchema, "schema", name, next < tables.size() ? "table " + tables[next].name + " of the format" : "nothing more");
        ++next;
    }
    if (!fault && status != SQLITE_DONE) fault = error(Code::damaged, "schema", sqlite3_errmsg(c), "the tables of the format");
    if (!fault && next < tables.size()) fault = error(Code::unexpectedSchema, "schema", "nothing more", "table " + tables[next].name);
    sqlite3_finalize(s);
    return fault;
}

std::optional<StorageError> checkSum(Database& database, const std::vector<PlanTable>& tables) {
    std::vector<std::string> found;
    if (!texts(database.get(), "SELECT method || ' ' || digest FROM checksum", found, 2)) return error(Code::damaged, "table checksum", database.words(), "one row");
    if (found.size() != 1) return error(Code::damaged, "table checksum", std::to_string(found.size()) + " rows", "one row");
    std::string words;
    const std::string sum = rowsChecksum(database.get(), tables, words);
    if (!words.empty()) return error(Code::damaged, "tables", words, "tables that can be read");
    if (found[0] != "sha-256 " + sum) return error(Code::damaged, "table checksum", "rows that are not those that were saved", "the rows that were saved");
    return std::nullopt;
}

PlanRead refused(StorageError fault, const std::string& file) {
    PlanRead out;
    fault = printable(std::move(fault));
    fault.file = file;
    out.problems.push_back(std::move(fault));
    return out;
}

/// Brings a copy in memory up to the newest format, step by step.
std::optional<Database> migrated(std::string bytes, int format, const PlanFormats& formats, PlanRead& result) {
    std::optional<Database> copy = Database::ofBytes(std::move(bytes), true);
    if (!copy) {
        result.problems.push_back(error(Code::ioError, {}, "no memory", "a copy in memory"));
        return std::nullopt;
    }
    while (format < formats.known.back().number) {
        const auto step = std::find_if(formats.steps.begin(), formats.steps.end(), [&](const MigrationStep& s) { return s.from == format; });
        const std::string words = step == formats.steps.end() ? "no step from format " + std::to_string(format) : step->apply(copy->get());
        if (!words.empty()) {
            result.problems.push_back(error(Code::damaged, "format " + std::to_string(format), words, "a plan that can be brought to format " + std::to_string(format + 1)));
            return std::nullopt;
        }
        result.log.push_back("format " + std::to_string(format) + " to " + std::to_string(format + 1) + ": " + step->says);
        ++format;
    }
    return copy;
}

}  // namespace

const PlanFormats& planFormats() {
    static const PlanFormats formats{{{planFormat, &planTables1()}}, {}};
    return formats;
}

std::string rowsChecksum(sqlite3* c, const std::vector<PlanTable>& tables, std::string& words) {
    Sha256 sum;
    const auto number = [&](std::uint64_t value) {
        char bytes[8];
        for (int i = 0; i < 8; ++i) bytes[i] = static_cast<char>(value >> (8 * i) & 0xff);
        sum.add({bytes, sizeof bytes});
    };
    for (const PlanTable& table : tables) {
        if (table.name == "checksum") continue;
        number(table.name.size());
        sum.add(table.name);
        sqlite3_stmt* s = nullptr;
        if (sqlite3_prepare_v2(c, ("SELECT * FROM " + table.name + " ORDER BY " + table.order).c_str(), -1, &s, nullptr) != SQLITE_OK) {
            words = sqlite3_errmsg(c);
            return {};
        }
        int status = SQLITE_OK;
        while ((status = sqlite3_step(s)) == SQLITE_ROW) {
            const int columns = sqlite3_column_count(s);
            number(static_cast<std::uint64_t>(columns));
            for (int i = 0; i < columns; ++i) {
                const int type = sqlite3_column_type(s, i);
                number(static_cast<std::uint64_t>(type));
                if (type == SQLITE_INTEGER) {
                    number(static_cast<std::uint64_t>(sqlite3_column_int64(s, i)));
                } else if (type == SQLITE_FLOAT) {
                    const double value = sqlite3_column_double(s, i);
                    std::uint64_t bits = 0;
                    std::memcpy(&bits, &value, sizeof bits);
                    number(bits);
                } else if (type != SQLITE_NULL) {
                    const auto* bytes = static_cast<const char*>(sqlite3_column_blob(s, i));
                    const auto size = static_cast<std::size_t>(sqlite3_column_bytes(s, i));
                    number(size);
                    if (bytes != nullptr) sum.add({bytes, size});
                }
            }
        }
        if (status != SQLITE_DONE) words = sqlite3_errmsg(c);
        sqlite3_finalize(s);
        if (!words.empty()) return {};
    }
    return sum.hex();
}

PlanBytes planToBytes(const Plan& plan) {
    PlanBytes out;
    out.problems = planProblems(plan);
    if (!out.problems.empty()) return out;
    std::string words = "no memory";
    std::optional<Database> database = Database::inMemory();
    const auto make = [&]() -> bool {
        if (!database) return false;
        bool fine = database->run("PRAGMA application_id = " + std::to_string(planApplicationId) + "; PRAGMA user_version = " + std::to_string(planFormat) + "; BEGIN");
        for (const PlanTable& table : planTables1()) fine = fine && database->run(table.sql);
        words = database->words();
        if (!fine || !writeRows(plan, *database, words)) return false;
        std::string fault;
        const std::string sum = rowsChecksum(database->get(), planTables1(), fault);
        RowWriter row(*database);
        row.into("checksum").integer("row", 1).text("method", "sha-256").text("digest", sum).done();
        words = fault.empty() ? row.words() : fault;
        if (!words.empty()) return false;
        fine = database->run("COMMIT");
        words = database->words();
        return fine;
    };
    if (make()) out.bytes = database->serialized();
    if (!out.bytes) out.problems.push_back(error(Code::cannotWrite, {}, words, "a database in memory"));
    else if (out.bytes->size() > largestPlanFile) {
        out.problems.push_back(error(Code::tooLarge, {}, std::to_string(out.bytes->size()) + " bytes", "at most " + std::to_string(largestPlanFile) + " bytes"));
        out.bytes.reset();
    }
    return out;
}

PlanRead planFromBytes(std::string bytes, const std::string& file, const PlanFormats& formats, bool thorough) {
    const HeaderRead header = readHeader(bytes, formats);
    if (header.fault) return refused(*header.fault, file);
    const std::vector<PlanTable>& tables = *std::find_if(formats.known.begin(), formats.known.end(), [&](const PlanFormats::Known& k) { return k.number == header.format; })->tables;
    const bool older = header.format < formats.known.back().number;
    std::string copy = older ? bytes : std::string();
    // Whatever a file makes the library do, it ends: 50 million steps, and more for a larger file.
    std::int64_t left = 50'000 + static_cast<std::int64_t>(bytes.size() / 100);
    std::optional<Database> database = Database::ofBytes(std::move(bytes), false);
    if (!database) return refused(error(Code::damaged, {}, "a database that cannot be opened", "a plan file"), file);
    harden(database->get());
    sqlite3_progress_handler(database->get(), 1000, countDown, &left);
    sqlite3_set_authorizer(database->get(), onlyReading, nullptr);
    if (auto fault = checkPages(database->get(), thorough)) return refused(*fault, file);
    if (auto fault = checkSchema(database->get(), tables)) return refused(*fault, file);
    if (auto fault = checkSum(*database, tables)) return refused(*fault, file);

    PlanRead result;
    if (older) {
        database = migrated(std::move(copy), header.format, formats, result);
        if (database) {
            harden(database->get());
            sqlite3_progress_handler(database->get(), 1000, countDown, &left);
            sqlite3_set_authorizer(database->get(), onlyReading, nullptr);
        }
    }
    if (database) {
        std::optional<Plan> plan = readRows(*database, result.problems);
        if (plan && result.problems.empty()) result.problems = planProblems(*plan);
        if (plan && result.problems.empty()) result.plan = std::move(plan);
    }
    for (StorageError& problem : result.problems) {
        problem = printable(std::move(problem));
        problem.file = file;
    }
    return result;
}

PlanRead openPlanFile(const std::string& path) {
    FileBytes read = readWholeFile(path, largestPlanFile);
    if (!read.bytes) {
        PlanRead out;
        out.problems.push_back(std::move(*read.fault));
        return out;
    }
    return planFromBytes(std::move(*read.bytes), path);
}

}  // namespace hither
