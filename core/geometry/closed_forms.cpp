#include "core/geometry/closed_forms.h"

#include <algorithm>
#include <array>
#include <cmath>

namespace hither {
namespace {

// Below this share of the sizes a difference of two points has too few digits left to give a direction,
// and the features that carry the two points give it instead.
constexpr double nearlyTouching = 1e-4;
// Below this share the difference is rounding alone.
constexpr double touching = 1e-11;

// From a point inside or outside a shape in the shape's frame to B's frame of the pair: n is the outward
// normal at `surface`, `signedDistance` negative inside. The pair is (point A, shape B).
CoreSeparation fromShape(const CorePair& pair, double signedDistance, const Vec3& surface_B, const Vec3& outward_B) {
    return {signedDistance, Vec3::Zero(), pair.p_AB + pair.R_AB * surface_B, -(pair.R_AB * outward_B)};
}

}  // namespace

CoreSeparation pointToPoint(const Vec3& p) {
    const double d = p.norm();
    return {d, Vec3::Zero(), p, d > 0 ? Vec3(p / d) : Vec3(Vec3::UnitZ())};
}

CoreSeparation pointToSegment(const Vec3& p, const Vec3& uB, double halfB) {
    const double t = std::clamp(-uB.dot(p), -halfB, halfB);
    const Vec3 b = p + t * uB;
    const double d = b.norm();
    if (d < touching * halfB || !(d > 0)) return {d, Vec3::Zero(), b, anyPerpendicular(uB)};
    CoreSeparation r{d, Vec3::Zero(), b, b / d};
    if (std::abs(t) < halfB && d < nearlyTouching * halfB) {
        const Vec3 across = r.n - uB * uB.dot(r.n);
        r.n = across.norm() > 0.5 ? across.normalized() : anyPerpendicular(uB);
    }
    return r;
}

// Where both nearest points are inside their segments, from the common perpendicular (cross product, good
// also for nearly parallel ones); else the best of the four ends against the other segment.
CoreSeparation segmentToSegment(const SegmentPair& pair) {
    const double ha = pair.halfA;
    const double hb = pair.halfB;
    const Vec3& z = pair.uA;
    const Vec3& u = pair.uB;
    const Vec3& p = pair.p;
    const Vec3 cross = z.cross(u);
    const double sine2 = cross.squaredNorm();
    const bool oblique = sine2 > 1e-20;
    if (oblique) {
        // a = s z, b = p + t u: (b - a) is perpendicular to both.
        const double s = p.cross(u).dot(cross) / sine2;
        const double t = p.cross(z).dot(cross) / sine2;
        if (std::abs(s) <= ha && std::abs(t) <= hb) {
            const Vec3 a = s * z;
            const Vec3 b = p + t * u;
            const Vec3 v = b - a;
            const double d = v.norm();
            if (d > nearlyTouching * (ha + hb)) return {d, a, b, v / d};
            return {d, a, b, (v.dot(cross) < 0 ? -1.0 : 1.0) / std::sqrt(sine2) * cross};
        }
    }
    const double uz = u.dot(z);
    const double pz = p.dot(z);
    const double pu = p.dot(u);
    double best2 = std::numeric_limits<double>::infinity();
    double bestS = 0;
    double bestT = 0;
    bool insideA = false;
    bool insideB = false;
    const auto consider = [&](double s, double t, bool inA, bool inB) {
        const double d2 = (p + t * u - s * z).squaredNorm();
        if (d2 < best2) {
            best2 = d2;
            bestS = s;
            bestT = t;
            insideA = inA;
            insideB = inB;
        }
    };
    for (const double t : {-hb, hb}) {
        const double s = pz + t * uz;
        consider(std::clamp(s, -ha, ha), t, std::abs(s) < ha, false);
    }
    for (const double s : {-ha, ha}) {
        const double t = uz * s - pu;
        consider(s, std::clamp(t, -hb, hb), false, std::abs(t) < hb);
    }
    const Vec3 a = bestS * z;
    const Vec3 b = p + bestT * u;
    const double d = std::sqrt(best2);
    const bool close = d < nearlyTouching * (ha + hb);
    if (!close && d > 0) return {d, a, b, (b - a) / d};
    // Of so small a difference only what is perpendicular to the segments it lies inside of can be believed.
    const Vec3 across = oblique ? Vec3(cross / std::sqrt(sine2)) : anyPerpendicular(hb > ha ? u : z);
    if (d < touching * (ha + hb) || !(d > 0)) return {d, a, b, across};
    CoreSeparation r{d, a, b, (b - a) / d};
    if (insideA || insideB) {
        const Vec3& along = insideA ? z : u;
        const Vec3 upright = r.n - along * along.dot(r.n);
        r.n = upright.norm() > 0.5 ? upright.normalized() : across;
    }
    return r;
}

CoreSeparation pointToBox(const CorePair& pair) {
    const Vec3 q = -(pair.R_AB.transpose() * pair.p_AB);  // the point in the box's frame
    const Vec3& h = pair.B.half;
    const Vec3 c = q.cwiseMax(-h).cwiseMin(h);
    const Vec3 out = q - c;
    const double d = out.norm();
    if (d > 0) return fromShape(pair, d, c, out / d);
    Eigen::Index axis = 0;
    const double depth = (h - q.cwiseAbs()).minCoeff(&axis);
    Vec3 n = Vec3::Zero();
    n[axis] = std::copysign(1.0, q[axis]);
    Vec3 surface = q;
    surface[axis] = n[axis] * h[axis];
    return fromShape(pair, -depth, surface, n);
}

CoreSeparation pointToCylinder(const CorePair& pair) {
    const Vec3 q = -(pair.R_AB.transpose() * pair.p_AB);
    const double h = pair.B.half.z();
    const double radius = pair.B.radius;
    const double across = std::hypot(q.x(), q.y());
    const Vec3 radial = across > 0 ? Vec3(q.x() / across, q.y() / across, 0) : Vec3(Vec3::UnitX());
    const double overSide = across - radius;
    const double overEnd = std::abs(q.z()) - h;
    const Vec3 end(0, 0, std::copysign(1.0, q.z()));
    if (overSide > 0 && overEnd > 0) {
        const double d = std::hypot(overSide, overEnd);
        return fromShape(pair, d, radius * radial + h * end, (overSide * radial + overEnd * end) / d);
    }
    if (overSide > overEnd) return fromShape(pair, overSide, radius * radial + Vec3(0, 0, q.z()), radial);
    return fromShape(pair, overEnd, Vec3(q.x(), q.y(), h * end.z()), end);
}

// Along the segment the squared distance to the box is convex and made of parabolas that change where
// the segment crosses one of the box's six planes; its derivative is piecewise linear, so the root lies
// between two neighbouring crossings and is found by one linear interpolation.
std::optional<CoreSeparation> segmentToBox(const CorePair& pair) {
    const Vec3 middle = -(pair.R_AB.transpose() * pair.p_AB);
    const Vec3 u = pair.R_AB.row(2).transpose();
    const Vec3& h = pair.B.half;
    const double length = pair.A.half.z();
    const auto slope = [&](double t) {
        double sum = 0;
        for (int i = 0; i < 3; ++i) {
            const double x = middle[i] + t * u[i];
            sum += u[i] * (x - std::clamp(x, -h[i], h[i]));
        }
        return sum;
    };
    double low = -length;
    double high = length;
    double slopeLow = slope(low);
    double slopeHigh = slope(high);
    double t = 0;
    if (slopeLow >= 0) {
        t = low;
    } else if (slopeHigh <= 0) {
        t = high;
    } else {
        for (int i = 0; i < 3; ++i) {
            if (u[i] == 0) continue;
            for (const double side : {-h[i], h[i]}) {
                const double crossing = (side - middle[i]) / u[i];
                if (!(crossing > low) || !(crossing < high)) continue;
                const double g = slope(crossing);
                if (g <= 0) {
                    low = crossing;
                    slopeLow = g;
                } else {
                    high = crossing;
                    slopeHigh = g;
                }
            }
        }
        t = slopeHigh > slopeLow ? low - slopeLow * (high - low) / (slopeHigh - slopeLow) : low;
        t = std::clamp(t, low, high);
    }
    const Vec3 q = middle + t * u;
    const Vec3 c = q.cwiseMax(-h).cwiseMin(h);
    const Vec3 out = q - c;
    const double d = out.norm();
    if (d <= nearlyTouching * (length + h.norm())) return std::nullopt;
    const Vec3 b = pair.p_AB + pair.R_AB * c;
    return CoreSeparation{d, Vec3(0, 0, t), b, -(pair.R_AB * out) / d};
}

}  // namespace hither
