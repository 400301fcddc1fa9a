#include <algorithm>
#include <cmath>

#include <Eigen/Dense>

#include "core/situation/body_posture.h"
#include "core/situation/body_sites.h"
#include "core/units/quantity.h"

namespace hither {
namespace {

/// A resting person before the support's groups move: pose of the pelvis in S and joint angles.
struct AtRest { Pose X_SPelvis = Pose::Identity(); Posture posture; };

void both(Posture& posture, const std::string& joint, double angle) {
    posture[joint + "_left"] = angle;
    posture[joint + "_right"] = angle;
}

/// The pelvis touches seat (raised by the compressed cushion) and back; the trunk lies along the back,
/// the head is upright as far as a neck bends, the thighs lie along the seat, the shanks hang down or
/// reach forward when the feet would stand below the foot plates; upper arms hang, forearms level on
/// armrests at elbow height, palms half down.
std::optional<AtRest> seated(const BodyShape& shape, const Resting& resting, double cushion) {
    const double seat = resting.seatAngle_rad, back = resting.backAngle_rad;
    const Vec3 seatUp(-std::sin(seat), 0, std::cos(seat)), seatForward(std::cos(seat), 0, std::sin(seat));
    const Vec3 backForward(std::cos(back), 0, std::sin(back));
    // Hip: hipAbove + cushion from the seat plane, hipForward from the back plane.
    Eigen::Matrix2d A;
    A << seatUp.x(), seatUp.z(), backForward.x(), backForward.z();
    if (std::abs(A.determinant()) < 0.2) return std::nullopt;  // seat and back (nearly) in one plane
    const Eigen::Vector2d at = A.inverse() * Eigen::Vector2d(shape.hipAbove + cushion, shape.hipForward);
    AtRest rest;
    const Vec3 hip = resting.hip_S + Vec3(at.x(), 0, at.y());
    rest.X_SPelvis = pose(Eigen::AngleAxisd(-back, Vec3::UnitY()).toRotationMatrix(), hip);

    const double drop = shape.hipAbove - shape.kneeRadius;  // hip joint above the knee joint, off the seat
    const double along = std::sqrt(std::max(shape.thigh * shape.thigh - drop * drop, 0.0));
    const Vec3 thigh = along * seatForward - drop * seatUp;
    const double thighForward = std::atan2(thigh.x(), -thigh.z());  // from straight down
    const double height = hip.z() + thigh.z() - resting.footrest_z_m - shape.ankleAbove;
    const double shankForward = height >= shape.shank ? 0.0 : std::acos(std::clamp(height / shape.shank, 0.2, 1.0));
    both(rest.posture, "hip_flexion", thighForward - back);  // the pelvis leans back with the trunk, which opens the hip
    both(rest.posture, "knee_flexion", std::max(thighForward - shankForward, 0.0));
    both(rest.posture, "ankle_flexion", -std::min(shankForward, thighForward));
    both(rest.posture, "shoulder_flexion", std::max(-back, publishedRanges().at("shoulder_flexion_left").min));
    both(rest.posture, "shoulder_abduction", radians(5));
    both(rest.posture, "elbow_flexion", radians(90));
    both(rest.posture, "forearm_pronation", radians(60));
    rest.posture["neck_flexion"] = std::clamp(back, publishedRanges().at("neck_flexion").min, publishedRanges().at("neck_flexion").max);
    return rest;
}

/// How far a group is turned at present, with the groups that carry it.
double presentTurn(const Support& support, const std::string& id) {
    double turn = 0;
    for (const MovingGroup* g = support.group(id); g != nullptr; g = support.group(g->parent)) turn += g->slides ? 0.0 : g->value;
    return turn;
}

/// Flat on the mattress, head toward -x, with every section down. The mattress gives way under the
/// person: on the back the hip joint is half the thigh's depth above its surface, so that the legs lie
/// level; on a side the lower shoulder joint is at its surface.
/// With the back section raised by `raised` the forearms stay level instead of following the trunk
/// into the mattress.
AtRest lying(const BodyShape& shape, const Resting& resting, PersonSpec::Lying lie, double raised) {
    AtRest rest;
    Posture& posture = rest.posture;
    Mat3 R;  // columns: forward, left and up of the body in S
    double height = shape.hipAbove;
    if (lie == PersonSpec::Lying::onBack) {
        R << 0, 0, -1, 0, 1, 0, 1, 0, 0;
        const double rise = shape.shoulderForward - shape.hipForward + shape.hipAbove - shape.forearmRadius;  // shoulder joint above a resting arm
        const double lower = std::asin(std::clamp(rise / shape.upperArm, 0.0, 0.5));
        both(posture, "shoulder_flexion", -lower);
        both(posture, "elbow_flexion", lower + raised);
        both(posture, "shoulder_abduction", radians(15));
        both(posture, "forearm_pronation", radians(60));
        both(posture, "hip_abduction", radians(5));
        both(posture, "ankle_flexion", radians(-20));
    } else {
        const bool left = lie == PersonSpec::Lying::onLeft;
        const std::string down = left ? "_left" : "_right", up = left ? "_right" : "_left";
        if (left) R << 0, 0, -1, 1, 0, 0, 0, -1, 0;
        else R << 0, 0, -1, -1, 0, 0, 0, 1, 0;
        height = shape.shoulderHalf;
        posture["shoulder_flexion" + down] = radians(80);
        posture["elbow_flexion" + down] = radians(60);
        posture["shoulder_flexion" + up] = radians(40);
        posture["elbow_flexion" + up] = radians(60);
        both(posture, "hip_flexion", radians(40));
        both(posture, "knee_flexion", radians(60));
    }
    rest.X_SPelvis = pose(R, resting.hip_S + Vec3(0, 0, height));
    return rest;
}

void takeTyped(Posture& posture, const PersonSpec& spec, std::vector<std::string>& problems) {
    const auto& ranges = publishedRanges();
    for (const auto& [joint, angle] : spec.posture) {
        if (!ranges.count(joint)) {
            std::string allowed;
            for (const auto& [name, range] : ranges) allowed += (allowed.empty() ? "" : ", ") + name;
            problems.push_back("\"" + joint + "\" is not a joint; allowed are " + allowed);
        } else if (!std::isfinite(angle) || std::abs(angle) > pi) {
            problems.push_back("\"" + joint + "\" must be between -180 and 180 degrees");
        } else {
            posture[joint] = angle;
        }
    }
    for (const auto& [joint, range] : spec.activeRanges) {
        if (!ranges.count(joint)) problems.push_back("\"" + joint + "\" has an active range but is not a joint");
        else if (!std::isfinite(range.min) || !std::isfinite(range.max) || range.min > range.max) problems.push_back("the active range of \"" + joint + "\" must be two angles, the lesser first");
    }
}

/// A bed section can take the shank away from the end of the thigh: the knee bridges it.
void bridgeKnees(Body& body, const BodyShape& shape) {
    constexpr double seen_m = 0.005;
    for (const Side side : {Side::left, Side::right}) {
        const SegmentId thigh{Segment::thigh, side};
        const Vec3 end(0, 0, -shape.thigh);
        const Vec3 start = body.X_WSegment.at(thigh).inverse() * body.X_WSegment.at({Segment::shank, side}).translation();
        if ((start - end).norm() > seen_m) body.solids.push_back({thigh, Solid::capsule(end, start, 0.97 * shape.kneeRadius)});
    }
}

}  // namespace

BodyMade makeBody(const PersonSpec& spec, const Support& support, const BodyData& data) {
    BodyMade made;
    const Resting& resting = support.resting;
    if (resting.posture == Resting::Posture::none) {
        made.problems.push_back("nobody can sit or lie on \"" + support.id + "\"");
        return made;
    }
    if (!std::isfinite(spec.cushion_m) || spec.cushion_m < 0 || spec.cushion_m > 0.5) {
        made.problems.push_back("the cushion must be between 0 and 500 mm thick");
        return made;
    }
    Body body;
    body.size = data.size(spec.body, made.problems);
    if (body.size.dimensions.empty()) return made;
    const auto shape = bodyShape(body.size, made.problems);
    if (!shape) return made;
    const bool sits = resting.posture == Resting::Posture::seated;
    auto rest = sits ? seated(*shape, resting, spec.cushion_m) : std::optional(lying(*shape, resting, spec.lying, presentTurn(support, resting.trunkGroup)));
    if (!rest) {
        made.problems.push_back("seat and back of \"" + support.id + "\" lie in one plane: nobody can sit there");
        return made;
    }
    takeTyped(rest->posture, spec, made.problems);

    body.name = spec.name;
    body.support = support.id;
    body.solids = shape->solids;
    body.sites = sitesOn(*shape);
    for (const auto& [id, X_SSegment] : poseBody(*shape, rest->posture, rest->X_SPelvis)) {
        std::string group = resting.trunkGroup;
        if (id.segment == Segment::pelvis || id.segment == Segment::thigh) group = resting.seatGroup;
        if (id.segment == Segment::shank || id.segment == Segment::foot) group = resting.legGroup;
        body.X_WSegment[id] = support.X_WS * groupPose_S(support, group) * X_SSegment;
        body.group[id] = group;
    }
    bridgeKnees(body, *shape);
    body.eyes_W = body.X_WSegment.at({Segment::head, Side::none}) * shape->eyes_Head;
    made.body = std::move(body);
    return made;
}

}  // namespace hither
