#include "core/geometry/distance.h"

#include <array>
#include <utility>

#include "core/geometry/closed_forms.h"
#include "core/geometry/gjk.h"
#include "core/geometry/penetration.h"

namespace hither {
namespace {

CoreSeparation generalSeparation(const CorePair& pair) {
    const GjkResult found = gjk(pair, Vec3::Zero(), pair.p_AB);
    if (!found.overlap && found.separation.distance > 1e-4 * found.scale) return found.separation;
    const bool apart = !found.overlap && found.separation.distance > 1e-12 * found.scale &&
                       pair.gapAlong(found.separation.n) > 0;
    return nearOrOverlapping(pair, apart ? found.separation.n : Vec3(Vec3::Zero()));
}

// A.kind <= B.kind.
CoreSeparation separation(const CorePair& pair) {
    switch (pair.A.kind) {
        case CoreKind::point:
            if (pair.B.kind == CoreKind::box) return pointToBox(pair);
            if (pair.B.kind == CoreKind::cylinder) return pointToCylinder(pair);
            break;
        case CoreKind::segment:
            if (pair.B.kind == CoreKind::box) {
                if (const auto apart = segmentToBox(pair)) return *apart;
            }
            break;
        case CoreKind::box:
        case CoreKind::cylinder:
        case CoreKind::hull:
            break;
    }
    return generalSeparation(pair);
}

// From the separation of the cores, in axes that R_W turns into W's, from A's centre.
Distance rounded(const CoreSeparation& found, const Mat3& R_W, const Vec3& p_WA, double roundingA, double roundingB) {
    Distance result;
    result.distance = found.distance - roundingA - roundingB;
    result.normal_AB = (R_W * found.n).normalized();
    result.p_WA = p_WA + R_W * found.a + roundingA * result.normal_AB;
    result.p_WB = result.p_WA + result.distance * result.normal_AB;
    return result;
}

bool isRod(const Solid& s) { return s.kind == SolidKind::sphere || s.kind == SolidKind::capsule; }

// Balls and capsules need no frames, only their axes: half of the time of a query would go into the frames.
Distance betweenRods(const Solid& A, const Pose& X_WA, const Vec3& p_WA, const Solid& B, const Pose& X_WB, const Vec3& p_WB) {
    const Vec3 p = p_WB - p_WA;
    const auto axis = [](const Solid& s, const Pose& X_WF) { return Vec3(X_WF.linear() * s.X_FG.linear().col(2)); };
    CoreSeparation found;
    if (B.kind == SolidKind::sphere) {
        found = pointToPoint(p);
    } else if (A.kind == SolidKind::sphere) {
        found = pointToSegment(p, axis(B, X_WB), B.half.z());
    } else {
        found = segmentToSegment({axis(A, X_WA), A.half.z(), p, axis(B, X_WB), B.half.z()});
    }
    Distance result;
    result.distance = found.distance - A.radius - B.radius;
    result.normal_AB = found.n;
    result.p_WA = p_WA + found.a + A.radius * found.n;
    result.p_WB = result.p_WA + result.distance * found.n;
    return result;
}

// A's kind of core is not after B's.
Distance sortedDistance(const Solid& A, const Pose& X_WA, const Solid& B, const Pose& X_WB) {
    const Vec3 p_WA = X_WA * Vec3(A.X_FG.translation());
    const Vec3 p_WB = X_WB * Vec3(B.X_FG.translation());
    if (isRod(A) && isRod(B)) return betweenRods(A, X_WA, p_WA, B, X_WB, p_WB);
    const Mat3 R_WB = X_WB.linear() * B.X_FG.linear();
    CorePair pair{Core(A), Core(B), R_WB, p_WB - p_WA};
    if (A.kind == SolidKind::sphere) {  // any frame will do for a ball: W's axes
        return rounded(separation(pair), Mat3::Identity(), p_WA, pair.A.rounding, pair.B.rounding);
    }
    const Mat3 R_WA = X_WA.linear() * A.X_FG.linear();
    pair.R_AB = R_WA.transpose() * R_WB;
    pair.p_AB = R_WA.transpose() * pair.p_AB;
    return rounded(separation(pair), R_WA, p_WA, pair.A.rounding, pair.B.rounding);
}

// Where the kind of core stands in the order in which a pair is sorted.
int order(const Solid& s) {
    constexpr std::array<int, 6> place{0, 1, 3, 2, 2, 4};  // by SolidKind: both kinds of box alike, cylinders after them
    return place[static_cast<std::size_t>(s.kind)];
}

}  // namespace

Distance distance(const Solid& A, const Pose& X_WA, const Solid& B, const Pose& X_WB) {
    if (order(A) <= order(B)) return sortedDistance(A, X_WA, B, X_WB);
    Distance result = sortedDistance(B, X_WB, A, X_WA);
    std::swap(result.p_WA, result.p_WB);
    result.normal_AB = -result.normal_AB;
    return result;
}

}  // namespace hither
