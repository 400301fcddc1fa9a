#pragma once
#include <string>
#include <variant>

#include "core/units/basis.h"

namespace hither {

/// Ways in which the first part of a mount holds the support. The grip's frame (the part's base
/// port frame) is laid on the attachment as core/situation/attachment.h says: origin on the
/// surface, z away from it. A wrap-leg stand has several grips; the attachment chosen decides.

/// Round or square tube of an outside size within [min, max].
struct RailGrip {
    Figure min_m, max_m;
    double width_m = 0.03;      ///< length of rail it covers
    double wall_m = 0.008;      ///< thickness of the jaw round the tube (for its solid)
    bool round = true, square = false;
    Figure holdTorque_Nm;       ///< about the rail before it slips round
    Figure holdAxial_N;         ///< along the rail before it slides
    bool operator==(const RailGrip&) const = default;
};
/// The border of a plate (tray, table top, shelf) of a thickness within [min, max].
struct EdgeGrip {
    Figure min_m, max_m;
    double width_m = 0.04;      ///< along the edge
    double throat_m = 0.05;     ///< how far it reaches over the plate
    double wall_m = 0.010;
    Figure holdMoment_Nm;
    Figure holdForce_N;
    bool operator==(const EdgeGrip&) const = default;
};
enum class FaceFixing { standing, suction, adhesive, hookAndLoop, screwed };
/// A flat surface at least as large as the footprint.
struct FaceGrip {
    double sizeX_m = 0.06, sizeY_m = 0.06;
    FaceFixing fixing = FaceFixing::adhesive;
    Figure holdMoment_Nm;
    Figure holdForce_N;
    bool operator==(const FaceGrip&) const = default;
};
/// Sheet, blanket or clothing up to a thickness. Soft: the position drifts.
struct ClothGrip {
    Figure max_m;
    Figure holdForce_N;
    Figure drift_m;             ///< one standard deviation of where it ends up
    bool operator==(const ClothGrip&) const = default;
};
using Grip = std::variant<RailGrip, EdgeGrip, FaceGrip, ClothGrip>;

}  // namespace hither
