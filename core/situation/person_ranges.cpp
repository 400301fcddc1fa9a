#include "core/situation/person.h"
#include "core/units/quantity.h"

namespace hither {
namespace {

const char* const upperLimb = "AAOS, as tabulated in a goniometry textbook (F. A. Davis, Table A.1)";
const char* const lowerLimb = "a published sheet of normal ranges of motion (second source; the AAOS table for the leg was not at hand)";
const char* const knee = "AAOS, as quoted in a second source";
const char* const neckBend = "adult standards in ISRN 2012, article 751768, Table 8";
const char* const neckTurn = "a published examination sheet (second source)";

struct Row { const char* joint; double min_deg, max_deg; const char* source; };

/// Signs as at `Posture`: for instance shoulder flexion -60 is 60 degrees of extension, and wrist
/// deviation -30 is 30 degrees toward the little finger.
const Row bothSides[] = {
    {"shoulder_flexion", -60, 180, upperLimb},
    {"shoulder_abduction", 0, 180, upperLimb},
    {"shoulder_rotation", -70, 90, upperLimb},
    {"elbow_flexion", 0, 150, upperLimb},
    {"forearm_pronation", -80, 80, upperLimb},
    {"wrist_flexion", -70, 80, upperLimb},
    {"wrist_deviation", -30, 20, upperLimb},
    {"hip_flexion", -30, 125, lowerLimb},
    {"hip_abduction", -25, 45, lowerLimb},
    {"hip_rotation", -40, 60, lowerLimb},
    {"knee_flexion", 0, 135, knee},
    {"ankle_flexion", -45, 20, lowerLimb},
};
const Row middle[] = {
    {"neck_flexion", -45, 45, neckBend},
    {"neck_bend", -45, 45, neckBend},
    {"neck_rotation", -80, 80, neckTurn},
};

}  // namespace

const std::map<std::string, JointRange>& publishedRanges() {
    static const std::map<std::string, JointRange> ranges = [] {
        std::map<std::string, JointRange> all;
        const auto range = [](const Row& row) { return JointRange{radians(row.min_deg), radians(row.max_deg), row.source}; };
        for (const Row& row : bothSides)
            for (const char* side : {"_left", "_right"}) all[std::string(row.joint) + side] = range(row);
        for (const Row& row : middle) all[row.joint] = range(row);
        return all;
    }();
    return ranges;
}

}  // namespace hither
