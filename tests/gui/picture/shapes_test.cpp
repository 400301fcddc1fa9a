#include <catch2/catch.hpp>

#include <random>

#include "app/picture/shapes.h"
#include "core/geometry/distance.h"
#include "core/units/quantity.h"
#include "mesh_facts.h"

using namespace hither;

namespace {

const Pose tilted = pose(rotationFromRollPitchYaw(0.3, -0.7, 1.9), Vec3(0.4, -0.2, 0.9));

/// Closed, outward, its volume as the formula says less what a polygon of so many corners loses.
void checkClosed(const Mesh& mesh, double volume, double loss) {
    const MeshFacts facts = factsOf(mesh);
    CHECK(facts.badIndices == 0);
    CHECK(facts.openSides == 0);
    CHECK(facts.wrongNormals == 0);
    CHECK(facts.volume <= volume * (1 + 1e-4));
    CHECK(facts.volume >= volume * (1 - loss));
}

/// Share of a circle's area that a polygon with n corners on it leaves out.
double circleLoss(int n) { return 1 - std::sin(2 * pi / n) / (2 * pi / n); }

}  // namespace

TEST_CASE("Round shapes are closed, face outward and have the volume of their formulas") {
    // Volumes: solids of revolution, any table of formulas (ball 4/3 pi r^3, cone pi h (R^2 + R r + r^2) / 3, torus 2 pi^2 R r^2).
    const double r = 0.05, h = 0.2, loss = 1.1 * circleLoss(48) + 1e-4;
    const Vec3 a(0.1, 0.2, 0.3), b = a + h * Vec3(1, -2, 2) / 3;
    SECTION("sphere") { checkClosed(sphereMesh(a, r, 48), 4.0 / 3 * pi * r * r * r, 3 * loss); }
    SECTION("cylinder") { checkClosed(cylinderMesh(a, b, r, 48), pi * r * r * h, loss); }
    SECTION("cone") { checkClosed(coneMesh(a, b, r, 0.5 * r, 48), pi * h * 1.75 * r * r / 3, loss); }
    SECTION("pointed cone") { checkClosed(coneMesh(a, b, r, 0, 48), pi * h * r * r / 3, loss); }
    SECTION("capsule") { checkClosed(capsuleMesh(a, b, r, 48), pi * r * r * h + 4.0 / 3 * pi * r * r * r, 2 * loss); }
    SECTION("torus") { checkClosed(torusMesh(tilted, 0.2, r, 48, 48), 2 * pi * pi * 0.2 * r * r, 2.2 * loss); }
    SECTION("tube") { checkClosed(tubeMesh({a, 0.5 * (a + b), b}, r, 48), pi * r * r * h, loss); }
    SECTION("lathe") { checkClosed(latheMesh(tilted, {{0, 0}, {r, 0}, {r, h}, {0, h}}, 48), pi * r * r * h, loss); }
    SECTION("lathe, corners the other way") { checkClosed(latheMesh(tilted, {{0, h}, {r, h}, {r, 0}, {0, 0}}, 48), pi * r * r * h, loss); }
}

TEST_CASE("A coarser round shape loses four times the volume when it has half the segments") {
    const double exact = pi * 0.03 * 0.03 * 0.1;
    const auto lost = [&](int n) { return exact - factsOf(cylinderMesh(Vec3::Zero(), Vec3(0, 0, 0.1), 0.03, n)).volume; };
    CHECK(lost(12) / lost(24) == Approx(4).epsilon(0.03));
}

TEST_CASE("Boxes are exact, rounded ones lose their corners and edges") {
    const Vec3 half(0.1, 0.04, 0.02);
    checkClosed(boxMesh(tilted, half), 8 * half.prod(), 1e-4);
    CHECK(boxMesh(tilted, half).edges.size() == 12);
    CHECK(boxMesh(tilted, half).triangles.size() == 12);
    // Steiner's formula for a box grown by r: V + S r + pi r^2 (sum of edges) / 4 ... + 4/3 pi r^3.
    for (const double r : {0.005, 0.02}) {
        const Vec3 c = 2 * (half - Vec3::Constant(r));
        const double volume = c.prod() + 2 * r * (c.x() * c.y() + c.y() * c.z() + c.z() * c.x()) + pi * r * r * c.sum() + 4.0 / 3 * pi * r * r * r;
        checkClosed(roundedBoxMesh(tilted, half, r), volume, 0.08);
        CHECK(roundedBoxMesh(tilted, half, r).edges.empty());
    }
}

