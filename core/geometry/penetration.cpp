#include "core/geometry/penetration.h"

#include <array>
#include <cmath>

#include "core/geometry/expanding_polytope.h"
#include "core/geometry/gjk.h"

namespace hither {
namespace {

// Climbs to the direction of (locally) greatest separation: B is moved along n until the planes are `apart`, and
// the direction between the nearest points is the next n. The gap along it is never less: moved, the
// cores are |v| >= apart from each other, and moving back by apart - gap costs at most that times n.n'.
// At rest n reproduces itself, and the points found are the witnesses.
CoreSeparation climb(const CorePair& pair, Vec3 n, double scale) {
    CoreSeparation result;
    double gap = pair.gapAlong(n);
    // The turn shrinks by (depth + apart) / (radius of curvature + apart) a round: near for speed, but not so
    // near that the difference of the nearest points loses its digits.
    const double apart = std::max(1e-3 * scale, -0.3 * gap);
    double before = 0;
    for (int round = 0; round < 60; ++round) {
        const Vec3 shift = (apart - gap) * n;
        const GjkResult found = gjk(pair, shift, n);
        if (found.overlap) break;  // cannot be: the planes are apart; left for a scale of nearly nothing
        const CoreSeparation& moved = found.separation;
        const double turned = (moved.n - n).norm();
        result = {moved.distance - shift.dot(moved.n), moved.a, moved.b - shift, moved.n};
        if (turned < 1e-14) break;
        // Where the turns shrink by a steady factor c, they will add up to 1 / (1 - c) of this one.
        const double c = before > 0 ? turned / before : 0;
        before = turned;
        Vec3 next = moved.n;
        gap = result.distance;
        if (round >= 2 && c > 0.3 && c < 0.999) {
            const Vec3 far = (moved.n + c / (1 - c) * (moved.n - n)).normalized();
            const double farGap = pair.gapAlong(far);
            if (farGap > gap) {
                next = far;
                gap = farGap;
                before = 0;
            }
        }
        if (round > 4 && turned < 1e-11) break;
        n = next;
    }
    // The two points differ by distance * n up to what is left of the turn; share that.
    const Vec3 middle = 0.5 * (result.a + result.b);
    result.a = middle - 0.5 * result.distance * result.n;
    result.b = middle + 0.5 * result.distance * result.n;
    return result;
}

// For polytopes with few directions the greatest separation is along a face normal or a cross product of two edges.
Vec3 separatingAxis(const CorePair& pair) {
    Vec3 best = Vec3::UnitZ();
    double most = -std::numeric_limits<double>::infinity();
    const auto consider = [&](const Vec3& n) {
        const double across = n.norm();
        if (across < 1e-9) return;
        for (const double sign : {1.0, -1.0}) {
            const Vec3 unit = sign / across * n;
            const double gap = pair.gapAlong(unit);
            if (gap > most) {
                most = gap;
                best = unit;
            }
        }
    };
    for (int j = 0; j < 3; ++j) consider(pair.R_AB.col(j));
    for (int i = 0; i < 3; ++i) {
        if (pair.A.kind == CoreKind::segment && i < 2) continue;
        if (pair.A.kind == CoreKind::box) consider(Vec3::Unit(i));
        for (int j = 0; j < 3; ++j) consider(Vec3::Unit(i).cross(Vec3(pair.R_AB.col(j))));
    }
    return best;
}

double sizeOf(const Core& core) {
    if (core.kind != CoreKind::hull) return core.half.norm() + core.radius;
    double most = 0;
    for (const Vec3& p : core.hull->points) most = std::max(most, (p - core.hull->points.front()).squaredNorm());
    return std::sqrt(most);
}

}  // namespace

CoreSeparation nearOrOverlapping(const CorePair& pair, const Vec3& guess) {
    const double scale = std::max(sizeOf(pair.A) + sizeOf(pair.B), 1e-9);
    if (guess.squaredNorm() > 0) return climb(pair, guess, scale);
    if (pair.A.kind <= CoreKind::box && pair.B.kind <= CoreKind::box) return climb(pair, separatingAxis(pair), scale);
    const WaysOut ways = waysOut(pair);
    CoreSeparation best = climb(pair, ways.n[0], scale);
    for (int i = 1; i < ways.count; ++i) {
        const CoreSeparation other = climb(pair, ways.n[static_cast<std::size_t>(i)], scale);
        if (other.distance > best.distance) best = other;
    }
    return best;
}

}  // namespace hither
