#include "core/chain/weights.h"

#include <algorithm>
#include <cmath>

namespace hither {
namespace {

constexpr double leastArm_m = 0.05;  // an angle moves the far end at least as if it were this far away

}  // namespace

void setWeights(Chain& chain) {
    double rest = 0;
    for (auto step = chain.steps.rbegin(); step != chain.steps.rend(); ++step) {
        const double arm = std::max(rest, leastArm_m);
        const auto at = [&chain, &step](int component) -> Freedom& { return chain.freedoms[static_cast<std::size_t>(step->q0 + component)]; };
        switch (step->kind) {
            case ChainStep::Kind::fixed: rest += step->X.translation().norm(); break;
            case ChainStep::Kind::slide:
                at(0).weight = 1;
                rest += std::max(std::abs(at(0).min), std::abs(at(0).max));
                break;
            case ChainStep::Kind::turn: at(0).weight = arm; break;
            case ChainStep::Kind::ball: for (int c = 0; c < 3; ++c) at(c).weight = arm; break;
            case ChainStep::Kind::bend:
                for (int c = 0; c < 2; ++c) at(c).weight = step->arc * std::max(rest + step->arc / 2, leastArm_m);
                rest += step->arc;
                break;
        }
    }
}

}  // namespace hither
