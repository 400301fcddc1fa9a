#include <catch2/catch.hpp>

#include "core/geometry/solid_tree.h"
#include "tests/support/random_solids.h"

using namespace hither;
using namespace hither::test;

namespace {

std::vector<Solid> scene(RandomSolids& random, int count, double reachOfScene) {
    std::vector<Solid> solids;
    for (int i = 0; i < count; ++i) {
        const SolidKind kind = allKinds[static_cast<std::size_t>(random.uniform(0, 5.999))];
        solids.push_back(random.solid(kind).movedBy(random.anyPose(reachOfScene)));
    }
    return solids;
}

SolidTree::Nearest brute(const std::vector<Solid>& a, const std::vector<Solid>& b, double upTo, const std::function<bool(int, int)>& skip) {
    SolidTree::Nearest best;
    for (int i = 0; i < static_cast<int>(a.size()); ++i) {
        for (int j = 0; j < static_cast<int>(b.size()); ++j) {
            if (skip && skip(i, j)) continue;
            const Distance d = distance(a[static_cast<std::size_t>(i)], b[static_cast<std::size_t>(j)]);
            if (d.distance < upTo && (best.mine < 0 || d.distance < best.distance.distance)) best = {i, j, d};
        }
    }
    return best;
}

}  // namespace

TEST_CASE("the nearest pair of two trees is that of all pairs", "[geometry]") {
    RandomSolids random(61);
    int overlapping = 0;
    int none = 0;
    for (int turn = 0; turn < 120; ++turn) {
        const double room = turn % 3 == 0 ? 0.4 : turn % 3 == 1 ? 1.5 : 4.0;
        const std::vector<Solid> a = scene(random, 1 + turn % 20, room);
        const std::vector<Solid> b = scene(random, 1 + (7 * turn) % 40, room);
        const SolidTree treeA(a);
        const SolidTree treeB(b);
        const double upTo = turn % 2 == 0 ? std::numeric_limits<double>::infinity() : random.uniform(-0.05, 0.3);
        std::function<bool(int, int)> skip;
        if (turn % 5 == 0) skip = [](int i, int j) { return (i + j) % 3 == 0; };
        const auto expected = brute(a, b, upTo, skip);
        const auto found = treeA.nearest(treeB, upTo, skip);
        CHECK(found.mine == expected.mine);
        CHECK(found.theirs == expected.theirs);
        CHECK(found.distance.distance == expected.distance.distance);
        if (expected.mine < 0) ++none;
        if (expected.mine >= 0 && expected.distance.distance < 0) ++overlapping;
    }
    CHECK(overlapping > 20);
    CHECK(none > 5);
}

TEST_CASE("all pairs within a distance are those of the brute search, in order", "[geometry]") {
    RandomSolids random(62);
    for (int turn = 0; turn < 30; ++turn) {
        const std::vector<Solid> a = scene(random, 12, 1.0);
        const std::vector<Solid> b = scene(random, 25, 1.0);
        const double upTo = random.uniform(-0.01, 0.3);
        const std::function<bool(int, int)> skip = [](int i, int j) { return i == j; };
        std::vector<std::pair<int, int>> expected;
        for (int i = 0; i < 12; ++i) {
            for (int j = 0; j < 25; ++j) {
                if (!skip(i, j) && distance(a[static_cast<std::size_t>(i)], b[static_cast<std::size_t>(j)]).distance <= upTo) expected.emplace_back(i, j);
            }
        }
        std::vector<std::pair<int, int>> found;
        for (const auto& n : SolidTree(a).allWithin(SolidTree(b), upTo, skip)) {
            found.emplace_back(n.mine, n.theirs);
            CHECK(n.distance.distance == distance(a[static_cast<std::size_t>(n.mine)], b[static_cast<std::size_t>(n.theirs)]).distance);
        }
        CHECK(found == expected);
    }
}

TEST_CASE("a pair exactly at the limit is within it but not below it", "[geometry]") {
    const SolidTree a({Solid::sphere(Vec3::Zero(), 0.25)});
    const SolidTree b({Solid::sphere(Vec3(1, 0, 0), 0.25)});
    CHECK(a.allWithin(b, 0.5).size() == 1);
    CHECK(a.nearest(b, 0.5).mine == -1);
    CHECK(a.nearest(b, 0.5000001).mine == 0);
}

TEST_CASE("of equal distances the pair with the lower indices is named", "[geometry]") {
    std::vector<Solid> row;
    for (int i = 0; i < 9; ++i) row.push_back(Solid::sphere(Vec3(i, 0, 0), 0.25));
    std::vector<Solid> other;
    for (int i = 0; i < 9; ++i) other.push_back(Solid::sphere(Vec3(8 - i, 1, 0), 0.25));
    const auto found = SolidTree(row).nearest(SolidTree(other));
    CHECK(found.mine == 0);
    CHECK(found.theirs == 8);
}

TEST_CASE("empty trees have nothing near", "[geometry]") {
    const SolidTree empty({});
    const SolidTree one({Solid::sphere(Vec3::Zero(), 0.1)});
    CHECK(empty.nearest(one).mine == -1);
    CHECK(one.nearest(empty).mine == -1);
    CHECK(one.allWithin(empty, 1).empty());
    CHECK(empty.castRay({Vec3::Zero(), Vec3::UnitX()}).index == -1);
    CHECK(SolidTree(one).nearest(one).mine == 0);  // a copy works on its own
}

TEST_CASE("the tree's first hit is the first of all hits", "[geometry]") {
    RandomSolids random(63);
    const std::vector<Solid> solids = scene(random, 60, 1.0);
    const SolidTree tree(solids);
    int hits = 0;
    for (int i = 0; i < 2000; ++i) {
        Ray ray;
        ray.origin_W = 2 * random.direction();
        ray.direction_W = random.uniform(0.1, 3) * (random.uniform(0, 1) * random.direction() - ray.origin_W);
        if (i % 10 == 0) ray.direction_W = -ray.origin_W.cwiseProduct(Vec3::UnitX());  // along an axis
        if (ray.direction_W.isZero()) continue;
        int index = -1;
        double along = 0;
        for (int k = 0; k < static_cast<int>(solids.size()); ++k) {
            const auto hit = castRay(ray, solids[static_cast<std::size_t>(k)]);
            if (hit && (index < 0 || hit->along_m < along)) {
                index = k;
                along = hit->along_m;
            }
        }
        const auto found = tree.castRay(ray);
        CHECK(found.index == index);
        if (index >= 0) {
            CHECK(found.hit.along_m == along);
            ++hits;
        }
    }
    CHECK(hits > 200);
}
