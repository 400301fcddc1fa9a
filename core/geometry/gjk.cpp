#include "core/geometry/gjk.h"

#include <algorithm>
#include <array>
#include <cmath>

namespace hither {
namespace {

struct Simplex {
    std::array<CorePair::Support, 4> point;
    std::array<double, 4> weight{};
    int size = 0;
};

// The nearest point to zero on a part of the simplex: which corners, with which weights.
struct Nearest {
    double squared = std::numeric_limits<double>::infinity();
    std::array<int, 3> corner{};
    std::array<double, 3> weight{};
    int size = 0;
};

void tryPoint(const Simplex& s, int i, Nearest& best) {
    const double squared = s.point[static_cast<std::size_t>(i)].w.squaredNorm();
    if (squared < best.squared) best = {squared, {i, 0, 0}, {1, 0, 0}, 1};
}

void trySegment(const Simplex& s, int i, int j, Nearest& best) {
    const Vec3& p = s.point[static_cast<std::size_t>(i)].w;
    const Vec3 e = s.point[static_cast<std::size_t>(j)].w - p;
    const double ee = e.squaredNorm();
    const double u = -p.dot(e);
    if (!(u > 0) || !(u < ee)) return;
    const double t = u / ee;
    const double squared = (p + t * e).squaredNorm();
    if (squared < best.squared) best = {squared, {i, j, 0}, {1 - t, t, 0}, 2};
}

// Weights from edges that start at the newest corner: differences of near points keep their digits, so a
// sliver of a triangle still gives weights as good as its shape allows.
void tryTriangle(const Simplex& s, int i, int j, int k, Nearest& best) {
    const Vec3& p = s.point[static_cast<std::size_t>(i)].w;
    const Vec3 e = s.point[static_cast<std::size_t>(j)].w - p;
    const Vec3 f = s.point[static_cast<std::size_t>(k)].w - p;
    const Vec3 n = e.cross(f);
    const double nn = n.squaredNorm();
    if (!(nn > 0)) return;
    const double u = -p.cross(f).dot(n) / nn;
    const double v = -e.cross(p).dot(n) / nn;
    if (!(u > 0) || !(v > 0) || !(u + v < 1)) return;
    const double squared = (p + u * e + v * f).squaredNorm();
    if (squared < best.squared) best = {squared, {i, j, k}, {1 - u - v, u, v}, 3};
}

// True when zero is on the outer side of the plane through i, j, k, `other` being inside, or when that
// cannot be told because the four are nearly in a plane.
bool beyondFace(const Simplex& s, int i, int j, int k, int other) {
    const Vec3& p = s.point[static_cast<std::size_t>(i)].w;
    const Vec3 e = s.point[static_cast<std::size_t>(j)].w - p;
    const Vec3 f = s.point[static_cast<std::size_t>(k)].w - p;
    const Vec3 g = s.point[static_cast<std::size_t>(other)].w - p;
    const Vec3 n = e.cross(f);
    const double inside = n.dot(g);
    const double zero = -n.dot(p);
    const double noise = 1e-14 * n.norm() * g.norm();
    if (std::abs(inside) <= noise) return true;
    return inside > 0 ? zero < 0 : zero > 0;
}

// Moves the simplex to the part of it that is nearest zero. In exact arithmetic that part has the newest
// corner (index 0) in it, so only those parts are tried. False when zero is inside a tetrahedron; when the
// cores are known to be `apart` that can only be a tetrahedron too thin to tell, and all its faces are tried.
bool reduce(Simplex& s, bool apart) {
    Nearest best;
    tryPoint(s, 0, best);
    bool outside = s.size < 4;
    for (int j = 1; j < s.size; ++j) trySegment(s, 0, j, best);
    if (s.size == 3) tryTriangle(s, 0, 1, 2, best);
    if (s.size == 4) {
        constexpr std::array<std::array<int, 3>, 3> faces{{{1, 2, 3}, {2, 3, 1}, {3, 1, 2}}};
        for (const auto& f : faces) {
            if (!beyondFace(s, 0, f[0], f[1], f[2])) continue;
            outside = true;
            tryTriangle(s, 0, f[0], f[1], best);
        }
        if (!outside && apart) {
            outside = true;
            for (const auto& f : faces) tryTriangle(s, 0, f[0], f[1], best);
        }
    }
    if (!outside) return false;
    Simplex reduced;
    reduced.size = best.size;
    for (int i = 0; i < best.size; ++i) {
        const auto k = static_cast<std::size_t>(i);
        reduced.point[k] = s.point[static_cast<std::size_t>(best.corner[k])];
        reduced.weight[k] = best.weight[k];
    }
    s = reduced;
    return true;
}

}  // namespace

GjkResult gjk(const CorePair& pair, const Vec3& shift_A, const Vec3& guess) {
    constexpr int mostRounds = 256;
    constexpr int mostRestarts = 16;
    constexpr double agreement = 1e-15;  // of the scale: about the rounding of one support point
    GjkResult result;
    const auto leastShifted = [&](const Vec3& n) {
        CorePair::Support s = pair.least(n);
        s.b += shift_A;
        s.w += shift_A;
        return s;
    };
    Simplex simplex;
    simplex.point[0] = leastShifted(guess);
    simplex.weight[0] = 1;
    simplex.size = 1;
    Vec3 v = simplex.point[0].w;
    double scale2 = v.squaredNorm();
    Simplex best = simplex;
    double bestSquared = scale2;
    double lower = 0;
    int restarts = 0;
    // Near a curved rim the corners crowd together until their simplex is too thin to tell which part of it
    // is nearest. The nearest point found so far is a point of D like any other: go on from it alone.
    const auto restart = [&] {
        if (best.size == 1 || ++restarts > mostRestarts) return false;
        simplex = Simplex{};
        simplex.size = 1;
        simplex.weight[0] = 1;
        for (int i = 0; i < best.size; ++i) {
            const auto k = static_cast<std::size_t>(i);
            if (i == 0) simplex.point[0] = {Vec3::Zero(), Vec3::Zero(), Vec3::Zero()};
            simplex.point[0].a += best.weight[k] * best.point[k].a;
            simplex.point[0].b += best.weight[k] * best.point[k].b;
        }
        simplex.point[0].w = simplex.point[0].b - simplex.point[0].a;
        v = simplex.point[0].w;
        best = simplex;
        bestSquared = v.squaredNorm();
        return true;
    };
    for (int round = 0; round < mostRounds; ++round) {
        const double vv = v.squaredNorm();
        if (vv <= 1e-28 * scale2 || !(vv > 0)) {
            result.overlap = true;
            break;
        }
        const CorePair::Support w = leastShifted(v);
        scale2 = std::max(scale2, w.w.squaredNorm());
        const double length = std::sqrt(vv);
        lower = std::max(lower, v.dot(w.w) / length);
        if (length - lower <= agreement * std::sqrt(scale2)) break;
        bool known = false;
        for (int i = 0; i < simplex.size; ++i) known = known || simplex.point[static_cast<std::size_t>(i)].w == w.w;
        if (known) {
            if (restart()) continue;
            break;
        }
        for (int i = simplex.size; i > 0; --i) simplex.point[static_cast<std::size_t>(i)] = simplex.point[static_cast<std::size_t>(i - 1)];
        simplex.point[0] = w;
        ++simplex.size;
        if (!reduce(simplex, lower > 1e-12 * std::sqrt(scale2))) {
            result.overlap = true;
            break;
        }
        v.setZero();
        for (int i = 0; i < simplex.size; ++i) {
            v += simplex.weight[static_cast<std::size_t>(i)] * simplex.point[static_cast<std::size_t>(i)].w;
        }
        const double squared = v.squaredNorm();
        if (!(squared < bestSquared)) {
            if (restart()) continue;
            break;
        }
        best = simplex;
        bestSquared = squared;
    }
    result.scale = std::sqrt(scale2);
    if (result.overlap) return result;
    CoreSeparation& r = result.separation;
    for (int i = 0; i < best.size; ++i) {
        const auto k = static_cast<std::size_t>(i);
        r.a += best.weight[k] * best.point[k].a;
        r.b += best.weight[k] * best.point[k].b;
    }
    const Vec3 between = r.b - r.a;
    r.distance = between.norm();
    r.n = between / r.distance;
    return result;
}

}  // namespace hither
