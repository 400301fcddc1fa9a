#pragma once
#include "app/picture/raster.h"

namespace hither {

/// The line round a piece, premultiplied (0: none), and what it is made of: where pieces of one kind meet
/// or run into each other there is no line.
struct Contour { std::uint32_t colour = 0; int kind = -1; };

/// Draws a line where one piece ends before another or before nothing, where pieces of two kinds meet, and where a piece ends before
/// itself (the depth jumps by more than its slope on both sides explains). `contours` by piece number.
void paintContours(Raster& raster, const std::vector<Contour>& contours);

/// A band round everything that is marked in the mask: strong where it is seen, paler where hidden.
void paintOutline(Raster& raster, std::uint32_t strong, std::uint32_t pale);

/// Box blur by `radius` samples, twice.
void blur(std::vector<std::uint8_t>& bytes, int width, int height, int radius);

}  // namespace hither
