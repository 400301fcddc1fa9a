#pragma once
#include "core/geometry/solid.h"

namespace hither {

/// What is left of a solid when its rounding is taken off: a sphere is a point, a capsule a segment, a
/// rounded box a smaller box; a cylinder, a box and a hull are their own cores. The order is that in
/// which a pair is sorted. All in the solid's own frame G, metres.
enum class CoreKind { point, segment, box, cylinder, hull };

struct Core {
    CoreKind kind = CoreKind::point;
    Vec3 half = Vec3::Zero();
    double radius = 0;  ///< of a cylinder's discs; not a rounding
    double rounding = 0;
    const Hull* hull = nullptr;

    explicit Core(const Solid& solid);
    /// A point of the core farthest along n (of any length).
    Vec3 support(const Vec3& n) const;
};

/// Two cores in the first one's frame G_A, where positions are small and keep their digits. The set
/// D = {b - a} of all differences is what distances are read from: its point nearest zero is the
/// least separation, and zero inside it means overlap.
struct CorePair {
    Core A;
    Core B;
    Mat3 R_AB;
    Vec3 p_AB;

    struct Support {
        Vec3 a;
        Vec3 b;
        Vec3 w;  ///< b - a
    };
    /// The point of D that is least along n: B's nearest and A's farthest point along n.
    Support least(const Vec3& n) const {
        Support s;
        s.a = A.support(n);
        s.b = p_AB + R_AB * B.support(-(R_AB.transpose() * n));
        s.w = s.b - s.a;
        return s;
    }
    /// Gap between the planes perpendicular to the unit vector n that touch A from ahead and B from behind;
    /// negative when they overlap along n. The signed distance is the largest over all n.
    double gapAlong(const Vec3& n) const { return n.dot(least(n).w); }
};

/// A signed separation of two cores: b - a = distance * n with n of unit length.
struct CoreSeparation {
    double distance = 0;
    Vec3 a = Vec3::Zero();
    Vec3 b = Vec3::Zero();
    Vec3 n = Vec3::UnitZ();
};

/// Some unit vector perpendicular to v, always the same for the same v.
Vec3 anyPerpendicular(const Vec3& v);

}  // namespace hither
