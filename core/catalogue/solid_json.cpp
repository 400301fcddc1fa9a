#include "core/catalogue/solid_json.h"

#include <algorithm>

#include <nlohmann/json.hpp>

#include "core/catalogue/json_form.h"

namespace hither {

using nlohmann::json;

namespace {

bool earlier(const Vec3& a, const Vec3& b) { return std::lexicographical_compare(a.data(), a.data() + 3, b.data(), b.data() + 3); }

/// To the grid on which the ends of a rod are written, so that they read back as the same numbers.
Vec3 rounded(const Vec3& p) {
    const auto one = [](double x) { return toSI(fromSIRounded(x, form::mm), form::mm); };
    return {one(p.x()), one(p.y()), one(p.z())};
}

struct Reader {
    JsonForm& inner;
    FormRange place, size;

    Solid sphere() {
        const Vec3 centre = inner.vectorOr("centre_mm", Vec3::Zero(), form::mm, place);
        return Solid::sphere(centre, inner.need("radius_mm", form::mm, size));
    }
    Solid rod(bool capsule) {
        const Vec3 a = rounded(inner.needVector("from_mm", form::mm, place));
        const Vec3 b = rounded(inner.needVector("to_mm", form::mm, place));
        const double radius = inner.need("radius_mm", form::mm, size);
        if (capsule) return Solid::capsule(a, b, radius);
        if ((b - a).norm() < 1e-6) {
            inner.problem("to_mm", "another place than from_mm, at least 0.001 mm away");
            return Solid::sphere(a, radius);
        }
        return Solid::cylinder(a, b, radius);
    }
    Solid box(bool rounded) {
        const Vec3 centre = inner.vectorOr("centre_mm", Vec3::Zero(), form::mm, place);
        const Vec3 half = 0.5 * inner.needVector("size_mm", form::mm, size);
        const Mat3 R = inner.turnOr("turn_deg");
        if (!rounded) return Solid::box(pose(R, centre), half);
        const double radius = inner.need("radius_mm", form::mm, {0, size.max});
        if (radius > half.minCoeff()) {
            inner.problem("radius_mm", "at most half the least of size_mm");
            return Solid::box(pose(R, centre), half);
        }
        return Solid::roundedBox(pose(R, centre), half, radius);
    }
    std::optional<Solid> hull() {
        std::vector<Vec3> points;
        const auto items = inner.items("points_mm", mostHullPoints);
        if (items.size() < 4) inner.problem("points_mm", "a list of 4 to 256 points [x, y, z]");
        const FormRange range = place;
        for (const auto& [item, where] : items) {
            const json wrapped = {{"point", *item}};
            const std::size_t before = inner.problems().list.size();
            JsonForm point(wrapped, where, inner.problems());
            points.push_back(point.needVector("point", form::mm, range));
            if (inner.problems().list.size() != before) return std::nullopt;  // one is enough
        }
        if (points.size() < 4) return std::nullopt;
        // In a fixed order, so that the same corners make the same hull however they were listed.
        std::sort(points.begin(), points.end(), earlier);
        points.erase(std::unique(points.begin(), points.end()), points.end());
        // Twice: once to find the corners, then from the corners alone, as they will be read again.
        auto made = makeHull(points);
        if (made) {
            points = made->points;
            std::sort(points.begin(), points.end(), earlier);
            made = makeHull(points);
        }
        if (!made) {
            inner.problem("points_mm", "points that are all in one plane", "at least four points that are not");
            return std::nullopt;
        }
        return Solid::convexHull(made);
    }
};

}  // namespace

std::optional<Solid> readSolid(const json& value, const std::string& path, std::vector<PartProblem>& problems, double reach_m) {
    const std::size_t before = problems.size();
    ProblemList list{{}, {}, problems};
    JsonForm outer(value, path, list);
    if (!outer.isObject()) return std::nullopt;
    const char* const kinds[] = {"sphere", "capsule", "cylinder", "box", "rounded_box", "hull"};
    const char* chosen = nullptr;
    int count = 0;
    for (const char* kind : kinds)
        if (outer.has(kind)) { chosen = kind; ++count; }
    outer.finish();
    if (count != 1) {
        list.add(path, count == 0 ? "no solid" : "several solids in one", "one of the keys sphere, capsule, cylinder, box, rounded_box, hull");
        return std::nullopt;
    }
    JsonForm inner(value.at(chosen), path.empty() ? chosen : path + "/" + chosen, list);
    if (!inner.isObject()) return std::nullopt;
    const double reach_mm = 1000 * reach_m;
    Reader reader{inner, {-reach_mm, reach_mm}, {0, 2 * reach_mm, true}};
    // The makers may insist on good numbers: what was wrong so far stands as a problem and a small
    // stand-in goes through them, to be dropped below.
    std::optional<Solid> solid;
    const std::string kind = chosen;
    if (kind == "sphere") solid = reader.sphere();
    if (kind == "capsule" || kind == "cylinder") solid = reader.rod(kind == "capsule");
    if (kind == "box" || kind == "rounded_box") solid = reader.box(kind == "rounded_box");
    if (kind == "hull") solid = reader.hull();
    inner.finish();
    if (problems.size() != before) return std::nullopt;
    return solid;
}

json writeSolid(const Solid& solid) {
    const Pose& X = solid.X_FG;
    const auto rod = [&] {
        return json{{"from_mm", writeVectorRounded(X * Vec3(0, 0, -solid.half.z()), form::mm)},
                    {"to_mm", writeVectorRounded(X * Vec3(0, 0, solid.half.z()), form::mm)},
                    {"radius_mm", fromSI(solid.radius, form::mm)}};
    };
    const auto box = [&] {
        json out = {{"centre_mm", writeVector(X.translation(), form::mm)}, {"size_mm", writeVector(2 * solid.half, form::mm)}};
        if (!X.linear().isIdentity(0)) out["turn_deg"] = writeTurn(X.linear());
        return out;
    };
    switch (solid.kind) {
        case SolidKind::sphere:
            return {{"sphere", {{"centre_mm", writeVector(X.translation(), form::mm)}, {"radius_mm", fromSI(solid.radius, form::mm)}}}};
        case SolidKind::capsule: return {{"capsule", rod()}};
        case SolidKind::cylinder: return {{"cylinder", rod()}};
        case SolidKind::box: return {{"box", box()}};
        case SolidKind::roundedBox: {
            json out = box();
            out["radius_mm"] = fromSI(solid.radius, form::mm);
            return {{"rounded_box", out}};
        }
        case SolidKind::hull: {
            std::vector<Vec3> points;
            if (solid.hull) for (const Vec3& p : solid.hull->points) points.push_back(X * p);
            std::sort(points.begin(), points.end(), earlier);
            json list = json::array();
            for (const Vec3& p : points) list.push_back(writeVector(p, form::mm));
            return {{"hull", {{"points_mm", list}}}};
        }
    }
    return json::object();
}

}  // namespace hither
