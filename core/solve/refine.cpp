#include "core/solve/refine.h"

#include <algorithm>

#include <Eigen/Cholesky>

#include "core/solve/margin.h"

namespace hither {
namespace {

constexpr double comfortable_m = 0.010;  // more clearance than this is not sought; common practice, no source
constexpr double pressedShare = 0.02;    // a freedom nearer than this share of its range to a limit is moved away ...
constexpr double easedShare = 0.05;      // ... up to this share
constexpr double pressureLength_m = 0.010;  // a freedom at its limit is as bad as this much less clearance
constexpr int steps = 6, halvings = 5;
constexpr double firstStep_m = 0.03, probe_m = 1e-3, leastGain_m = 1e-5;

double merit(const Search& s, const Eigen::VectorXd& q) {
    double value = -pressureLength_m * limitPressure(s.chain, q, s.fixed, easedShare);
    if (s.options.clearance) value += std::min(s.options.clearance(q), comfortable_m);
    return value;
}

bool comfortable(const Search& s, const Eigen::VectorXd& q) {
    return limitMargin(s.chain, q, s.fixed) >= pressedShare && (!s.options.clearance || s.options.clearance(q) >= comfortable_m);
}

}  // namespace

int refine(const Search& search, const FlatChain& flat, Descent& descent, Eigen::VectorXd& q) {
    if (flat.size() == 0 || comfortable(search, q)) return 0;
    int iterations = 0;
    double now = merit(search, q);
    Eigen::VectorXd x = flat.values(q);
    for (int step = 0; step < steps; ++step) {
        if (search.options.cancelled && search.options.cancelled()) break;
        Eigen::VectorXd slope(flat.size());
        for (int i = 0; i < flat.size(); ++i) {
            Eigen::VectorXd moved = q;
            moved[flat.freedom(i)] += probe_m / flat.weight(i);
            slope[i] = (merit(search, moved) - now) / probe_m;
        }
        // What is left of the slope when movements of the face are taken out.
        const Mat6X J = descent.jacobianAt(x);
        Eigen::Matrix<double, 6, 6> A = J * J.transpose();
        A.diagonal().array() += 1e-9;
        Eigen::VectorXd along = slope - J.transpose() * A.llt().solve(J * slope);
        if (along.norm() < 1e-6) break;
        along.normalize();
        bool better = false;
        double length = firstStep_m;
        for (int h = 0; h < halvings && !better; ++h, length /= 2) {
            Eigen::VectorXd trial = x;
            for (int i = 0; i < flat.size(); ++i) trial[i] += length * along[i] / flat.weight(i);
            const Descent::Outcome outcome = descent.run(trial, search.options.iterations, true);
            iterations += outcome.iterations;
            if (!search.residual.met(outcome.value)) continue;
            Eigen::VectorXd trialQ = q;
            flat.putValues(trial, trialQ);
            const double then = merit(search, trialQ);
            if (then < now + leastGain_m) continue;
            better = true;
            now = then;
            q = trialQ;
            x = flat.values(q);
        }
        if (!better || comfortable(search, q)) break;
    }
    return iterations;
}

}  // namespace hither
