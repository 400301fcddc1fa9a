#pragma once
#include <map>
#include <optional>
#include <string>
#include <vector>

#include "core/geometry/distance.h"
#include "core/situation/body_table.h"
#include "core/situation/support.h"

namespace hither {

enum class Side { none, left, right };
/// Body segments, each with its own frame: origin at the proximal joint (pelvis: middle between the
/// hips), z from distal to proximal end (up when standing), x forward, y left, standing with arms
/// hanging and palms inward.
enum class Segment { pelvis, trunk, neck, head, upperArm, forearm, hand, thigh, shank, foot };
struct SegmentId {
    Segment segment = Segment::trunk; Side side = Side::none;
    auto operator<=>(const SegmentId&) const = default;
};
std::string word(SegmentId id);                               ///< "forearm_right"
std::optional<SegmentId> segmentFromWord(const std::string&);

/// Joint angles of a posture, rad, by name with side: "shoulder_flexion_right",
/// "shoulder_abduction_left", "shoulder_rotation_right", "elbow_flexion_right",
/// "forearm_pronation_right", "wrist_flexion_right", "wrist_deviation_right", "neck_flexion",
/// "neck_bend", "neck_rotation", "hip_flexion_left", "hip_abduction_left", "hip_rotation_left",
/// "knee_flexion_left", "ankle_flexion_left". Positive: flexion, abduction, outward rotation,
/// pronation, radial deviation, bend to the right and turn to the left for the neck, ankle upward.
using Posture = std::map<std::string, double>;
struct JointRange {
    double min = 0, max = 0;
    std::string source;
    bool operator==(const JointRange&) const = default;
};
/// Every joint name with the published range of motion (rad).
const std::map<std::string, JointRange>& publishedRanges();

/// What is known of the person: pseudonym or initials only.
struct PersonSpec {
    std::string name;
    BodySpec body;
    std::string on;                    ///< support id
    enum class Lying { onBack, onLeft, onRight } lying = Lying::onBack;  ///< only on a bed
    Posture posture;                   ///< angles that differ from the resting posture of that support
    std::map<std::string, JointRange> activeRanges;  ///< joints whose active range is not the published one
    double cushion_m = 0.05;           ///< seat cushion under the person, m
    bool operator==(const PersonSpec&) const = default;
};

struct BodySolid { SegmentId segment; Solid solid; };  ///< in the segment's frame
/// A place on the body at which people operate switches, with the usual movement there.
struct ControlSite {
    std::string id;                    ///< "elbow_right", "head_left", "knee_inner_left", "index_right" ...
    std::string name;
    SegmentId segment;
    Vec3 point;                        ///< segment frame, on the body's surface
    Vec3 movement;                     ///< segment frame, unit: the way the body part moves when it operates
    double usual_m = 0.03;             ///< usual length of that movement
};

/// The person's body in the present posture on the support.
struct Body {
    std::string name;
    BodySize size;
    std::map<SegmentId, Pose> X_WSegment;             ///< at the support's present settings
    std::map<SegmentId, std::string> group;           ///< moving group of the support that carries the segment
    std::string support;
    std::vector<BodySolid> solids;
    std::vector<ControlSite> sites;
    Vec3 eyes_W = Vec3::Zero();

    const ControlSite* site(const std::string& id) const;
};

/// Every control site id with its name, without needing a body.
const std::vector<std::pair<std::string, std::string>>& controlSites();

struct BodyMade { std::optional<Body> body; std::vector<std::string> problems; };
/// Sits or lays the person on the support (its present settings) and poses the limbs.
BodyMade makeBody(const PersonSpec& spec, const Support& support, const BodyData& data);

/// First point of the body hit by a ray: for picking a site.
struct BodyPick { SegmentId segment; Vec3 point_segment, normal_segment, point_W; };
std::optional<BodyPick> pickOnBody(const Body& body, const Ray& ray_W);

}  // namespace hither
