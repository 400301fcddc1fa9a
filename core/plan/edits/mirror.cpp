#include "core/plan/edits/mirror.h"

#include <array>
#include <utility>

#include "core/plan/edits/mirror_chain.h"

namespace hither {
namespace {

constexpr double samePlane = 1e-6;  // m, and of unit vectors

struct Plane { Vec3 normal = Vec3::UnitY(); Vec3 point = Vec3::Zero(); };
Vec3 mirroredDirection(const Vec3& d, const Plane& plane) { return d - 2 * plane.normal.dot(d) * plane.normal; }
Vec3 mirroredPoint(const Vec3& p, const Plane& plane) { return plane.point + mirroredDirection(p - plane.point, plane); }
bool same(const Plane& a, const Plane& b) {
    return a.normal.cross(b.normal).norm() < samePlane && std::abs(a.normal.dot(b.point - a.point)) < samePlane;
}

/// Mirrored in the frame that carries it. Every kind but a hull is its own image in its own plane y = 0.
Solid mirroredSolid(const Solid& solid, const Plane& plane) {
    const Mat3 M = Mat3::Identity() - 2 * plane.normal * plane.normal.transpose();
    const Mat3 My = Vec3(1, -1, 1).asDiagonal();
    Solid out = solid;
    out.X_FG = pose(M * solid.X_FG.linear() * My, mirroredPoint(solid.X_FG.translation(), plane));
    if (solid.hull) {
        std::vector<Vec3> points;
        for (const Vec3& p : solid.hull->points) points.push_back(My * p);
        out.hull = makeHull(points);
    }
    return out;
}

Side other(Side side) { return side == Side::left ? Side::right : side == Side::right ? Side::left : Side::none; }

SiteSpec mirroredSite(const SiteSpec& site, const Plane& plane) {
    SiteSpec out = site;
    out.id = otherSide(site.id);
    out.name = otherSide(site.name);
    out.controlSite = otherSide(site.controlSite);
    out.segment.side = other(site.segment.side);
    if (site.given == SiteGiven::typed) {
        out.point = mirroredPoint(site.point, plane);
        out.direction = mirroredDirection(site.direction, plane);
    } else {  // segment frames have y to the person's left on both sides
        out.point.y() = -site.point.y();
        out.direction.y() = -site.direction.y();
    }
    return out;
}

}  // namespace

std::string otherSide(const std::string& text) {
    static const std::array<std::pair<std::string, std::string>, 6> sides{{{"left", "right"}, {"Left", "Right"}, {"LEFT", "RIGHT"}, {"right", "left"}, {"Right", "Left"}, {"RIGHT", "LEFT"}}};
    const auto isLetter = [](char c) { return (c >= 'a' && c <= 'z') || (c >= 'A' && c <= 'Z'); };
    std::string out;
    for (std::size_t i = 0; i < text.size();) {
        const std::pair<std::string, std::string>* found = nullptr;
        for (const auto& side : sides)
            if (text.compare(i, side.first.size(), side.first) == 0 && (i == 0 || !isLetter(text[i - 1])) && (i + side.first.size() == text.size() || !isLetter(text[i + side.first.size()]))) found = &side;
        out += found != nullptr ? found->second : std::string(1, text[i]);
        i += found != nullptr ? found->first.size() : 1;
    }
    return out;
}

Edited mirrorOption(const Plan& plan, const std::string& option, const std::string& newOption, const std::string& newName) {
    return edited(plan, [&](Plan& p) -> std::string {
        const PlanOption* from = plan.option(option);
        if (from == nullptr) return noOption(option);
        if (newOption.empty()) return "an option needs an id";
        if (findOption(p, newOption) != nullptr) return "there is an option \"" + newOption + "\" already";
        // Only the supports are needed: where the person is does not change how a mount mirrors.
        const SituationMade made = makeSituation(plan.supports, std::nullopt, {}, BodyData{});
        if (!made.situation) return made.problems.empty() ? "the supports cannot be made" : made.problems.front().what;
        const auto find = [&plan](const std::string& id) -> std::shared_ptr<const Part> {
            for (const auto& part : plan.parts) if (part->id == id) return part;
            return nullptr;
        };

        PlanOption mirrored = *from;
        mirrored.id = newOption;
        mirrored.name = newName;
        std::optional<Plane> plane;
        for (Mount& mount : mirrored.mounts) {
            const ChainMade chain = makeChain(mount, *made.situation, find);
            if (!chain.chain) return "mount \"" + mount.id + "\": " + chain.problem;
            const Support& support = *made.situation->support(mount.support);
            const Pose X_WS = groupPose_W(*made.situation, support.id, "");
            const Plane middle{X_WS.linear().col(1), X_WS.translation()};
            if (plane && !same(*plane, middle)) return "its mounts are fixed to supports with different middle planes";
            plane = middle;
            MountMirrored result = mirrorMount(mount, *chain.chain, chain.q, support);
            if (!result.mount) return result.whyNot;
            mount = std::move(*result.mount);
            mount.name = otherSide(mount.name);
        }
        if (!plane) return "the option has no mounts: there is nothing whose middle it could be mirrored in";

        // A group of one side, such as a leg rest's, has its twin on the other.
        const auto otherGroup = [&](const std::string& supportId, const std::string& group) {
            const Support* support = made.situation->support(supportId);
            const std::string twin = otherSide(group);
            return support != nullptr && support->group(twin) != nullptr ? twin : group;
        };
        for (Mount& mount : mirrored.mounts) {
            if (mount.site.empty()) continue;
            const SiteSpec* site = findSite(p, mount.site);
            if (site == nullptr) return "there is no site \"" + mount.site + "\"";
            SiteSpec twin = mirroredSite(*site, *plane);
            twin.goesWithGroup = otherGroup(site->goesWithSupport, site->goesWithGroup);
            if (twin.id == site->id) {
                // Its name has no side: it is its own twin only when it lies in the middle.
                if ((twin.point - site->point).norm() < samePlane && (twin.direction - site->direction).norm() < samePlane && twin.controlSite == site->controlSite) continue;
                twin.id = freeId(site->id + "-mirrored", [&](const std::string& id) { return findSite(p, id) != nullptr; });
            }
            mount.site = twin.id;
            if (findSite(p, twin.id) == nullptr) p.sites.push_back(std::move(twin));
        }
        for (KeepOut& keepOut : mirrored.keepOuts) {
            keepOut.solid = mirroredSolid(keepOut.solid, *plane);
            keepOut.name = otherSide(keepOut.name);
            keepOut.group = otherGroup(keepOut.support, keepOut.group);
        }
        const auto place = p.options.begin() + (findOption(p, option) - p.options.data());
        p.options.insert(place + 1, std::move(mirrored));
        return {};
    });
}

}  // namespace hither
