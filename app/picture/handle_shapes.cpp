#include "app/picture/handle_shapes.h"

#include <cmath>
#include <vector>

#include "app/picture/shapes.h"
#include "app/picture/soft_shapes.h"
#include "core/units/quantity.h"

namespace hither {

namespace {

constexpr double wire_m = 0.0016, grab_m = 0.0065;

/// Part of a ring in the xy plane between two angles.
Mesh arcWire(double radius, double from, double to, int steps) {
    std::vector<Vec3> line;
    for (int i = 0; i <= steps; ++i) {
        const double angle = from + (to - from) * i / steps;
        line.emplace_back(radius * std::cos(angle), radius * std::sin(angle), 0);
    }
    Mesh wire = tubeMesh(line, wire_m, 5);
    wire.edges.clear();
    return wire;
}
Mesh grabBall(const Vec3& at, double radius) { Mesh ball = sphereMesh(at, radius, 10); ball.edges.clear(); return ball; }
/// An arrow from `from` along `direction`, `length` long with its head.
Mesh arrow(const Vec3& from, const Vec3& direction, double length) {
    const Vec3 neck = from + (length - 0.009) * direction;
    Mesh mesh = cylinderMesh(from, neck, wire_m, 5);
    mesh.edges.clear();
    mesh.add(coneMesh(neck, from + length * direction, 0.0055, 0.0003, 10));
    return mesh;
}

}  // namespace

Mesh turnHandle(double radius) {
    Mesh mesh = arcWire(radius, -pi / 3, pi / 3, 10);
    mesh.add(grabBall(radius * Vec3::UnitX(), grab_m));
    return mesh;
}

Mesh haloHandle(double radius) {
    Mesh mesh = torusMesh(Pose::Identity(), radius, wire_m, 20, 4);
    mesh.edges.clear();
    mesh.add(grabBall(radius * Vec3::UnitX(), grab_m));
    return mesh;
}

Mesh slideHandle(double aside) {
    const Vec3 middle(0, 0, aside);
    Mesh mesh = grabBall(middle, grab_m);
    for (const double side : {1.0, -1.0}) mesh.add(arrow(middle, side * Vec3::UnitX(), 0.028));
    return mesh;
}

Mesh faceHandle(double radius) {
    Mesh mesh = haloHandle(radius);
    for (const Vec3& d : {Vec3(1, 0, 0), Vec3(-1, 0, 0), Vec3(0, 1, 0), Vec3(0, -1, 0)}) mesh.add(arrow(radius * d, d, 0.018));
    return mesh;
}

Mesh outletHandle() {
    constexpr double radius = 0.016, bar = 0.0095, thick = 0.0017;
    Mesh mesh = torusMesh(Pose::Identity(), radius, 0.0016, 20, 5);
    mesh.edges.clear();
    mesh.add(softBox(Pose::Identity(), Vec3(bar, thick, thick), 0.0006));
    mesh.add(softBox(Pose::Identity(), Vec3(thick, bar, thick), 0.0006));
    mesh.add(softBox(Pose::Identity(), Vec3(thick, thick, bar), 0.0006));  // a plus from the side as well
    return mesh;
}

}  // namespace hither
