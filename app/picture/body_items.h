#pragma once
#include <vector>

#include "app/picture/mount_items.h"

namespace hither {

/// The person in the present posture: one calm rounded form a body segment, made of its solids. The
/// segments that operate a switch are tinted. Picks Picked::person(word(segment)).
std::vector<PictureItem> bodyItems(const Situation& situation, const PictureWishes& wishes, MeshStore& store);

}  // namespace hither
