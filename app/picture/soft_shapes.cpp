#include "app/picture/soft_shapes.h"

#include <algorithm>
#include <cmath>

#include "core/units/quantity.h"

namespace hither {

namespace {

using Vec2 = Eigen::Vector2d;

Pose axisFrame(const Vec3& a, const Vec3& b) {
    const Vec3 line = b - a;
    return frameFromZ(a, line.norm() > 0 ? line : Vec3::UnitZ(), Vec3::UnitX());
}

constexpr double bevelledFrom_m = 0.012;   // thinner cylinders keep sharp rims

/// Rows of a cylinder from 0 to `length` with the rims of its closed ends broken.
std::vector<TurnedRow> cylinderRows(double radius, double length, double bevel, OpenEnds open) {
    const double c = radius < bevelledFrom_m ? 0 : std::min({bevel, 0.3 * radius, 0.3 * length});
    std::vector<TurnedRow> rows;
    if (!open.a) rows = {{0, 0, 0, -1}, {radius - c, 0, 0, -1}};
    rows.push_back({radius, open.a ? 0 : c, 1, 0, !open.a});
    rows.push_back({radius, open.b ? length : length - c, 1, 0, !open.b});
    if (!open.b) rows.insert(rows.end(), {{radius - c, length, 0, 1}, {0, length, 0, 1}});
    return rows;
}

}  // namespace

int roundSegments(double radius) { return radius < 0.0045 ? 8 : radius < 0.008 ? 10 : radius < 0.014 ? 12 : radius < 0.025 ? 16 : radius < 0.06 ? 24 : 32; }

Mesh turnedMesh(const Pose& X, const std::vector<TurnedRow>& rows, int around, int lobes, double dip) {
    Mesh mesh;
    const auto count = static_cast<std::uint32_t>(std::max(3, around));
    std::vector<std::uint32_t> first;
    for (const TurnedRow& row : rows) {
        first.push_back(static_cast<std::uint32_t>(mesh.points.size()));
        const bool pole = row.radius <= 0;
        for (std::uint32_t k = 0; k < (pole ? 1 : count); ++k) {
            const double angle = 2 * pi * k / count, wave = lobes * angle;
            const double r = row.radius * (1 - 0.5 * dip * (1 - std::cos(wave)));
            const double slope = -row.radius * 0.5 * dip * lobes * std::sin(wave);  // dr / d(angle)
            const Vec3 out(std::cos(angle), std::sin(angle), 0), aside(-out.y(), out.x(), 0);
            const Vec3 level = r > 0 ? Vec3((r * out - slope * aside).normalized()) : Vec3::Zero();
            Vec3 normal = row.out * level + row.up * Vec3::UnitZ();
            normal = normal.norm() > 1e-9 ? Vec3(normal.normalized()) : Vec3::UnitZ();
            mesh.points.push_back((X * Vec3(r * out + row.height * Vec3::UnitZ())).cast<float>());
            mesh.normals.push_back((X.linear() * normal).cast<float>());
        }
        if (!row.line || pole) continue;
        for (std::uint32_t k = 0; k < count; ++k) mesh.edges.push_back({mesh.points[first.back() + k], mesh.points[first.back() + (k + 1) % count]});
    }
    for (std::size_t i = 0; i + 1 < rows.size(); ++i) {
        const bool lowPole = rows[i].radius <= 0, highPole = rows[i + 1].radius <= 0;
        if (std::abs(rows[i].radius - rows[i + 1].radius) < 1e-9 && std::abs(rows[i].height - rows[i + 1].height) < 1e-9) continue;
        for (std::uint32_t k = 0; k < count; ++k) {
            const std::uint32_t next = (k + 1) % count, low = first[i], high = first[i + 1];
            if (!lowPole) mesh.triangles.push_back({low + k, low + next, high + (highPole ? 0 : next)});
            if (!highPole) mesh.triangles.push_back({low + (lowPole ? 0 : k), high + next, high + k});
        }
    }
    return mesh;
}

Mesh softCylinder(const Vec3& a, const Vec3& b, double radius, double bevel, OpenEnds open) {
    return turnedMesh(axisFrame(a, b), cylinderRows(radius, (b - a).norm(), bevel, open), roundSegments(radius));
}

Mesh softRod(const Vec3& a, const Vec3& b, double radius, OpenEnds open) {
    const double length = (b - a).norm(), low = 0.8, high = 0.6;  // a dome of two steps: 0.6 and 0.8 are sine and cosine of one angle
    std::vector<TurnedRow> rows;
    if (!open.a) rows = {{0, -radius, 0, -1}, {low * radius, -high * radius, low, -high}};
    rows.insert(rows.end(), {{radius, 0, 1, 0}, {radius, length, 1, 0}});
    if (!open.b) rows.insert(rows.end(), {{low * radius, length + high * radius, low, high}, {0, length + radius, 0, 1}});
    return turnedMesh(axisFrame(a, b), rows, roundSegments(radius));
}

Mesh softBall(const Vec3& centre, double radius) {
    const int around = roundSegments(radius), steps = std::max(4, around / 2 - 1);
    std::vector<TurnedRow> rows;
    for (int i = 0; i <= steps; ++i) {
        const double angle = pi * (static_cast<double>(i) / steps - 0.5);
        const bool pole = i == 0 || i == steps;
        rows.push_back({pole ? 0 : radius * std::cos(angle), radius * std::sin(angle), pole ? 0 : std::cos(angle), std::sin(angle)});
    }
    return turnedMesh(translation(centre), rows, around);
}

Mesh softBox(const Pose& X, const Vec3& half, double bevel) {
    const double c = std::min(bevel, 0.4 * half.minCoeff());
    Mesh mesh;
    // The point of a corner that belongs to the face across `axis`: index 3 * corner + axis.
    for (int corner = 0; corner < 8; ++corner)
        for (int axis = 0; axis < 3; ++axis) {
            Vec3 p = half - Vec3::Constant(c), n = Vec3::Zero();
            p[axis] = half[axis];
            n[axis] = corner >> axis & 1 ? 1 : -1;
            for (int k = 0; k < 3; ++k)
                if (!(corner >> k & 1)) p[k] = -p[k];
            mesh.points.push_back((X * p).cast<float>());
            mesh.normals.push_back((X.linear() * n).cast<float>());
        }
    const auto at = [](int corner, int axis) { return static_cast<std::uint32_t>(3 * corner + axis); };
    const auto triangle = [&](std::uint32_t a, std::uint32_t b, std::uint32_t d) {
        const auto& p = mesh.points;
        const bool outward = (p[b] - p[a]).cross(p[d] - p[a]).dot(mesh.normals[a] + mesh.normals[b] + mesh.normals[d]) > 0;
        if (outward) mesh.triangles.push_back({a, b, d});
        else mesh.triangles.push_back({a, d, b});
    };
    const auto quad = [&](std::uint32_t a, std::uint32_t b, std::uint32_t d, std::uint32_t e) { triangle(a, b, d); triangle(a, d, e); };
    for (int axis = 0; axis < 3; ++axis) {
        const int u = 1 << (axis + 1) % 3, v = 1 << (axis + 2) % 3;
        for (const int base : {0, 1 << axis}) quad(at(base, axis), at(base | u, axis), at(base | u | v, axis), at(base | v, axis));
        // The four edges along this axis, between the faces across the two others.
        const int b = (axis + 1) % 3, d = (axis + 2) % 3;
        for (const int from : {0, u, v, u | v}) {
            const int to = from | 1 << axis;
            quad(at(from, b), at(to, b), at(to, d), at(from, d));
            const auto middle = [&](int corner) { return Eigen::Vector3f(0.5F * (mesh.points[at(corner, b)] + mesh.points[at(corner, d)])); };
            mesh.edges.push_back({middle(from), middle(to)});
        }
    }
    for (int corner = 0; corner < 8; ++corner) triangle(at(corner, 0), at(corner, 1), at(corner, 2));
    return mesh;
}

Mesh lobedKnob(const Vec3& a, const Vec3& b, double radius) {
    const double length = (b - a).norm(), c = std::min({0.0025, 0.2 * radius, 0.3 * length}), waist = 0.78 * radius;
    const bool large = radius > 0.010;
    return turnedMesh(axisFrame(a, b), {{0, 0, 0, -1}, {waist - c, 0, 0, -1}, {radius, 0.3 * length, 1, 0, true}, {radius, length - c, 1, 0, true},
                                        {radius - c, length, 0, 1}, {0, length, 0, 1}},
                      large ? 24 : 20, large ? 6 : 5, large ? 0.20 : 0.16);
}

Mesh hexHead(const Vec3& a, const Vec3& b, double radius) {
    Mesh mesh;
    const Pose X = axisFrame(a, b);
    const double length = (b - a).norm();
    const auto add = [&](const Vec3& p, const Vec3& n) { mesh.points.push_back((X * p).cast<float>()); mesh.normals.push_back((X.linear() * n).cast<float>()); };
    for (int k = 0; k < 6; ++k) {
        const Vec3 from(radius * std::cos(k * pi / 3), radius * std::sin(k * pi / 3), 0), to(radius * std::cos((k + 1) * pi / 3), radius * std::sin((k + 1) * pi / 3), 0);
        const Vec3 up(0, 0, length), out = (from + to).normalized();
        const auto i = static_cast<std::uint32_t>(mesh.points.size());
        for (const Vec3& p : {from, to, Vec3(to + up), Vec3(from + up)}) add(p, out);
        for (const Vec3& p : {Vec3(from + up), Vec3(to + up), up}) add(p, Vec3::UnitZ());
        for (const Vec3& p : {to, from, Vec3(Vec3::Zero())}) add(p, -Vec3::UnitZ());
        mesh.triangles.insert(mesh.triangles.end(), {{i, i + 1, i + 2}, {i, i + 2, i + 3}, {i + 4, i + 5, i + 6}, {i + 7, i + 8, i + 9}});
        mesh.edges.push_back({mesh.points[i + 3], mesh.points[i + 2]});
        mesh.edges.push_back({mesh.points[i], mesh.points[i + 3]});
    }
    return mesh;
}

Mesh studMesh(const Pose& X, double majorRadius, double pitch, double length) {
    const int turns = std::clamp(static_cast<int>(length / std::max(pitch, 1e-4)), 2, 10);
    const double step = length / (turns + 0.5), root = majorRadius - std::min(0.6 * step, 0.2 * majorRadius);
    std::vector<TurnedRow> rows{{root, 0, 1, 0}};
    for (int i = 0; i < turns; ++i) {
        rows.push_back({root, i * step + 0.2 * step, 1, 0});
        rows.push_back({majorRadius, i * step + 0.6 * step, 1, 0, true});
    }
    rows.push_back({root, turns * step, 1, 0.3});
    rows.push_back({root * 0.85, length, 0.3, 1, true});
    rows.push_back({0, length, 0, 1});
    return turnedMesh(X, rows, roundSegments(majorRadius));
}

Mesh patchMesh(const Pose& X, const std::vector<Vec2>& outline) {
    Mesh mesh;
    for (const Vec2& p : outline) {
        mesh.points.push_back((X * Vec3(p.x(), p.y(), 0)).cast<float>());
        mesh.normals.push_back(X.linear().col(2).cast<float>());
    }
    for (std::uint32_t i = 0; i < outline.size(); ++i) {
        mesh.edges.push_back({mesh.points[i], mesh.points[(i + 1) % outline.size()]});
        if (i >= 2) mesh.triangles.push_back({0, i - 1, i});
    }
    return mesh;
}

std::vector<Vec2> circleOutline(double radius, int around) {
    std::vector<Vec2> outline;
    for (int k = 0; k < around; ++k) outline.emplace_back(radius * std::cos(2 * pi * k / around), radius * std::sin(2 * pi * k / around));
    return outline;
}

std::vector<Vec2> slotOutline(double length, double radius, int aroundEnd) {
    std::vector<Vec2> outline;
    for (const double side : {1.0, -1.0})
        for (int k = 0; k <= aroundEnd; ++k) {
            const double angle = pi * (static_cast<double>(k) / aroundEnd - 0.5);
            outline.emplace_back(side * (0.5 * length + radius * std::cos(angle)), side * radius * std::sin(angle));
        }
    return outline;
}

std::vector<Vec2> ringSector(double inner, double outerFrom, double outerTo, double from, double to, int steps) {
    std::vector<Vec2> outline;
    const auto at = [&](double radius, double angle) { outline.emplace_back(radius * std::cos(angle), radius * std::sin(angle)); };
    for (int i = 0; i <= steps; ++i) at(outerFrom + (outerTo - outerFrom) * i / steps, from + (to - from) * i / steps);
    for (int i = steps; i >= 0; --i) at(inner, from + (to - from) * i / steps);
    return outline;
}

}  // namespace hither
