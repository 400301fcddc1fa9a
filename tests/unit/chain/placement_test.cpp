#include <catch2/catch.hpp>

#include <random>

#include "core/chain/placement.h"
#include "core/geometry/distance.h"
#include "tests/support/example_mounts.h"

using namespace hither;
using namespace hither::test;

TEST_CASE("the steps of a placement lead to the grip's frame, on every attachment, in a moving group", "[chain]") {
    ExampleMounts example;
    std::mt19937 random(3);
    std::uniform_real_distribution<double> metres(-0.1, 0.4), angle(-4, 4);
    for (const char* id : {"rail", "square", "back rail", "edge", "face", "cloth"}) {
        for (int n = 0; n < 20; ++n) {
            Mount mount = ExampleMounts::mount(id, {"clamp"});
            mount.place = {metres(random), angle(random), n % 2 == 1, metres(random), metres(random), angle(random)};
            const ChainMade made = example.make(mount);
            REQUIRE(made.chain);
            const ChainPoses poses = forward(*made.chain, made.q);
            const Attachment& at = example.attachment(id);
            const Pose expected = groupPose_W(example.situation, "chair", at.group) * gripFrame(at, mount.place);
            const Pose& X = poses.X_WF[static_cast<std::size_t>(made.chain->partFrame[0])];
            CHECK((X.matrix() - expected.matrix()).norm() < 1e-14);
        }
    }
}

TEST_CASE("a grip's slide stops half its width from the ends", "[chain]") {
    ExampleMounts example;
    const ChainMade rail = example.make(ExampleMounts::mount("rail", {"clamp"}));
    REQUIRE(rail.chain);
    const double length = example.attachment("rail").length_m();
    CHECK(rail.chain->freedoms[0].of == Freedom::Of::along);
    CHECK(rail.chain->freedoms[0].min == Approx(0.02));
    CHECK(rail.chain->freedoms[0].max == Approx(length - 0.02));
    CHECK(rail.chain->freedoms[1].of == Freedom::Of::around);
    CHECK(rail.chain->freedoms[1].fullTurn);
    CHECK_FALSE(rail.chain->freedoms[1].step);

    example.attachment("rail").b = example.attachment("rail").a + Vec3(0.01, 0, 0);
    const ChainMade narrow = example.make(ExampleMounts::mount("rail", {"clamp"}));
    REQUIRE(narrow.chain);
    CHECK(narrow.chain->freedoms[0].min == Approx(0.005));
    CHECK(narrow.chain->freedoms[0].max == Approx(0.005));

    const ChainMade square = example.make(ExampleMounts::mount("square", {"clamp"}));
    CHECK(square.chain->freedoms[1].step == Approx(pi / 2));

    const ChainMade face = example.make(ExampleMounts::mount("face", {"clamp"}));
    CHECK(face.chain->freedoms[0].max == Approx((0.3 - 0.06) / 2));
    CHECK(face.chain->freedoms[1].min == Approx(-(0.2 - 0.06) / 2));
    CHECK(face.chain->freedoms[2].of == Freedom::Of::yaw);
}

TEST_CASE("an attachment without a length or a direction is a problem, not a chain", "[chain]") {
    for (const char* id : {"rail", "edge", "face", "cloth"}) {
        ExampleMounts example;
        Attachment& at = example.attachment(id);
        if (at.kind == AttachmentKind::rail) at.reference = 2 * (at.b - at.a);
        else at.up = Vec3::Zero();
        const ChainMade made = example.make(ExampleMounts::mount(id, {"clamp"}));
        CHECK_FALSE(made.chain);
        CHECK(made.problem.find(id) != std::string::npos);
    }
    ExampleMounts example;
    example.attachment("rail").b = example.attachment("rail").a;
    CHECK_FALSE(example.make(ExampleMounts::mount("rail", {"clamp"})).chain);
}

TEST_CASE("among rail grips the one that takes the tube is chosen, else the first", "[chain]") {
    ExampleMounts example;
    const Part& clamp = *example.find("clamp");
    CHECK(gripFor(clamp, example.attachment("rail")) == &clamp.grips[1]);
    example.attachment("rail").outside_m.value = 0.012;
    CHECK(gripFor(clamp, example.attachment("rail")) == &clamp.grips[0]);
    example.attachment("rail").outside_m.value = 0.020;  // exactly at the first one's end
    CHECK(gripFor(clamp, example.attachment("rail")) == &clamp.grips[0]);
    example.attachment("rail").outside_m.value = 0.050;
    CHECK(gripFor(clamp, example.attachment("rail")) == &clamp.grips[0]);
    example.attachment("square").outside_m.value = 0.0195;  // both ranges, but only the second takes square tube
    CHECK(gripFor(clamp, example.attachment("square")) == &clamp.grips[1]);
    CHECK(gripFor(clamp, example.attachment("edge")) == &clamp.grips[2]);
    CHECK(gripFor(*example.find("arm"), example.attachment("rail")) == nullptr);
}

TEST_CASE("jaws clasp the tube, the board, the cloth and lie on the face", "[chain]") {
    ExampleMounts example;
    const Part& clamp = *example.find("clamp");
    const auto jawsOn = [&](const char* id) { return jawSolids(*gripFor(clamp, example.attachment(id)), example.attachment(id)); };
    const auto holds = [](const Solid& solid, const Vec3& p) { return distance(solid, Solid::sphere(p, 1e-9)).distance <= 1e-6; };

    const double r = 0.0222 / 2;
    const std::vector<Solid> sleeve = jawsOn("rail");
    REQUIRE(sleeve.size() == 1);
    for (double turn = 0; turn < 6.2; turn += 0.5) {
        for (double x : {-0.019, 0.019}) CHECK(holds(sleeve[0], Vec3(x, (r + 0.007) * std::sin(turn), -r + (r + 0.007) * std::cos(turn))));
        CHECK_FALSE(holds(sleeve[0], Vec3(0, (r + 0.009) * std::sin(turn), -r + (r + 0.009) * std::cos(turn))));
    }
    CHECK_FALSE(holds(sleeve[0], Vec3(0.021, 0, -r)));
    const std::vector<Solid> block = jawsOn("square");
    CHECK(holds(block[0], Vec3(0, r + 0.007, 0.007)));

    // The board fills y > 0, z from -18 mm to 0: the plates touch it, none cuts into it.
    const Solid board = Solid::box(translation(Vec3(0, 0.15, -0.009)), Vec3(0.3, 0.15, 0.009));
    const std::vector<Solid> plates = jawsOn("edge");
    REQUIRE(plates.size() == 3);
    for (const Solid& plate : plates) CHECK(distance(plate, board).distance == Approx(0).margin(1e-9));

    const Solid under = Solid::box(translation(Vec3(0, 0, -0.05)), Vec3(0.15, 0.1, 0.05));
    const std::vector<Solid> pad = jawsOn("face");
    REQUIRE(pad.size() == 1);
    CHECK(distance(pad[0], under).distance == Approx(0).margin(1e-9));
    CHECK(jawsOn("cloth").size() == 2);
}
