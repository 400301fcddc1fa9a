// Joint ranges against published tables: for the arm the AAOS column of Table A.1 of a goniometry
// textbook (F. A. Davis); for hip and ankle a published sheet of normal ranges; the knee 0-135 (AAOS,
// quoted in a second source); the neck 45/45/45 (ISRN 2012, article 751768, Table 8) and 80 each way
// (a published examination sheet). Degrees.
#include <catch2/catch.hpp>

#include <string>

#include "core/situation/person.h"
#include "core/units/quantity.h"

using namespace hither;

TEST_CASE("published ranges of motion", "[ranges]") {
    struct Row { const char* joint; double min, max; const char* source; };
    const Row rows[] = {
        {"shoulder_flexion", -60, 180, "AAOS"},   // extension 60, flexion 180
        {"shoulder_abduction", 0, 180, "AAOS"},   // abduction 180
        {"shoulder_rotation", -70, 90, "AAOS"},   // medial 70, lateral 90
        {"elbow_flexion", 0, 150, "AAOS"},        // extension 0, flexion 150
        {"forearm_pronation", -80, 80, "AAOS"},   // supination 80, pronation 80
        {"wrist_flexion", -70, 80, "AAOS"},       // extension 70, flexion 80
        {"wrist_deviation", -30, 20, "AAOS"},     // ulnar 30, radial 20
        {"hip_flexion", -30, 125, "second source"},
        {"hip_abduction", -25, 45, "second source"},
        {"hip_rotation", -40, 60, "second source"},
        {"knee_flexion", 0, 135, "AAOS"},
        {"ankle_flexion", -45, 20, "second source"},
    };
    const auto& ranges = publishedRanges();
    for (const Row& row : rows)
        for (const char* side : {"_left", "_right"}) {
            INFO(row.joint << side);
            const auto found = ranges.find(std::string(row.joint) + side);
            REQUIRE(found != ranges.end());
            CHECK(degrees(found->second.min) == Approx(row.min));
            CHECK(degrees(found->second.max) == Approx(row.max));
            CHECK(found->second.source.find(row.source) != std::string::npos);
        }
    for (const Row& row : {Row{"neck_flexion", -45, 45, "ISRN 2012"}, Row{"neck_bend", -45, 45, "ISRN 2012"}, Row{"neck_rotation", -80, 80, "second source"}}) {
        INFO(row.joint);
        const auto found = ranges.find(row.joint);
        REQUIRE(found != ranges.end());
        CHECK(degrees(found->second.min) == Approx(row.min));
        CHECK(degrees(found->second.max) == Approx(row.max));
        CHECK(found->second.source.find(row.source) != std::string::npos);
    }
    CHECK(ranges.size() == 2 * 12 + 3);
}
