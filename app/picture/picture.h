#pragma once
#include <optional>
#include <string>
#include <vector>

#include "app/document/picked.h"
#include "app/picture/mesh.h"

namespace hither {

/// What a thing is made to look like. The colours behind these words are the theme's.
enum class Look {
    frameTube, cover, pad, wheel, wood, mattress, metal,      ///< supports
    body, bodySite,                                            ///< the person; the part that operates the switch
    gripPart, armPart, neckPart, adapterPart, knob, thread, switchCase, switchCap,   ///< mounts
    attachmentFree, attachmentTaken,                           ///< where a grip fits, or does not
    keepOut, siteDisc, siteTolerance, movementArrow,
    misses, close, jointHandle, outletHandle, ghost
};

/// One thing drawn: a mesh at a pose. `key` is the same from one picture to the next for the same thing,
/// so that a view changes only what changed (`mesh` compares by address).
struct PictureItem {
    std::string key;
    MeshRef mesh;
    Pose X_W = Pose::Identity();
    Look look = Look::metal;
    double opacity = 1;
    Picked pick;                 ///< what a click on it picks; nothing: it cannot be clicked
    bool outlined = false;       ///< picked, or a subject of the finding shown
    bool castsShadow = true;
};
/// A line in the scene, drawn over everything that hides it (thin and paler where hidden).
struct PictureLine { std::string key; Vec3 a_W, b_W; Look look = Look::misses; };
/// Words at a point; `pick` when a click on them picks something.
struct PictureLabel {
    enum class Rank { finding, picked, plain };
    std::string key, words;
    Vec3 at_W = Vec3::Zero();
    Rank rank = Rank::plain;
};
/// Everything that the scene shows, as data: what the 3D view, the software view and the tests share.
struct Picture {
    std::vector<PictureItem> items;
    std::vector<PictureLine> lines;
    std::vector<PictureLabel> labels;
    Eigen::AlignedBox3d bounds_W;     ///< of the opaque items: what "whole scene" shows
    double floorStep_m = 0.1;         ///< spacing of the floor's fine lines; a label each metre (or foot)
};

}  // namespace hither
