#pragma once
#include <map>
#include <string>
#include <vector>

#include "core/situation/attachment.h"

namespace hither {

/// The values of one joint, SI, in the order of its element (hinge, swivel, slide: 1; ball: a, b,
/// twist; bend: kx1, ky1 ... kx3, ky3). `kept`: locked, the solver leaves it alone.
struct JointSetting {
    std::vector<double> q;
    bool kept = false;
    bool operator==(const JointSetting&) const = default;
};

/// One part in a mount. `clocking_rad` is the turn of its base port frame about z against the
/// outlet before it (only where that mate leaves one). Joints not named are at home (0, or the
/// nearest value within the range).
struct MountPart {
    std::string part;   ///< part id
    bool reversed = false;
    double clocking_rad = 0;
    bool clockingKept = false;
    std::map<std::string, JointSetting> joints;  ///< by element name
    bool operator==(const MountPart&) const = default;
};

/// A mount as it is planned: what it is fixed to, where, and its parts from support to switch.
struct Mount {
    std::string id, name;
    std::string support, attachment;
    Placement place;
    bool placeKept = false;
    std::vector<MountPart> parts;
    std::string site;   ///< the site its switch serves; may be empty while building
    bool operator==(const Mount&) const = default;
};

/// More parts than this in one mount is an error in the file, not a mount.
constexpr std::size_t mostPartsInMount = 64;

}  // namespace hither
