#pragma once
#include <string>
#include <vector>

#include "core/chain/chain.h"

namespace hither {

/// One placement option made ready to be judged: the givens, its mounts as chains with their joint
/// values, and the volumes to keep free. What the checks work on.
struct SetupMount { Mount mount; Chain chain; Eigen::VectorXd q; };
struct Setup {
    std::string option;
    Situation situation;
    std::vector<SetupMount> mounts;
    std::vector<KeepOut> keepOuts;
};

}  // namespace hither
