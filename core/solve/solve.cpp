#include "core/solve/solve.h"

#include <algorithm>
#include <cmath>
#include <limits>

#include "core/solve/detents.h"
#include "core/solve/reach.h"
#include "core/solve/refine.h"
#include "core/solve/search.h"
#include "core/solve/starts.h"
#include "core/units/tolerances.h"

namespace hither {
namespace {

constexpr int polished = 6;              // so many of the best starts are followed to their very least
constexpr int polishIterations = 400;
constexpr double stopsShare = 1e-3;      // of the residual along a limited freedom before it counts as a stop
constexpr double atLimit = 1e-9;
constexpr double clearanceStep_m = 0.001, marginStep = 0.05;  // finer differences do not rank solutions

/// Starts that did not meet the target, nearest first, a few only.
class NearMisses {
public:
    void add(double cost, const Eigen::VectorXd& x) {
        if (misses_.size() == polished && cost >= misses_.back().cost) return;
        const auto at = std::upper_bound(misses_.begin(), misses_.end(), cost, [](double c, const Miss& m) { return c < m.cost; });
        misses_.insert(at, {cost, x});
        if (misses_.size() > polished) misses_.pop_back();
    }
    struct Miss { double cost; Eigen::VectorXd x; };
    const std::vector<Miss>& all() const { return misses_; }
private:
    std::vector<Miss> misses_;
};

/// Limits that hold the nearest setting back.
std::vector<Stopped> stopsAt(const FlatChain& flat, Descent& descent, const Eigen::VectorXd& x) {
    const Vec6 e = descent.valueAt(x).e;
    const Mat6X& J = descent.jacobianAt(x);
    std::vector<Stopped> stops;
    const auto pulls = [&e](const Vec6& column) { return column.dot(e) > stopsShare * column.norm() * e.norm() && column.norm() > 0; };
    for (int i = 0; i < flat.size(); ++i) {
        const FlatChain::Box& box = flat.boxes()[static_cast<std::size_t>(i)];
        if (!box.bounded) continue;
        if (x[i] >= box.max - atLimit && pulls(J.col(i))) stops.push_back({flat.freedom(i), true});
        else if (x[i] <= box.min + atLimit && pulls(-J.col(i))) stops.push_back({flat.freedom(i), false});
    }
    for (const FlatChain::Disc& disc : flat.discs()) {
        const Eigen::Vector2d v = x.segment<2>(disc.first);
        const double r = v.norm();
        if (r <= 0 || r < disc.radius - atLimit * std::max(1.0, disc.radius)) continue;
        if (pulls(J.middleCols<2>(disc.first) * (v / r))) stops.push_back({flat.freedom(disc.first), true});
    }
    std::sort(stops.begin(), stops.end(), [](const Stopped& a, const Stopped& b) { return a.freedom < b.freedom; });
    return stops;
}

bool isMet(const Solution& s) { return s.position_m <= tolerance::solvePosition_m && s.angle_rad <= tolerance::solveAngle_rad; }

void rank(const Search& search, const Eigen::VectorXd& present, std::vector<Solution>& solutions) {
    struct Keyed { Solution solution; bool met; double cost, clearance, margin, apart; };
    std::vector<Keyed> keyed;
    for (Solution& s : solutions) {
        Keyed k;
        k.met = isMet(s);
        k.cost = k.met ? 0 : std::hypot(s.position_m, angleLength_m * s.angle_rad);
        k.clearance = std::floor(s.clearance_m / clearanceStep_m);
        k.margin = std::floor(s.limitMargin / marginStep);
        k.apart = apart_m(search, present, s.q);
        k.solution = std::move(s);
        keyed.push_back(std::move(k));
    }
    std::stable_sort(keyed.begin(), keyed.end(), [](const Keyed& a, const Keyed& b) {
        if (a.met != b.met) return a.met;
        if (a.cost != b.cost) return a.cost < b.cost;
        if (a.clearance != b.clearance) return a.clearance > b.clearance;
        if (a.margin != b.margin) return a.margin > b.margin;
        return a.apart < b.apart;
    });
    for (std::size_t i = 0; i < keyed.size(); ++i) solutions[i] = std::move(keyed[i].solution);
}

}  // namespace

SolveReport solve(const Chain& chain, const Eigen::VectorXd& present, const Target& target, const SolveOptions& options) {
    const Search search(chain, present, target, options);
    const FlatChain flat(chain, search.home, search.fixed);
    Descent descent(flat, search.residual);
    const std::vector<int> detented = options.snapDetents ? detentedFreedoms(search) : std::vector<int>();
    SolveReport report;
    std::vector<Eigen::VectorXd> found;  // distinct, before their detented freedoms went to steps
    NearMisses misses;
    const std::size_t most = static_cast<std::size_t>(std::max(1, options.most));
    std::size_t met = 0;

    const auto keep = [&](const Eigen::VectorXd& x) {
        Eigen::VectorXd q = search.home;
        flat.putValues(x, q);
        const auto sameAs = [&search](const Eigen::VectorXd& a) { return [&search, &a](const Eigen::VectorXd& b) { return sameSetting(search, a, b); }; };
        if (std::any_of(found.begin(), found.end(), sameAs(q))) return;
        found.push_back(q);
        report.iterations += refine(search, flat, descent, q);
        bool snapped = false;
        if (!detented.empty()) {
            const Snapped onSteps = snapToDetents(search, detented, q);
            report.iterations += onSteps.iterations;
            q = onSteps.q;
            snapped = true;
        }
        for (const Solution& s : report.solutions) if (sameSetting(search, s.q, q)) return;
        report.solutions.push_back(describeSolution(search, q, snapped));
        if (isMet(report.solutions.back())) ++met;
    };

    for (int start = 0; start <= options.restarts && met < most; ++start) {
        if (options.cancelled && options.cancelled()) {
            report.status = SolveReport::Status::cancelled;
            break;
        }
        Eigen::VectorXd x = start == 0 ? flat.values(search.home) : startingPoint(flat, static_cast<unsigned>(start));
        const Descent::Outcome outcome = descent.run(x, options.iterations, start == 0);
        ++report.starts;
        report.iterations += outcome.iterations;
        if (search.residual.met(outcome.value)) keep(x);
        else if (found.empty()) misses.add(outcome.value.cost(), x);
        if (flat.size() == 0) break;
    }
    if (found.empty() && report.status != SolveReport::Status::cancelled) {
        double least = std::numeric_limits<double>::infinity();
        Eigen::VectorXd nearest;
        for (const NearMisses::Miss& miss : misses.all()) {
            Eigen::VectorXd x = miss.x;
            const Descent::Outcome outcome = descent.run(x, polishIterations, true);
            report.iterations += outcome.iterations;
            if (search.residual.met(outcome.value)) {
                keep(x);
                if (met >= most) break;
            }
            if (outcome.value.cost() < least) {
                least = outcome.value.cost();
                nearest = x;
            }
        }
        if (found.empty()) {
            Eigen::VectorXd q = search.home;
            flat.putValues(nearest, q);
            report.stopped = stopsAt(flat, descent, nearest);
            report.reachShort_m = reachShort_m(chain, search.home, search.fixed, target.p_W);
            if (!detented.empty()) {
                const Snapped onSteps = snapToDetents(search, detented, q);
                report.iterations += onSteps.iterations;
                q = onSteps.q;
            }
            report.nearest = describeSolution(search, q, !detented.empty());
        }
    }
    rank(search, present, report.solutions);
    if (report.solutions.size() > most) report.solutions.resize(most);
    if (!report.solutions.empty() && report.status != SolveReport::Status::cancelled) report.status = SolveReport::Status::solved;
    return report;
}

}  // namespace hither
