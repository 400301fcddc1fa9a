#include "app/picture/support_forms.h"

#include <algorithm>
#include <cmath>

#include "app/picture/mesh_key.h"
#include "app/picture/revolved.h"
#include "app/picture/shapes.h"
#include "app/picture/wheels.h"

namespace hither {

namespace {

bool starts(const std::string& name, const char* with) { return name.rfind(with, 0) == 0; }
bool anyStart(const std::string& name, std::initializer_list<const char*> list) {
    return std::any_of(list.begin(), list.end(), [&](const char* with) { return starts(name, with); });
}

bool isRail(const Support& support, const std::string& name) {
    return std::any_of(support.attachments.begin(), support.attachments.end(), [&](const Attachment& a) {
        return a.kind == AttachmentKind::rail && std::find(a.solids.begin(), a.solids.end(), name) != a.solids.end();
    });
}
bool isPlate(const Support& support, const std::string& name) {
    return std::any_of(support.attachments.begin(), support.attachments.end(), [&](const Attachment& a) {
        return (a.kind == AttachmentKind::edge || a.kind == AttachmentKind::face) && std::find(a.solids.begin(), a.solids.end(), name) != a.solids.end();
    });
}

Look lookOf(const Support& support, const SupportSolid& s) {
    const std::string& name = s.name;
    if (anyStart(name, {"mattress"})) return Look::mattress;
    if (anyStart(name, {"head_board", "foot_board", "tray", "table_top"}) && !starts(name, "tray_bar")) return Look::wood;
    if (support.kind == "table") return Look::wood;
    if (anyStart(name, {"armrest_pad", "headrest_post"})) return starts(name, "headrest_post") ? Look::frameTube : Look::pad;
    if (name == "headrest" || anyStart(name, {"push_handle", "joystick", "push_bar", "brake", "foot_plate", "hub", "sleeve_clamp", "side_rail_release", "fold_joint"}) || name.find("_pad") != std::string::npos)
        return starts(name, "foot_plate_stem") || starts(name, "joystick_bracket") ? Look::frameTube : Look::pad;
    if (name == "seat" || name == "back" || name == "power_base") return Look::cover;
    if (support.kind == "bed") return Look::metal;
    if (isRail(support, name)) return Look::frameTube;
    if (isPlate(support, name)) return Look::wood;
    return s.solid.kind == SolidKind::capsule ? Look::frameTube : Look::metal;
}

/// How far the edges of a box are rounded off: cushions much, plates little. A corner rounded by r
/// draws back by 0.73 r, an edge by 0.41 r; `least` keeps both within 3 mm where it must be close.
double rounding(Look look, const Solid& box) {
    const double thin = box.half.minCoeff();
    if (look == Look::mattress || look == Look::cover || look == Look::pad) return std::min(0.004, 0.6 * thin);
    return look == Look::wood ? std::min(0.003, 0.4 * thin) : std::min(0.0025, 0.4 * thin);
}

/// Whether another solid of the support holds this end of a tube (then it is a joint, not an open end).
bool joined(const Support& support, const SupportSolid& tube, const Vec3& end_S) {
    return std::any_of(support.solids.begin(), support.solids.end(), [&](const SupportSolid& other) {
        return other.name != tube.name && other.group == tube.group && distance(Solid::sphere(end_S, 1e-6), other.solid).distance < 0;
    });
}

/// A tube along z. An open end stands out as far as the capsule's ball but is cut flat, its border
/// bevelled so that it stays within 2.5 mm of the ball, with a dark bore.
Mesh tube(double half, double radius, bool openLow, bool openHigh, int around) {
    std::vector<Turned> profile;
    const double beyond = radius + 0.0025, flat = std::min(radius, std::sqrt(beyond * beyond - radius * radius));
    const auto end = [&](bool open, double sign) {
        std::vector<Turned> out;
        if (open) {
            out = {{0, sign * (half + radius)}, {flat, sign * (half + radius), true}, {radius, sign * (half + flat), true}};
        } else {
            constexpr int steps = 2;
            for (int i = 0; i <= steps; ++i) {
                const double angle = 0.5 * M_PI * (1 - static_cast<double>(i) / steps);
                out.push_back({i == 0 ? 0 : radius * std::cos(angle), sign * (half + radius * std::sin(angle))});
            }
        }
        return out;
    };
    profile = end(openLow, -1);
    std::vector<Turned> high = end(openHigh, 1);
    profile.insert(profile.end(), high.rbegin(), high.rend());
    return revolved(Pose::Identity(), profile, around);
}

Mesh bore(double half, double radius, bool openLow, bool openHigh, int around) {
    Mesh mesh;
    const double beyond = radius + 0.0025, flat = std::min(radius, std::sqrt(beyond * beyond - radius * radius));
    for (const auto& [open, sign] : {std::pair{openLow, -1.0}, {openHigh, 1.0}})
        if (open) mesh.add(revolved(frameFromZ(Vec3(0, 0, sign * (half + radius + 0.0005)), Vec3(0, 0, sign), Vec3::UnitX()), {{0.78 * flat, 0}, {0, 0}}, around));
    mesh.edges.clear();
    return mesh;
}

std::vector<DrawnPiece> drawnTube(const Support& support, const SupportSolid& s, Look look, MeshStore& store) {
    const Solid& c = s.solid;
    const Vec3 end = c.X_FG.linear().col(2) * c.half.z();
    const bool openLow = !joined(support, s, c.X_FG.translation() - end), openHigh = !joined(support, s, c.X_FG.translation() + end);
    const int around = c.radius > 0.018 ? 14 : c.radius > 0.0115 ? 12 : c.radius > 0.007 ? 10 : 8;
    std::vector<DrawnPiece> out;
    const double ends = (openLow ? 1 : 0) + (openHigh ? 2 : 0);
    out.push_back({store.get(meshKey("tube", {c.half.z(), c.radius, 1e-6 * ends}), [&] { return tube(c.half.z(), c.radius, openLow, openHigh, around); }), look});
    if ((openLow || openHigh) && look != Look::pad && c.radius > 0.006)
        out.push_back({store.get(meshKey("bore", {c.half.z(), c.radius, 1e-6 * ends}), [&] { return bore(c.half.z(), c.radius, openLow, openHigh, around); }), Look::wheel});
    return out;
}

}  // namespace

std::vector<DrawnPiece> drawnSolid(const Support& support, const SupportSolid& s, MeshStore& store) {
    const Solid& solid = s.solid;
    if (solid.kind == SolidKind::cylinder && anyStart(s.name, {"wheel", "drive_wheel"})) return drawnWheel(solid, store);
    if (solid.kind == SolidKind::cylinder && starts(s.name, "castor")) return drawnCastor(solid, store);
    if (solid.kind == SolidKind::cylinder && starts(s.name, "hand_rim")) return drawnHandRim(solid, store);
    const Look look = lookOf(support, s);
    if (solid.kind == SolidKind::capsule) return drawnTube(support, s, look, store);
    if (solid.kind == SolidKind::box) {
        const double radius = rounding(look, solid);
        const bool sharp = isRail(support, s.name) || radius < 0.001 || look == Look::wood || look == Look::metal || look == Look::frameTube;
        if (sharp) return {{store.get(meshKey("box", solid), [&] { return boxMesh(Pose::Identity(), solid.half); }), look}};
        return {{store.get(meshKey("soft box", solid), [&] { return roundedBoxMesh(Pose::Identity(), solid.half, radius); }), look}};
    }
    Solid own = solid;
    own.X_FG = Pose::Identity();
    return {{store.get(meshKey("solid", own), [&] { return solidMesh(own); }), look}};
}

}  // namespace hither
