#pragma once
#include <random>
#include <string>

#include "core/chain/chain.h"
#include "core/chain/weights.h"
#include "core/units/quantity.h"

namespace hither::test {

/// Builds a Chain straight from steps, for arms of the literature and for mounts without a support.
class ChainBuilder {
public:
    ChainBuilder& fixed(const Pose& X) { add(ChainStep::Kind::fixed).X = X; return *this; }
    ChainBuilder& fixed(const Vec3& p) { return fixed(translation(p)); }
    ChainBuilder& slide(const Vec3& axis, double min, double max) {
        ChainStep& s = add(ChainStep::Kind::slide);
        s.axis = axis.normalized();
        s.q0 = chain_.freedomCount();
        freedom(min, max, 0).isAngle = false;
        return *this;
    }
    ChainBuilder& turn(const Vec3& axis, double min = -pi, double max = pi) {
        ChainStep& s = add(ChainStep::Kind::turn);
        s.axis = axis.normalized();
        s.q0 = chain_.freedomCount();
        freedom(min, max, 0).fullTurn = min == -pi && max == pi;
        return *this;
    }
    ChainBuilder& ball(double cone, double twistMin = -pi, double twistMax = pi) {
        add(ChainStep::Kind::ball).q0 = chain_.freedomCount();
        chain_.discs.push_back({chain_.freedomCount(), cone});
        freedom(-cone, cone, 0);
        freedom(-cone, cone, 1);
        freedom(twistMin, twistMax, 2).fullTurn = twistMin == -pi && twistMax == pi;
        return *this;
    }
    /// A gooseneck: three arcs.
    ChainBuilder& neck(double length, double minRadius, double radius = 0.006) {
        for (int arc = 0; arc < 3; ++arc) {
            chain_.bends.push_back({static_cast<int>(chain_.steps.size()), 0, radius});
            ChainStep& s = add(ChainStep::Kind::bend);
            s.arc = length / 3;
            s.q0 = chain_.freedomCount();
            chain_.discs.push_back({chain_.freedomCount(), 1 / minRadius});
            for (int c = 0; c < 2; ++c) freedom(-1 / minRadius, 1 / minRadius, 2 * arc + c).isAngle = false;
        }
        return *this;
    }
    ChainBuilder& detent(double step) { chain_.freedoms.back().step = step; return *this; }
    ChainBuilder& axis(const Vec3& operating) { chain_.operatingAxis = operating; return *this; }
    Chain made() const {
        Chain chain = chain_;
        setWeights(chain);
        return chain;
    }

private:
    ChainStep& add(ChainStep::Kind kind) {
        ChainStep s;
        s.kind = kind;
        return chain_.steps.emplace_back(s);
    }
    Freedom& freedom(double min, double max, int component) {
        Freedom f;
        f.joint = "joint" + std::to_string(chain_.steps.size());
        f.component = component;
        f.min = min;
        f.max = max;
        return chain_.freedoms.emplace_back(f);
    }
    Chain chain_;
};

/// Values spread evenly over the limits, discs by their area.
inline Eigen::VectorXd randomValues(const Chain& chain, std::mt19937& random) {
    std::uniform_real_distribution<double> unit(0, 1);
    Eigen::VectorXd q(chain.freedomCount());
    for (int i = 0; i < chain.freedomCount(); ++i) {
        const Freedom& f = chain.freedoms[static_cast<std::size_t>(i)];
        q[i] = f.min + unit(random) * (f.max - f.min);
    }
    for (const DiscLimit& disc : chain.discs) {
        const double r = disc.radius * std::sqrt(unit(random)), turn = 2 * pi * unit(random);
        q[disc.first] = r * std::cos(turn);
        q[disc.first + 1] = r * std::sin(turn);
    }
    return q;
}

/// Middle of every range.
inline Eigen::VectorXd middleValues(const Chain& chain) {
    Eigen::VectorXd q(chain.freedomCount());
    for (int i = 0; i < chain.freedomCount(); ++i) {
        const Freedom& f = chain.freedoms[static_cast<std::size_t>(i)];
        q[i] = (f.min + f.max) / 2;
    }
    return q;
}

inline Vec3 unitVector(std::mt19937& random) {
    std::normal_distribution<double> normal;
    Vec3 v;
    do v = Vec3(normal(random), normal(random), normal(random)); while (v.norm() < 1e-3);
    return v.normalized();
}

}  // namespace hither::test
