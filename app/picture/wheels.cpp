#include "app/picture/wheels.h"

#include <algorithm>
#include <cmath>

#include "app/picture/mesh_key.h"
#include "app/picture/revolved.h"
#include "app/picture/shapes.h"
#include "core/units/quantity.h"

namespace hither {

namespace {

/// A ring of rounded section: from `inner` to `outer` radius, `half` to either side.
Mesh ring(double inner, double outer, double half, int around, int section) {
    std::vector<Turned> profile;
    const double middle = 0.5 * (inner + outer), r = 0.5 * (outer - inner);
    for (int i = 0; i < section; ++i) {
        const double angle = 2 * pi * i / section;
        // Fuller than an ellipse, as a tyre is.
        const auto full = [](double part) { return std::copysign(std::pow(std::abs(part), 0.75), part); };
        profile.push_back({middle + r * full(std::cos(angle)), half * full(std::sin(angle))});
    }
    return revolved(Pose::Identity(), profile, around, true);
}

Mesh disc(double radius, double half, int around) { return cylinderMesh(Vec3(0, 0, -half), Vec3(0, 0, half), radius, around); }

Mesh spokes(double from, double to, double half, int count) {
    Mesh mesh;
    for (int i = 0; i < count; ++i) {
        const double angle = 2 * pi * i / count, lean = (i % 2 ? 1 : -1) * 0.25;
        const double side = (i / 2 % 2 ? 1 : -1) * half;
        mesh.add(tubeMesh({Vec3(from * std::cos(angle + lean), from * std::sin(angle + lean), side), Vec3(to * std::cos(angle), to * std::sin(angle), 0)}, 0.0016, 3));
    }
    mesh.edges.clear();  // too thin to be drawn with lines beside them
    return mesh;
}

}  // namespace

std::vector<DrawnPiece> drawnWheel(const Solid& c, MeshStore& store) {
    const double R = c.radius, half = c.half.z(), tyre = std::min({0.045, 0.16 * R, 1.3 * 2 * half});
    const int around = R > 0.2 ? 28 : 24;
    const bool spoked = R > 0.2;
    std::vector<DrawnPiece> out;
    out.push_back({store.get(meshKey("tyre", {R, half}), [&] { return ring(R - tyre, R, half, around, 6); }), Look::wheel});
    out.push_back({store.get(meshKey("rim", {R, half}), [&] {
        Mesh mesh;
        if (spoked) mesh.add(ring(R - tyre - 0.012, R - tyre + 0.002, 0.6 * half, around, 3));
        else mesh.add(disc(R - tyre + 0.002, 0.55 * half, 24));
        mesh.add(disc(std::min(0.028, 0.2 * R), half, 12));
        return mesh;
    }), Look::metal});
    if (spoked) out.push_back({store.get(meshKey("spokes", {R, half}), [&] { return spokes(0.024, R - tyre - 0.008, 0.6 * half, 16); }), Look::metal});
    return out;
}

std::vector<DrawnPiece> drawnCastor(const Solid& c, MeshStore& store) {
    const double R = c.radius, half = c.half.z(), tyre = std::min(0.022, 0.3 * R);
    std::vector<DrawnPiece> out;
    out.push_back({store.get(meshKey("castor tyre", {R, half}), [&] { return ring(R - tyre, R, half, 18, 6); }), Look::wheel});
    out.push_back({store.get(meshKey("castor disc", {R, half}), [&] {
        Mesh mesh = disc(R - tyre + 0.002, 0.5 * half, 12);
        mesh.add(disc(std::min(0.012, 0.25 * R), half, 8));
        return mesh;
    }), Look::metal});
    return out;
}

std::vector<DrawnPiece> drawnHandRim(const Solid& c, MeshStore& store) {
    const double R = c.radius, half = c.half.z();
    return {{store.get(meshKey("hand rim", {R, half}), [&] { return torusMesh(Pose::Identity(), R - half, half, 28, 6); }), Look::metal}};
}

}  // namespace hither
