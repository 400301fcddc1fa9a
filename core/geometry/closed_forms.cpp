#include "core/geometry/closed_forms.h"

#include <algorithm>
#include <array>
#include <cmath>

namespace hither {
namespace {

CoreSeparation between(const Vec3& a, const Vec3& b, const Vec3& whenCoincident) {
    const Vec3 v = b - a;
    const double d = v.norm();
    if (d > 0) return {d, a, b, v / d};
    return {0, a, b, whenCoincident};
}

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

CoreSeparation pointToPoint(const CorePair& pair) { return between(Vec3::Zero(), pair.p_AB, Vec3::UnitZ()); }

CoreSeparation pointToSegment(const CorePair& pair) {
    const Vec3 u = pair.R_AB.col(2);
    const double h = pair.B.half.z();
    const double t = std::clamp(-u.dot(pair.p_AB), -h, h);
    CoreSeparation r = between(Vec3::Zero(), pair.p_AB + t * u, anyPerpendicular(u));
    if (r.distance < touching * h) {
        r.n = anyPerpendicular(u);
    } else if (std::abs(t) < h && r.distance < nearlyTouching * h) {
        const Vec3 across = r.n - u * u.dot(r.n);
        r.n = across.norm() > 0.5 ? across.normalized() : anyPerpendicular(u);
    }
    return r;
}

// Where both nearest points are inside their segments, from the common perpendicular (cross product, good
// also for nearly parallel ones); else the best of the four ends against the other segment.
CoreSeparation segmentToSegment(const CorePair& pair) {
    const double ha = pair.A.half.z();
    const double hb = pair.B.half.z();
    const Vec3 u = pair.R_AB.col(2);
    const Vec3& p = pair.p_AB;
    const Vec3 cross(-u.y(), u.x(), 0);  // z x u
    const double sine2 = cross.squaredNorm();
    if (sine2 > 1e-20) {
        // a = s z, b = p + t u: (b - a) is perpendicular to both.
        const double s = p.cross(u).dot(cross) / sine2;
        const double t = p.cross(Vec3::UnitZ()).dot(cross) / sine2;
        if (std::abs(s) <= ha && std::abs(t) <= hb) {
            const Vec3 a(0, 0, s);
            const Vec3 v = p + t * u - a;
            const double d = v.norm();
            if (d > nearlyTouching * (ha + hb)) return {d, a, p + t * u, v / d};
            const Vec3 n = (v.dot(cross) < 0 ? -1.0 : 1.0) / std::sqrt(sine2) * cross;
            return {d, a, p + t * u, n};
        }
    }
    double best2 = std::numeric_limits<double>::infinity();
    Vec3 a = Vec3::Zero();
    Vec3 b = Vec3::Zero();
    bool insideA = false;
    bool insideB = false;
    const auto consider = [&](double s, double t, bool inA, bool inB) {
        const Vec3 pa(0, 0, s);
        const Vec3 pb = p + t * u;
        const double d2 = (pb - pa).squaredNorm();
        if (d2 < best2) {
            best2 = d2;
            a = pa;
            b = pb;
            insideA = inA;
            insideB = inB;
        }
    };
    for (const double t : {-hb, hb}) {
        const double s = p.z() + t * u.z();
        consider(std::clamp(s, -ha, ha), t, std::abs(s) < ha, false);
    }
    for (const double s : {-ha, ha}) {
        const double t = u.z() * s - u.dot(p);
        consider(s, std::clamp(t, -hb, hb), false, std::abs(t) < hb);
    }
    const Vec3 across = sine2 > 1e-20 ? Vec3(cross / std::sqrt(sine2)) : anyPerpendicular(hb > ha ? u : Vec3(Vec3::UnitZ()));
    CoreSeparation r = between(a, b, across);
    if (r.distance < touching * (ha + hb)) {
        r.n = across;
    } else if ((insideA || insideB) && r.distance < nearlyTouching * (ha + hb)) {
        const Vec3 along = insideA ? Vec3(Vec3::UnitZ()) : u;
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
