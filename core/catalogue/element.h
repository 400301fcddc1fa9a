#pragma once
#include <string>
#include <variant>
#include <vector>

#include "core/geometry/solid.h"
#include "core/units/basis.h"

namespace hither {

/// What holds a joint when it is locked, how it springs and how well it comes back.
struct JointFigures {
    Figure hold;          ///< N·m (turning joints, bends) or N (slides) resisted before it slips
    Figure stiffness;     ///< N·m/rad or N/m
    Figure settingError;  ///< one standard deviation when set by its marks, by protractor or by eye: rad, m, or 1/m for a bend
    std::string lockGroup;///< joints of one part that one knob locks together share a name; empty: its own lock
    bool operator==(const JointFigures&) const = default;
};

/// Elements are walked from the base port to the outlet. Each maps its incoming frame E to its
/// outgoing frame; solids are given in the incoming frame of the rigid element that carries them.

/// A stiff piece: E -> E * X. Mass in kg, centre of mass in E, bending stiffness along its own
/// line from E's origin to X's origin.
struct RigidElement {
    Pose X = Pose::Identity();
    std::vector<Solid> solids;
    Figure mass_kg;
    Vec3 centreOfMass = Vec3::Zero();
    Figure EI_Nm2, GJ_Nm2;
    friend bool operator==(const RigidElement& a, const RigidElement& b) {
        return a.X.affine() == b.X.affine() && a.solids == b.solids && a.mass_kg == b.mass_kg && a.centreOfMass == b.centreOfMass &&
               a.EI_Nm2 == b.EI_Nm2 && a.GJ_Nm2 == b.GJ_Nm2;
    }
};
/// Turns about `axis` (unit, through E's origin) by q in [min, max] rad.
struct HingeElement {
    Vec3 axis = Vec3::UnitX();
    double min = 0, max = 0;
    std::optional<double> detent;
    JointFigures joint;
    bool operator==(const HingeElement&) const = default;
};
/// Turns about E's z; the same as a hinge about z.
struct SwivelElement {
    double min = -3.14159265358979323846, max = 3.14159265358979323846;
    std::optional<double> detent;
    JointFigures joint;
    bool operator==(const SwivelElement&) const = default;
};
/// R = exp([a, b, 0]) Rz(t): swing (a, b) within the cone |(a, b)| <= cone, then twist t about the
/// swung axis. q = (a, b, t), rad.
struct BallElement {
    double cone = 0;
    double twistMin = -3.14159265358979323846, twistMax = 3.14159265358979323846;
    JointFigures joint;
    bool operator==(const BallElement&) const = default;
};
/// Moves along `axis` (unit) by q in [min, max] m; `step` when it stops only at holes or clicks.
struct SlideElement {
    Vec3 axis = Vec3::UnitZ();
    double min = 0, max = 0;
    std::optional<double> step;
    JointFigures joint;
    bool operator==(const SlideElement&) const = default;
};
/// A gooseneck of `length` along z made of three arcs of equal length, each of constant curvature:
/// over arc length s the frame turns by exp(s [kx, ky, 0]) and its origin follows its own z.
/// q = (kx1, ky1, kx2, ky2, kx3, ky3) in 1/m with |k| <= 1 / minRadius. `radius` is the neck's thickness.
struct BendElement {
    double length = 0;
    double minRadius = 0;
    double radius = 0.006;
    Figure mass_kg;   ///< of the whole neck, spread evenly
    Figure EI_Nm2;    ///< how it springs about its bent shape
    JointFigures joint;
    bool operator==(const BendElement&) const = default;
};

/// One element with the name by which plans set it ("elbow", "neck"); unique within the part and
/// empty only for rigid pieces.
struct Element {
    std::string name;
    std::variant<RigidElement, HingeElement, SwivelElement, BallElement, SlideElement, BendElement> what;
    int freedoms() const;  ///< 0, 1, 1, 3, 1, 6
    bool operator==(const Element&) const = default;
};

}  // namespace hither
