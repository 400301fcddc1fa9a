#include <catch2/catch.hpp>

#include <cmath>
#include <optional>

#include "app/picture/grip_shapes.h"
#include "tests/gui/picture/mount_stand.h"

using namespace hither;

namespace {

/// How far along a ray from a point its first triangle is, hit from either side.
std::optional<double> hit(const PictureItem& item, const Vec3& from_W, const Vec3& direction_W) {
    std::optional<double> nearest;
    const Pose X = item.X_W.inverse();
    const Vec3 o = X * from_W, d = X.linear() * direction_W.normalized();
    for (const auto& t : item.mesh->triangles) {
        const Vec3 a = item.mesh->points[t[0]].cast<double>(), e1 = item.mesh->points[t[1]].cast<double>() - a, e2 = item.mesh->points[t[2]].cast<double>() - a;
        const Vec3 p = d.cross(e2);
        const double det = e1.dot(p);
        if (std::abs(det) < 1e-15) continue;
        const Vec3 s = o - a;
        const double u = s.dot(p) / det, v = d.dot(s.cross(e1)) / det, along = e2.dot(s.cross(e1)) / det;
        if (u < 0 || v < 0 || u + v > 1 || along < 0) continue;
        if (!nearest || along < *nearest) nearest = along;
    }
    return nearest;
}

}  // namespace

TEST_CASE("A clamp's jaws surround the tube that it holds") {
    int clamps = 0;
    for (const auto& part : stand::shipped().catalogue.parts()) {
        for (const stand::Stand& s : stand::stands(*part, true)) {
            if (s.mount.mount.attachment != "rail" || part->kind != PartKind::grip) continue;
            const RailGrip& grip = std::get<RailGrip>(*s.mount.chain.grip);
            if (railStyle(*part, grip) == RailStyle::wrapped) continue;  // legs lie beside each other along the tube
            INFO(s.words);
            MeshStore store;
            const auto items = mountItems(s.mount, s.given, stand::wishes(), store);
            const Pose X = forward(s.mount.chain, s.mount.q).X_WF[static_cast<std::size_t>(s.mount.chain.partFrame[0])];
            const double half = 0.5 * *s.given.supports[0].attachment("rail")->outside_m.value;
            const Vec3 middle = X * Vec3(0.002, 0, -half);
            for (const Vec3& d : {Vec3(0, 1, 0), Vec3(0, -1, 0), Vec3(0, 0, 1), Vec3(0, 0, -1)}) {
                std::optional<double> nearest;
                for (const PictureItem& item : items)
                    if (const auto along = hit(item, middle, X.linear() * d); along && (!nearest || *along < *nearest)) nearest = along;
                INFO("toward " << d.transpose());
                REQUIRE(nearest);
                CHECK(*nearest <= half + grip.wall_m + 1e-6);
                // Round jaws are drawn with flats, which cut at most this deep into the tube.
                CHECK(*nearest >= 0.97 * half - 1e-6);
            }
            ++clamps;
        }
    }
    CHECK(clamps >= 15);
}

TEST_CASE("Legs wound round a rail touch the tube on its far side") {
    const auto part = stand::find("wrap-stand-light");
    REQUIRE(part);
    for (const stand::Stand& s : stand::stands(*part)) {
        if (s.mount.mount.attachment != "rail") continue;
        MeshStore store;
        const Pose X = forward(s.mount.chain, s.mount.q).X_WF[static_cast<std::size_t>(s.mount.chain.partFrame[0])];
        const double half = 0.5 * *s.given.supports[0].attachment("rail")->outside_m.value;
        double lowest = 0;
        for (const PictureItem& item : mountItems(s.mount, s.given, stand::wishes(), store))
            for (const Eigen::Vector3f& p : item.mesh->points) lowest = std::min(lowest, (X.inverse() * (item.X_W * p.cast<double>())).z());
        CHECK(lowest < -2 * half - 0.008);   // below the tube by most of a leg's thickness of 14 mm
        CHECK(lowest > -2 * half - 0.0145);
    }
}

TEST_CASE("An edge clamp's pad lies against the other side of the plate, whatever its thickness") {
    for (const double board : {0.006, 0.018, 0.030}) {
        const stand::Stand s = stand::put(stand::situation(0.02, Section::round, board), "edge", {"desk-clamp-35"});
        REQUIRE_FALSE(s.mount.chain.parts.empty());
        MeshStore store;
        const Pose X = forward(s.mount.chain, s.mount.q).X_WF[static_cast<std::size_t>(s.mount.chain.partFrame[0])];
        double highest = -1;
        for (const PictureItem& item : mountItems(s.mount, s.given, stand::wishes(), store)) {
            if (item.look != Look::pad) continue;
            for (const Eigen::Vector3f& p : item.mesh->points) {
                const Vec3 at = X.inverse() * (item.X_W * p.cast<double>());
                if (at.y() > 0.005 && at.z() < -0.001) highest = std::max(highest, at.z());
            }
        }
        CHECK(highest == Approx(-board).margin(1e-6));
    }
}

TEST_CASE("What a clamp looks like follows its data, never its id") {
    Part spring = *stand::find("spring-clamp-13-25"), screw = *stand::find("screw-clamp-7-8-in");
    const auto style = [](const Part& p) { return railStyle(p, std::get<RailGrip>(p.grips.front())); };
    CHECK(style(spring) == RailStyle::spring);
    CHECK(style(screw) == RailStyle::hinged);
    CHECK(style(*stand::find("jaw-clamp-15-40")) == RailStyle::hook);
    CHECK(style(*stand::find("wrap-stand-heavy")) == RailStyle::wrapped);
    std::swap(spring.id, screw.id);
    CHECK(style(spring) == RailStyle::spring);
    CHECK(style(screw) == RailStyle::hinged);
    // Without words the thin jaw that comes off in one action without a tool is a spring clamp.
    spring.words.clear();
    screw.words.clear();
    CHECK(style(spring) == RailStyle::spring);
    CHECK(style(screw) == RailStyle::hinged);
}
