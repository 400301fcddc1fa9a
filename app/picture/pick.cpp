#include <cmath>
#include <limits>

#include "app/picture/make_picture.h"

namespace hither {

namespace {

constexpr double handleReach_m = 0.030;  // a handle wins over what it stands in by as much

/// First triangle of a mesh that faces the ray's origin and that it meets; the direction need not be unit.
std::optional<double> firstHit(const Mesh& mesh, const Vec3& origin, const Vec3& direction) {
    Eigen::AlignedBox3d box;
    for (const Eigen::Vector3f& p : mesh.points) box.extend(p.cast<double>());
    double near = 0, far = std::numeric_limits<double>::infinity();
    for (int i = 0; i < 3; ++i) {
        if (std::abs(direction[i]) < 1e-15) {
            if (origin[i] < box.min()[i] || origin[i] > box.max()[i]) return std::nullopt;
            continue;
        }
        const double a = (box.min()[i] - origin[i]) / direction[i], b = (box.max()[i] - origin[i]) / direction[i];
        near = std::max(near, std::min(a, b));
        far = std::min(far, std::max(a, b));
    }
    if (near > far) return std::nullopt;
    std::optional<double> best;
    for (const auto& t : mesh.triangles) {
        const Vec3 a = mesh.points[t[0]].cast<double>(), u = mesh.points[t[1]].cast<double>() - a, v = mesh.points[t[2]].cast<double>() - a;
        const Vec3 h = direction.cross(v);
        const double det = u.dot(h);
        if (det <= 0) continue;  // seen from behind, or from its side
        const Vec3 s = origin - a;
        const double p = s.dot(h);
        if (p < 0 || p > det) continue;
        const Vec3 q = s.cross(u);
        const double r = direction.dot(q);
        if (r < 0 || p + r > det) continue;
        const double along = v.dot(q) / det;
        if (along > 0 && (!best || along < *best)) best = along;
    }
    return best;
}

/// What is seen through: it is picked only where nothing else is.
bool seenThrough(Look look) { return look == Look::keepOut || look == Look::siteTolerance; }

}  // namespace

std::optional<PictureHit> pickInPicture(const Picture& picture, const Vec3& origin_W, const Vec3& direction_W) {
    const Vec3 direction = direction_W.normalized();
    struct Best { const PictureItem* item = nullptr; double along = std::numeric_limits<double>::infinity(); };
    Best opaque, through, handle;
    for (const PictureItem& item : picture.items) {
        if (item.pick.nothing()) continue;
        const Pose X = item.X_W.inverse();
        const std::optional<double> along = firstHit(*item.mesh, X * origin_W, X.linear() * direction);
        if (!along) continue;
        const bool isHandle = item.look == Look::jointHandle || item.look == Look::outletHandle;
        Best& best = isHandle ? handle : seenThrough(item.look) ? through : opaque;
        if (*along < best.along) best = {&item, *along};
    }
    const Best* best = opaque.item ? &opaque : &through;
    if (handle.item && handle.along <= best->along + handleReach_m) best = &handle;
    if (!best->item) return std::nullopt;
    return PictureHit{best->item->pick, origin_W + best->along * direction, best->along, best->item->key};
}

}  // namespace hither
