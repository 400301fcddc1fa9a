#include "core/geometry/distance.h"

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
            switch (pair.B.kind) {
                case CoreKind::point:
                    return pointToPoint(pair);
                case CoreKind::segment:
                    return pointToSegment(pair);
                case CoreKind::box:
                    return pointToBox(pair);
                case CoreKind::cylinder:
                    return pointToCylinder(pair);
                case CoreKind::hull:
                    break;
            }
            break;
        case CoreKind::segment:
            if (pair.B.kind == CoreKind::segment) return segmentToSegment(pair);
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

Distance sortedDistance(const Core& A, const Mat3& R_WA, const Vec3& p_WA, const Core& B, const Mat3& R_WB, const Vec3& p_WB) {
    const CorePair pair{A, B, R_WA.transpose() * R_WB, R_WA.transpose() * (p_WB - p_WA)};
    const CoreSeparation found = separation(pair);
    Distance result;
    result.distance = found.distance - A.rounding - B.rounding;
    result.normal_AB = (R_WA * found.n).normalized();
    result.p_WA = p_WA + R_WA * found.a + A.rounding * result.normal_AB;
    result.p_WB = result.p_WA + result.distance * result.normal_AB;
    return result;
}

}  // namespace

Distance distance(const Solid& A, const Pose& X_WA, const Solid& B, const Pose& X_WB) {
    const Core coreA(A);
    const Core coreB(B);
    const Mat3 R_WA = X_WA.linear() * A.X_FG.linear();
    const Mat3 R_WB = X_WB.linear() * B.X_FG.linear();
    const Vec3 p_WA = X_WA * Vec3(A.X_FG.translation());
    const Vec3 p_WB = X_WB * Vec3(B.X_FG.translation());
    if (coreA.kind <= coreB.kind) return sortedDistance(coreA, R_WA, p_WA, coreB, R_WB, p_WB);
    Distance result = sortedDistance(coreB, R_WB, p_WB, coreA, R_WA, p_WA);
    std::swap(result.p_WA, result.p_WB);
    result.normal_AB = -result.normal_AB;
    return result;
}

}  // namespace hither
