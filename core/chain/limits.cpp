#include "core/chain/chain.h"

#include <algorithm>
#include <cmath>

#include "core/units/quantity.h"

namespace hither {

Eigen::VectorXd clamped(const Chain& chain, Eigen::VectorXd q) {
    for (int i = 0; i < chain.freedomCount(); ++i) {
        const Freedom& f = chain.freedoms[static_cast<std::size_t>(i)];
        if (f.fullTurn) {
            q[i] = std::remainder(q[i], 2 * pi);
            if (q[i] <= -pi) q[i] += 2 * pi;
        } else {
            q[i] = std::clamp(q[i], f.min, f.max);
        }
    }
    for (const DiscLimit& disc : chain.discs) {
        const double r = std::hypot(q[disc.first], q[disc.first + 1]);
        if (r > disc.radius) q.segment<2>(disc.first) *= disc.radius / r;
    }
    return q;
}

double outside(const Chain& chain, const Eigen::VectorXd& q, int i) {
    for (const DiscLimit& disc : chain.discs) {
        if (i == disc.first) return std::max(0.0, std::hypot(q[i], q[i + 1]) - disc.radius);
        if (i == disc.first + 1) return 0.0;
    }
    const Freedom& f = chain.freedoms[static_cast<std::size_t>(i)];
    if (f.fullTurn) return 0.0;
    return std::max({0.0, f.min - q[i], q[i] - f.max});
}

}  // namespace hither
