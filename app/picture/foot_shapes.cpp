#include "app/picture/foot_shapes.h"

#include <algorithm>
#include <cmath>

#include "app/picture/soft_shapes.h"
#include "core/geometry/distance.h"
#include "core/units/quantity.h"

namespace hither {

namespace {

constexpr double onGround_m = 0.001;
constexpr double padThick_m = 0.005;

bool covered(const std::vector<Solid>& solids, const Vec3& point) { return !solids.empty() && distanceToOthers(solids, -1, point) < 0; }

/// A screw with its turns as rings, from a to b.
Mesh threaded(const Vec3& a, const Vec3& b, double radius) {
    Mesh mesh = softCylinder(a, b, radius, 0.0004, {true, true});
    const Vec3 line = b - a;
    const int rings = std::clamp(static_cast<int>(line.norm() / 0.003), 0, 20), around = roundSegments(radius);
    for (int i = 1; i < rings; ++i) {
        const Pose X = frameFromZ(a + line * i / rings, line, Vec3::UnitX());
        const auto at = [&](int k) { return (X * Vec3(radius * std::cos(2 * pi * k / around), radius * std::sin(2 * pi * k / around), 0)).cast<float>().eval(); };
        for (int k = 0; k < around; ++k) mesh.edges.push_back({at(k), at(k + 1)});
    }
    return mesh;
}

/// Where the pressing screw of an edge clamp comes up to: the upper end of a knob's screw that stands upright below the plate.
struct PressScrew { Vec3 top = Vec3::Zero(); double radius = 0; };
std::optional<PressScrew> pressScrew(const std::vector<Solid>& solids, const std::vector<SolidRole>& roles, double below) {
    for (std::size_t i = 0; i < solids.size(); ++i) {
        if (roles[i] != SolidRole::shaft && roles[i] != SolidRole::screw && roles[i] != SolidRole::knob) continue;
        const Vec3 low = lowEnd(solids[i]), high = highEnd(solids[i]), top = low.z() > high.z() ? low : high;
        const bool upright = std::hypot(low.x() - high.x(), low.y() - high.y()) < onGround_m;
        if (upright && top.z() < below && top.y() > 0 && solids[i].radius < 0.010) return PressScrew{top, solids[i].radius};
    }
    return std::nullopt;
}

}  // namespace

int tabOf(const Part& part, const std::vector<Solid>& solids) {
    if (!saysWord(part, "tab")) return -1;
    int tab = -1;
    double least = 1;
    for (std::size_t i = 0; i < solids.size(); ++i) {
        if (solids[i].kind != SolidKind::box) continue;
        const double volume = solids[i].half.prod();
        if (volume < least) { least = volume; tab = static_cast<int>(i); }
    }
    return tab;
}

int groundSolid(const std::vector<Solid>& solids) {
    int ground = -1;
    double widest = 0;
    for (std::size_t i = 0; i < solids.size(); ++i) {
        if (solids[i].kind == SolidKind::capsule) continue;
        const Eigen::AlignedBox3d box = solids[i].bounds(Pose::Identity());
        const double wide = std::min(box.sizes().x(), box.sizes().y());
        if (box.min().z() < onGround_m && wide > widest) { widest = wide; ground = static_cast<int>(i); }
    }
    return ground;
}

void addEdgeJaws(DrawnPieces& drawn, const Part& part, const std::vector<Solid>& solids, const std::vector<SolidRole>& roles, const EdgeGrip& grip,
                 const Attachment& plate) {
    const double board = plate.thickness_m.value.value_or(0.0), wall = grip.wall_m, throat = grip.throat_m, halfX = 0.5 * grip.width_m;
    const Vec3 over(0, 0.5 * (throat - wall), 0.5 * wall), back(0, -0.5 * wall, -0.5 * board);
    if (!covered(solids, over)) drawn[Look::gripPart].add(softBox(translation(over), Vec3(halfX, 0.5 * (throat + wall), 0.5 * wall)));
    if (!covered(solids, back)) drawn[Look::gripPart].add(softBox(translation(back), Vec3(halfX, 0.5 * wall, 0.5 * board + wall)));
    if (const auto screw = pressScrew(solids, roles, -board)) {
        const double radius = std::min({0.75 * halfX, 0.013, screw->top.y() - 0.001});
        const Vec3 face(screw->top.x(), screw->top.y(), -board), seat = face - padThick_m * Vec3::UnitZ();
        drawn[Look::pad].add(softCylinder(seat + 0.0025 * Vec3::UnitZ(), face, radius, 0.0008, {false, true}));
        drawn[Look::metal].add(softCylinder(seat, seat + 0.0025 * Vec3::UnitZ(), 0.8 * radius, 0.0006, {false, true}));
        if (screw->top.z() < seat.z() - 0.0005) drawn[Look::metal].add(threaded(screw->top, seat, 0.9 * screw->radius));
    } else {
        drawn[Look::gripPart].add(softBox(translation(Vec3(0, over.y(), -board - 0.5 * wall)), Vec3(halfX, 0.5 * (throat + wall), 0.5 * wall)));
    }
    if (const int tab = tabOf(part, solids); tab >= 0) {
        const Solid& s = solids[static_cast<std::size_t>(tab)];
        Mesh lever = softBox(s.X_FG, s.half, 0.0012);
        // Ridges for the thumb across its outer face, which looks away from the clamp's middle.
        int thin = 0;
        s.half.minCoeff(&thin);
        const Vec3 middle = s.X_FG.translation();
        const double side = (s.X_FG.linear().col(thin).dot(Vec3(middle.x(), middle.y(), 0)) < 0 ? -1 : 1) * (s.half[thin] + 0.0001);
        const int wide = thin == 0 ? 1 : 0;
        for (int k = -2; k <= 2; ++k) {
            Vec3 a = Vec3::Zero();
            a[thin] = side;
            a.z() = 0.18 * s.half.z() * k - 0.45 * s.half.z();
            Vec3 b = a;
            a[wide] = -0.7 * s.half[wide];
            b[wide] = 0.7 * s.half[wide];
            lever.edges.push_back({(s.X_FG * a).cast<float>(), (s.X_FG * b).cast<float>()});
        }
        drawn[Look::knob].add(lever);
    }
}

void addFoot(DrawnPieces& drawn, const std::vector<Solid>& solids, const std::vector<SolidRole>& roles, const FaceGrip& grip) {
    struct Foot { Vec3 at, up; double radius; };
    std::vector<Foot> feet;
    for (std::size_t i = 0; i < solids.size(); ++i) {
        if (roles[i] != SolidRole::rod) continue;
        Vec3 low = lowEnd(solids[i]), high = highEnd(solids[i]);
        if (low.z() > high.z()) std::swap(low, high);
        if (low.z() < solids[i].radius + onGround_m) feet.push_back({low, (high - low).normalized(), solids[i].radius});
    }
    if (!feet.empty()) {
        for (const auto& [at, up, radius] : feet) {
            drawn[Look::pad].add(softRod(at, at + 0.6 * radius * up, radius + 0.0008));
            if (grip.fixing == FaceFixing::standing) continue;
            // Held down: a patch under each foot and a band over it.
            const Vec3 ground(at.x(), at.y(), 0);
            drawn[Look::pad].add(softCylinder(ground, ground + 0.002 * Vec3::UnitZ(), radius + 0.0035, 0.0006));
            const Vec3 out = Vec3(at.x(), at.y(), 0).normalized();
            drawn[Look::pad].add(softBox(pose((Mat3() << out, Vec3::UnitZ().cross(out), Vec3::UnitZ()).finished(), at), Vec3(0.006, radius + 0.0018, radius + 0.0012), 0.003));
        }
        return;
    }
    const int ground = groundSolid(solids);
    if (ground < 0) {
        drawn[Look::gripPart].add(softBox(translation(Vec3(0, 0, 0.002)), Vec3(0.5 * grip.sizeX_m, 0.5 * grip.sizeY_m, 0.002)));
        return;
    }
    const Solid& base = solids[static_cast<std::size_t>(ground)];
    const bool round = base.kind == SolidKind::cylinder;
    const Eigen::AlignedBox3d box = base.bounds(Pose::Identity());
    const double top = box.max().z(), x = 0.5 * box.sizes().x(), y = 0.5 * box.sizes().y();
    const auto pad = [&](double thick, double beyond) {
        if (round) drawn[Look::pad].add(softCylinder(Vec3::Zero(), Vec3(0, 0, thick), x + beyond, 0.0006));
        else drawn[Look::pad].add(softBox(translation(Vec3(0, 0, 0.5 * thick)), Vec3(x + beyond, y + beyond, 0.5 * thick), 0.0006));
    };
    switch (grip.fixing) {
        case FaceFixing::suction: {
            if (!round) { pad(0.003, 0.001); break; }
            double stem = 0.5 * x;
            for (const Solid& s : solids)
                if (s.kind == SolidKind::cylinder && &s != &base && std::abs(lowEnd(s).z() - top) < onGround_m) stem = s.radius;
            const double lip = std::min(x + 0.002, 0.5 * grip.sizeX_m);
            drawn[Look::pad].add(turnedMesh(Pose::Identity(), {{0, 0, 0, -1}, {lip, 0, 0.2, -1, true}, {lip, 0.0014, 1, 0.6, true}, {0.88 * x, 0.28 * top, 0.5, 1},
                                                               {0.5 * (x + stem), 0.55 * top, 0.6, 1}, {stem, top, 1, 0.3, true}, {0, top, 0, 1}}, roundSegments(x)));
            break;
        }
        case FaceFixing::adhesive: pad(0.0014, 0.0008); break;
        case FaceFixing::hookAndLoop: pad(0.0022, 0.0012); break;
        case FaceFixing::standing: pad(0.0016, -0.0005); break;
        case FaceFixing::screwed: {
            const int count = round ? 3 : 4;
            for (int k = 0; k < count; ++k) {
                const double angle = 2 * pi * (k + 0.5) / count;
                const Vec3 at = round ? Vec3(0.78 * x * std::cos(angle), 0.78 * x * std::sin(angle), top)
                                      : Vec3((std::cos(angle) > 0 ? 0.76 : -0.76) * x, (std::sin(angle) > 0 ? 0.76 : -0.76) * y, top);
                drawn[Look::metal].add(softCylinder(at - 0.0005 * Vec3::UnitZ(), at + 0.0016 * Vec3::UnitZ(), 0.0038, 0.0009, {true, false}));
                drawn[Look::pad].add(patchMesh(translation(at + 0.0018 * Vec3::UnitZ()), circleOutline(0.0017, 6)));
            }
            break;
        }
    }
}

}  // namespace hither
