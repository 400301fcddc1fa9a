#include "core/catalogue/json_form.h"

#include <algorithm>
#include <cmath>

#include <nlohmann/json.hpp>

namespace hither {

using nlohmann::json;

void ProblemList::add(const std::string& key, std::string found, std::string allowed) {
    // A hostile file must not fill the memory with complaints about itself.
    constexpr std::size_t most = 1000;
    if (list.size() < most) list.push_back({file, part, key, std::move(found), std::move(allowed)});
}

std::string quoted(const json& value) {
    if (value.is_object()) return value.empty() ? "an empty object" : "an object";
    if (value.is_array()) return value.size() > 8 || value.empty() ? "a list of " + std::to_string(value.size()) : [&] {
        std::string list = "[";
        for (std::size_t i = 0; i < value.size(); ++i) list += (i ? ", " : "") + (value[i].is_structured() ? std::string("...") : quoted(value[i]));
        return list + "]";
    }();
    std::string text = value.dump(-1, ' ', false, json::error_handler_t::replace);
    constexpr std::size_t longest = 60;
    if (text.size() > longest) {
        std::size_t cut = longest;
        while (cut > 0 && (static_cast<unsigned char>(text[cut]) & 0xC0u) == 0x80u) --cut;  // not inside a letter
        text = text.substr(0, cut) + "...";
    }
    return text;
}

JsonForm::JsonForm(const json& value, std::string path, ProblemList& problems)
    : json_(value), path_(std::move(path)), problems_(problems), object_(value.is_object()) {
    if (!object_) problems_.add(path_, quoted(value), "an object");
}

std::string JsonForm::at(const std::string& key) const { return path_.empty() ? key : path_ + "/" + key; }

const json* JsonForm::take(const char* key) {
    known_.emplace_back(key);
    if (!object_) return nullptr;
    const auto found = json_.find(key);
    return found == json_.end() || found->is_null() ? nullptr : &*found;
}

bool JsonForm::has(const char* key) { return take(key) != nullptr; }

void JsonForm::problem(const std::string& key, std::string allowed) {
    const auto found = object_ ? json_.find(key) : json_.end();
    problem(key, object_ && found != json_.end() ? quoted(*found) : "nothing", std::move(allowed));
}

void JsonForm::problem(const std::string& key, std::string found, std::string allowed) {
    if (object_) problems_.add(at(key), std::move(found), std::move(allowed));  // what is no object was reported once
}

namespace {

bool within(double value, const FormRange& range) {
    if (!std::isfinite(value)) return false;
    if (range.above ? value <= range.min : value < range.min) return false;
    return range.below ? value < range.max : value <= range.max;
}

std::optional<double> plainNumber(const json& value, const FormRange& range) {
    if (!value.is_number()) return std::nullopt;
    const double number = value.get<double>();
    if (!within(number, range)) return std::nullopt;
    return number;
}

std::optional<Vec3> plainVector(const json& value, const FormRange& range) {
    if (!value.is_array() || value.size() != 3) return std::nullopt;
    Vec3 v;
    for (std::size_t i = 0; i < 3; ++i) {
        const auto number = plainNumber(value[i], range);
        if (!number) return std::nullopt;
        v[static_cast<Eigen::Index>(i)] = *number;
    }
    return v;
}

Vec3 toSI(const Vec3& v, const FormUnit& unit) {
    return {hither::toSI(v.x(), unit), hither::toSI(v.y(), unit), hither::toSI(v.z(), unit)};
}

}  // namespace

std::optional<double> JsonForm::number(const char* key, const FormUnit& unit, const FormRange& range) {
    const json* value = take(key);
    if (!value) return std::nullopt;
    const auto number = plainNumber(*value, range);
    if (!number) {
        problem(key, range.words(unit));
        return std::nullopt;
    }
    return hither::toSI(*number, unit);
}

double JsonForm::numberOr(const char* key, double fallbackSI, const FormUnit& unit, const FormRange& range) {
    return number(key, unit, range).value_or(fallbackSI);
}

double JsonForm::need(const char* key, const FormUnit& unit, const FormRange& range) {
    if (!has(key)) problem(key, range.words(unit));
    return number(key, unit, range).value_or(0.0);
}

Vec3 JsonForm::vectorOr(const char* key, const Vec3& fallbackSI, const FormUnit& unit, const FormRange& range) {
    const json* value = take(key);
    if (!value) return fallbackSI;
    const auto v = plainVector(*value, range);
    if (!v) {
        problem(key, "[x, y, z], each " + range.words(unit));
        return fallbackSI;
    }
    return toSI(*v, unit);
}

Vec3 JsonForm::needVector(const char* key, const FormUnit& unit, const FormRange& range) {
    if (!has(key)) problem(key, "[x, y, z], each " + range.words(unit));
    return vectorOr(key, Vec3::Zero(), unit, range);
}

Vec3 JsonForm::axisOr(const char* key, const Vec3& fallback) {
    const FormRange range{-1e6, 1e6};
    const Vec3 v = vectorOr(key, fallback, form::plain, range);
    const double norm = v.norm();
    if (norm < 1e-6) {
        problem(key, "[x, y, z] that is a direction: not zero");
        return fallback;
    }
    // A vector that is of unit length to rounding stays as it is, so that reading, writing and
    // reading again give the same numbers.
    return std::abs(v.squaredNorm() - 1) < 1e-14 ? v : (v / norm).eval();
}

Mat3 JsonForm::turnOr(const char* key) {
    const Vec3 rpy = vectorOr(key, Vec3::Zero(), form::degree, {-360, 360});
    if (rpy.isZero(0)) return Mat3::Identity();
    // By way of the angles as they will be written, so that reading what was written gives the very
    // same numbers.
    const json written = writeTurn(rotationFromRollPitchYaw(rpy.x(), rpy.y(), rpy.z()));
    const Vec3 same = toSI(*plainVector(written, {}), form::degree);
    return rotationFromRollPitchYaw(same.x(), same.y(), same.z());
}

int JsonForm::wholeOr(const char* key, int fallback, int min, int max) {
    const json* value = take(key);
    if (!value) return fallback;
    if (value->is_number()) {
        const double number = value->get<double>();
        if (std::isfinite(number) && number == std::floor(number) && number >= min && number <= max) return static_cast<int>(number);
    }
    problem(key, "a whole number from " + std::to_string(min) + " to " + std::to_string(max));
    return fallback;
}

bool JsonForm::flagOr(const char* key, bool fallback) {
    const json* value = take(key);
    if (!value) return fallback;
    if (value->is_boolean()) return value->get<bool>();
    problem(key, "true or false");
    return fallback;
}

std::string JsonForm::textOr(const char* key, const std::string& fallback, std::size_t longest) {
    const json* value = take(key);
    if (!value) return fallback;
    if (value->is_string() && value->get_ref<const std::string&>().size() <= longest) return value->get<std::string>();
    problem(key, "text of at most " + std::to_string(longest) + " bytes");
    return fallback;
}

std::string JsonForm::needText(const char* key, std::size_t longest) {
    const std::size_t before = problems_.list.size();
    const std::string text = textOr(key, "", longest);
    const bool blank = text.find_first_not_of(" \t\r\n") == std::string::npos;
    if (blank && problems_.list.size() == before) problem(key, "text that is not empty");
    return text;
}

std::vector<std::pair<const json*, std::string>> JsonForm::items(const char* key, std::size_t most) {
    std::vector<std::pair<const json*, std::string>> list;
    const json* value = take(key);
    if (!value) return list;
    if (!value->is_array() || value->size() > most) {
        problem(key, "a list of at most " + std::to_string(most));
        return list;
    }
    for (std::size_t i = 0; i < value->size(); ++i) list.emplace_back(&(*value)[i], at(key) + "/" + std::to_string(i));
    return list;
}

std::vector<std::string> JsonForm::texts(const char* key, std::size_t most) {
    std::vector<std::string> list;
    for (const auto& [item, path] : items(key, most)) {
        if (item->is_string() && item->get_ref<const std::string&>().size() <= 200 && !item->get_ref<const std::string&>().empty())
            list.push_back(item->get<std::string>());
        else
            problems_.add(path, quoted(*item), "text of 1 to 200 bytes");
    }
    return list;
}

int JsonForm::choice(const char* key, std::initializer_list<const char*> words, int fallback) {
    const json* value = take(key);
    if (!value && fallback >= 0) return fallback;
    std::string allowed;
    int index = 0;
    for (const char* word : words) {
        if (value && value->is_string() && value->get_ref<const std::string&>() == word) return index;
        allowed += (index++ ? ", " : "") + std::string(word);
    }
    problem(key, "one of " + allowed);
    return std::max(fallback, 0);
}

Basis JsonForm::basisOr(const char* key, const Basis& fallback) {
    const json* value = take(key);
    if (!value) return fallback;
    const char* allowed = "measured, published, assumed, or {\"kind\": one of these, \"source\": text}";
    const auto kindOf = [](const json& word) -> std::optional<BasisKind> {
        if (!word.is_string()) return std::nullopt;
        const auto kind = basisFromWord(word.get_ref<const std::string&>());
        return kind == BasisKind::unknown ? std::nullopt : kind;
    };
    if (value->is_object()) {
        JsonForm inner(*value, at(key), problems_);
        const json* word = inner.take("kind");
        const auto kind = word ? kindOf(*word) : std::nullopt;
        if (!kind) inner.problem("kind", "measured, published or assumed");
        Basis basis{kind.value_or(fallback.kind), inner.textOr("source", "", 500)};
        inner.finish();
        return basis;
    }
    if (const auto kind = kindOf(*value)) return {*kind, {}};
    problem(key, allowed);
    return fallback;
}

Figure JsonForm::figure(const char* key, const Basis& fallback, const FormUnit& unit, const FormRange& range) {
    const json* value = take(key);
    if (!value) return {};
    if (!value->is_object()) {
        const auto number = plainNumber(*value, range);
        if (number) return {hither::toSI(*number, unit), fallback};
        problem(key, range.words(unit) + ", or {\"value\", \"basis\", \"source\"}");
        return {};
    }
    JsonForm inner(*value, at(key), problems_);
    const auto si = inner.number("value", unit, range);
    const json* word = inner.take("basis");
    Basis basis = fallback;
    if (word) {
        const auto kind = word->is_string() ? basisFromWord(word->get_ref<const std::string&>()) : std::nullopt;
        if (!kind || (kind == BasisKind::unknown && si)) inner.problem("basis", "measured, published or assumed");
        else basis = {*kind, {}};
    }
    if (inner.has("source")) basis.source = inner.textOr("source", "", 500);
    inner.finish();
    if (!si) return {std::nullopt, {BasisKind::unknown, word || inner.has("source") ? basis.source : std::string()}};
    return {si, basis};
}

void JsonForm::finish() {
    if (!object_) return;
    for (const auto& [key, value] : json_.items()) {
        if (std::find(known_.begin(), known_.end(), key) != known_.end()) continue;
        std::vector<std::string> names;
        for (const std::string& name : known_)
            if (std::find(names.begin(), names.end(), name) == names.end()) names.push_back(name);
        std::string allowed;
        for (const std::string& name : names) allowed += (allowed.empty() ? "" : ", ") + name;
        problems_.add(at(key.size() > 60 ? key.substr(0, 60) + "..." : key), "a key that does not exist", "the keys " + allowed);
    }
}

json writeVector(const Vec3& si, const FormUnit& unit) {
    return json::array({fromSI(si.x(), unit), fromSI(si.y(), unit), fromSI(si.z(), unit)});
}

json writeVectorRounded(const Vec3& si, const FormUnit& unit) {
    return json::array({fromSIRounded(si.x(), unit), fromSIRounded(si.y(), unit), fromSIRounded(si.z(), unit)});
}

json writeAxis(const Vec3& v) {
    const auto plain = [](double value) { return value == 0 ? 0.0 : value; };
    return json::array({plain(v.x()), plain(v.y()), plain(v.z())});
}

json writeTurn(const Mat3& R) {
    const double pitch = fromSIRounded(std::atan2(-R(2, 0), std::hypot(R(0, 0), R(1, 0))), form::degree);
    // The nearer pitch is to +-90 degrees, the less roll can be told from yaw: its last digits are
    // dropped accordingly, down to no roll at all, and yaw takes the rest.
    double roll = 0;
    if (std::abs(pitch) != 90) {
        const double lost = std::max(9 - 12 - std::floor(std::log10(std::cos(radians(pitch)))), 0.0);
        const double grid = std::pow(10.0, lost);
        roll = std::round(degrees(std::atan2(R(2, 1), R(2, 2))) * 1e9 / grid) * grid / 1e9;
    }
    const Mat3 R_yawPitch = R * rotationFromRollPitchYaw(radians(roll), 0, 0).transpose();
    const double yaw = fromSIRounded(std::atan2(-R_yawPitch(0, 1), R_yawPitch(1, 1)), form::degree);
    const auto plain = [](double value) { return value == -180 ? 180.0 : (value == 0 ? 0.0 : value); };
    return json::array({plain(roll), pitch, plain(yaw)});
}

json writeBasis(const Basis& basis) {
    if (basis.source.empty()) return word(basis.kind);
    return {{"kind", word(basis.kind)}, {"source", basis.source}};
}

void writeFigure(json& object, const char* key, const Figure& figure, const Basis& byDefault, const FormUnit& unit) {
    if (!figure.value) {
        if (!figure.basis.source.empty()) object[key] = {{"value", nullptr}, {"source", figure.basis.source}};
    } else if (figure.basis == byDefault) {
        object[key] = fromSI(*figure.value, unit);
    } else {
        json out = {{"value", fromSI(*figure.value, unit)}, {"basis", word(figure.basis.kind)}};
        if (!figure.basis.source.empty()) out["source"] = figure.basis.source;
        object[key] = std::move(out);
    }
}

}  // namespace hither
