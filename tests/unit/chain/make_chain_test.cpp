#include <catch2/catch.hpp>

#include <limits>

#include "tests/support/chain_builder.h"
#include "tests/support/example_mounts.h"

using namespace hither;
using namespace hither::test;

namespace {

std::vector<const Freedom*> freedomsOf(const Chain& chain, Freedom::Of of) {
    std::vector<const Freedom*> found;
    for (const Freedom& f : chain.freedoms) if (f.of == of) found.push_back(&f);
    return found;
}
const Freedom* joint(const Chain& chain, const std::string& name, int component = 0) {
    for (const Freedom& f : chain.freedoms) if (f.of == Freedom::Of::joint && f.joint == name && f.component == component) return &f;
    return nullptr;
}

}  // namespace

TEST_CASE("a mount becomes its placement, mates and elements in order", "[chain]") {
    const ExampleMounts example;
    const ChainMade made = example.make(ExampleMounts::mount("rail", {"clamp", "arm", "back", "button"}));
    REQUIRE(made.chain);
    const Chain& chain = *made.chain;
    CHECK(chain.support == "chair");
    CHECK(chain.attachment == "rail");
    CHECK(chain.parts.size() == 4);
    CHECK(chain.partFrame.size() == 4);
    REQUIRE(chain.mates.size() == 3);
    CHECK(chain.mates[0].base == 1);  // the thread, not the shoe
    CHECK(chain.mates[0].mate.goesTogether());
    CHECK(chain.mates[2].part == 3);
    CHECK(chain.freedomCount() == 2 + 1 + 3 + 1 + 3 + 1 + 1);
    CHECK(made.q.size() == chain.freedomCount());
    REQUIRE(chain.discs.size() == 2);
    CHECK(chain.discs[0].radius == Approx(radians(80)));
    REQUIRE(chain.grip);
    CHECK(std::get<RailGrip>(*chain.grip).width_m == 0.04);
    REQUIRE(chain.face);
    CHECK((chain.operatingAxis - Vec3(0, 0.6, -0.8)).norm() < 1e-15);
    // Home: zero, or the nearest value within the range.
    for (int i = 0; i < chain.freedomCount(); ++i) {
        const bool elbow = chain.freedoms[static_cast<std::size_t>(i)].joint == "elbow";
        CHECK(made.q[i] == (elbow ? Approx(radians(10)) : Approx(0)));
    }
    // All but the jaws' lengths along z at home, with the elbow turned by 10 degrees about y.
    const ChainPoses poses = forward(chain, made.q);
    const Pose X_Grip = poses.X_WF[static_cast<std::size_t>(chain.partFrame[0])];
    const Vec3 face = X_Grip.inverse() * Vec3(poses.last().translation());
    const double beyond = 0.15 + 0.006 + 0.02;
    CHECK((face - Vec3(beyond * std::sin(radians(10)), 0, 0.18 + beyond * std::cos(radians(10)))).norm() < 1e-14);
}

TEST_CASE("masses and solids ride in the right frames", "[chain]") {
    const ExampleMounts example;
    const ChainMade made = example.make(ExampleMounts::mount("rail", {"clamp", "neck", "back", "button"}));
    REQUIRE(made.chain);
    const Chain& chain = *made.chain;
    const ChainPoses poses = forward(chain, made.q);
    const Pose X_Grip = poses.X_WF[static_cast<std::size_t>(chain.partFrame[0])];
    REQUIRE(chain.masses.size() == 4);
    const double heights[] = {0.015, 0.18, 0.333, 0.346};  // clamp's middle, the neck's, the back's, the button's
    double total = 0;
    for (std::size_t i = 0; i < 4; ++i) {
        const Vec3 at = X_Grip.inverse() * (poses.X_WF[static_cast<std::size_t>(chain.masses[i].frame)] * chain.masses[i].at);
        CHECK((at - Vec3(0, 0, heights[i])).norm() < 1e-12);
        CHECK(chain.masses[i].part == static_cast<int>(i));
        total += *chain.masses[i].kg.value;
    }
    CHECK(total == Approx(0.1 + 0.2 + 0.1 + 0.05));
    REQUIRE(chain.bends.size() == 3);
    const std::vector<PlacedSolid> placed = placedSolids(chain, made.q, poses);
    CHECK(placed.front().jaw);
    CHECK(std::count_if(placed.begin(), placed.end(), [](const PlacedSolid& s) { return s.jaw; }) == 1);
    CHECK(placed.size() == 1 + 3 + 3);  // jaw, three rigid pieces, three straight arcs
}

