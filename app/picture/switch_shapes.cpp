#include "app/picture/switch_shapes.h"

#include <algorithm>
#include <cmath>

#include "app/picture/part_roles.h"
#include "app/picture/shapes.h"
#include "app/picture/soft_shapes.h"
#include "core/geometry/distance.h"
#include "core/units/quantity.h"

namespace hither {

namespace {

constexpr double proud_m = 0.0012;
constexpr double mostOpening_rad = 0.7;   // a cone opening wider than this would hide the switch

/// The face's centre in the frame of an element from which only rigid ones follow; nothing otherwise.
std::optional<Vec3> faceFrom(const Part& part, std::size_t element) {
    Pose X = Pose::Identity();
    for (std::size_t e = element; e < part.elements.size(); ++e) {
        const auto* rigid = std::get_if<RigidElement>(&part.elements[e].what);
        if (!rigid) return std::nullopt;
        X = X * rigid->X;
    }
    return X.translation();
}
bool isRoundFace(const Part& part, const Vec3& size) {
    const auto* rigid = part.elements.empty() ? nullptr : std::get_if<RigidElement>(&part.elements.back().what);
    const bool square = std::abs(size.x() - size.y()) < 0.001;
    return square && rigid && std::none_of(rigid->solids.begin(), rigid->solids.end(), [](const Solid& s) { return s.kind == SolidKind::box || s.kind == SolidKind::roundedBox; });
}

}  // namespace

bool isCap(const Part& part, std::size_t element, std::size_t solid) {
    int count = 0;
    double least = 1;
    std::pair<std::size_t, std::size_t> nearest{0, 0};
    for (std::size_t e = 0; e < part.elements.size(); ++e) {
        const auto* rigid = std::get_if<RigidElement>(&part.elements[e].what);
        const std::optional<Vec3> face = faceFrom(part, e);
        if (!rigid || !face) continue;
        for (std::size_t i = 0; i < rigid->solids.size(); ++i) {
            ++count;
            const double d = std::abs(distance(Solid::sphere(*face, 1e-6), rigid->solids[i]).distance);
            if (d < least - 1e-5) { least = d; nearest = {e, i}; }
        }
    }
    if (count == 1 && nearest == std::pair{element, solid}) {
        // A cushion is pressed as a whole.
        const Solid& only = std::get<RigidElement>(part.elements[element].what).solids[solid];
        return only.kind == SolidKind::roundedBox && only.radius > 0.8 * only.half.minCoeff();
    }
    return count > 1 && nearest == std::pair{element, solid};
}

DrawnPieces facePieces(const Part& part) {
    DrawnPieces drawn;
    if (!part.face) return drawn;
    const SwitchFace& face = *part.face;
    const double x = 0.5 * face.size.x(), y = 0.5 * face.size.y();
    const bool round = isRoundFace(part, face.size);
    if (face.action == SwitchFace::Action::sense) {
        // A dark window over the place that answers, in a rim.
        const double smaller = std::min(x, y), corner = std::min(0.2 * smaller, 0.004);
        drawn[Look::switchCap].add(softBox(Pose::Identity(), Vec3(x, y, proud_m), 0.0008));
        const bool small = smaller < 0.02;
        std::vector<Eigen::Vector2d> window;
        if (small) window = circleOutline(0.72 * smaller, 20);
        else for (const auto& [sx, sy] : {std::pair{1.0, 1.0}, {-1.0, 1.0}, {-1.0, -1.0}, {1.0, -1.0}}) window.emplace_back(sx * (x - corner), sy * (y - corner));
        drawn[Look::pad].add(patchMesh(translation(Vec3(0, 0, proud_m + 0.0002)), window));
        return drawn;
    }
    std::size_t solids = 0;
    for (const Element& e : part.elements)
        if (const auto* rigid = std::get_if<RigidElement>(&e.what)) solids += rigid->solids.size();
    for (std::size_t e = 0; e < part.elements.size(); ++e)
        if (solids == 1 && isCap(part, e, 0)) return drawn;
    if (solids != 1) return drawn;  // a solid of its own is the cap
    if (round) drawn[Look::switchCap].add(softCylinder(Vec3(0, 0, -0.001), Vec3(0, 0, proud_m), x, 0.001));
    else drawn[Look::switchCap].add(softBox(Pose::Identity(), Vec3(x, y, proud_m), 0.001));
    return drawn;
}

DrawnPieces cablePieces(const Part& part) {
    DrawnPieces drawn;
    for (const KeepFree& free : part.keepFree) {
        const bool leads = free.what.find("cable") != std::string::npos || free.what.find("hose") != std::string::npos;
        if (!leads || free.solid.kind != SolidKind::cylinder) continue;
        Ends ends{lowEnd(free.solid), highEnd(free.solid)};
        // The end at the casing is the one nearer to the base port's axis.
        if (ends.a.norm() > ends.b.norm()) std::swap(ends.a, ends.b);
        const Vec3 out = (ends.b - ends.a).normalized();
        const double r = std::min(free.solid.radius, 0.006);
        drawn[Look::pad].add(turnedMesh(frameFromZ(ends.a, out, Vec3::UnitZ()),
                                        {{0.75 * r, -0.003, 1, 0.2}, {0.6 * r, 0.004, 1, 0.2, true}, {0.36 * r, 0.004, 1, 0}, {0.36 * r, 0.009, 1, 0, true}, {0, 0.009, 0, 1}}, 8));
    }
    return drawn;
}

Mesh sensingCone(const Part& part) {
    if (!part.face || part.face->action != SwitchFace::Action::sense || part.face->sensingRange_m.value.value_or(0) <= 0) return {};
    const double range = *part.face->sensingRange_m.value, near = 0.5 * std::min(part.face->size.x(), part.face->size.y());
    const double opening = std::min(0.5 * part.face->angleTolerance_rad.value.value_or(0.0), mostOpening_rad);
    Mesh cone = coneMesh(Vec3(0, 0, 0.002), Vec3(0, 0, 0.002 + range), 0.8 * near, 0.8 * near + range * std::tan(opening), 24);
    return cone;
}

}  // namespace hither