TEST_CASE("A pushed outline has the area of the outline times its height, dents and all") {
    const std::vector<Eigen::Vector2d> outline = {{0, 0}, {4, 0}, {4, 1}, {1, 1}, {1, 3}, {4, 3}, {4, 4}, {0, 4}};  // a U on its side: 16 less 3 by 2
    const Mesh mesh = extrudedMesh(tilted, outline, 0.5);
    checkClosed(mesh, 0.5 * 10, 1e-4);
    CHECK(mesh.edges.size() == 3 * outline.size());
}

TEST_CASE("A bent tube stays round its line") {
    std::vector<Vec3> line;
    for (int i = 0; i <= 20; ++i) line.push_back(0.1 * Vec3(std::cos(0.1 * i), std::sin(0.1 * i), 0.02 * i));
    const double radius = 0.006;
    const Mesh mesh = tubeMesh(line, radius, 12);
    CHECK(factsOf(mesh).openSides == 0);
    CHECK(factsOf(mesh).volume > 0);
    for (const Eigen::Vector3f& p : mesh.points) {
        double nearest = 1;
        for (std::size_t i = 0; i + 1 < line.size(); ++i) nearest = std::min(nearest, distance(Solid::sphere(p.cast<double>(), 1e-9), Solid::capsule(line[i], line[i + 1], 1e-9)).distance);
        CHECK(nearest <= radius + 1e-5);
    }
}

TEST_CASE("Solids are drawn with their points on their surface and their whole extent") {
    std::mt19937 random(20);
    std::normal_distribution<double> bell(0, 0.05);
    std::vector<Vec3> cloud;
    for (int i = 0; i < 30; ++i) cloud.push_back(Vec3(bell(random), bell(random), bell(random)));
    const std::vector<Solid> solids = {Solid::sphere(Vec3(1, 2, 3), 0.07), Solid::capsule(Vec3(0, 0, 1), Vec3(0.3, 0.1, 1.1), 0.02), Solid::cylinder(Vec3(0, 1, 0), Vec3(0.1, 1.2, 0.3), 0.05),
                                       Solid::box(tilted, Vec3(0.2, 0.1, 0.05)), Solid::roundedBox(tilted, Vec3(0.2, 0.1, 0.05), 0.02), Solid::convexHull(makeHull(cloud), tilted)};
    for (const Solid& solid : solids) {
        INFO("kind " << static_cast<int>(solid.kind));
        const Mesh mesh = solidMesh(solid);
        CHECK(factsOf(mesh).openSides == 0);
        CHECK(factsOf(mesh).volume > 0);
        Eigen::AlignedBox3d drawn;
        double farthest = 0, deepest = 0;
        for (const Eigen::Vector3f& p : mesh.points) {
            drawn.extend(p.cast<double>());
            const double off = distance(Solid::sphere(p.cast<double>(), 1e-9), solid).distance;
            farthest = std::max(farthest, off);
            deepest = std::min(deepest, off);
        }
        CHECK(farthest < 1e-6);
        CHECK(deepest > -1e-6);
        // Corners lie on the true surface, so the extent falls short by no more than a chord's height.
        const Eigen::AlignedBox3d exact = solid.bounds(Pose::Identity());
        CHECK((drawn.min() - exact.min()).maxCoeff() < 0.0015);
        CHECK((exact.max() - drawn.max()).maxCoeff() < 0.0015);
    }
}

TEST_CASE("Meshes are put together moved, with their edges") {
    Mesh both = boxMesh(Pose::Identity(), Vec3::Constant(0.5));
    both.add(boxMesh(Pose::Identity(), Vec3::Constant(0.5)), translation(Vec3(3, 0, 0)));
    CHECK(factsOf(both).volume == Approx(2));
    CHECK(both.edges.size() == 24);
    CHECK(both.edges.back()[0].x() > 2);
}