TEST_CASE("which mates leave a turn, and in which steps", "[chain]") {
    const ExampleMounts example;
    const auto clockings = [&example](std::initializer_list<const char*> ids) {
        const ChainMade made = example.make(ExampleMounts::mount("rail", ids));
        REQUIRE(made.chain);
        std::vector<Freedom> found;
        for (const Freedom* f : freedomsOf(*made.chain, Freedom::Of::clocking)) found.push_back(*f);
        return found;
    };
    const std::vector<Freedom> threads = clockings({"clamp", "post"});
    REQUIRE(threads.size() == 1);
    CHECK(threads[0].fullTurn);
    CHECK_FALSE(threads[0].step);
    CHECK(threads[0].part == 1);
    const std::vector<Freedom> bolts = clockings({"clamp", "back", "button"});
    REQUIRE(bolts.size() == 2);
    REQUIRE(bolts[1].step);
    CHECK(*bolts[1].step == Approx(pi / 2));  // two screws in four holes
    CHECK(clockings({"clamp", "shoe", "arm"}).size() == 1);         // the shoe goes in one way
    CHECK(clockings({"clamp", "wrong"}).size() == 1);               // threads that differ still turn
    CHECK(clockings({"clamp", "wrong", "button"}).size() == 2);     // a pad sticks at any angle
    CHECK(clockings({"clamp", "wrong", "neck"}).size() == 1);       // pad on thread: no mate, no turn
}

TEST_CASE("ports that do not mate still make a chain that says so", "[chain]") {
    const ExampleMounts example;
    const ChainMade made = example.make(ExampleMounts::mount("rail", {"clamp", "wrong", "neck", "clamp"}));
    REQUIRE(made.chain);
    CHECK(made.chain->mates[0].mate.fault == MateFault::threadDiffers);
    CHECK(made.chain->mates[1].mate.fault == MateFault::interfaceDiffers);
    CHECK(made.chain->mates[2].base == -1);
    CHECK_FALSE(made.chain->mates[2].mate.goesTogether());
}

TEST_CASE("what cannot be a chain is told in words with the part's number", "[chain]") {
    const ExampleMounts example;
    const auto refused = [&example](const Mount& mount, int part, const std::string& says) {
        const ChainMade made = example.make(mount);
        CHECK_FALSE(made.chain);
        CHECK(made.part == part);
        INFO(made.problem);
        CHECK(made.problem.find(says) != std::string::npos);
    };
    Mount nowhere = ExampleMounts::mount("rail", {"clamp"});
    nowhere.support = "bed";
    refused(nowhere, -1, "no support \"bed\"");
    nowhere.support = "";
    refused(nowhere, -1, "fixed to nothing");
    refused(ExampleMounts::mount("rope", {"clamp"}), -1, "no attachment \"rope\"");
    refused(ExampleMounts::mount("", {"clamp"}), -1, "not fixed to any");
    refused(ExampleMounts::mount("rail", {}), -1, "no parts");
    refused(ExampleMounts::mount("rail", {"clamp", "rope"}), 1, "no part \"rope\"");
    refused(ExampleMounts::mount("rail", {"arm"}), 0, "no grip for a rail");
    refused(ExampleMounts::mount("rail", {"clamp", "button", "back"}), 1, "must come last");
    Mount many = ExampleMounts::mount("rail", {"clamp"});
    many.parts.resize(mostPartsInMount + 1, many.parts.front());
    refused(many, -1, "at most 64");

    Mount set = ExampleMounts::mount("rail", {"clamp", "arm"});
    set.parts[1].joints["elbow"].q = {0.1, 0.2};
    refused(set, 1, "takes 1 value, 2 are given");
    set.parts[1].joints.clear();
    set.parts[1].joints["knee"].q = {0.1};
    refused(set, 1, "no joint \"knee\"");
    set.parts[1].joints.clear();
    set.parts[1].joints["elbow"].q = {std::numeric_limits<double>::quiet_NaN()};
    refused(set, 1, "no number");
    set.parts[1].joints.clear();
    set.parts[1].reversed = true;
    refused(set, 1, "cannot be turned end for end");
    set.parts[1].reversed = false;
    set.place.along_m = std::numeric_limits<double>::infinity();
    refused(set, 0, "no number");
}

