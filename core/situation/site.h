#pragma once
#include <optional>
#include <string>

#include "core/situation/person.h"
#include "core/units/basis.h"

namespace hither {

/// How the place of a site is given: typed in W at the supports' settings of the plan, picked on the
/// body (point and direction in the segment's frame), or taken from a control site of the posture.
enum class SiteGiven { typed, onBody, fromPosture };

struct SiteSpec {
    std::string id, name;
    std::string controlSite;           ///< "elbow_right"; decides which body part it goes with; may be empty when typed without a person
    SiteGiven given = SiteGiven::typed;
    Vec3 point = Vec3::Zero();         ///< typed: W; onBody: segment frame; fromPosture: offset in the segment frame
    Vec3 direction = Vec3::UnitX();    ///< of the person's movement; typed: W; onBody: segment frame; fromPosture: segment frame, ignored unless `directionTyped`
    bool directionTyped = true;
    SegmentId segment;                 ///< onBody
    Figure movement_m;                 ///< length of the movement
    double tolerance_m = 0.010;        ///< radius within which the face must be
    double angleTolerance_rad = 0.3490658503988659;  ///< 20 degrees
    Figure force_N;                    ///< what the person can press with there
    Figure spread_m;                   ///< one standard deviation of where hits land
    /// Moving group it goes with when there is no body part to go with: support and group; empty: fixed in W.
    std::string goesWithSupport, goesWithGroup;
    bool operator==(const SiteSpec&) const = default;
};

/// A site with its place in W at the present settings. The switch's face centre belongs at p_W
/// with its operating axis along d_W.
struct Site {
    std::string id, name, controlSite;
    Vec3 p_W = Vec3::Zero();
    Vec3 d_W = Vec3::UnitX();          ///< unit: the way the body part moves
    Figure movement_m;
    double tolerance_m = 0, angleTolerance_rad = 0;
    Figure force_N, spread_m;
    std::string support, group;        ///< what carries it
    std::optional<SegmentId> segment;  ///< the body part that operates it
    /// Of its place: typed ones count as measured; one on the body is known as well as the body's size is.
    BasisKind basis = BasisKind::assumed;
};

}  // namespace hither
