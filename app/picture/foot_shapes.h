#pragma once
#include <vector>

#include "app/picture/part_roles.h"
#include "app/picture/part_shapes.h"

namespace hither {

/// What a grip shows on the border of a plate: the pad under it with its screw, jaws where the part's
/// solids have none, the locking tab. In the grip's frame.
void addEdgeJaws(DrawnPieces& drawn, const Part& part, const std::vector<Solid>& solids, const std::vector<SolidRole>& roles, const EdgeGrip& grip,
                 const Attachment& plate);
/// What a grip shows on a face: feet under legs, a suction bell, a pad, screw heads.
void addFoot(DrawnPieces& drawn, const std::vector<Solid>& solids, const std::vector<SolidRole>& roles, const FaceGrip& grip);

/// The solid that is a plate clamp's locking tab, -1: none.
int tabOf(const Part& part, const std::vector<Solid>& solids);
/// The widest solid that stands on the face, legs left out; -1: none.
int groundSolid(const std::vector<Solid>& solids);

}  // namespace hither
