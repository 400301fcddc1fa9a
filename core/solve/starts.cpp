#include "core/solve/starts.h"

#include <cmath>

#include "core/solve/halton.h"
#include "core/units/quantity.h"

namespace hither {
namespace {

// Plain Halton points of high dimensions run in step with one another; taking every 409th undoes it.
// 409 is the 80th prime, so only smaller bases may be used; chains with more freedoms use them again
// from another place of the sequence.
constexpr unsigned leap = 409;
constexpr int bases = 79;

double evenly(unsigned index, int dimension) {
    const auto again = static_cast<unsigned>(dimension / bases);
    return halton((index + 100003 * again) * leap, primeOf(dimension % bases));
}

}  // namespace

Eigen::VectorXd startingPoint(const FlatChain& flat, unsigned index) {
    Eigen::VectorXd x(flat.size());
    for (int i = 0; i < flat.size(); ++i) {
        const FlatChain::Box& box = flat.boxes()[static_cast<std::size_t>(i)];
        const double u = evenly(index, i);
        x[i] = box.bounded ? box.min + u * (box.max - box.min) : pi * (2 * u - 1);
    }
    for (const FlatChain::Disc& disc : flat.discs()) {
        const double r = disc.radius * std::sqrt(evenly(index, disc.first)), turn = 2 * pi * evenly(index, disc.first + 1);
        x[disc.first] = r * std::cos(turn);
        x[disc.first + 1] = r * std::sin(turn);
    }
    return x;
}

}  // namespace hither
