#include <catch2/catch.hpp>

#include <cmath>
#include <map>

#include "app/picture/grip_shapes.h"
#include "core/geometry/distance.h"
#include "tests/gui/picture/mount_stand.h"

using namespace hither;

namespace {

/// Corners and middles of a mesh's triangles, in W.
std::vector<Vec3> samples(const PictureItem& item) {
    std::vector<Vec3> points;
    for (const Eigen::Vector3f& p : item.mesh->points) points.push_back(item.X_W * p.cast<double>());
    for (const auto& t : item.mesh->triangles) points.push_back(item.X_W * ((item.mesh->points[t[0]] + item.mesh->points[t[1]] + item.mesh->points[t[2]]) / 3.0F).cast<double>());
    return points;
}
double distanceTo(const std::vector<PlacedSolid>& solids, const Vec3& point) {
    double least = 1;
    for (const PlacedSolid& s : solids) {
        // A quick lower bound first: most solids are far.
        if (s.solid_W.bounds(Pose::Identity()).exteriorDistance(point) >= least) continue;
        least = std::min(least, distance(Solid::sphere(point, 1e-6), s.solid_W).distance);
    }
    return least;
}
/// Between the screw of an edge clamp and the plate: the screw itself, which the solids leave out.
bool inPressScrew(const stand::Stand& s, const Vec3& point_W) {
    if (!s.mount.chain.grip || !std::holds_alternative<EdgeGrip>(*s.mount.chain.grip)) return false;
    const Pose X_WBase = forward(s.mount.chain, s.mount.q).X_WF[static_cast<std::size_t>(s.mount.chain.partFrame[0])];
    const Vec3 p = X_WBase.inverse() * point_W;
    const double board = *s.given.supports[0].attachment("edge")->thickness_m.value;
    for (const ChainSolid& solid : s.mount.chain.solids) {
        const Vec3 axis = solid.solid.X_FG.linear().col(2), at = solid.solid.X_FG.translation();
        const bool upright = solid.solid.kind == SolidKind::cylinder && std::abs(axis.z()) > 0.999;
        if (upright && solid.part == 0 && at.z() < -board && std::hypot(p.x() - at.x(), p.y() - at.y()) < solid.solid.radius + 1e-4 && p.z() < -board + 1e-4 && p.z() > at.z()) return true;
    }
    return false;
}

/// A leg wound round a tube thinner than itself crosses a gap that its solids leave.
bool thickLegOnThinTube(const stand::Stand& s) {
    if (s.mount.mount.attachment != "rail" || s.part != 0 || railStyle(*s.mount.chain.parts[0], std::get<RailGrip>(*s.mount.chain.grip)) != RailStyle::wrapped) return false;
    double leg = 0;
    for (const ChainSolid& solid : s.mount.chain.solids)
        if (solid.solid.kind == SolidKind::capsule) leg = std::max(leg, 2 * solid.solid.radius);
    return leg > *s.given.supports[0].attachment("rail")->outside_m.value;
}

}  // namespace

TEST_CASE("Every part of the catalogue is drawn, and what is drawn keeps to its solids") {
    std::size_t looked = 0;
    for (const auto& part : stand::shipped().catalogue.parts()) {
        for (const stand::Stand& s : stand::stands(*part, true)) {
            INFO(s.words << ", tube " << 1000 * *s.given.supports[0].attachment("rail")->outside_m.value << " mm");
            REQUIRE_FALSE(s.mount.chain.parts.empty());
            MeshStore store;
            const auto solids = placedSolids(s.mount.chain, s.mount.q, forward(s.mount.chain, s.mount.q));
            // A stud belongs to its port, not to the solids; its length is the port's.
            const double stud = part->outlet && part->outlet->gender == Gender::male ? part->outlet->length.value.value_or(0.006) : 0;
            std::map<Look, double> worst;
            std::size_t triangles = 0;
            for (const PictureItem& item : mountItems(s.mount, s.given, stand::wishes(), store)) {
                if (item.pick != Picked::partOf("m", s.part)) continue;  // the clamp that carries it, a zone
                triangles += item.mesh->triangles.size();
                for (const Vec3& p : samples(item)) {
                    const double d = distanceTo(solids, p);
                    if (d > 0.004 && inPressScrew(s, p)) continue;
                    worst[item.look] = std::max(worst[item.look], d);
                }
            }
            CHECK(triangles > 40);
            const double own = thickLegOnThinTube(s) ? 0.007 : 0.004;
            for (const auto& [look, far] : worst) {
                INFO("look " << static_cast<int>(look) << ", " << 1000 * far << " mm off");
                const bool detail = look == Look::knob || look == Look::metal || look == Look::pad;
                CHECK(far <= (look == Look::thread ? std::max(0.004, stud) + 1e-6 : detail ? 0.012 : own));
            }
            ++looked;
        }
    }
    CHECK(looked >= stand::shipped().catalogue.parts().size());
}

TEST_CASE("Meshes are whole: indices in range, normals of length 1, triangles that face the way their normals do") {
    for (const auto& part : stand::shipped().catalogue.parts()) {
        for (const stand::Stand& s : stand::stands(*part)) {
            MeshStore store;
            for (const PictureItem& item : mountItems(s.mount, s.given, stand::wishes(JobStep::build, Picked::mount("m")), store)) {
                INFO(s.words << " " << item.key);
                const Mesh& mesh = *item.mesh;
                REQUIRE(mesh.normals.size() == mesh.points.size());
                float longest = 0, shortest = 2;
                for (const auto& n : mesh.normals) { longest = std::max(longest, n.norm()); shortest = std::min(shortest, n.norm()); }
                CHECK(longest < 1.001F);
                CHECK(shortest > 0.999F);
                std::size_t backward = 0, wrong = 0;
                for (const auto& t : mesh.triangles) {
                    if (t[0] >= mesh.points.size() || t[1] >= mesh.points.size() || t[2] >= mesh.points.size()) { ++wrong; continue; }
                    const Eigen::Vector3f n = (mesh.points[t[1]] - mesh.points[t[0]]).cross(mesh.points[t[2]] - mesh.points[t[0]]);
                    if (n.norm() > 1e-10F && n.dot(mesh.normals[t[0]] + mesh.normals[t[1]] + mesh.normals[t[2]]) < 0) ++backward;
                }
                CHECK(wrong == 0);
                CHECK(backward == 0);
            }
        }
    }
}

TEST_CASE("A mount of eight parts stays within 4,500 triangles") {
    // The dearest kinds in one mount: a wrapped stand, an arm with three knobs, a rosette, a swivel, a gooseneck.
    const stand::Stand s = stand::put(stand::situation(0.022, Section::round, 0.02), "rail",
                                      {"screw-clamp-7-8-in", "swivel-clicks-30", "right-angle-1-4", "rosette-hinge-15", "spacer-25-1-4", "gooseneck-400", "back-three-screws-40-4-40",
                                       "switch-round-medium"});
    REQUIRE(s.mount.chain.parts.size() == 8);
    MeshStore store;
    std::size_t triangles = 0;
    for (const PictureItem& item : mountItems(s.mount, s.given, stand::wishes(), store)) triangles += item.mesh->triangles.size();
    INFO(triangles);
    CHECK(triangles <= 4500);
}
