#include "raw_database.h"

#include <cstring>
#include <stdexcept>

#include <sqlite3.h>

#include "core/storage/plan_file.h"

namespace hither::test {
namespace {

void run(sqlite3* c, const std::string& sql) {
    if (sqlite3_exec(c, sql.c_str(), nullptr, nullptr, nullptr) != SQLITE_OK) throw std::runtime_error(sql + ": " + sqlite3_errmsg(c));
}

sqlite3* opened(const std::string& bytes, const char* schema) {
    sqlite3* c = nullptr;
    sqlite3_open(":memory:", &c);
    if (std::strcmp(schema, "main") != 0) run(c, std::string("ATTACH ':memory:' AS ") + schema);
    auto* copy = static_cast<unsigned char*>(sqlite3_malloc64(bytes.size()));
    std::memcpy(copy, bytes.data(), bytes.size());
    const auto size = static_cast<sqlite3_int64>(bytes.size());
    if (sqlite3_deserialize(c, schema, copy, size, size, SQLITE_DESERIALIZE_FREEONCLOSE | SQLITE_DESERIALIZE_RESIZEABLE) != SQLITE_OK) throw std::runtime_error("not deserialized");
    return c;
}

std::string closed(sqlite3* c) {
    sqlite3_int64 size = 0;
    unsigned char* bytes = sqlite3_serialize(c, "main", &size, 0);
    std::string out(reinterpret_cast<char*>(bytes), static_cast<std::size_t>(size));
    sqlite3_free(bytes);
    sqlite3_close(c);
    return out;
}

void sumAgain(sqlite3* c, const std::vector<PlanTable>& tables) {
    std::string words;
    const std::string sum = rowsChecksum(c, tables, words);
    if (!words.empty()) throw std::runtime_error(words);
    run(c, "UPDATE checksum SET digest = '" + sum + "'");
}

}  // namespace

std::string changedBy(const std::string& bytes, const std::string& sql, bool resum) {
    sqlite3* c = opened(bytes, "main");
    run(c, sql);
    if (resum) sumAgain(c, planTables1());
    return closed(c);
}

std::string olderFile(const std::string& bytes, const std::vector<PlanTable>& tables) {
    sqlite3* c = opened(bytes, "now");
    run(c, "PRAGMA main.page_size = 1024; PRAGMA main.application_id = " + std::to_string(planApplicationId) + "; PRAGMA main.user_version = 0");
    for (const PlanTable& table : tables) run(c, table.sql);
    for (const PlanTable& table : tables) run(c, "INSERT INTO main." + table.name + " SELECT * FROM now." + table.name);
    sumAgain(c, tables);
    return closed(c);
}

}  // namespace hither::test
