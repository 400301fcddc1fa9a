#include "core/solve/margin.h"

#include <algorithm>
#include <cmath>

namespace hither {
namespace {

template <class Visit>
void eachMargin(const Chain& chain, const Eigen::VectorXd& q, const std::vector<char>& fixed, Visit visit) {
    std::vector<char> inDisc(fixed.size(), 0);
    for (const DiscLimit& disc : chain.discs) {
        const auto first = static_cast<std::size_t>(disc.first);
        inDisc[first] = inDisc[first + 1] = 1;
        if (fixed[first] || disc.radius <= 0) continue;
        visit((disc.radius - std::hypot(q[disc.first], q[disc.first + 1])) / (2 * disc.radius));
    }
    for (int i = 0; i < chain.freedomCount(); ++i) {
        const Freedom& f = chain.freedoms[static_cast<std::size_t>(i)];
        if (inDisc[static_cast<std::size_t>(i)] || fixed[static_cast<std::size_t>(i)] || f.fullTurn || !(f.max > f.min)) continue;
        visit(std::min(q[i] - f.min, f.max - q[i]) / (f.max - f.min));
    }
}

}  // namespace

double limitMargin(const Chain& chain, const Eigen::VectorXd& q, const std::vector<char>& fixed) {
    double least = 0.5;
    eachMargin(chain, q, fixed, [&least](double m) { least = std::min(least, m); });
    return std::max(0.0, least);
}

double limitPressure(const Chain& chain, const Eigen::VectorXd& q, const std::vector<char>& fixed, double share) {
    double sum = 0;
    eachMargin(chain, q, fixed, [&sum, share](double m) {
        const double missing = std::max(0.0, 1 - m / share);
        sum += missing * missing;
    });
    return sum;
}

}  // namespace hither
