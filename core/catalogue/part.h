#pragma once
#include <optional>
#include <string>
#include <vector>

#include "core/catalogue/element.h"
#include "core/catalogue/grip.h"
#include "core/catalogue/port.h"
#include "core/units/quantity.h"

namespace hither {

enum class PartKind { grip, arm, neck, post, joint, adapter, back, switchDevice };

/// What a switch adds to a part. Its face frame is the outlet frame: origin at the middle of the
/// face, z out of the face toward the person.
struct SwitchFace {
    enum class Action { press, pull, sense };
    Action action = Action::press;
    /// Direction, in the face frame, in which the person's movement operates it: (0, 0, -1) for a
    /// button pressed into its face, the string's line for a string. Unit.
    Vec3 operatingAxis{0, 0, -1};
    Vec3 size = Vec3::Zero();   ///< of the face, x and y; z: thickness of the whole switch
    Figure travel_m;
    Figure force_N;             ///< activation force; 0 for one that needs none
    Figure angleTolerance_rad;  ///< how far off its axis it still answers
    Figure sensingRange_m;      ///< only for `sense`
    bool operator==(const SwitchFace&) const = default;
};

/// A volume that must stay free for the part to work: battery door, sensor window, cable exit.
struct KeepFree {
    std::string what;
    Solid solid;  ///< in the frame of the part's base port, joints at home
    bool operator==(const KeepFree&) const = default;
};

/// One kind of thing in the cupboard: data, never a class of its own. The chain is: base port
/// (toward the support), elements, outlet (toward the switch). A grip has `grips` instead of base
/// ports; a switch has `face` instead of an outlet. Several base ports are alternatives at the
/// same place (screw holes, or a flat back for a pad).
struct Part {
    std::string id;       ///< stable, lower case, "gooseneck-300"
    std::string name;     ///< "Gooseneck, 300 mm"
    PartKind kind = PartKind::adapter;
    std::vector<std::string> words;  ///< for search
    std::vector<Grip> grips;
    std::vector<Port> bases;
    std::vector<Element> elements;
    std::optional<Port> outlet;
    std::optional<SwitchFace> face;
    std::vector<KeepFree> keepFree;
    Basis dimensionsBasis;     ///< of lengths, ranges and solids not given a basis of their own
    Figure ratedLoad_kg;       ///< mass it may carry beyond its outlet
    std::optional<Money> price;
    Basis priceBasis;
    std::vector<std::string> tools;  ///< "4 mm hex key"
    int releaseActions = 1;    ///< how many things to do to take it off
    bool reversible = false;   ///< may be built in either way round
    std::string whereToBuy, notes;

    Figure totalMass_kg() const;  ///< unknown as soon as one piece's mass is
    bool operator==(const Part&) const = default;
};

const char* word(PartKind kind);

/// The same part turned end for end: outlet and base change places and every element is mirrored
/// so that the poses it can take are the same. Only for parts marked reversible with one base.
Part reversed(const Part& part);

}  // namespace hither
