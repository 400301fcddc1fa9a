#pragma once
#include <initializer_list>
#include <limits>
#include <optional>
#include <string>
#include <utility>
#include <vector>

#include <nlohmann/json_fwd.hpp>

#include "core/catalogue/part_problem.h"
#include "core/geometry/pose.h"
#include "core/units/basis.h"
#include "core/units/quantity.h"

namespace hither {

/// Where problems go while one file or one part is read.
struct ProblemList {
    std::string file, part;
    std::vector<PartProblem>& list;
    void add(const std::string& key, std::string found, std::string allowed);
};

/// A unit of the JSON form against its SI unit: SI = value * times / over. Lengths are divided, not
/// multiplied by 0.001, so that 38 mm is the same number as 0.038 typed in metres.
struct FormUnit { const char* word; double times = 1, over = 1; };
namespace form {
inline constexpr FormUnit plain{"", 1, 1};
inline constexpr FormUnit mm{"mm", 1, 1000};
inline constexpr FormUnit gram{"g", 1, 1000};
inline constexpr FormUnit degree{"degrees", 3.14159265358979323846 / 180.0, 1};  // the factor of hither::radians
inline constexpr FormUnit newton{"N", 1, 1};
inline constexpr FormUnit newtonMetre{"N m", 1, 1};
inline constexpr FormUnit newtonMetrePerRadian{"N m/rad", 1, 1};
inline constexpr FormUnit newtonPerMetre{"N/m", 1, 1};
inline constexpr FormUnit newtonMetreSquared{"N m2", 1, 1};
inline constexpr FormUnit perMetre{"1/m", 1, 1};
}  // namespace form

/// Form value -> SI.
double toSI(double value, const FormUnit& unit);
/// SI -> the form value with few digits that reads back as exactly this number; a number that no
/// form value reads as (about one in forty of those that were never read) moves by one last place.
double fromSI(double si, const FormUnit& unit);
/// SI -> form value rounded to 1e-9 of the unit: for numbers that were worked out of others, so that
/// writing what was read gives the same text again.
double fromSIRounded(double si, const FormUnit& unit);

/// Inclusive limits of a value in form units; `above` excludes the lower end itself.
struct FormRange {
    double min = -std::numeric_limits<double>::max();
    double max = std::numeric_limits<double>::max();
    bool above = false, below = false;  ///< the end itself is not allowed
    std::string words(const FormUnit& unit) const;  ///< "a number from 0 to 5000 mm"
};

/// Reads one JSON object key by key and lists every problem: a key that is missing, of the wrong
/// type, not finite, out of range, or that nobody asked for (`finish`). null counts as absent. After
/// a problem the caller gets a usable default and goes on, so that one pass finds all of them.
/// Also used for the JSON form of plans.
class JsonForm {
public:
    /// `path` is the place of `json` ("elements/0", empty for the top); what is no object is a problem.
    JsonForm(const nlohmann::json& json, std::string path, ProblemList& problems);

    bool isObject() const { return object_; }
    /// The value of a key, or null when it is absent; marks the key as known.
    const nlohmann::json* take(const char* key);
    bool has(const char* key);  ///< present and not null; marks the key as known
    std::string at(const std::string& key) const;  ///< path of a key of this object

    std::optional<double> number(const char* key, const FormUnit& unit, const FormRange& range);  ///< SI; empty when absent or wrong
    double numberOr(const char* key, double fallbackSI, const FormUnit& unit, const FormRange& range);
    double need(const char* key, const FormUnit& unit, const FormRange& range);  ///< absent is a problem; 0 then
    Vec3 vectorOr(const char* key, const Vec3& fallbackSI, const FormUnit& unit, const FormRange& range);
    Vec3 needVector(const char* key, const FormUnit& unit, const FormRange& range);
    Vec3 axisOr(const char* key, const Vec3& fallback);  ///< made unit; zero is a problem
    Mat3 turnOr(const char* key);                        ///< [roll, pitch, yaw] in degrees; absent: none
    int wholeOr(const char* key, int fallback, int min, int max);
    bool flagOr(const char* key, bool fallback);
    std::string textOr(const char* key, const std::string& fallback, std::size_t longest = 4000);
    std::string needText(const char* key, std::size_t longest = 200);  ///< not empty, not only blanks
    std::vector<std::string> texts(const char* key, std::size_t most);
    /// The word at a key as an index into `words`; `fallback` -1 makes it necessary.
    int choice(const char* key, std::initializer_list<const char*> words, int fallback);
    /// A list, each item with its path; absent is empty, more than `most` items is a problem.
    std::vector<std::pair<const nlohmann::json*, std::string>> items(const char* key, std::size_t most);

    Basis basisOr(const char* key, const Basis& fallback);  ///< "assumed" or {"kind", "source"}
    /// number | {"value", "basis", "source"} | absent = unknown.
    Figure figure(const char* key, const Basis& fallback, const FormUnit& unit, const FormRange& range);

    void problem(const std::string& key, std::string allowed);  ///< `found` is what stands at the key
    void problem(const std::string& key, std::string found, std::string allowed);
    ProblemList& problems() { return problems_; }
    /// Every key that nobody asked for is a problem that names those that exist.
    void finish();

private:
    const nlohmann::json& json_;
    std::string path_;
    ProblemList& problems_;
    std::vector<std::string> known_;
    bool object_;
};

/// A JSON value as it is quoted in a problem: short, on one line.
std::string quoted(const nlohmann::json& json);

nlohmann::json writeVector(const Vec3& si, const FormUnit& unit);
nlohmann::json writeVectorRounded(const Vec3& si, const FormUnit& unit);
nlohmann::json writeAxis(const Vec3& unitVector);
/// [roll, pitch, yaw] in degrees, pitch within +-90, rounded to 1e-9 degrees; near pitch +-90, where
/// roll and yaw are nearly one turn, roll has fewer digits and yaw takes the rest (0 roll at +-90).
/// The turn that reads back is within 2e-11 rad, and is written the same way again.
nlohmann::json writeTurn(const Mat3& R);
nlohmann::json writeBasis(const Basis& basis);
/// Adds a figure to an object: nothing when unknown, a plain number when its basis is the default.
void writeFigure(nlohmann::json& object, const char* key, const Figure& figure, const Basis& byDefault, const FormUnit& unit);

}  // namespace hither