TEST_CASE("a part turned end for end mates by its other end", "[chain]") {
    const ExampleMounts example;
    Mount mount = ExampleMounts::mount("rail", {"clamp", "neck"});
    mount.parts[1].reversed = true;
    const ChainMade made = example.make(mount);
    REQUIRE(made.chain);
    CHECK(made.chain->mates[0].mate.fault == MateFault::genderSame);  // stud on stud
    CHECK(made.chain->parts[1]->outlet->gender == Gender::female);
}

TEST_CASE("kept settings keep their freedoms", "[chain]") {
    const ExampleMounts example;
    Mount mount = ExampleMounts::mount("rail", {"clamp", "arm"});
    mount.parts[1].joints["shoulder"].kept = true;
    const ChainMade one = example.make(mount);
    REQUIRE(one.chain);
    for (const Freedom& f : one.chain->freedoms) CHECK(f.kept == (f.joint == "shoulder"));
    mount.parts[1].joints.clear();
    mount.placeKept = true;
    mount.parts[1].clockingKept = true;
    const ChainMade two = example.make(mount);
    for (const Freedom& f : two.chain->freedoms) CHECK(f.kept == (f.of != Freedom::Of::joint));
}

TEST_CASE("one knob locks its whole group: keeping one of its joints keeps them all", "[chain]") {
    ExampleMounts example;
    Part arm = *example.parts.at("arm");
    std::get<BallElement>(arm.elements[0].what).joint.lockGroup = "knob";
    std::get<HingeElement>(arm.elements[2].what).joint.lockGroup = "knob";
    example.parts["arm"] = std::make_shared<const Part>(arm);
    Mount mount = ExampleMounts::mount("rail", {"clamp", "arm"});
    mount.parts[1].joints["elbow"].kept = true;
    const ChainMade made = example.make(mount);
    REQUIRE(made.chain);
    for (const Freedom& f : made.chain->freedoms) CHECK(f.kept == (f.joint == "elbow" || f.joint == "shoulder"));
}

TEST_CASE("values written into a mount and read again are the same", "[chain]") {
    const ExampleMounts example;
    std::mt19937 random(9);
    for (const char* attachment : {"rail", "square", "edge", "face", "cloth"}) {
        for (int n = 0; n < 10; ++n) {
            Mount mount = ExampleMounts::mount(attachment, {"clamp", "arm", "post", "neck", "back", "button"});
            mount.place.fromBelow = n % 2 == 1;
            mount.parts[2].joints["tube"].kept = true;
            const ChainMade made = example.make(mount);
            REQUIRE(made.chain);
            const Eigen::VectorXd q = randomValues(*made.chain, random);
            const Mount written = withValues(mount, *made.chain, q);
            const ChainMade again = example.make(written);
            REQUIRE(again.chain);
            CHECK(again.q == q);
            CHECK(written.parts[2].joints.at("tube").kept);
            CHECK(written.place.fromBelow == mount.place.fromBelow);
            CHECK(withValues(written, *again.chain, again.q) == written);
        }
    }
}

TEST_CASE("ranges, detents and figures come from the part", "[chain]") {
    const ExampleMounts example;
    const ChainMade made = example.make(ExampleMounts::mount("rail", {"clamp", "post", "neck"}));
    REQUIRE(made.chain);
    const Freedom* tube = joint(*made.chain, "tube");
    REQUIRE(tube);
    CHECK_FALSE(tube->isAngle);
    CHECK(tube->min == 0.05);
    CHECK(tube->max == 0.15);
    CHECK(tube->step == 0.02);
    CHECK(joint(*made.chain, "swivel")->fullTurn);
    CHECK_FALSE(joint(*made.chain, "rosette")->fullTurn);
    CHECK(joint(*made.chain, "rosette")->step == Approx(radians(15)));
    const Freedom* bend = joint(*made.chain, "neck", 5);
    REQUIRE(bend);
    CHECK_FALSE(bend->isAngle);
    CHECK(made.chain->discs.back().radius == Approx(20));
}
