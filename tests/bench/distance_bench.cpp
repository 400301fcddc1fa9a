#include <benchmark/benchmark.h>
#include <fcl/fcl.h>

#include "core/geometry/solid_tree.h"
#include "tests/support/random_solids.h"

// 4,000 posed pairs of each two kinds, 6 to 300 mm, 1 to 300 mm apart, ours and FCL's (at distance_tolerance 1e-9, where
// it is right) side by side; one query an iteration. Then a scene of 20 mount solids among 100 others.

using namespace hither;
using namespace hither::test;

namespace {

struct Pair {
    Solid A;
    Solid B;
    Pose X_WA;
    Pose X_WB;
};

std::vector<Pair> pairs(SolidKind kindA, SolidKind kindB, bool apart) {
    RandomSolids random(5);
    std::vector<Pair> made;
    for (int i = 0; i < 4000; ++i) {
        Pair p{random.solid(kindA), random.solid(kindB), random.anyPose(0.3), random.anyPose(0.3)};
        const Vec3 n = random.direction();
        if (apart) {
            p.X_WB.translation() += (random.uniform(0.001, 0.3) - gapAlong(p.A, p.X_WA, p.B, p.X_WB, n)) * n;
        } else {
            const double deepest = std::min(reach(p.A, Pose::Identity(), n), reach(p.B, Pose::Identity(), n));
            p.X_WB.translation() = p.X_WA.translation() + random.uniform(0, 1) * deepest * n;
        }
        made.push_back(p);
    }
    return made;
}

void ours(benchmark::State& state, SolidKind kindA, SolidKind kindB, bool apart) {
    const auto all = pairs(kindA, kindB, apart);
    std::size_t i = 0;
    for (auto _ : state) {
        const Pair& p = all[i];
        benchmark::DoNotOptimize(distance(p.A, p.X_WA, p.B, p.X_WB));
        i = i + 1 < all.size() ? i + 1 : 0;
    }
}

std::shared_ptr<fcl::CollisionGeometryd> fclShape(const Solid& s) {
    switch (s.kind) {
        case SolidKind::sphere:
            return std::make_shared<fcl::Sphered>(s.radius);
        case SolidKind::capsule:
            return std::make_shared<fcl::Capsuled>(s.radius, 2 * s.half.z());
        case SolidKind::cylinder:
            return std::make_shared<fcl::Cylinderd>(s.radius, 2 * s.half.z());
        case SolidKind::box:
            return std::make_shared<fcl::Boxd>(Vec3(2 * s.half));
        case SolidKind::roundedBox:
            return std::make_shared<fcl::Boxd>(Vec3(2 * (s.half.array() - s.radius)));
        case SolidKind::hull: {
            auto points = std::make_shared<std::vector<Vec3>>(s.hull->points);
            auto faces = std::make_shared<std::vector<int>>();
            for (const auto& f : s.hull->faces) faces->insert(faces->end(), {3, f[0], f[1], f[2]});
            return std::make_shared<fcl::Convexd>(points, static_cast<int>(s.hull->faces.size()), faces);
        }
    }
    return nullptr;
}

void theirs(benchmark::State& state, SolidKind kindA, SolidKind kindB) {
    const auto all = pairs(kindA, kindB, true);
    std::vector<std::shared_ptr<fcl::CollisionGeometryd>> shapes;
    for (const Pair& p : all) {
        shapes.push_back(fclShape(p.A));
        shapes.push_back(fclShape(p.B));
    }
    fcl::DistanceRequestd request;
    request.distance_tolerance = 1e-9;
    request.enable_nearest_points = true;
    std::size_t i = 0;
    for (auto _ : state) {
        fcl::DistanceResultd result;
        fcl::distance(shapes[2 * i].get(), all[i].X_WA, shapes[2 * i + 1].get(), all[i].X_WB, request, result);
        benchmark::DoNotOptimize(result.min_distance);
        i = i + 1 < all.size() ? i + 1 : 0;
    }
}

std::vector<Solid> scene(RandomSolids& random, int count, double room) {
    std::vector<Solid> made;
    for (int i = 0; i < count; ++i) {
        const SolidKind kind = allKinds[static_cast<std::size_t>(i) % allKinds.size()];
        made.push_back(random.solid(kind).movedBy(random.anyPose(room)));
    }
    return made;
}

void sceneTree(benchmark::State& state) {
    RandomSolids random(6);
    const SolidTree others(scene(random, 100, 1.0));
    const std::vector<Solid> mount = scene(random, 20, 0.3);
    Pose X_WM = Pose::Identity();
    double step = 1e-4;
    for (auto _ : state) {
        X_WM.translation().x() += step;
        if (std::abs(X_WM.translation().x()) > 0.2) step = -step;
        std::vector<Solid> moved;
        moved.reserve(mount.size());
        for (const Solid& s : mount) moved.push_back(s.movedBy(X_WM));
        benchmark::DoNotOptimize(SolidTree(std::move(moved)).nearest(others));
    }
}

void sceneAllPairs(benchmark::State& state) {
    RandomSolids random(6);
    const std::vector<Solid> others = scene(random, 100, 1.0);
    const std::vector<Solid> mount = scene(random, 20, 0.3);
    for (auto _ : state) {
        double least = 1e300;
        for (const Solid& a : mount) {
            for (const Solid& b : others) least = std::min(least, distance(a, b).distance);
        }
        benchmark::DoNotOptimize(least);
    }
}

const bool registered = [] {
    for (std::size_t a = 0; a < allKinds.size(); ++a) {
        for (std::size_t b = a; b < allKinds.size(); ++b) {
            const SolidKind kindA = allKinds[a];
            const SolidKind kindB = allKinds[b];
            const std::string pair = std::string(name(kindA)) + ", " + name(kindB);
            benchmark::RegisterBenchmark(("distance/" + pair + "/ours").c_str(), [=](benchmark::State& s) { ours(s, kindA, kindB, true); });
            benchmark::RegisterBenchmark(("distance/" + pair + "/FCL").c_str(), [=](benchmark::State& s) { theirs(s, kindA, kindB); });
            benchmark::RegisterBenchmark(("distance/" + pair + "/ours, overlapping").c_str(), [=](benchmark::State& s) { ours(s, kindA, kindB, false); });
        }
    }
    benchmark::RegisterBenchmark("distance/scene 20 x 100/tree", sceneTree);
    benchmark::RegisterBenchmark("distance/scene 20 x 100/all pairs", sceneAllPairs);
    return true;
}();

}  // namespace
