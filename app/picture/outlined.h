#pragma once
#include "app/picture/make_picture.h"

namespace hither {

/// Whether the thing that a click would pick is drawn outlined: it is what is picked (a whole support,
/// mount or the person counts for each of its pieces), or a subject of the finding that is shown.
bool isOutlined(const PictureWishes& wishes, const Picked& thing);

}  // namespace hither
