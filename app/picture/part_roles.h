#pragma once
#include <optional>
#include <vector>

#include "core/catalogue/part.h"

namespace hither {

/// What a solid of a part is for, as far as its shape and its place among the others tell.
enum class SolidRole {
    body,     ///< a casing, a block, a plate
    turned,   ///< round about the line along which the part passes its load on
    hub,      ///< a cheek on the pin of a hinge
    knob,     ///< turned by hand to lock something
    shaft,    ///< the screw of a knob
    screw,    ///< turned with a tool
    pin,      ///< a short rod across
    rod,      ///< an arm's rod, a leg, a lever's stick
    ball      ///< of a ball joint
};

/// A line in an element's incoming frame. `clicks`: the step of a hinge or swivel about it, rad.
struct RoleLine { Vec3 at = Vec3::Zero(), along = Vec3::UnitZ(); std::optional<double> clicks; };

/// The joints before and after a rigid element, and the lines through it.
struct RigidContext {
    std::optional<RoleLine> hingeBefore, hingeAfter, swivelBefore, swivelAfter, slideBefore, slideAfter;
    std::optional<Vec3> ballBefore, ballAfter;      ///< centres of ball joints
    RoleLine in, out;                               ///< z of the incoming and of the outgoing frame
};
RigidContext contextOf(const Part& part, std::size_t element);

/// One role a solid of the element, in their order. The element must be rigid.
std::vector<SolidRole> solidRoles(const Part& part, std::size_t element, const RigidContext& context);

/// The ends of a capsule's or cylinder's axis in the frame that carries it.
Vec3 lowEnd(const Solid& solid);
Vec3 highEnd(const Solid& solid);
/// Its outer end first: b is farther from the other solids of its element than a.
struct Ends { Vec3 a = Vec3::Zero(), b = Vec3::Zero(); };
Ends outwardEnds(const std::vector<Solid>& solids, std::size_t which);
/// Distance of a point from the nearest of the solids but one (-1: none left out); negative inside.
double distanceToOthers(const std::vector<Solid>& solids, int leftOut, const Vec3& point);
/// Whether the end of a capsule or cylinder (its higher one, or the lower) lies inside the other solids.
bool isBuried(const std::vector<Solid>& solids, std::size_t which, bool high);
bool onLine(const RoleLine& line, const Solid& solid);

/// Whether something locks a joint (its lock group, or a hold of its own, but for swivels and necks that
/// friction keeps) and no knob is among the part's solids beside it: then one is drawn.
bool needsOwnKnob(const Part& part, std::size_t jointElement);
/// Whether a word, or its plural, is among the part's search words.
bool saysWord(const Part& part, const std::string& word);

}  // namespace hither
