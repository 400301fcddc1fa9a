#pragma once
#include <map>
#include <optional>
#include <string>
#include <vector>

#include "core/chain/setup.h"
#include "core/units/basis.h"
#include "core/units/quantity.h"

namespace hither {

enum class Verdict { meets, close, misses, unknown };
const char* word(Verdict verdict);
/// For sorting: misses, unknown, close, meets.
int gravity(Verdict verdict);

enum class CheckKind { fit, reach, aim, clearance, personReach, hold, give, press, steady, returning, room, bedGaps, cords };
const char* word(CheckKind kind);

/// What a value and its limit are measured in (always SI inside).
enum class Measure { none, length, angle, mass, force, moment, ratio, count };

/// A thing that a finding is about: a part of a mount, a piece of the body, of a support, another
/// mount, a keep-out, a site.
struct Subject {
    enum class Kind { mount, part, body, support, keepOut, site };
    Kind kind = Kind::part;
    std::string id;          ///< mount id, segment word, support id, keep-out id, site id
    int part = -1;           ///< index in the mount
    std::string piece;       ///< part id, support solid name
    std::string name;        ///< how a sentence calls it
    bool operator==(const Subject&) const = default;
};

/// One moving group's setting: rad, or m for one that slides.
struct GroupAt { std::string support, group; double value = 0; bool slides = false; };

struct Witness { Vec3 a_W = Vec3::Zero(), b_W = Vec3::Zero(); };

/// A change that the editor can apply.
struct Remedy {
    enum class Kind { insertParts, replacePart, moveJoint, solve, measure, chooseGroup };
    Kind kind = Kind::measure;
    std::string mount;
    int part = -1;                    ///< insertParts: before this index; replacePart, moveJoint: this one
    std::vector<MountPart> insert;    ///< insertParts: what to put in; moveJoint: one part whose joints name the values
    std::vector<Part> partData;       ///< the parts to copy into the plan, one for each to put in; replacePart: the part to take instead
    std::optional<Money> price;
    std::string key;                  ///< of the sentence that offers it, with the finding's facts
};

/// One judgement about an option. `id` is stable while check and subjects stay the same, so that it
/// can be accepted with a note: "clearance:mount-1/2:body/forearm_right".
struct Finding {
    std::string id;
    CheckKind check = CheckKind::fit;
    std::vector<Subject> subjects;
    Verdict verdict = Verdict::unknown;
    std::optional<double> value, limit;
    Measure measure = Measure::none;
    BasisKind basis = BasisKind::assumed;
    std::string key;                            ///< names its sentence ("clearance.near")
    std::map<std::string, std::string> words;   ///< names and other text facts for the sentence
    std::map<std::string, std::pair<double, Measure>> facts;  ///< numbers for the sentence, SI
    std::optional<Witness> witness;
    std::vector<GroupAt> at;                    ///< settings at which it occurs, when not the present ones
    std::optional<Remedy> remedy;
};

/// The finding, and the remedy it offers, in one plain English sentence each. Lengths in the display's units.
std::string sentence(const Finding& finding, UnitSystem system);
std::string remedySentence(const Finding& finding, UnitSystem system);  ///< empty when it offers none

/// The finding's value, or its limit, as its sentence prints it; empty when it has none.
std::string valueWords(const Finding& finding, UnitSystem system);
std::string limitWords(const Finding& finding, UnitSystem system);

/// `meets`, `close` or `misses` for a value that must be at most (or at least) a limit; exactly at the limit passes.
Verdict judgeAtMost(double value, double limit);
Verdict judgeAtLeast(double value, double limit);

}  // namespace hither
