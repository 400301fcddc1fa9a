#pragma once
#include <optional>
#include <vector>

#include <QString>

#include "app/widgets/number_field.h"
#include "core/chain/setup.h"
#include "core/plan/edits/edited.h"

namespace hither {

/// What can be set on a mount: where its grip sits, how a part is turned on its thread, how a joint stands.
struct SettingOf {
    enum class What { place, clocking, joint } what = What::joint;
    int part = 0;
    std::string joint;      ///< joint: the element's name
    bool operator==(const SettingOf&) const = default;
};

/// One number of a setting as a person sets it. A ball's swing and a neck's bends are shown by what one sees.
struct Dial {
    enum class What { along, around, x, y, yaw, clocking, value, swingToward, swingSideways, twist, bend, bendDirection } what = What::value;
    int arc = 0;                   ///< bend, bendDirection: which of the neck's three
    QString name;                  ///< "Angle", "Bend near the support"
    NumberField::Of of = NumberField::Of::angle;
    double min = 0, max = 0;
    bool fullTurn = false;         ///< wraps: no limit
    std::optional<double> step;    ///< it clicks
    double firstStep = 0;          ///< where its clicks count from
    double value = 0;
    bool usable = true;            ///< a straight neck has no direction
};

struct Setting {
    SettingOf of;
    QString part;                  ///< "2 Single-lock arm"
    QString title;                 ///< "Elbow"
    QString about;                 ///< "locks together with Ball1, Ball2"; may be empty
    bool kept = false;
    std::optional<bool> fromBelow; ///< place on an edge
    std::vector<Dial> dials;
    /// Whether only values differ: the same widgets can show both.
    bool sameShape(const Setting& other) const;
};

/// The settings of a mount, from support to switch; `part` -1: of all its parts. `setup` holds the mount's support.
std::vector<Setting> settingsOf(const Plan& plan, const Setup& setup, const SetupMount& mount, int part);

/// The value at which a dial stays: the nearest click, within its range, a full turn brought to (-180, 180] degrees.
double settled(const Dial& dial, double value);

/// Edits. `plan` is the one to change; the other numbers of the setting stay but for a ball's or bend's other
/// number, which gives way where both together would be beyond the limit.
Edited withDial(const Plan& plan, const std::string& option, const std::string& mount, const SettingOf& of, const Dial& dial, double value);
Edited withKept(const Plan& plan, const std::string& option, const std::string& mount, const SettingOf& of, bool kept);
Edited withFromBelow(const Plan& plan, const std::string& option, const std::string& mount, bool fromBelow);
/// All at zero, or the end of the range that is nearest to it. Not for a place.
Edited atHome(const Plan& plan, const std::string& option, const std::string& mount, const SettingOf& of);

/// What is said of undoing a change of this setting: "Set the elbow of Single-lock arm".
QString settingLabel(const Plan& plan, const std::string& option, const std::string& mount, const Setting& setting);
/// A dial's value, and its limits, in words.
QString dialWords(const Dial& dial, double value, UnitSystem units);
QString dialLimits(const Dial& dial, UnitSystem units);   ///< empty: no limit

}  // namespace hither
