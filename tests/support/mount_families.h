#pragma once
#include <string>
#include <vector>

#include "tests/support/chain_builder.h"

namespace hither::test {

struct Family { std::string name; Chain chain; };

/// Three families of mounts as the trade builds them, straight from steps: clamp on a rail, then the
/// carrier, then a switch back with a switch. Sizes are typical of generic gear (common practice, no source).
inline std::vector<Family> mountFamilies() {
    const auto clamp = [](ChainBuilder& b, double rail_m) -> ChainBuilder& {
        const Mat3 R = rotationFromRollPitchYaw(0.2, 0.1, 0.4);
        return b.fixed(pose(R, Vec3(-0.2, 0.28, 0.62))).slide(Vec3::UnitX(), 0.015, rail_m - 0.015).turn(Vec3::UnitX())
                .fixed(Vec3(0, 0, 0.0111)).fixed(Vec3(0, 0, 0.03));
    };
    const auto switchOnBack = [](ChainBuilder& b) -> ChainBuilder& {
        return b.turn(Vec3::UnitZ()).fixed(Vec3(0, 0, 0.008)).turn(Vec3::UnitZ()).fixed(Vec3(0, 0, 0.02));
    };
    std::vector<Family> families;
    {
        ChainBuilder b;
        clamp(b, 0.4).turn(Vec3::UnitZ()).fixed(Vec3(0, 0, 0.02)).ball(radians(50)).fixed(Vec3(0, 0, 0.14))
            .turn(Vec3::UnitX(), radians(-120), radians(120)).fixed(Vec3(0, 0, 0.14)).ball(radians(50)).fixed(Vec3(0, 0, 0.02));
        families.push_back({"clamp, single-lock arm, switch", switchOnBack(b).made()});
    }
    {
        ChainBuilder b;
        clamp(b, 0.4).turn(Vec3::UnitZ()).neck(0.4, 0.05);
        families.push_back({"clamp, gooseneck, switch", switchOnBack(b).made()});
    }
    {
        ChainBuilder b;
        clamp(b, 0.4).turn(Vec3::UnitZ()).fixed(Vec3(0, 0, 0.05)).turn(Vec3::UnitX(), radians(-90), radians(90)).fixed(Vec3(0, 0, 0.12))
            .turn(Vec3::UnitY(), radians(-90), radians(90)).fixed(Vec3(0, 0, 0.12)).ball(radians(45)).fixed(Vec3(0, 0, 0.1))
            .slide(Vec3::UnitZ(), 0, 0.2);
        families.push_back({"clamp, two hinges, ball, telescopic post, switch", switchOnBack(b).made()});
    }
    return families;
}

/// The nine-joint mount of the performance page: slide 0-0.4 m along x, a turn about it, 0.04 m, ball,
/// 0.18 m, hinge 0-180 degrees, 0.18 m, ball, 0.06 m.
inline Chain nineJointMount() {
    ChainBuilder b;
    b.slide(Vec3::UnitX(), 0, 0.4).turn(Vec3::UnitX()).fixed(Vec3(0, 0, 0.04)).ball(radians(45)).fixed(Vec3(0, 0, 0.18))
        .turn(Vec3::UnitY(), 0, pi).fixed(Vec3(0, 0, 0.18)).ball(radians(45)).fixed(Vec3(0, 0, 0.06));
    return b.made();
}

}  // namespace hither::test
