#include "core/storage/json_object_reader.h"

#include <algorithm>
#include <charconv>

#include "core/storage/plan_rules.h"

namespace hither {
namespace {

using Code = StorageError::Code;
using Kind = JsonValue::Kind;

/// How a value is shown in a problem: short, and never a whole subtree.
std::string shown(const JsonValue& v) {
    if (v.kind == Kind::number) return v.text.substr(0, 60);
    if (v.kind == Kind::text) return "\"" + v.text.substr(0, 60) + "\"";
    if (v.kind == Kind::boolean) return v.flag ? "true" : "false";
    return word(v.kind);
}

}  // namespace

void ReadProblems::add(Code code, std::string place, std::string found, std::string allowed, std::string nearest) {
    if (full()) return;
    StorageError e{code, {}, std::move(place), {{"found", std::move(found)}, {"allowed", std::move(allowed)}}};
    if (!nearest.empty()) e.facts["nearest"] = std::move(nearest);
    list.push_back(std::move(e));
}

ObjectReader::ObjectReader(ReadProblems& problems, const JsonValue* value, std::string place)
    : problems_(problems), value_(value), place_(std::move(place)) {
    if (value_ != nullptr && value_->kind != Kind::object) {
        if (value_->kind != Kind::null) wrongType(place_, *value_, "an object");
        value_ = nullptr;
    }
}

const JsonValue* ObjectReader::raw(const std::string& key) {
    known_.push_back(key);
    return value_ == nullptr ? nullptr : value_->find(key);
}

const JsonValue* ObjectReader::get(const std::string& key) {
    const JsonValue* v = raw(key);
    return v != nullptr && v->kind == Kind::null ? nullptr : v;
}

void ObjectReader::missing(const std::string& key, const std::string& allowed) { problems_.add(Code::missingKey, placeOf(key), "nothing", allowed); }
void ObjectReader::problem(const std::string& key, Code code, std::string found, std::string allowed, std::string nearest) {
    problems_.add(code, placeOf(key), std::move(found), std::move(allowed), std::move(nearest));
}
void ObjectReader::wrongType(const std::string& place, const JsonValue& value, const std::string& allowed) {
    problems_.add(Code::wrongType, place, shown(value), allowed);
}
void ObjectReader::wrongWord(const std::string& key, const std::string& found, const std::vector<std::string>& words) {
    std::string all;
    for (const std::string& w : words) all += (all.empty() ? "" : ", ") + w;
    problems_.add(Code::badValue, placeOf(key), "\"" + found.substr(0, 60) + "\"", all, nearestName(found, words));
}

bool ObjectReader::text(const std::string& key, std::string& out) {
    const JsonValue* v = get(key);
    if (v == nullptr) return false;
    if (v->kind != Kind::text) {
        wrongType(placeOf(key), *v, "a text");
        return false;
    }
    out = v->text;
    return true;
}

bool ObjectReader::flag(const std::string& key, bool& out) {
    const JsonValue* v = get(key);
    if (v == nullptr) return false;
    if (v->kind != Kind::boolean) {
        wrongType(placeOf(key), *v, "true or false");
        return false;
    }
    out = v->flag;
    return true;
}

bool ObjectReader::whole(const std::string& key, int& out) {
    const JsonValue* v = get(key);
    if (v == nullptr) return false;
    int value = 0;
    const char* end = v->text.data() + v->text.size();
    if (v->kind == Kind::number) {
        const auto read = std::from_chars(v->text.data(), end, value);
        if (read.ec == std::errc{} && read.ptr == end) {
            out = value;
            return true;
        }
    }
    wrongType(placeOf(key), *v, "a whole number");
    return false;
}

bool ObjectReader::numberAt(ReadProblems& problems, const JsonValue& value, const std::string& place, Scale scale, double& out) {
    if (value.kind == Kind::number) {
        if (const std::optional<double> si = siFromText(value.text, scale)) {
            out = *si;
            return true;
        }
        problems.add(Code::badValue, place, value.text.substr(0, 60), "a finite number");
        return false;
    }
    problems.add(Code::wrongType, place, shown(value), "a number");
    return false;
}

bool ObjectReader::number(const std::string& key, Scale scale, double& out) {
    const JsonValue* v = get(key);
    return v != nullptr && numberAt(problems_, *v, placeOf(key), scale, out);
}

bool ObjectReader::vector(const std::string& key, Scale scale, Vec3& out) {
    const JsonValue* v = get(key);
    if (v == nullptr) return false;
    if (v->kind != Kind::list || v->items.size() != 3) {
        wrongType(placeOf(key), *v, "a list of three numbers [x, y, z]");
        return false;
    }
    Vec3 read = Vec3::Zero();
    for (int i = 0; i < 3; ++i)
        if (!numberAt(problems_, v->items[static_cast<std::size_t>(i)], placeOf(key) + "/" + std::to_string(i), scale, read[i])) return false;
    out = read;
    return true;
}

bool ObjectReader::pair(const std::string& key, Scale scale, double& a, double& b) {
    const JsonValue* v = get(key);
    if (v == nullptr) return false;
    if (v->kind != Kind::list || v->items.size() != 2) {
        wrongType(placeOf(key), *v, "a list of two numbers");
        return false;
    }
    // Both are read whatever comes of the first, so that both problems are listed.
    const bool first = numberAt(problems_, v->items[0], placeOf(key) + "/0", scale, a);
    const bool second = numberAt(problems_, v->items[1], placeOf(key) + "/1", scale, b);
    return first && second;
}

bool ObjectReader::texts(const std::string& key, std::vector<std::string>& out) {
    const std::vector<JsonValue>* items = list(key, planBounds::solids);
    if (items == nullptr) return false;
    for (std::size_t i = 0; i < items->size(); ++i) {
        if ((*items)[i].kind == Kind::text) out.push_back((*items)[i].text);
        else wrongType(placeOf(key) + "/" + std::to_string(i), (*items)[i], "a text");
    }
    return true;
}

bool ObjectReader::figure(const std::string& key, Scale scale, Figure& out) {
    const JsonValue* v = get(key);
    if (v == nullptr) return false;
    if (v->kind != Kind::object) {
        double value = 0;
        if (!numberAt(problems_, *v, placeOf(key), scale, value)) return false;
        out = {value, {BasisKind::assumed, {}}};
        return true;
    }
    ObjectReader o(problems_, v, placeOf(key));
    Figure read;
    double value = 0;
    if (o.number("value", scale, value)) {
        read.value = value;
        read.basis.kind = BasisKind::assumed;
    }
    o.choice<BasisKind>("basis", read.basis.kind, basisFromWord, {BasisKind::measured, BasisKind::published, BasisKind::assumed, BasisKind::unknown});
    o.text("source", read.basis.source);
    o.finish();
    out = read;
    return true;
}

bool ObjectReader::money(const std::string& key, std::optional<Money>& out, const std::string& currency) {
    const JsonValue* v = get(key);
    if (v == nullptr) return false;
    ObjectReader o(problems_, v, placeOf(key));
    std::string amount, code = currency;
    o.text("currency", code);
    if (!o.text("amount", amount)) {
        if (o.isObject() && v->find("amount") == nullptr) o.missing("amount", "a text such as \"12.50\"");
    } else if (const Parsed<Money> m = parseMoney(amount, code); m && m.value->currency == code) {
        out = m.value;
    } else {
        o.problem("amount", Code::badValue, "\"" + amount.substr(0, 60) + "\"", "an amount such as \"12.50\", its currency apart");
    }
    o.finish();
    return true;
}

const std::vector<JsonValue>* ObjectReader::list(const std::string& key, std::size_t most) {
    const JsonValue* v = get(key);
    if (v == nullptr) return nullptr;
    if (v->kind != Kind::list) {
        wrongType(placeOf(key), *v, "a list");
        return nullptr;
    }
    if (v->items.size() > most) {
        problems_.add(Code::badValue, placeOf(key), std::to_string(v->items.size()) + " entries", "at most " + std::to_string(most));
        return nullptr;
    }
    return &v->items;
}

const JsonValue* ObjectReader::map(const std::string& key) {
    const JsonValue* v = get(key);
    if (v == nullptr) return nullptr;
    if (v->kind != Kind::object) {
        wrongType(placeOf(key), *v, "an object");
        return nullptr;
    }
    return v;
}

void ObjectReader::finish() {
    if (value_ == nullptr) return;
    std::sort(known_.begin(), known_.end());
    known_.erase(std::unique(known_.begin(), known_.end()), known_.end());
    for (const std::string& key : value_->keys) {
        if (std::binary_search(known_.begin(), known_.end(), key)) continue;
        std::string all;
        for (const std::string& k : known_) all += (all.empty() ? "" : ", ") + k;
        problems_.add(Code::unknownKey, placeOf(key.substr(0, 100)), "a key that is not known", all, nearestName(key, known_));
    }
}

}  // namespace hither
