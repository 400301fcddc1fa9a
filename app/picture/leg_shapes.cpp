#include "app/picture/leg_shapes.h"

#include <algorithm>
#include <cmath>

#include "app/picture/shapes.h"
#include "app/picture/soft_shapes.h"
#include "core/geometry/distance.h"
#include "core/units/quantity.h"

namespace hither {

namespace {

constexpr double thinner = 0.95;           // a leg is drawn a little thinner than its solid: it bends off it
constexpr double turn_rad = 1.35 * pi;     // how far a leg goes round
constexpr int steps = 11;

/// One leg: from `top` toward `foot` for a share of that way, straight on to the ring round the tube's
/// middle, then round it, moving to `x` along the tube within the first half.
std::vector<Vec3> wayOf(const Vec3& top, const Vec3& foot, double share, const Vec3& middle, double ring, double x) {
    std::vector<Vec3> line{top, top + 0.5 * share * (foot - top), top + share * (foot - top)};
    const Vec3 from = line.back() - middle;
    const double way = foot.y() >= 0 ? 1 : -1, across = std::hypot(from.y(), from.z()), start = std::atan2(from.z(), way * from.y());
    const double touch = start - (across > ring ? std::acos(ring / across) : 0.0);
    for (int i = 0; i <= steps; ++i) {
        const double done = static_cast<double>(i) / steps, angle = touch - turn_rad * done;
        const double along = from.x() + (x - from.x()) * std::min(1.0, 2 * done);
        line.push_back(middle + Vec3(along, way * ring * std::cos(angle), ring * std::sin(angle)));
    }
    return line;
}

/// The farthest that a way gets from two solids.
double strays(const std::vector<Vec3>& line, const Solid& leg, const Solid& sleeve) {
    double worst = -1;
    for (std::size_t i = 1; i < line.size(); ++i)
        for (int n = 0; n <= 4; ++n) {
            const Solid at = Solid::sphere(line[i - 1] + (line[i] - line[i - 1]) * n / 4, 1e-6);
            worst = std::max(worst, std::min(distance(at, leg).distance, distance(at, sleeve).distance));
        }
    return worst;
}

}  // namespace

void addWrappedLegs(DrawnPieces& drawn, const std::vector<Solid>& solids, const std::vector<SolidRole>& roles, const RailGrip& grip, const Attachment& rail) {
    const double half = 0.5 * rail.outside_m.value.value_or(0.0);
    const Vec3 middle(0, 0, -half), reach(0.5 * grip.width_m, 0, 0);
    const Solid sleeve = Solid::cylinder(middle - reach, middle + reach, half + grip.wall_m);
    for (std::size_t i = 0; i < solids.size(); ++i) {
        if (roles[i] != SolidRole::rod) continue;
        Vec3 top = highEnd(solids[i]), foot = lowEnd(solids[i]);
        if (top.z() < foot.z()) std::swap(top, foot);
        const double r = thinner * solids[i].radius, most = std::max(0.0, 0.5 * grip.width_m - r), x = std::clamp(foot.x(), -most, most);
        std::vector<Vec3> best;
        double least = 1;
        for (double share = 0.5; share < 1.01; share += 0.05) {
            const std::vector<Vec3> way = wayOf(top, foot, share, middle, half + r, x);
            const double off = strays(way, solids[i], sleeve);
            if (off < least) { least = off; best = way; }
        }
        Mesh wire = tubeMesh(best, r, 8);
        wire.edges.clear();
        drawn[Look::gripPart].add(wire);
        drawn[Look::pad].add(softBall(best.back(), r + 0.0012));
    }
}

}  // namespace hither
