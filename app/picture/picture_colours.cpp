#include "app/picture/picture_colours.h"

namespace hither {

PictureColours PictureColours::light() { return {}; }
PictureColours PictureColours::darkOnes() { return {}; }

}  // namespace hither
