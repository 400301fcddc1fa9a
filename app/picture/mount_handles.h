#pragma once
#include <vector>

#include "app/picture/mount_items.h"
#include "app/picture/part_shapes.h"

namespace hither {

/// Name of the joint that a handle of a mate's clocking picks, and of those that move the grip along its
/// attachment and round it.
inline constexpr const char* clockingJoint = "clocking";
inline constexpr const char* placeJoint = "place";
inline constexpr const char* aroundJoint = "around";

/// Adds what can be taken hold of in Build: a handle for every freedom that is not kept of the picked
/// part (or of the part whose joint or outlet is picked), or of all parts of the picked mount; and the
/// place where a part can be added, when the last part is no switch.
void addMountHandles(std::vector<PictureItem>& items, const SetupMount& mount, const HeldOn& held, const ChainPoses& poses, const PictureWishes& wishes,
                     MeshStore& store);

}  // namespace hither
