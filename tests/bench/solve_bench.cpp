// Time to bring a switch to a reachable target, starting from mid-range, and for the two arms of the
// literature the same next to Orocos KDL's Levenberg-Marquardt solver with random restarts,
// rejecting what ends outside the limits. Counter `solved`: share of the targets met within limits.
#include <benchmark/benchmark.h>

#include <kdl/chain.hpp>
#include <kdl/chainiksolverpos_lma.hpp>

#include "core/solve/solve.h"
#include "tests/support/known_arms.h"
#include "tests/support/mount_families.h"

using namespace hither;
using namespace hither::test;

namespace {

constexpr std::size_t targetCount = 512;

std::vector<Target> targetsOf(const Chain& chain, bool fullPose) {
    std::mt19937 random(1);
    std::vector<Target> targets;
    for (std::size_t n = 0; n < targetCount; ++n) {
        const Pose X = forward(chain, randomValues(chain, random)).last();
        Target target;
        target.p_W = X.translation();
        target.d_W = X.linear() * chain.operatingAxis;
        if (fullPose) target.R_W = X.linear();
        targets.push_back(target);
    }
    return targets;
}

void solveTargets(benchmark::State& state, const Chain& chain, bool fullPose, int most) {
    const std::vector<Target> targets = targetsOf(chain, fullPose);
    const Eigen::VectorXd present = middleValues(chain);
    SolveOptions options;
    options.most = most;
    std::size_t n = 0;
    double solved = 0;
    for (auto _ : state) {
        const SolveReport report = solve(chain, present, targets[n++ % targetCount], options);
        if (!report.solutions.empty()) ++solved;
        benchmark::DoNotOptimize(report.solutions);
    }
    state.counters["solved"] = benchmark::Counter(solved, benchmark::Counter::kAvgIterations);
}

void solveOutOfReach(benchmark::State& state, const Chain& chain) {
    Target far;
    far.p_W = Vec3(0.9, 1.4, 1.6);
    const Eigen::VectorXd present = middleValues(chain);
    for (auto _ : state) {
        const SolveReport report = solve(chain, present, far);
        benchmark::DoNotOptimize(report.nearest);
    }
}

/// Only fixed steps, turns and slides.
KDL::Chain kdlChain(const Chain& chain) {
    const auto vector = [](const Vec3& v) { return KDL::Vector(v.x(), v.y(), v.z()); };
    KDL::Chain out;
    for (const ChainStep& step : chain.steps) {
        if (step.kind == ChainStep::Kind::fixed) {
            const Mat3 R = step.X.linear();
            const KDL::Rotation M(R(0, 0), R(0, 1), R(0, 2), R(1, 0), R(1, 1), R(1, 2), R(2, 0), R(2, 1), R(2, 2));
            out.addSegment(KDL::Segment(KDL::Joint(KDL::Joint::None), KDL::Frame(M, vector(step.X.translation()))));
        } else {
            const auto type = step.kind == ChainStep::Kind::turn ? KDL::Joint::RotAxis : KDL::Joint::TransAxis;
            out.addSegment(KDL::Segment(KDL::Joint(KDL::Vector::Zero(), vector(step.axis), type)));
        }
    }
    return out;
}

void solveByKdl(benchmark::State& state, const Chain& chain) {
    const std::vector<Target> targets = targetsOf(chain, true);
    const KDL::Chain twin = kdlChain(chain);
    KDL::ChainIkSolverPos_LMA solver(twin, 1e-6, 100);
    const auto size = static_cast<unsigned>(chain.freedomCount());
    std::size_t n = 0;
    double solved = 0;
    for (auto _ : state) {
        const Target& target = targets[n++ % targetCount];
        const Mat3& R = *target.R_W;
        const KDL::Frame goal(KDL::Rotation(R(0, 0), R(0, 1), R(0, 2), R(1, 0), R(1, 1), R(1, 2), R(2, 0), R(2, 1), R(2, 2)),
                              KDL::Vector(target.p_W.x(), target.p_W.y(), target.p_W.z()));
        std::mt19937 random(7);
        KDL::JntArray from(size), q(size);
        const Eigen::VectorXd middle = middleValues(chain);
        for (unsigned i = 0; i < size; ++i) from(i) = middle[static_cast<Eigen::Index>(i)];
        for (int start = 0; start <= 64; ++start) {
            bool good = solver.CartToJnt(from, goal, q) >= 0;
            for (int i = 0; good && i < chain.freedomCount(); ++i) {
                const Freedom& f = chain.freedoms[static_cast<std::size_t>(i)];
                double& value = q(static_cast<unsigned>(i));
                if (f.isAngle) value = std::remainder(value, 2 * pi);
                good = value >= f.min && value <= f.max;
            }
            if (good) { ++solved; break; }
            const Eigen::VectorXd again = randomValues(chain, random);
            for (unsigned i = 0; i < size; ++i) from(i) = again[static_cast<Eigen::Index>(i)];
        }
        benchmark::DoNotOptimize(q.data.data());
    }
    state.counters["solved"] = benchmark::Counter(solved, benchmark::Counter::kAvgIterations);
}

[[maybe_unused]] const bool registered = [] {
    for (const Family& family : mountFamilies()) {
        const Chain chain = family.chain;
        benchmark::RegisterBenchmark(("solve/first/" + family.name).c_str(), [chain](benchmark::State& s) { solveTargets(s, chain, false, 1); })->Unit(benchmark::kMicrosecond);
        benchmark::RegisterBenchmark(("solve/eight/" + family.name).c_str(), [chain](benchmark::State& s) { solveTargets(s, chain, false, 8); })->Unit(benchmark::kMicrosecond);
        benchmark::RegisterBenchmark(("solve/out of reach/" + family.name).c_str(), [chain](benchmark::State& s) { solveOutOfReach(s, chain); })->Unit(benchmark::kMicrosecond);
    }
    benchmark::RegisterBenchmark("solve/nine-joint mount, point and direction", [](benchmark::State& s) { solveTargets(s, nineJointMount(), false, 1); })->Unit(benchmark::kMicrosecond);
    benchmark::RegisterBenchmark("solve/nine-joint mount, pose", [](benchmark::State& s) { solveTargets(s, nineJointMount(), true, 1); })->Unit(benchmark::kMicrosecond);
    for (const auto& [name, chain] : {std::pair<std::string, Chain>("Puma 560", puma560()), std::pair<std::string, Chain>("Panda", panda())}) {
        const Chain arm = chain;
        benchmark::RegisterBenchmark(("solve/" + name + ", pose").c_str(), [arm](benchmark::State& s) { solveTargets(s, arm, true, 1); })->Unit(benchmark::kMicrosecond);
        benchmark::RegisterBenchmark(("KDL LMA with restarts/" + name + ", pose").c_str(), [arm](benchmark::State& s) { solveByKdl(s, arm); })->Unit(benchmark::kMicrosecond);
    }
    return true;
}();

}  // namespace
