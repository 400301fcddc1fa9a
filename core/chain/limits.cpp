#include "core/chain/chain.h"

#include <algorithm>
#include <cmath>

#include "core/units/quantity.h"

namespace hither {

Eigen::VectorXd clamped(const Chain& chain, Eigen::VectorXd q) {
    const auto inDisc = [&chain](int i) {
        return std::any_of(chain.discs.begin(), chain.discs.end(), [i](const DiscLimit& d) { return i == d.first || i == d.first + 1; });
    };
    for (int i = 0; i < chain.freedomCount(); ++i) {
        if (inDisc(i)) continue;  // a disc is scaled back as a whole, so that its direction stays
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

double detentValue(const Freedom& freedom, int n) {
    return (freedom.isAngle ? 0.0 : freedom.min) + n * freedom.step.value_or(0.0);
}

int nearestDetent(const Freedom& freedom, double value) {
    const double step = freedom.step.value_or(0.0);
    if (!(step > 0)) return 0;
    const double from = detentValue(freedom, 0);
    double n = std::clamp(std::round((value - from) / step), -1e9, 1e9);
    if (!freedom.fullTurn) {
        constexpr double slack = 1e-9;  // of a step: a detent exactly at a limit counts
        n = std::min(n, std::floor((freedom.max - from) / step + slack));
        n = std::max(n, std::ceil((freedom.min - from) / step - slack));
    }
    return static_cast<int>(n);
}

}  // namespace hither
