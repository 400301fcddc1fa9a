#pragma once
#include "core/chain/chain.h"

namespace hither {

/// Sets Freedom::weight of every freedom from its steps: a slide moves the far end 1 m per metre; an
/// angle as much as the lengths that follow it straightened out (at least 50 mm); a bend's curvature
/// its arc times what follows.
void setWeights(Chain& chain);

}  // namespace hither
