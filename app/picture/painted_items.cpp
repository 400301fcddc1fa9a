#include "app/picture/painted_items.h"

#include <algorithm>
#include <cmath>
#include <map>

#include "app/picture/contours.h"
#include "app/picture/shading.h"

namespace hither {

ToSamples::ToSamples(const Camera& camera, int width, int height)
    : X_CW_(camera.X_CW()), eye_W_(camera.eye_W()), focal_(static_cast<float>(0.5 * height / std::tan(0.5 * camera.fieldOfView))),
      middleX_(0.5F * static_cast<float>(width)), middleY_(0.5F * static_cast<float>(height)) {}

namespace {

/// An item's points in the camera's frame with their light.
struct Placed { std::vector<Eigen::Vector3f> points; std::vector<float> light; bool clipped = false; };

void place(const PictureItem& item, const ToSamples& to, const Lighting& lighting, Placed& out) {
    const Eigen::Isometry3f X_W = item.X_W.cast<float>(), X_C = (to.X_CW() * item.X_W).cast<float>();
    const float gloss = glossOf(item.look);
    const Mesh& mesh = *item.mesh;
    out.points.resize(mesh.points.size());
    out.light.resize(mesh.points.size());
    out.clipped = false;
    for (std::size_t i = 0; i < mesh.points.size(); ++i) {
        out.points[i] = X_C * mesh.points[i];
        out.clipped = out.clipped || out.points[i].z() > -ToSamples::nearest_m;
        out.light[i] = lighting.light(X_W.linear() * mesh.normals[i], X_W * mesh.points[i], gloss);
    }
}

/// Calls visit with the corners of every triangle that faces the eye, cut at the nearest plane.
template <class Visit>
void eachFacing(const Mesh& mesh, const Placed& placed, const ToSamples& to, const Visit& visit) {
    for (const auto& t : mesh.triangles) {
        const Eigen::Vector3f &a = placed.points[t[0]], &b = placed.points[t[1]], &c = placed.points[t[2]];
        if ((b - a).cross(c - a).dot(a) >= 0) continue;
        if (!placed.clipped) {
            visit(to.corner(a, placed.light[t[0]]), to.corner(b, placed.light[t[1]]), to.corner(c, placed.light[t[2]]));
            continue;
        }
        std::vector<std::pair<Eigen::Vector3f, float>> kept;
        for (std::size_t k = 0; k < 3; ++k) {
            const Eigen::Vector3f &p = placed.points[t[k]], &q = placed.points[t[(k + 1) % 3]];
            const float dp = -p.z() - ToSamples::nearest_m, dq = -q.z() - ToSamples::nearest_m;
            if (dp >= 0) kept.push_back({p, placed.light[t[k]]});
            if ((dp >= 0) != (dq >= 0)) {
                const float s = dp / (dp - dq);
                kept.push_back({p + s * (q - p), placed.light[t[k]] + s * (placed.light[t[(k + 1) % 3]] - placed.light[t[k]])});
            }
        }
        for (std::size_t k = 2; k < kept.size(); ++k)
            visit(to.corner(kept[0].first, kept[0].second), to.corner(kept[k - 1].first, kept[k - 1].second), to.corner(kept[k].first, kept[k].second));
    }
}

void paintEdges(Raster& raster, const PictureItem& item, const ToSamples& to, std::uint32_t colour) {
    const Eigen::Isometry3f X_C = (to.X_CW() * item.X_W).cast<float>();
    for (const auto& edge : item.mesh->edges) {
        Eigen::Vector3f a = X_C * edge[0], b = X_C * edge[1];
        const float da = -a.z() - ToSamples::nearest_m, db = -b.z() - ToSamples::nearest_m;
        if (da < 0 && db < 0) continue;
        if (da < 0) a += da / (da - db) * (b - a);
        else if (db < 0) b = a + da / (da - db) * (b - a);
        raster.line(to.corner(a), to.corner(b), colour);
    }
}

/// Whether a form is mostly thinner than about 4 mm: volume over surface.
bool thin(const Mesh& mesh) {
    float volume = 0, area = 0;
    for (const auto& t : mesh.triangles) {
        const Eigen::Vector3f &a = mesh.points[t[0]], &b = mesh.points[t[1]], &c = mesh.points[t[2]];
        volume += a.dot(b.cross(c)) / 6;
        area += 0.5F * (b - a).cross(c - a).norm();
    }
    return volume < 0.001F * area;
}

bool isBody(Look look) { return look == Look::body || look == Look::bodySite; }

}  // namespace

void paintItems(Raster& raster, const Picture& picture, const ToSamples& to, const PictureColours& colours) {
    const Lighting lighting(to.eye_W());
    std::map<std::pair<Look, int>, Tints> tints;
    const auto tintsFor = [&](const PictureItem& item) -> const Tints& {
        const auto [entry, fresh] = tints.try_emplace({item.look, static_cast<int>(255 * item.opacity)});
        if (fresh) entry->second = tintsOf(colours.of(item.look), item.opacity);
        return entry->second;
    };
    Placed placed;
    std::vector<Contour> contours = {{}, {premultiplied(colours.edge, 0.45), static_cast<int>(Look::body)}};  // by number: nothing, the person, then the others
    std::vector<std::pair<double, const PictureItem*>> through;
    for (const PictureItem& item : picture.items) {
        if (item.opacity < 1) {
            Eigen::AlignedBox3f box;
            for (const Eigen::Vector3f& p : item.mesh->points) box.extend(p);
            if (!box.isEmpty()) through.push_back({(to.X_CW() * item.X_W * box.center().cast<double>()).z(), &item});
            continue;
        }
        std::size_t number = 1;
        if (!isBody(item.look)) {
            number = std::min<std::size_t>(contours.size(), 65535);
            // Soft forms, which have no edges of their own, get a softer line; wires would be hidden by theirs.
            const bool soft = item.mesh->edges.empty();
            contours.push_back({soft && thin(*item.mesh) ? 0 : premultiplied(colours.edge, soft ? 0.45 : 0.8), static_cast<int>(item.look)});
        }
        place(item, to, lighting, placed);
        const Tints& own = tintsFor(item);
        eachFacing(*item.mesh, placed, to, [&](const Corner& a, const Corner& b, const Corner& c) { raster.fill(a, b, c, own, static_cast<std::uint16_t>(number)); });
    }
    for (const PictureItem& item : picture.items)
        if (item.opacity >= 1) paintEdges(raster, item, to, premultiplied(colours.edge, isBody(item.look) ? 0.3 : 0.7));
    paintContours(raster, contours);

    std::sort(through.begin(), through.end(), [](const auto& a, const auto& b) { return a.first < b.first; });
    for (const auto& [depth, item] : through) {
        place(*item, to, lighting, placed);
        const Tints& own = tintsFor(*item);
        eachFacing(*item->mesh, placed, to, [&](const Corner& a, const Corner& b, const Corner& c) { raster.blend(a, b, c, own); });
        paintEdges(raster, *item, to, premultiplied(colours.of(item->look).darker(colours.dark ? 100 : 140), std::min(1.0, 1.4 * item->opacity)));
    }
    if (raster.mask.empty()) return;
    for (const PictureItem& item : picture.items) {
        if (!item.outlined) continue;
        place(item, to, lighting, placed);
        eachFacing(*item.mesh, placed, to, [&](const Corner& a, const Corner& b, const Corner& c) { raster.markIn(a, b, c); });
    }
    paintOutline(raster, premultiplied(colours.outline, 1), premultiplied(colours.outline, 0.45));
}

std::vector<std::uint8_t> floorShadow(const Picture& picture, const Camera& camera, int width, int height) {
    const ToSamples to(camera, width, height);
    const Vec3 light = Lighting::toward();
    Raster raster;
    raster.clear(width, height, true);
    const Pose& X_CW = to.X_CW();
    Mat3 onto = Mat3::Identity();  // along the light onto the floor
    onto.col(2) = Vec3(-light.x() / light.z(), -light.y() / light.z(), 0);
    std::vector<Eigen::Vector3f> points;
    for (const PictureItem& item : picture.items) {
        if (!item.castsShadow || item.opacity < 1) continue;
        const Eigen::Matrix3f R = (X_CW.linear() * onto * item.X_W.linear()).cast<float>();
        const Eigen::Vector3f t = (X_CW.linear() * onto * item.X_W.translation() + X_CW.translation()).cast<float>();
        points.clear();
        for (const Eigen::Vector3f& p : item.mesh->points) points.push_back(R * p + t);
        for (const auto& triangle : item.mesh->triangles) {
            const Eigen::Vector3f &a = points[triangle[0]], &b = points[triangle[1]], &c = points[triangle[2]];
            if (std::max({a.z(), b.z(), c.z()}) > -ToSamples::nearest_m) continue;
            raster.markIn(to.corner(a), to.corner(b), to.corner(c));
        }
    }
    std::vector<std::uint8_t>& mask = raster.mask;
    for (std::uint8_t& m : mask) m = m ? 255 : 0;
    blur(mask, width, height, std::max(1, height / 110));
    return std::move(mask);
}

}  // namespace hither
