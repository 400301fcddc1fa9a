#pragma once
#include <optional>
#include <string>

#include "app/scene/drag_maths.h"
#include "core/situation/situation.h"

namespace hither {

/// Where on an attachment a point of the scene is, as a grip put there would be placed: the place along
/// it (within its ends), the side of the rail, the side of the edge, the place on the face. The other
/// numbers are 0. Nothing when the support has no such attachment.
std::optional<Placement> placementAt(const Situation& situation, const std::string& support, const std::string& attachment, const Vec3& point_W);

/// The line or frame of an attachment in W at the present settings: origin at its `a`, x along it (rail, edge,
/// cloth) or along its reference (face), z where "around" is 0 or away from the surface.
Pose attachmentFrame_W(const Situation& situation, const std::string& support, const Attachment& attachment);

}  // namespace hither
