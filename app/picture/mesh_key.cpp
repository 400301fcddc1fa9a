#include "app/picture/mesh_key.h"

#include <cmath>
#include <cstdint>

namespace hither {

namespace {

std::int64_t micrometres(double metres) { return std::llround(1e6 * metres); }

}  // namespace

std::string meshKey(const std::string& shape, std::initializer_list<double> figures) {
    std::string key = shape;
    for (const double figure : figures) key += ' ' + std::to_string(micrometres(figure));
    return key;
}

std::string meshKey(const std::string& shape, const Solid& solid) {
    std::string key = meshKey(shape + ' ' + std::to_string(static_cast<int>(solid.kind)), {solid.half.x(), solid.half.y(), solid.half.z(), solid.radius});
    if (!solid.hull) return key;
    // FNV-1a over the corners: two hulls of as many corners with the same hash are the same shape.
    std::uint64_t hash = 14695981039346656037ULL;
    for (const Vec3& p : solid.hull->points)
        for (const double figure : {p.x(), p.y(), p.z()}) hash = (hash ^ static_cast<std::uint64_t>(micrometres(figure))) * 1099511628211ULL;
    return key + ' ' + std::to_string(solid.hull->points.size()) + ' ' + std::to_string(hash);
}

}  // namespace hither
