#pragma once
#include <initializer_list>
#include <optional>
#include <string>
#include <vector>

#include "core/geometry/pose.h"
#include "core/storage/exact_number.h"
#include "core/storage/json_value.h"
#include "core/units/basis.h"
#include "core/units/quantity.h"

namespace hither {

/// Where problems of one reading are collected.
struct ReadProblems {
    std::vector<StorageError> list;
    std::size_t most = 100;
    void add(StorageError::Code code, std::string place, std::string found, std::string allowed, std::string nearest = {});
    bool full() const { return list.size() >= most; }
};

/// One JSON object read key by key. Each call marks its key as known and leaves the value as it is
/// when the key is absent (or null); what is of the wrong type becomes a problem and reading goes on.
/// `finish` makes a problem of every key that nobody asked for.
class ObjectReader {
public:
    /// Null, or a value that is no object (a problem then), reads like {}.
    ObjectReader(ReadProblems& problems, const JsonValue* value, std::string place);

    const std::string& place() const { return place_; }
    std::string placeOf(const std::string& key) const { return place_.empty() ? key : place_ + "/" + key; }
    bool isObject() const { return value_ != nullptr; }

    /// The value at a key when it is there and not null.
    const JsonValue* get(const std::string& key);
    /// The value at a key even when it is null.
    const JsonValue* raw(const std::string& key);
    bool has(const std::string& key) { return get(key) != nullptr; }
    void missing(const std::string& key, const std::string& allowed);
    void problem(const std::string& key, StorageError::Code code, std::string found, std::string allowed, std::string nearest = {});

    bool text(const std::string& key, std::string& out);
    bool flag(const std::string& key, bool& out);
    bool whole(const std::string& key, int& out);
    bool number(const std::string& key, Scale scale, double& out);
    bool vector(const std::string& key, Scale scale, Vec3& out);
    bool pair(const std::string& key, Scale scale, double& a, double& b);
    bool texts(const std::string& key, std::vector<std::string>& out);
    /// number | {"value", "basis", "source"} | null.
    bool figure(const std::string& key, Scale scale, Figure& out);
    bool money(const std::string& key, std::optional<Money>& out, const std::string& currency);
    /// One of some words.
    template <class E>
    bool choice(const std::string& key, E& out, std::optional<E> (*read)(const std::string&), std::initializer_list<E> all) {
        std::string found;
        if (!text(key, found)) return false;
        if (const std::optional<E> e = read(found)) {
            out = *e;
            return true;
        }
        std::vector<std::string> words;
        for (E e : all) words.emplace_back(word(e));
        wrongWord(key, found, words);
        return false;
    }
    /// The items of a list, null when the key is absent.
    const std::vector<JsonValue>* list(const std::string& key, std::size_t most);
    /// An object used as a map from names to values.
    const JsonValue* map(const std::string& key);

    void finish();

    /// A number at any place; false and a problem when it is none.
    static bool numberAt(ReadProblems& problems, const JsonValue& value, const std::string& place, Scale scale, double& out);

private:
    void wrongType(const std::string& place, const JsonValue& value, const std::string& allowed);
    void wrongWord(const std::string& key, const std::string& found, const std::vector<std::string>& words);

    ReadProblems& problems_;
    const JsonValue* value_;
    std::string place_;
    std::vector<std::string> known_;
};

}  // namespace hither
