#include <catch2/catch.hpp>

#include "core/geometry/solid.h"
#include "tests/support/random_solids.h"

using namespace hither;
using namespace hither::test;

namespace {

double volume(const Hull& h) {
    double sum = 0;
    for (const auto& f : h.faces) {
        const auto corner = [&](std::size_t k) { return h.points[static_cast<std::size_t>(f[k])]; };
        sum += corner(0).dot(corner(1).cross(corner(2))) / 6;
    }
    return sum;
}

// Closed, every edge shared by two faces that run along it in opposite senses, and Euler's formula for triangles.
void checkClosed(const Hull& h) {
    std::vector<std::array<int, 2>> edges;
    for (const auto& f : h.faces) {
        for (std::size_t k = 0; k < 3; ++k) edges.push_back({f[k], f[(k + 1) % 3]});
    }
    std::sort(edges.begin(), edges.end());
    CHECK(std::adjacent_find(edges.begin(), edges.end()) == edges.end());
    bool twins = true;
    for (const auto& e : edges) twins = twins && std::binary_search(edges.begin(), edges.end(), std::array<int, 2>{e[1], e[0]});
    CHECK(twins);
    CHECK(h.faces.size() == 2 * h.points.size() - 4);
}

std::vector<Vec3> cubeCorners(double half) {
    std::vector<Vec3> points;
    for (int i = 0; i < 8; ++i) points.emplace_back((i & 1) ? half : -half, (i & 2) ? half : -half, (i & 4) ? half : -half);
    return points;
}

}  // namespace

TEST_CASE("the hull of a cube with duplicates, edge, face and inner points is its eight corners", "[geometry]") {
    std::vector<Vec3> cloud = cubeCorners(0.05);
    for (int i = -5; i <= 5; ++i) {
        for (int j = -5; j <= 5; ++j) {
            for (int k = -5; k <= 5; ++k) cloud.emplace_back(0.01 * i, 0.01 * j, 0.01 * k);
        }
    }
    RandomSolids random(21);
    for (int turn = 0; turn < 20; ++turn) {
        const Pose X = turn == 0 ? Pose::Identity() : random.anyPose();
        std::vector<Vec3> moved;
        for (const Vec3& p : cloud) moved.emplace_back(X * p);
        const auto hull = makeHull(moved);
        REQUIRE(hull != nullptr);
        CHECK(hull->points.size() == 8);
        CHECK(hull->faces.size() == 12);
        checkClosed(*hull);
        CHECK(volume(*hull) == Approx(0.001).epsilon(1e-9));
    }
}

TEST_CASE("every point of a cloud is in its hull and every hull point is of the cloud", "[geometry]") {
    RandomSolids random(22);
    for (int i = 0; i < 60; ++i) {
        std::vector<Vec3> cloud;
        const int count = i < 50 ? 4 + 3 * i : 3000;
        const bool onBall = i % 3 == 0;
        for (int k = 0; k < count; ++k) cloud.push_back(onBall ? random.direction() : Vec3(random.uniform(0, 1) * random.direction()));
        for (int k = 0; k < count / 4; ++k) cloud.push_back(cloud[static_cast<std::size_t>(k)]);
        const auto hull = makeHull(cloud);
        REQUIRE(hull != nullptr);
        checkClosed(*hull);
        if (onBall && i < 50) CHECK(hull->points.size() == static_cast<std::size_t>(count));
        double out = -1;
        for (const Vec3& p : cloud) out = std::max(out, offSurface(Solid::convexHull(hull), Pose::Identity(), p));
        CHECK(std::abs(out) < 4e-9);  // the builder's own tolerance: 1e-9 of the cloud's size
        for (const Vec3& p : hull->points) CHECK(std::find(cloud.begin(), cloud.end(), p) != cloud.end());
    }
}

TEST_CASE("a many-sided prism keeps its flat ends", "[geometry]") {
    std::vector<Vec3> cloud;
    for (int i = 0; i < 64; ++i) {
        const double angle = i * (2 * 3.14159265358979323846 / 64);
        for (double z : {-0.1, 0.0, 0.1}) cloud.emplace_back(std::cos(angle), std::sin(angle), z);
    }
    const auto hull = makeHull(cloud);
    REQUIRE(hull != nullptr);
    CHECK(hull->points.size() == 128);  // those half-way up lie on the sides
    checkClosed(*hull);
    CHECK(volume(*hull) == Approx(0.2 * 0.5 * 64 * std::sin(2 * 3.14159265358979323846 / 64)).epsilon(1e-9));
}

TEST_CASE("flat, straight, single and non-finite clouds have no hull", "[geometry]") {
    RandomSolids random(23);
    const Pose X = random.anyPose();
    std::vector<Vec3> flat;
    std::vector<Vec3> straight;
    for (int i = 0; i < 50; ++i) {
        flat.emplace_back(X * Vec3(random.uniform(-1, 1), random.uniform(-1, 1), 1e-9 * random.uniform(-1, 1)));
        straight.emplace_back(X * Vec3(random.uniform(-1, 1), 0, 0));
    }
    CHECK(makeHull(flat) == nullptr);
    CHECK(makeHull(straight) == nullptr);
    CHECK(makeHull({}) == nullptr);
    CHECK(makeHull({Vec3::Zero(), Vec3::UnitX(), Vec3::UnitY()}) == nullptr);
    CHECK(makeHull(std::vector<Vec3>(10, Vec3(1, 2, 3))) == nullptr);
    std::vector<Vec3> broken = cubeCorners(1);
    broken[3].y() = std::numeric_limits<double>::quiet_NaN();
    CHECK(makeHull(broken) == nullptr);
}
