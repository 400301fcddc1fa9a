#pragma once
#include <initializer_list>
#include <string>

#include "core/geometry/solid.h"

namespace hither {

/// A key for MeshStore: what a shape is called and its figures, to a micrometre.
std::string meshKey(const std::string& shape, std::initializer_list<double> figures);
/// The key of a solid's shape, whatever its place. Hulls by their corners.
std::string meshKey(const std::string& shape, const Solid& solid);

}  // namespace hither
