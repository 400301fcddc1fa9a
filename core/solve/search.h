#pragma once
#include <vector>

#include "core/solve/descent.h"

namespace hither {

/// What one call of solve works with: the chain, its target and which freedoms stay where they are.
struct Search {
    const Chain& chain;
    const Target& target;
    const SolveOptions& options;
    Residual residual;
    std::vector<char> fixed;       ///< kept, or without any say (a turn about the face's own middle)
    std::vector<double> turns;     ///< radians that a unit of each freedom turns what follows
    Eigen::VectorXd home;          ///< present values; those of fixed freedoms are final

    Search(const Chain& chain, const Eigen::VectorXd& present, const Target& target, const SolveOptions& options);
};

/// Difference b - a of one freedom, the short way round for full turns.
double differenceOf(const Freedom& freedom, double a, double b);
/// One and the same setting to a person at the bench (tolerance::sameSolution...).
bool sameSetting(const Search& search, const Eigen::VectorXd& a, const Eigen::VectorXd& b);
/// How far apart two settings are, metres of movement at the far end, roughly.
double apart_m(const Search& search, const Eigen::VectorXd& a, const Eigen::VectorXd& b);
/// A solution with its residuals measured and its margin and clearance.
Solution describeSolution(const Search& search, const Eigen::VectorXd& q, bool snapped);

}  // namespace hither
