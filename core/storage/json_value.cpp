#include "core/storage/json_value.h"

#include <algorithm>

#include <nlohmann/json.hpp>

namespace hither {
namespace {

using Json = nlohmann::json;

/// Builds JsonValues from the library's parser events; the parser itself does not recurse.
class Builder : public nlohmann::json_sax<Json> {
public:
    explicit Builder(const JsonBounds& bounds) : bounds_(bounds) {}

    JsonValue root;
    std::optional<StorageError> fault;
    std::size_t faultAt = 0;

    bool null() override { return put({}); }
    bool boolean(bool value) override { return put(JsonValue::ofFlag(value)); }
    bool number_integer(number_integer_t value) override { return put(JsonValue::ofNumber(std::to_string(value))); }
    bool number_unsigned(number_unsigned_t value) override { return put(JsonValue::ofNumber(std::to_string(value))); }
    bool number_float(number_float_t, const string_t& written) override {
        if (written.size() > bounds_.numberDigits) return refuse("number of more digits than anything needs");
        return put(JsonValue::ofNumber(written));
    }
    bool string(string_t& value) override { return put(JsonValue::ofText(std::move(value))); }
    bool binary(binary_t&) override { return refuse("binary value"); }
    bool start_object(std::size_t) override { return open(JsonValue::object()); }
    bool start_array(std::size_t) override { return open(JsonValue::list()); }
    bool end_object() override { return close(); }
    bool end_array() override { return close(); }
    bool key(string_t& name) override {
        JsonValue& object = *open_.back();
        if (object.keys.size() >= bounds_.keysInObject) return refuse("object with more than " + std::to_string(bounds_.keysInObject) + " keys");
        if (std::find(object.keys.begin(), object.keys.end(), name) != object.keys.end()) return refuse("key \"" + name + "\" twice in one object");
        object.keys.push_back(std::move(name));
        return true;
    }
    bool parse_error(std::size_t position, const std::string&, const Json::exception& why) override {
        faultAt = position;
        // The library's messages begin with its own tag and position: keep the clause after them.
        std::string clause = why.what();
        const std::size_t tag = clause.find("] ");
        if (tag != std::string::npos) clause.erase(0, tag + 2);
        const std::size_t dash = clause.find(" - ");
        if (dash != std::string::npos) clause.erase(0, dash + 3);
        const std::size_t read = clause.find("; last read");
        const bool ended = clause.find("end of input") != std::string::npos;
        if (read != std::string::npos) clause.erase(read);
        const bool tooLarge = why.id == 406;
        fault = StorageError{tooLarge ? StorageError::Code::badValue : ended ? StorageError::Code::truncated : StorageError::Code::notAPlan, {}, {}, {}};
        fault->facts["found"] = tooLarge ? "a number too large to be one" : clause;
        fault->facts["allowed"] = tooLarge ? "finite numbers" : "JSON text (RFC 8259)";
        return false;
    }

private:
    bool refuse(std::string found) {
        fault = StorageError{StorageError::Code::badValue, {}, {}, {}};
        fault->facts["found"] = std::move(found);
        fault->facts["allowed"] = "a plan's JSON form";
        return false;
    }
    JsonValue* place(JsonValue value) {
        if (open_.empty()) {
            root = std::move(value);
            return &root;
        }
        open_.back()->items.push_back(std::move(value));
        return &open_.back()->items.back();
    }
    bool count() { return ++values_ <= bounds_.values || refuse("more than " + std::to_string(bounds_.values) + " values"); }
    bool put(JsonValue value) {
        if (!count()) return false;
        place(std::move(value));
        return true;
    }
    bool open(JsonValue value) {
        if (!count()) return false;
        if (static_cast<int>(open_.size()) >= bounds_.depth) return refuse("lists and objects nested deeper than " + std::to_string(bounds_.depth));
        // A parent's items never grow while a child is open, so the pointers stay good.
        open_.push_back(place(std::move(value)));
        return true;
    }
    bool close() {
        open_.pop_back();
        return true;
    }

