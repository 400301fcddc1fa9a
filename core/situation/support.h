#pragma once
#include <map>
#include <optional>
#include <string>
#include <vector>

#include "core/geometry/solid.h"
#include "core/situation/attachment.h"

namespace hither {

/// A piece of the support that moves as one: bed back section, leg section, chair recline,
/// whole-chair tilt. It turns about a line fixed in its parent (or in S when the parent is empty).
struct MovingGroup {
    std::string id, name;
    std::string parent;
    Vec3 pivot = Vec3::Zero();  ///< S, everything at zero
    Vec3 axis = Vec3::UnitY();  ///< unit; positive turns follow the right hand
    bool slides = false;        ///< moves along the axis (m) instead of turning (rad): height of a bed
    double min = 0, max = 0;
    double value = 0;           ///< present setting, within [min, max]
    bool operator==(const MovingGroup&) const = default;
};

struct SupportSolid {
    std::string name;
    Solid solid;
    std::string group;
    bool operator==(const SupportSolid&) const = default;
};
/// A point that anybody can find with a tape measure.
struct Landmark {
    std::string id, name;
    Vec3 p_S = Vec3::Zero();
    std::string group;
    bool operator==(const Landmark&) const = default;
};

/// What a person types about a support: which kind, the dimensions that differ from the kind's
/// defaults (keys as listed by `supportKinds`), and the settings of its moving groups.
struct SupportSpec {
    std::string id;     ///< unique in the plan
    std::string kind;   ///< "chair-manual", "bed", "tray", "custom" ...
    std::string name;
    std::map<std::string, double> dimensions;  ///< SI (m, rad) by key without unit: "seat_width"
    std::map<std::string, std::string> tubes;  ///< rail id -> size as typed ("7/8 in")
    std::map<std::string, double> settings;    ///< group id -> rad or m
    Vec3 at_m = Vec3::Zero();                  ///< where its frame S stands in W
    double yaw_rad = 0;
    std::string carriedBy, carriedByGroup;     ///< a tray goes with the chair's tilt; empty: stands on the floor
    /// Typed in by hand; for kind "custom" everything, for others in addition.
    std::vector<MovingGroup> groups;
    std::vector<Attachment> attachments;
    std::vector<Landmark> landmarks;
    std::vector<SupportSolid> solids;
    bool operator==(const SupportSpec&) const = default;
};

/// Where a person rests on a support, in S with every group at zero.
struct Resting {
    enum class Posture { none, seated, lying };
    Posture posture = Posture::none;
    Vec3 hip_S = Vec3::Zero();           ///< seated: middle of the line where seat and back meet; lying: mattress top at the hip pivot
    double seatAngle_rad = 0;            ///< seat plane above horizontal toward the front
    double backAngle_rad = 0;            ///< back plane behind vertical
    double footrest_z_m = 0;             ///< height of the foot plates, 0: floor
    std::string trunkGroup, seatGroup, legGroup;  ///< groups the body's parts go with
};

/// A support with its geometry made. Frame S: origin on the floor below the reference point (chair:
/// middle of the line where seat and back meet; bed: mattress centre line at the hip pivot; table and
/// tray: middle of the edge nearest the person), x forward, y left, z up.
struct Support {
    std::string id, kind, name;
    Pose X_WS = Pose::Identity();          ///< not counting what carries it
    std::string carriedBy, carriedByGroup;
    std::vector<MovingGroup> groups;
    std::vector<Attachment> attachments;
    std::vector<Landmark> landmarks;
    std::vector<SupportSolid> solids;
    Resting resting;
    BasisKind basis = BasisKind::assumed;  ///< of dimensions left at the kind's defaults; measured when all that count are typed

    const Attachment* attachment(const std::string& id) const;
    const MovingGroup* group(const std::string& id) const;
};

struct SupportDimension { std::string key; std::string means; double standard = 0, min = 0, max = 0; bool angle = false; };
/// The key as files have it, with its unit: "seat_width_mm", "back_range_deg".
std::string dimensionKey(const SupportDimension& dimension);
struct SupportKind { std::string kind, name, about; std::vector<SupportDimension> dimensions; };
/// The kinds that can be made: chair-manual, chair-tilt, chair-power, bed, tray, table, pushchair, pole, custom.
const std::vector<SupportKind>& supportKinds();

/// What is wrong with a typed support: `key` is the place below the support in the plan file's terms
/// ("dimensions/seat_width_mm", "settings/back_deg", "rails/post/size").
struct SupportProblem { std::string support, key, found, allowed; };
struct SupportMade { std::optional<Support> support; std::vector<SupportProblem> problems; };
SupportMade makeSupport(const SupportSpec& spec);

/// Settings of moving groups that differ from the present ones: (support id, group id) -> value.
using GroupSettings = std::map<std::pair<std::string, std::string>, double>;

/// Pose of a group's frame in S at given settings: identity with everything at zero. `group` empty: identity.
Pose groupPose_S(const Support& support, const std::string& group, const GroupSettings& settings = {});

}  // namespace hither
