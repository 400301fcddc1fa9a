#pragma once
#include <string>
#include <vector>

#include "core/geometry/pose.h"
#include "core/units/basis.h"

namespace hither {

enum class AttachmentKind { rail, edge, face, cloth };
enum class Section { round, square };

/// A part of a rail that may not be used: a stretch along it, or a sector round it (a weld, a
/// bracket, the side toward a wheel). Angles as in the grip's "around".
struct Blocked {
    double from_m = 0, to_m = 0;
    double sectorFrom_rad = 0, sectorTo_rad = 0;
    bool wholeTurn = true;
    std::string why;
    bool operator==(const Blocked&) const = default;
};

/// Where a mount can be fixed. Points are in the support's frame S with every moving group at its
/// zero. The frame a grip takes (origin on the surface, z away from it):
///   rail  line a -> b, section size `outside_m`; at `along` from a and `around` about a -> b:
///         x = unit(b - a); z = `reference` turned about x by `around` (right hand);
///         origin = point on the line + z * outside / 2.
///   edge  line a -> b on the border of the plate's upper surface; `up` = that surface's normal;
///         up x unit(b - a) points into the plate. From above: x = unit(b - a), z = up, origin on the
///         line. From below: x = -unit(b - a), z = -up, origin `thickness` below the line.
///   face  middle `a`, x axis `reference`, normal `up`, sizes; z = up; x = reference turned by yaw.
///   cloth line a -> b, `up` = away from the body; x = unit(b - a), z = up.
struct Attachment {
    std::string id, name;
    AttachmentKind kind = AttachmentKind::rail;
    std::string group;               ///< moving group it belongs to; empty: fixed
    Vec3 a = Vec3::Zero(), b = Vec3::Zero();
    Vec3 reference = Vec3::UnitZ();
    Vec3 up = Vec3::UnitZ();
    Section section = Section::round;
    std::string tubeAsTyped;         ///< rail: "7/8 in", "NPS 3/4"
    Figure outside_m;                ///< rail
    Figure thickness_m;              ///< edge, cloth
    double depth_m = 0;              ///< edge: how far in it is free, above and below
    double sizeX_m = 0, sizeY_m = 0; ///< face
    std::vector<Blocked> blocked;
    /// Solids of the support (by name) that are this very tube or plate: the grip may touch them.
    std::vector<std::string> solids;

    double length_m() const { return (b - a).norm(); }
    bool operator==(const Attachment&) const = default;
};

/// Where on an attachment a grip sits; only the numbers of its kind matter.
struct Placement {
    double along_m = 0;      ///< rail, edge, cloth
    double around_rad = 0;   ///< rail
    bool fromBelow = false;  ///< edge
    double x_m = 0, y_m = 0, yaw_rad = 0;  ///< face
    bool operator==(const Placement&) const = default;
};
/// The grip's frame in S (group at zero), as described above.
Pose gripFrame(const Attachment& attachment, const Placement& placement);

}  // namespace hither
