#include "core/solve/search.h"

#include <cassert>
#include <cmath>

#include "core/solve/margin.h"
#include "core/solve/starts.h"
#include "core/units/quantity.h"
#include "core/units/tolerances.h"

namespace hither {
namespace {

using Kind = ChainStep::Kind;

}  // namespace

Search::Search(const Chain& aChain, const Eigen::VectorXd& present, const Target& aTarget, const SolveOptions& someOptions)
    : chain(aChain), target(aTarget), options(someOptions), residual(aTarget, aChain.operatingAxis),
      fixed(static_cast<std::size_t>(aChain.freedomCount()), 0), turns(fixed.size(), 0.0), home(present) {
    assert(present.size() == chain.freedomCount());
    for (const ChainStep& step : chain.steps) {
        const int count = freedomsOf(step.kind);
        bool kept = false;
        for (int c = 0; c < count; ++c) kept = kept || chain.freedoms[static_cast<std::size_t>(step.q0 + c)].kept;
        for (int c = 0; c < count; ++c) {
            const auto i = static_cast<std::size_t>(step.q0 + c);
            fixed[i] = kept ? 1 : 0;
            turns[i] = step.kind == Kind::slide ? 0 : step.kind == Kind::bend ? step.arc : 1;
        }
    }
    // A turn that moves neither place nor aim, wherever the others stand, keeps its present value.
    const FlatChain flat(chain, home, fixed);
    FlatChain::State state = flat.makeState();
    std::vector<char> idle(static_cast<std::size_t>(flat.size()), 1);
    constexpr unsigned probes = 4;
    constexpr double nothing = 1e-12;
    for (unsigned k = 1; k <= probes; ++k) {
        flat.walk(startingPoint(flat, k), state);
        const Vec3 axis = state.R * chain.operatingAxis;
        for (int v = 0; v < flat.size(); ++v) {
            const Vec3 w = state.w.col(v);
            const double place = (state.v.col(v) + w.cross(state.p)).norm(), aim = target.R_W ? w.norm() : w.cross(axis).norm();
            if (place > nothing || aim > nothing) idle[static_cast<std::size_t>(v)] = 0;
        }
    }
    for (const ChainStep& step : chain.steps) {
        if (step.kind != Kind::turn) continue;
        for (int v = 0; v < flat.size(); ++v) {
            if (flat.freedom(v) != step.q0 || !idle[static_cast<std::size_t>(v)]) continue;
            const Freedom& f = chain.freedoms[static_cast<std::size_t>(step.q0)];
            fixed[static_cast<std::size_t>(step.q0)] = 1;
            double& value = home[step.q0];
            if (options.snapDetents && f.step) value = detentValue(f, nearestDetent(f, value));
            if (f.fullTurn) value = differenceOf(f, 0, value);
            else value = std::min(std::max(value, f.min), f.max);
        }
    }
}

double differenceOf(const Freedom& freedom, double a, double b) {
    if (!freedom.fullTurn) return b - a;
    const double d = std::remainder(b - a, 2 * pi);
    return d <= -pi ? d + 2 * pi : d;
}

bool sameSetting(const Search& search, const Eigen::VectorXd& a, const Eigen::VectorXd& b) {
    for (int i = 0; i < search.chain.freedomCount(); ++i) {
        const double d = std::abs(differenceOf(search.chain.freedoms[static_cast<std::size_t>(i)], a[i], b[i]));
        const double turn = search.turns[static_cast<std::size_t>(i)];
        if (turn > 0 ? d * turn > tolerance::sameSolutionAngle_rad : d > tolerance::sameSolutionSlide_m) return false;
    }
    return true;
}

double apart_m(const Search& search, const Eigen::VectorXd& a, const Eigen::VectorXd& b) {
    double sum = 0;
    for (int i = 0; i < search.chain.freedomCount(); ++i) {
        const Freedom& f = search.chain.freedoms[static_cast<std::size_t>(i)];
        const double d = f.weight * differenceOf(f, a[i], b[i]);
        sum += d * d;
    }
    return std::sqrt(sum);
}

Solution describeSolution(const Search& search, const Eigen::VectorXd& q, bool snapped) {
    Solution s;
    s.q = q;
    s.snapped = snapped;
    const ChainPoses poses = forward(search.chain, q);
    FlatChain::State state;
    state.R = poses.last().linear();
    state.p = poses.last().translation();
    const Residual::Value value = search.residual.at(state);
    s.position_m = value.position_m;
    s.angle_rad = value.angle_rad;
    s.limitMargin = limitMargin(search.chain, q, search.fixed);
    if (search.options.clearance) s.clearance_m = search.options.clearance(q);
    return s;
}

}  // namespace hither
