#pragma once
#include <vector>

#include "app/picture/mount_items.h"

namespace hither {

/// Each site as a disc that faces the movement, an arrow along it (as long as the movement; pale and 30 mm
/// where that is unknown) and the ball of its tolerance. Picks Picked::site.
std::vector<PictureItem> siteItems(const Situation& situation, const PictureWishes& wishes, MeshStore& store);
/// The site's names, where nothing of it is covered.
std::vector<PictureLabel> siteLabels(const Situation& situation, const PictureWishes& wishes);

/// Volumes to keep free, translucent with their edges. Picks Picked::keepOut.
std::vector<PictureItem> keepOutItems(const Setup& setup, const PictureWishes& wishes, MeshStore& store);
std::vector<PictureLabel> keepOutLabels(const Setup& setup, const PictureWishes& wishes);

/// The nearest points of the finding shown, joined by a line, with its value in words.
void addFinding(Picture& picture, const PictureWishes& wishes);
/// The name of what is picked, where it is.
void addPickedName(Picture& picture, const Situation& situation, const Setup* setup, const PictureWishes& wishes);

}  // namespace hither
