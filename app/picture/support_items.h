#pragma once
#include <vector>

#include "app/picture/mount_items.h"

namespace hither {

/// The supports as they stand at the present settings of their moving groups, each solid by a form that
/// tells what it is; picks Picked::support(id, solid name).
std::vector<PictureItem> supportItems(const Situation& situation, const PictureWishes& wishes, MeshStore& store);

/// What the person sits on over the seat: as thick as the body is above it. No solid, so nothing is kept
/// clear of it; nothing when there is no gap. Picks the seat.
std::vector<PictureItem> cushionItems(const Situation& situation, const PictureWishes& wishes, MeshStore& store);

/// In Build: the stretches of rails, edges, faces and cloth where a grip can sit, as thin sleeves and
/// strips just above them; of the attachment that is picked or asked for, the closed stretches too.
/// Picks Picked::attachment.
std::vector<PictureItem> attachmentItems(const Situation& situation, const PictureWishes& wishes, MeshStore& store);

}  // namespace hither
