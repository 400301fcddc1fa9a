#include "core/plan/edits/mirror_chain.h"

#include <cmath>
#include <vector>

#include "core/units/quantity.h"

namespace hither {
namespace {

constexpr double sameDirection = 1e-6;   // of unit vectors
constexpr double sameLength_m = 1e-6;    // a thousandth of a millimetre
constexpr double sameAngle_rad = 1e-6;

Pose reflectedBoth(const Pose& X, const Vec3& n) {
    const Mat3 MS = Vec3(1, -1, 1).asDiagonal();
    const Mat3 Mn = Mat3::Identity() - 2 * n * n.transpose();
    return pose(MS * X.linear() * Mn, MS * X.translation());
}
bool along(const Vec3& a, const Vec3& n) { return a.cross(n).norm() < sameDirection; }
bool square(const Vec3& a, const Vec3& n) { return std::abs(a.dot(n)) < sameDirection; }

/// One way of mirroring that is open so far: the plane's normal in the present frame and the values.
struct Way { Vec3 n; Placement place; const Attachment* attachment; Eigen::VectorXd q; };

/// The placement that puts the grip's frame at X_SG; empty when the attachment does not lie there.
std::optional<Placement> placementAt(const Attachment& on, const Pose& X_SG, bool fromBelow) {
    Placement place;
    place.fromBelow = fromBelow;
    if (on.kind == AttachmentKind::face) {
        const Pose X_FaceG = gripFrame(on, Placement{}).inverse() * X_SG;
        place.x_m = X_FaceG.translation().x();
        place.y_m = X_FaceG.translation().y();
        place.yaw_rad = std::atan2(X_FaceG.linear()(1, 0), X_FaceG.linear()(0, 0));
    } else {
        place.along_m = (X_SG.translation() - on.a).dot((on.b - on.a).normalized());
        if (place.along_m < -sameLength_m || place.along_m > on.length_m() + sameLength_m) return std::nullopt;
        if (on.kind == AttachmentKind::rail) {
            const Vec3 z = gripFrame(on, Placement{}).linear().transpose() * X_SG.linear().col(2);
            place.around_rad = std::atan2(-z.y(), z.z());
        }
    }
    const Pose X = gripFrame(on, place);
    if ((X.translation() - X_SG.translation()).norm() > sameLength_m || (X.linear() - X_SG.linear()).norm() > sameDirection) return std::nullopt;
    return place;
}

/// A mirrored value of a joint brought into its range, turns by whole turns; empty when the joint
/// cannot take it, or when it stood on a detent and would not.
std::optional<double> taken(const Freedom& f, double before, double value) {
    const auto onStep = [&](double v) { return std::abs(v - *f.step * std::round(v / *f.step)) < sameAngle_rad; };
    const double turn = f.isAngle ? 2 * pi : 0;
    if (f.fullTurn) value = std::remainder(value, turn);
    for (const double v : {value, value - turn, value + turn}) {
        if (!f.fullTurn && (v < f.min - sameAngle_rad || v > f.max + sameAngle_rad)) continue;
        if (f.step && *f.step > 0 && onStep(before) && !onStep(v)) continue;
        return v;
    }
    return std::nullopt;
}

/// Normals that a turn about `axis` can pass on to: the same, those of the axes' planes, and the one in
/// whose plane the next offset lies.
std::vector<Vec3> normalsAfter(const Vec3& axis, const Vec3& n, const ChainStep* next) {
    std::vector<Vec3> normals{n};
    const auto add = [&](const Vec3& v) { if (v.norm() > sameDirection && square(axis, v)) normals.push_back(v.normalized()); };
    if (next != nullptr && next->kind == ChainStep::Kind::fixed) add(axis.cross(next->X.translation()));
    add(Vec3::UnitY());
    add(Vec3::UnitX());
    add(Vec3::UnitZ());
    return normals;
}
/// Angle about `axis` from a to b, both square to it.
double angleAbout(const Vec3& axis, const Vec3& a, const Vec3& b) { return std::atan2(axis.dot(a.cross(b)), a.dot(b)); }

void addWay(std::vector<Way>& ways, Way way) {
    for (const Way& w : ways)
        if (w.attachment == way.attachment && w.place == way.place && along(w.n, way.n)) return;
    ways.push_back(std::move(way));
}

/// Every way on through one step.
void through(const ChainStep& step, const ChainStep* after, const Chain& chain, const Eigen::VectorXd& q, const Way& way, std::vector<Way>& out) {
    const auto freedom = [&](int c) -> const Freedom& { return chain.freedoms[static_cast<std::size_t>(step.q0 + c)]; };
    switch (step.kind) {
        case ChainStep::Kind::fixed: {
            // M X M' = X with n' = R^T n: X's own offset must lie in the plane.
            if (std::abs(way.n.dot(step.X.translation())) > sameLength_m) return;
            Way next = way;
            next.n = step.X.linear().transpose() * way.n;
            addWay(out, std::move(next));
            return;
        }
        case ChainStep::Kind::slide: {
            if (!along(step.axis, way.n) && !square(step.axis, way.n)) return;
            const auto value = taken(freedom(0), q[step.q0], along(step.axis, way.n) ? -q[step.q0] : q[step.q0]);
            if (!value) return;
            Way next = way;
            next.q[step.q0] = *value;
            addWay(out, std::move(next));
            return;
        }
        case ChainStep::Kind::turn: {
            if (along(step.axis, way.n)) { addWay(out, way); return; }
            if (!square(step.axis, way.n)) return;
            // M_n R(q) M_n' = R(-q - 2 phi) for n' turned by phi from n.
            for (const Vec3& n : normalsAfter(step.axis, way.n, after)) {
                const auto value = taken(freedom(0), q[step.q0], -q[step.q0] - 2 * angleAbout(step.axis, way.n, n));
                if (!value) continue;
                Way next = way;
                next.q[step.q0] = *value;
                next.n = n;
                addWay(out, std::move(next));
            }
            return;
        }
        case ChainStep::Kind::ball: {
            const bool inXY = square(Vec3::UnitZ(), way.n), alongZ = along(Vec3::UnitZ(), way.n);
            if (!inXY && !alongZ) return;
            const Vec3 w(q[step.q0], q[step.q0 + 1], 0);
            const Vec3 mirrored = -(w - 2 * way.n.dot(w) * way.n);  // a rotation vector is an axial vector
            const double before = q[step.q0 + 2];
            for (const Vec3& n : alongZ ? std::vector<Vec3>{way.n} : normalsAfter(Vec3::UnitZ(), way.n, after)) {
                const auto twist = taken(freedom(2), before, alongZ ? before : -before - 2 * angleAbout(Vec3::UnitZ(), way.n, n));
                if (!twist) continue;
                Way next = way;
                next.q[step.q0] = mirrored.x();
                next.q[step.q0 + 1] = mirrored.y();
                next.q[step.q0 + 2] = *twist;
                next.n = n;
                addWay(out, std::move(next));
            }
            return;
        }
        case ChainStep::Kind::bend: {
            if (!square(Vec3::UnitZ(), way.n)) return;
            const Vec3 k(q[step.q0], q[step.q0 + 1], 0);
            const Vec3 mirrored = -(k - 2 * way.n.dot(k) * way.n);
            Way next = way;
            next.q[step.q0] = mirrored.x();
            next.q[step.q0 + 1] = mirrored.y();
            addWay(out, std::move(next));
            return;
        }
    }
}

}  // namespace

MountMirrored mirrorMount(const Mount& mount, const Chain& chain, const Eigen::VectorXd& q, const Support& support) {
    const Attachment* from = support.attachment(mount.attachment);
    if (from == nullptr) return {std::nullopt, "support \"" + support.id + "\" has no attachment \"" + mount.attachment + "\""};
    const Pose X_SG = gripFrame(*from, mount.place);

    std::vector<Way> ways;
    for (const Attachment& on : support.attachments) {
        if (on.kind != from->kind || on.section != from->section) continue;
        for (const Vec3& n : {Vec3(Vec3::UnitY()), Vec3(Vec3::UnitX())})
            if (const auto place = placementAt(on, reflectedBoth(X_SG, n), mount.place.fromBelow)) addWay(ways, {n, *place, &on, q});
    }
    if (ways.empty()) return {std::nullopt, "mount \"" + mount.id + "\": nothing like \"" + from->name + "\" lies at the mirrored place of \"" + support.name + "\""};

    const auto first = static_cast<std::size_t>(chain.partFrame.front());
    for (std::size_t s = first; s < chain.steps.size(); ++s) {
        std::vector<Way> next;
        for (const Way& way : ways) through(chain.steps[s], s + 1 < chain.steps.size() ? &chain.steps[s + 1] : nullptr, chain, q, way, next);
        if (next.empty()) {
            const auto part = static_cast<std::size_t>(chain.steps[s].part);
            return {std::nullopt, "mount \"" + mount.id + "\": part number " + std::to_string(part + 1) + ", \"" + chain.parts[part]->name +
                                      "\", is not the same on its left and its right or cannot be set to the mirrored pose"};
        }
        ways = std::move(next);
    }
    for (const Way& way : ways) {
        if (chain.face && !square(chain.operatingAxis, way.n)) continue;
        Mount mirrored = withValues(mount, chain, way.q);
        mirrored.attachment = way.attachment->id;
        mirrored.place = way.place;
        return {std::move(mirrored), {}};
    }
    return {std::nullopt, "mount \"" + mount.id + "\": \"" + chain.parts.back()->name + "\" would be operated the other way"};
}

}  // namespace hither
