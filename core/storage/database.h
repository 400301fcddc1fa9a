#pragma once
#include <cstdint>
#include <functional>
#include <map>
#include <memory>
#include <optional>
#include <string>
#include <string_view>
#include <vector>

#include <sqlite3.h>

#include "core/geometry/solid.h"
#include "core/storage/storage_error.h"
#include "core/units/basis.h"

namespace hither {

/// Owns a connection and, for one made of bytes, those bytes.
class Database {
public:
    /// An empty database in memory with pages of 1024 bytes: a plan of thirty tables stays small.
    static std::optional<Database> inMemory();
    /// A database made of the bytes of a file, for reading only or, when `writable`, to be changed in memory.
    static std::optional<Database> ofBytes(std::string bytes, bool writable);

    sqlite3* get() const { return connection_.get(); }
    bool run(const std::string& sql);              ///< false: see `words`
    std::string words() const { return sqlite3_errmsg(connection_.get()); }
    std::optional<std::string> serialized() const;

private:
    struct Close { void operator()(sqlite3* c) const { sqlite3_close(c); } };
    std::unique_ptr<std::string> bytes_;           // must outlive the connection
    std::unique_ptr<sqlite3, Close> connection_;
};

/// Rows added to the tables of one database. The columns of a table are named at each row; their
/// names must not change from row to row.
class RowWriter {
public:
    explicit RowWriter(Database& database) : database_(database) {}

    RowWriter& into(const char* table);
    RowWriter& integer(std::string column, std::int64_t value);
    RowWriter& index(std::string column, std::size_t value) { return integer(std::move(column), static_cast<std::int64_t>(value)); }
    RowWriter& flag(std::string column, bool value) { return integer(std::move(column), value ? 1 : 0); }
    RowWriter& real(std::string column, double value);
    RowWriter& maybeReal(std::string column, std::optional<double> value);
    RowWriter& text(std::string column, std::string value);
    RowWriter& null(std::string column);
    RowWriter& vector(const std::string& name, const char* unit, const Vec3& v);   ///< name_x_unit ...
    RowWriter& figure(const std::string& name, const char* unit, const Figure& f); ///< name_unit, name_basis, name_source
    RowWriter& solid(const Solid& s);
    void done();
    bool failed() const { return !words_.empty(); }
    const std::string& words() const { return words_; }

private:
    struct Cell { std::string column; int type = SQLITE_NULL; std::int64_t integer = 0; double real = 0; std::string text; };
    struct Finalize { void operator()(sqlite3_stmt* s) const { sqlite3_finalize(s); } };
    Database& database_;
    std::string table_, words_;
    std::vector<Cell> cells_;
    std::map<std::string, std::unique_ptr<sqlite3_stmt, Finalize>> statements_;
};

/// One row as it is read. A cell of another type than its column should have, and what cannot be
/// such a value, becomes a problem that names table, row and column; the getter then gives a default.
class RowReader {
public:
    RowReader(sqlite3_stmt* statement, const std::map<std::string, int>& columns, std::string place, std::vector<StorageError>& problems)
        : statement_(statement), columns_(columns), place_(std::move(place)), problems_(problems) {}

    std::int64_t integer(const std::string& column);
    int whole(const std::string& column);
    bool flag(const std::string& column);
    double real(const std::string& column);
    std::optional<double> maybeReal(const std::string& column);
    std::optional<std::int64_t> maybeInteger(const std::string& column);
    std::string text(const std::string& column);
    std::optional<std::string> maybeText(const std::string& column);
    Vec3 vector(const std::string& name, const char* unit);
    Figure figure(const std::string& name, const char* unit);
    Solid solid();
    /// The row's place in a list: must be the next one.
    void position(const std::string& column, std::size_t next);
    /// The row's owner: must be one of `count`. Gives `count` when it is not.
    std::size_t owner(const std::string& column, std::size_t count);
    template <class E>
    E choice(const std::string& column, std::optional<E> (*read)(const std::string&), E otherwise) {
        const std::string found = text(column);
        if (const std::optional<E> e = read(found)) return *e;
        problem(column, "a word that is not known", "one of the words of the format");
        return otherwise;
    }
    void problem(const std::string& column, std::string found, std::string allowed);

private:
    int cell(const std::string& column, int type, bool mayBeNull, const char* allowed);
    sqlite3_stmt* statement_;
    const std::map<std::string, int>& columns_;
    std::string place_;
    std::vector<StorageError>& problems_;
};

/// Every row of a table in its order. Stops after `most` rows, or when `each` returns false; both
/// and any refusal of the library become problems.
void eachRow(Database& database, const std::string& table, const std::string& order, std::size_t most, std::vector<StorageError>& problems,
             const std::function<void(RowReader&, std::size_t)>& each);

}  // namespace hither
