#include "core/storage/database.h"

#include <cmath>
#include <limits>

namespace hither {

std::optional<Database> Database::inMemory() {
    Database d;
    sqlite3* raw = nullptr;
    const int status = sqlite3_open_v2(":memory:", &raw, SQLITE_OPEN_READWRITE | SQLITE_OPEN_CREATE | SQLITE_OPEN_MEMORY | SQLITE_OPEN_PRIVATECACHE, nullptr);
    d.connection_.reset(raw);
    if (status != SQLITE_OK || !d.run("PRAGMA page_size = 1024; PRAGMA encoding = 'UTF-8'; PRAGMA journal_mode = OFF; PRAGMA temp_store = MEMORY")) return std::nullopt;
    return d;
}

std::optional<Database> Database::ofBytes(std::string bytes, bool writable) {
    Database d;
    sqlite3* raw = nullptr;
    const int status = sqlite3_open_v2(":memory:", &raw, SQLITE_OPEN_READWRITE | SQLITE_OPEN_MEMORY | SQLITE_OPEN_PRIVATECACHE, nullptr);
    d.connection_.reset(raw);
    if (status != SQLITE_OK) return std::nullopt;
    const auto size = static_cast<sqlite3_int64>(bytes.size());
    if (writable) {
        auto* copy = static_cast<unsigned char*>(sqlite3_malloc64(static_cast<sqlite3_uint64>(size)));
        if (copy == nullptr) return std::nullopt;
        std::copy(bytes.begin(), bytes.end(), reinterpret_cast<char*>(copy));
        if (sqlite3_deserialize(raw, "main", copy, size, size, SQLITE_DESERIALIZE_FREEONCLOSE | SQLITE_DESERIALIZE_RESIZEABLE) != SQLITE_OK) return std::nullopt;
        return d;
    }
    d.bytes_ = std::make_unique<std::string>(std::move(bytes));
    if (sqlite3_deserialize(raw, "main", reinterpret_cast<unsigned char*>(d.bytes_->data()), size, size, SQLITE_DESERIALIZE_READONLY) != SQLITE_OK) return std::nullopt;
    return d;
}

bool Database::run(const std::string& sql) { return sqlite3_exec(connection_.get(), sql.c_str(), nullptr, nullptr, nullptr) == SQLITE_OK; }

std::optional<std::string> Database::serialized() const {
    sqlite3_int64 size = 0;
    unsigned char* bytes = sqlite3_serialize(connection_.get(), "main", &size, 0);
    if (bytes == nullptr) return std::nullopt;
    std::string out(reinterpret_cast<const char*>(bytes), static_cast<std::size_t>(size));
    sqlite3_free(bytes);
    return out;
}

RowWriter& RowWriter::into(const char* table) {
    table_ = table;
    cells_.clear();
    return *this;
}
RowWriter& RowWriter::integer(std::string column, std::int64_t value) {
    cells_.push_back({std::move(column), SQLITE_INTEGER, value, 0, {}});
    return *this;
}
RowWriter& RowWriter::real(std::string column, double value) {
    if (!std::isfinite(value) && words_.empty()) words_ = "a number that is not finite in " + table_ + "." + column;
    cells_.push_back({std::move(column), SQLITE_FLOAT, 0, value == 0.0 ? 0.0 : value, {}});
    return *this;
}
RowWriter& RowWriter::maybeReal(std::string column, std::optional<double> value) { return value ? real(std::move(column), *value) : null(std::move(column)); }
RowWriter& RowWriter::text(std::string column, std::string value) {
    cells_.push_back({std::move(column), SQLITE_TEXT, 0, 0, std::move(value)});
    return *this;
}
RowWriter& RowWriter::null(std::string column) {
    cells_.push_back({std::move(column), SQLITE_NULL, 0, 0, {}});
    return *this;
}
RowWriter& RowWriter::vector(const std::string& name, const char* unit, const Vec3& v) {
    const std::string tail = *unit == 0 ? std::string() : std::string("_") + unit;
    return real(name + "_x" + tail, v.x()).real(name + "_y" + tail, v.y()).real(name + "_z" + tail, v.z());
}
RowWriter& RowWriter::figure(const std::string& name, const char* unit, const Figure& f) {
    return maybeReal(name + "_" + unit, f.value).text(name + "_basis", word(f.basis.kind)).text(name + "_source", f.basis.source);
}

void RowWriter::done() {
    if (failed()) return;
    auto& statement = statements_[table_];
    if (!statement) {
        std::string columns, marks;
        for (const Cell& c : cells_) {
            columns += (columns.empty() ? "" : ", ") + c.column;
            marks += marks.empty() ? "?" : ", ?";
        }
        const std::string sql = "INSERT INTO " + table_ + " (" + columns + ") VALUES (" + marks + ")";
        sqlite3_stmt* raw = nullptr;
        if (sqlite3_prepare_v2(database_.get(), sql.c_str(), -1, &raw, nullptr) != SQLITE_OK) {
            words_ = database_.words();
            return;
        }
        statement.reset(raw);
    }
    sqlite3_stmt* s = statement.get();
    for (std::size_t i = 0; i < cells_.size(); ++i) {
        const Cell& c = cells_[i];
        const int at = static_cast<int>(i) + 1;
        if (c.type == SQLITE_INTEGER) sqlite3_bind_int64(s, at, c.integer);
        else if (c.type == SQLITE_FLOAT) sqlite3_bind_double(s, at, c.real);
        else if (c.type == SQLITE_TEXT) sqlite3_bind_text64(s, at, c.text.data(), c.text.size(), SQLITE_TRANSIENT, SQLITE_UTF8);
        else sqlite3_bind_null(s, at);
    }
    if (sqlite3_step(s) != SQLITE_DONE) words_ = database_.words();
    sqlite3_reset(s);
}

void RowReader::problem(const std::string& column, std::string found, std::string allowed) {
    if (problems_.size() < 100) problems_.push_back({StorageError::Code::badValue, {}, place_ + ", " + column, {{"found", std::move(found)}, {"allowed", std::move(allowed)}}});
}

int RowReader::cell(const std::string& column, int type, bool mayBeNull, const char* allowed) {
    const auto at = columns_.find(column);
    if (at == columns_.end()) {
        problem(column, "no such column", allowed);
        return -1;
    }
    const int found = sqlite3_column_type(statement_, at->second);
    if (found == type) return at->second;
    if (!(found == SQLITE_NULL && mayBeNull)) {
        static const char* const names[] = {"", "an integer", "a real number", "a text", "a blob", "nothing"};
        problem(column, found >= 1 && found <= 5 ? names[found] : "something else", allowed);
    }
    return -1;
}

std::int64_t RowReader::integer(const std::string& column) {
    const int at = cell(column, SQLITE_INTEGER, false, "an integer");
    return at < 0 ? 0 : sqlite3_column_int64(statement_, at);
}
int RowReader::whole(const std::string& column) {
    const std::int64_t value = integer(column);
    if (value >= std::numeric_limits<int>::min() && value <= std::numeric_limits<int>::max()) return static_cast<int>(value);
    problem(column, std::to_string(value), "a smaller number");
    return 0;
}
bool RowReader::flag(const std::string& column) {
    const std::int64_t value = integer(column);
    if (value != 0 && value != 1) problem(column, std::to_string(value), "0 or 1");
    return value == 1;
}
double RowReader::real(const std::string& column) {
    const int at = cell(column, SQLITE_FLOAT, false, "a real number");
    const double value = at < 0 ? 0.0 : sqlite3_column_double(statement_, at);
    if (std::isfinite(value)) return value;
    problem(column, "a number that is not finite", "a finite number");
    return 0;
}
std::optional<double> RowReader::maybeReal(const std::string& column) {
    const int at = cell(column, SQLITE_FLOAT, true, "a real number or nothing");
    if (at < 0) return std::nullopt;
    const double value = sqlite3_column_double(statement_, at);
    if (std::isfinite(value)) return value;
    problem(column, "a number that is not finite", "a finite number");
    return std::nullopt;
}
std::optional<std::int64_t> RowReader::maybeInteger(const std::string& column) {
    const int at = cell(column, SQLITE_INTEGER, true, "an integer or nothing");
    if (at < 0) return std::nullopt;
    return sqlite3_column_int64(statement_, at);
}
std::optional<std::string> RowReader::maybeText(const std::string& column) {
    const int at = cell(column, SQLITE_TEXT, true, "a text or nothing");
    if (at < 0) return std::nullopt;
    const auto* bytes = reinterpret_cast<const char*>(sqlite3_column_text(statement_, at));
    return bytes == nullptr ? std::string() : std::string(bytes, static_cast<std::size_t>(sqlite3_column_bytes(statement_, at)));
}
std::string RowReader::text(const std::string& column) {
    const int at = cell(column, SQLITE_TEXT, false, "a text");
    if (at < 0) return {};
    const auto* bytes = reinterpret_cast<const char*>(sqlite3_column_text(statement_, at));
    return bytes == nullptr ? std::string() : std::string(bytes, static_cast<std::size_t>(sqlite3_column_bytes(statement_, at)));
}
Vec3 RowReader::vector(const std::string& name, const char* unit) {
    const std::string tail = *unit == 0 ? std::string() : std::string("_") + unit;
    const double x = real(name + "_x" + tail), y = real(name + "_y" + tail), z = real(name + "_z" + tail);
    return {x, y, z};
}
Figure RowReader::figure(const std::string& name, const char* unit) {
    Figure f;
    f.value = maybeReal(name + "_" + unit);
    f.basis.kind = choice<BasisKind>(name + "_basis", basisFromWord, BasisKind::unknown);
    f.basis.source = text(name + "_source");
    return f;
}
void RowReader::position(const std::string& column, std::size_t next) {
    const std::int64_t found = integer(column);
    if (found != static_cast<std::int64_t>(next)) problem(column, std::to_string(found), std::to_string(next));
}
std::size_t RowReader::owner(const std::string& column, std::size_t count) {
    const std::int64_t found = integer(column);
    if (found >= 0 && static_cast<std::uint64_t>(found) < count) return static_cast<std::size_t>(found);
    problem(column, std::to_string(found), count == 0 ? "no row: there is no owner" : "0 to " + std::to_string(count - 1));
    return count;
}

void eachRow(Database& database, const std::string& table, const std::string& order, std::size_t most, std::vector<StorageError>& problems,
             const std::function<void(RowReader&, std::size_t)>& each) {
    const auto refuse = [&](std::string found, std::string allowed) {
        if (problems.size() < 100) problems.push_back({StorageError::Code::damaged, {}, "table " + table, {{"found", std::move(found)}, {"allowed", std::move(allowed)}}});
    };
    sqlite3_stmt* s = nullptr;
    const std::string sql = "SELECT * FROM " + table + " ORDER BY " + order;
    if (sqlite3_prepare_v2(database.get(), sql.c_str(), -1, &s, nullptr) != SQLITE_OK) {
        refuse(database.words(), "a table that can be read");
        return;
    }
    std::map<std::string, int> columns;
    for (int i = 0; i < sqlite3_column_count(s); ++i) columns[sqlite3_column_name(s, i)] = i;
    std::size_t row = 0;
    int status = SQLITE_OK;
    while ((status = sqlite3_step(s)) == SQLITE_ROW) {
        if (row >= most) {
            refuse("more than " + std::to_string(most) + " rows", "at most as many");
            break;
        }
        RowReader reader(s, columns, "table " + table + ", row " + std::to_string(row + 1), problems);
        each(reader, row++);
        if (problems.size() >= 100) break;
    }
    if (status != SQLITE_ROW && status != SQLITE_DONE) refuse(database.words(), "a table that can be read");
    sqlite3_finalize(s);
}

}  // namespace hither
