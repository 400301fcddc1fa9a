#pragma once
#include <optional>
#include <string>

#include "core/chain/chain.h"

namespace hither {

/// A mount mirrored in the plane y = 0 of its support's frame S, built of the same parts.
///
/// Reflecting a chain's frames by a plane with normal n, X' = M_S X M_n (M = I - 2 n n^T), gives proper
/// frames again; n is followed from the grip to the face. A rigid piece must be its own mirror image in
/// n; a turn about an axis in the plane changes its sign and one about n keeps it; a slide along n
/// changes its sign and one in the plane keeps it. A turn about an axis in the plane may also choose
/// another n square to that axis, which adds twice the angle between them: an elbow that bends only one
/// way then bends the same way on the other side.
struct MountMirrored { std::optional<Mount> mount; std::string whyNot; };
MountMirrored mirrorMount(const Mount& mount, const Chain& chain, const Eigen::VectorXd& q, const Support& support);

}  // namespace hither
