#include <catch2/catch.hpp>

#include "core/units/quantity.h"
#include "tests/unit/situation/support_samples.h"

using namespace support_samples;

namespace {

/// The turn about a line by Eigen's angle-axis, written with 4x4 matrices: T(pivot) R T(-pivot).
Eigen::Matrix4d turned(const MovingGroup& g, double value) {
    const Eigen::Affine3d move = g.slides ? Eigen::Affine3d(Eigen::Translation3d(value * g.axis))
                                          : Eigen::Affine3d(Eigen::Translation3d(g.pivot) * Eigen::AngleAxisd(value, g.axis) * Eigen::Translation3d(-g.pivot));
    return move.matrix();
}

Eigen::Matrix4d expected(const Support& support, const MovingGroup& g, const GroupSettings& settings) {
    const auto at = settings.find({support.id, g.id});
    const Eigen::Matrix4d own = turned(g, at == settings.end() ? g.value : at->second);
    return g.parent.empty() ? own : Eigen::Matrix4d(expected(support, *support.group(g.parent), settings) * own);
}

}  // namespace

TEST_CASE("groups move by the exact rotation inside their parents, at the least, zero and the most", "[support]") {
    std::size_t looked = 0;
    for (const SupportSpec& spec : samples()) {
        const SupportMade made = makeSupport(spec);
        REQUIRE(made.support);
        const Support& support = *made.support;
        CHECK(groupPose_S(support, "").isApprox(Pose::Identity()));
        for (const double share : {0.0, 0.37, 1.0}) {
            GroupSettings settings;
            for (const MovingGroup& g : support.groups) settings[{support.id, g.id}] = g.min + share * (g.max - g.min);
            for (const MovingGroup& g : support.groups) {
                const Pose X = groupPose_S(support, g.id, settings);
                INFO(described(spec) << ": " << g.id);
                CHECK((X.matrix() - expected(support, g, settings)).norm() < 1e-13);
                ++looked;
                for (const SupportSolid& s : support.solids)
                    if (s.group == g.id && !s.solid.bounds(X).sizes().allFinite()) FAIL_CHECK("not finite: " << s.name);
            }
        }
    }
    CHECK(looked > 1000);
}

TEST_CASE("positive settings move the way their names say", "[support]") {
    const auto at = [](const char* kind, const std::string& group, double value) {
        const SupportMade made = makeSupport(standard(kind));
        REQUIRE(made.support);
        return std::pair(*made.support, GroupSettings{{{"s", group}, value}});
    };
    {   // Back section: the head end rises; the side rail stays.
        const auto [bed, settings] = at("bed", "back", radians(45));
        const Vec3 head(-0.8, 0, 0.6);
        const Vec3 raised = groupPose_S(bed, "back", settings) * head;
        CHECK(raised.z() - head.z() > 0.5);
        CHECK(bed.attachment("side_rail_top_left")->group.empty());
        CHECK(bed.attachment("sheet_edge_back_left")->group == "back");
    }
    {   // Knees: the thigh section rises at its foot end, the lower leg section goes down from there.
        const auto [bed, settings] = at("bed", "thigh", radians(30));
        const Vec3 knee(0.52, 0, 0.6);
        CHECK((groupPose_S(bed, "thigh", settings) * knee).z() > 0.7);
        GroupSettings both = settings;
        both[{"s", "lower_leg"}] = radians(30);
        const Vec3 foot(1.2, 0, 0.6);
        // Folded back by as much, the lower leg section is level again, at the height of its hinge.
        const double hinge = (groupPose_S(bed, "thigh", both) * Vec3(0.52, 0, 0.46)).z();
        CHECK((groupPose_S(bed, "lower_leg", both) * foot).z() == Approx(hinge + 0.14));
    }
    {   // Tilt: the knees rise, the head goes back and down. Recline inside tilt leaves the seat.
        const auto [chair, settings] = at("chair-tilt", "tilt", radians(30));
        CHECK((groupPose_S(chair, "tilt", settings) * Vec3(0.43, 0, 0.5)).z() > 0.55);
        CHECK((groupPose_S(chair, "recline", settings) * Vec3(-0.1, 0, 1.1)).x() < -0.3);
        CHECK(chair.group("recline")->parent == "tilt");
        CHECK(chair.attachment("armrest_tube_right")->group == "tilt");
        CHECK(chair.attachment("back_cane_right")->group == "recline");
        CHECK(chair.attachment("base_rail_right")->group.empty());
    }
    {   // Foot rests rise forward.
        const auto [chair, settings] = at("chair-tilt", "legrest", radians(60));
        const Vec3 toe(0.6, 0, 0.15);
        const Vec3 raised = groupPose_S(chair, "legrest", settings) * toe;
        CHECK(raised.z() > 0.3);
        CHECK(raised.x() > toe.x());
    }
    {
        const auto [pole, settings] = at("pole", "extension", 0.25);
        CHECK((groupPose_S(pole, "extension", settings) * Vec3(0, 0, 1.1)).z() == Approx(1.35));
    }
}
