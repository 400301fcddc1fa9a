#include <algorithm>
#include <set>

#include <nlohmann/json.hpp>

#include "core/storage/database.h"

// A solid in columns: its kind, frame, half sizes and radius exactly as they are held; a hull's corners and faces
// as a JSON text {"points_m": [[x, y, z], ...], "faces": [[i, j, k], ...]}.

namespace hither {
namespace {

using Json = nlohmann::json;
constexpr std::size_t mostHullPointsInFile = 10'000;

const char* const kinds[] = {"sphere", "capsule", "cylinder", "box", "rounded_box", "hull"};

std::string hullText(const Hull& hull) {
    Json points = Json::array(), faces = Json::array();
    for (const Vec3& p : hull.points) points.push_back({p.x(), p.y(), p.z()});
    for (const auto& f : hull.faces) faces.push_back({f[0], f[1], f[2]});
    return Json{{"points_m", points}, {"faces", faces}}.dump();
}

/// Null unless every face has all points behind it and every edge is shared by two faces that run
/// along it in opposite directions: a closed convex surface, as the distance functions rely on.
std::shared_ptr<const Hull> hullFromText(const std::string& text) {
    const Json json = Json::parse(text, nullptr, false);
    if (!json.is_object() || json.size() != 2 || !json.contains("points_m") || !json.contains("faces")) return nullptr;
    auto hull = std::make_shared<Hull>();
    for (const Json& p : json["points_m"]) {
        if (!p.is_array() || p.size() != 3 || !p[0].is_number() || !p[1].is_number() || !p[2].is_number()) return nullptr;
        hull->points.emplace_back(p[0].get<double>(), p[1].get<double>(), p[2].get<double>());
        if (!hull->points.back().allFinite() || hull->points.back().norm() > 100 || hull->points.size() > mostHullPointsInFile) return nullptr;
    }
    const int count = static_cast<int>(hull->points.size());
    std::set<std::pair<int, int>> edges;
    for (const Json& f : json["faces"]) {
        if (!f.is_array() || f.size() != 3) return nullptr;
        std::array<int, 3> face{};
        for (std::size_t i = 0; i < 3; ++i) {
            if (!f[i].is_number_integer()) return nullptr;
            const auto index = f[i].get<std::int64_t>();
            if (index < 0 || index >= count) return nullptr;
            face[i] = static_cast<int>(index);
        }
        for (std::size_t i = 0; i < 3; ++i)
            if (!edges.insert({face[i], face[(i + 1) % 3]}).second) return nullptr;
        hull->faces.push_back(face);
        if (hull->faces.size() > 2 * mostHullPointsInFile) return nullptr;
    }
    if (count < 4 || hull->faces.size() < 4) return nullptr;
    for (const auto& [a, b] : edges) if (a == b || edges.count({b, a}) == 0) return nullptr;
    for (const auto& f : hull->faces) {
        const auto at = [&](std::size_t i) { return hull->points[static_cast<std::size_t>(f[i])]; };
        const Vec3 n = (at(1) - at(0)).cross(at(2) - at(0));
        for (const Vec3& p : hull->points)
            if (n.dot(p - at(0)) > 1e-6 * n.norm()) return nullptr;
    }
    return hull;
}

}  // namespace

RowWriter& RowWriter::solid(const Solid& s) {
    text("solid_kind", kinds[static_cast<std::size_t>(s.kind)]);
    vector("solid_centre", "m", s.X_FG.translation());
    for (int i = 0; i < 3; ++i)
        for (int j = 0; j < 3; ++j) real("solid_r" + std::to_string(i + 1) + std::to_string(j + 1), s.X_FG.linear()(i, j));
    vector("solid_half", "m", s.half);
    real("solid_radius_m", s.radius);
    return s.hull ? text("solid_hull_m", hullText(*s.hull)) : null("solid_hull_m");
}

Solid RowReader::solid() {
    Solid s;
    const std::string kind = text("solid_kind");
    const auto* const found = std::find(std::begin(kinds), std::end(kinds), kind);
    if (found == std::end(kinds)) problem("solid_kind", "a word that is not known", "sphere, capsule, cylinder, box, rounded_box or hull");
    else s.kind = static_cast<SolidKind>(found - std::begin(kinds));
    s.X_FG.translation() = vector("solid_centre", "m");
    for (int i = 0; i < 3; ++i)
        for (int j = 0; j < 3; ++j) s.X_FG.linear()(i, j) = real("solid_r" + std::to_string(i + 1) + std::to_string(j + 1));
    s.half = vector("solid_half", "m");
    s.radius = real("solid_radius_m");
    if (const auto hull = maybeText("solid_hull_m")) {
        s.hull = hullFromText(*hull);
        if (!s.hull) problem("solid_hull_m", "points and faces that are no closed convex surface", "a convex hull");
    } else if (s.kind == SolidKind::hull) {
        problem("solid_hull_m", "nothing", "a convex hull");
    }
    return s;
}

}  // namespace hither