    const JsonBounds& bounds_;
    std::vector<JsonValue*> open_;
    std::size_t values_ = 0;
};

void printText(const std::string& text, std::string& out) { out += Json(text).dump(-1, ' ', false, Json::error_handler_t::replace); }

void printFlat(const JsonValue& v, std::string& out) {
    switch (v.kind) {
        case JsonValue::Kind::null: out += "null"; break;
        case JsonValue::Kind::boolean: out += v.flag ? "true" : "false"; break;
        case JsonValue::Kind::number: out += v.text; break;
        case JsonValue::Kind::text: printText(v.text, out); break;
        case JsonValue::Kind::list:
        case JsonValue::Kind::object: {
            const bool object = v.kind == JsonValue::Kind::object;
            out += object ? '{' : '[';
            for (std::size_t i = 0; i < v.items.size(); ++i) {
                if (i > 0) out += ", ";
                if (object) {
                    printText(v.keys[i], out);
                    out += ": ";
                }
                printFlat(v.items[i], out);
            }
            out += object ? '}' : ']';
            break;
        }
    }
}

/// Length on one line, counted only up to `most`.
std::size_t flatLength(const JsonValue& v, std::size_t most) {
    std::size_t length = 2 + v.text.size();
    for (std::size_t i = 0; i < v.items.size() && length <= most; ++i) {
        length += 2 + flatLength(v.items[i], most);
        if (v.kind == JsonValue::Kind::object) length += v.keys[i].size() + 4;
    }
    return length;
}

void print(const JsonValue& v, std::size_t indent, std::string& out) {
    constexpr std::size_t columns = 100;
    if (v.items.empty() || flatLength(v, columns) + indent <= columns) {
        printFlat(v, out);
        return;
    }
    const bool object = v.kind == JsonValue::Kind::object;
    out += object ? "{\n" : "[\n";
    for (std::size_t i = 0; i < v.items.size(); ++i) {
        out.append(indent + 2, ' ');
        if (object) {
            printText(v.keys[i], out);
            out += ": ";
        }
        print(v.items[i], indent + 2, out);
        out += i + 1 < v.items.size() ? ",\n" : "\n";
    }
    out.append(indent, ' ');
    out += object ? '}' : ']';
}

}  // namespace

const char* word(JsonValue::Kind kind) {
    switch (kind) {
        case JsonValue::Kind::null: return "null";
        case JsonValue::Kind::boolean: return "true or false";
        case JsonValue::Kind::number: return "a number";
        case JsonValue::Kind::text: return "a text";
        case JsonValue::Kind::list: return "a list";
        case JsonValue::Kind::object: return "an object";
    }
    return "null";
}

JsonValue JsonValue::ofText(std::string value) { JsonValue v; v.kind = Kind::text; v.text = std::move(value); return v; }
JsonValue JsonValue::ofNumber(std::string asWritten) { JsonValue v; v.kind = Kind::number; v.text = std::move(asWritten); return v; }
JsonValue JsonValue::ofFlag(bool value) { JsonValue v; v.kind = Kind::boolean; v.flag = value; return v; }
JsonValue JsonValue::list(std::vector<JsonValue> items) { JsonValue v; v.kind = Kind::list; v.items = std::move(items); return v; }
JsonValue JsonValue::object() { JsonValue v; v.kind = Kind::object; return v; }

JsonValue JsonValue::from(const Json& json) {
    if (json.is_null()) return {};
    if (json.is_boolean()) return ofFlag(json.get<bool>());
    if (json.is_number()) return ofNumber(json.dump());
    if (json.is_string()) return ofText(json.get<std::string>());
    if (json.is_array()) {
        JsonValue v = list();
        for (const Json& item : json) v.items.push_back(from(item));
        return v;
    }
    JsonValue v = object();
    for (const auto& [name, item] : json.items()) v.add(name, from(item));
    return v;
}

Json JsonValue::toJson() const {
    switch (kind) {
        case Kind::null: return nullptr;
        case Kind::boolean: return flag;
        case Kind::number: return Json::parse(text);
        case Kind::text: return text;
        case Kind::list: {
            Json out = Json::array();
            for (const JsonValue& item : items) out.push_back(item.toJson());
            return out;
        }
        case Kind::object: {
            Json out = Json::object();
            for (std::size_t i = 0; i < items.size(); ++i) out[keys[i]] = items[i].toJson();
            return out;
        }
    }
    return nullptr;
}

JsonValue& JsonValue::add(std::string key, JsonValue value) {
    keys.push_back(std::move(key));
    items.push_back(std::move(value));
    return *this;
}

const JsonValue* JsonValue::find(std::string_view key) const {
    for (std::size_t i = 0; i < keys.size(); ++i)
        if (keys[i] == key) return &items[i];
    return nullptr;
}

JsonValueRead readJsonValue(std::string_view text, const JsonBounds& bounds) {
    if (text.size() > bounds.bytes) {
        StorageError fault{StorageError::Code::tooLarge, {}, {}, {}};
        fault.facts["found"] = std::to_string(text.size()) + " bytes";
        fault.facts["allowed"] = "at most " + std::to_string(bounds.bytes) + " bytes";
        return {std::nullopt, fault};
    }
    Builder builder(bounds);
    if (Json::sax_parse(text.begin(), text.end(), &builder)) return {std::move(builder.root), std::nullopt};
    StorageError fault = builder.fault.value_or(StorageError{StorageError::Code::notAPlan, {}, {}, {}});
    if (builder.faultAt > 0) {
        const std::string_view before = text.substr(0, std::min(builder.faultAt - 1, text.size()));
        const auto line = std::count(before.begin(), before.end(), '\n') + 1;
        const std::size_t start = before.rfind('\n');
        fault.facts["line"] = std::to_string(line);
        fault.facts["column"] = std::to_string(before.size() - (start == std::string_view::npos ? 0 : start + 1) + 1);
        fault.place = "line " + fault.facts["line"] + ", column " + fault.facts["column"];
    }
    return {std::nullopt, fault};
}

std::string printJsonValue(const JsonValue& value) {
    std::string out;
    print(value, 0, out);
    out += '\n';
    return out;
}

}  // namespace hither
