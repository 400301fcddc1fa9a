#include <catch2/catch.hpp>

#include "core/checks/box_search.h"
#include "core/checks/carriers.h"
#include "fixture.h"

using namespace hither;
using namespace hither::test;

TEST_CASE("clearance to the support: meets, close, at the limit, misses, overlaps", "[clearance]") {
    Bench bench;
    bench.addMount("m", 0.5, {"clamp", "post", "button"});
    // The button is a disc of radius 30 mm about the x axis at z = 500 mm: its lowest line is z = 470 mm.
    const auto shelfAt = [&](double gap) {
        bench.support().solids.resize(1);
        bench.support().solids.push_back({"shelf", Solid::box(translation(Vec3(0.25, 0, 0.47 - gap - 0.01)), Vec3(0.2, 0.2, 0.01)), ""});
        return checkClearance(bench.setup, {});
    };
    CHECK(find(shelfAt(0.020), "clearance.support:m")->verdict == Verdict::meets);
    CHECK(*find(shelfAt(0.020), "clearance.support:m")->value == Approx(0.020).margin(1e-9));
    CHECK(find(shelfAt(0.0055), "clearance.support:m/2~stand/shelf")->verdict == Verdict::close);
    CHECK(find(shelfAt(0.005), "clearance.support:m/2~stand/shelf")->verdict == Verdict::close);
    CHECK(find(shelfAt(0.0049), "clearance.support:m/2~stand/shelf")->verdict == Verdict::misses);
    const std::vector<Finding> overlap = shelfAt(-0.003);
    const Finding* f = find(overlap, "clearance.support:m/2~stand/shelf");
    REQUIRE(f);
    CHECK(f->key == "clearance.overlaps");
    CHECK(*f->value == Approx(-0.003).margin(1e-9));
    CHECK(sentence(*f, UnitSystem::metric).find("overlap by 3.0 mm") != std::string::npos);
}

TEST_CASE("a clamp may touch the tube it holds but not another one, other parts may not touch it either", "[clearance]") {
    Bench bench;
    bench.addMount("m", 0.5, {"clamp", "post", "button"});
    CHECK(find(checkClearance(bench.setup, {}), "clearance.support:m")->verdict == Verdict::meets);
    bench.support().attachments[0].solids.clear();  // now the tube is no longer what it holds
    CHECK(find(checkClearance(bench.setup, {}), "clearance.support:m/0~stand/tube")->verdict == Verdict::misses);
}

TEST_CASE("the switch may touch the body part that operates it, and no other part may", "[clearance]") {
    Bench bench;
    bench.addMount("m", 0.5, {"clamp", "post", "button"});
    const SegmentId forearm{Segment::forearm, Side::right}, head{Segment::head, Side::none};
    Body body;
    body.support = "stand";
    body.X_WSegment[forearm] = Pose::Identity();
    body.X_WSegment[head] = Pose::Identity();
    // A ball of 40 mm that just touches the middle of the face.
    body.solids = {{forearm, Solid::sphere({0.2527 + 0.04, 0, 0.5}, 0.04)}};
    bench.setup.situation.body = body;
    bench.setup.situation.sites[0].segment = forearm;
    CHECK_FALSE(find(checkClearance(bench.setup, {}), "clearance.body:m/2"));
    // Pressed in by 12 mm where 10 mm is the site's tolerance: said.
    bench.setup.situation.body->solids[0].solid = Solid::sphere({0.2527 + 0.028, 0, 0.5}, 0.04);
    CHECK(find(checkClearance(bench.setup, {}), "clearance.body:m/2~body/forearm_right")->verdict == Verdict::misses);
    // The head is not the part that operates it.
    bench.setup.situation.body->solids = {{head, Solid::sphere({0.2527 + 0.045, 0, 0.5}, 0.04)}};
    CHECK(find(checkClearance(bench.setup, {}), "clearance.body:m/2~body/head")->verdict == Verdict::misses);
}

TEST_CASE("two mounts and keep-outs keep their margins", "[clearance]") {
    Bench bench;
    bench.addMount("m", 0.5, {"clamp", "post", "button"});
    bench.addMount("n", 0.563, {"clamp", "post", "button"});  // 60 mm discs, 63 mm apart: 3 mm between them
    std::vector<Finding> all = checkClearance(bench.setup, {});
    REQUIRE(find(all, "clearance.mount:m/2~n/2"));
    CHECK(*find(all, "clearance.mount:m/2~n/2")->value == Approx(0.003).margin(1e-9));
    CHECK_FALSE(find(all, "clearance.mount:n"));  // judged once
    KeepOut screen;
    screen.id = "sight";
    screen.solid = Solid::box(translation(Vec3(0.25, 0, 0.2)), Vec3(0.1, 0.1, 0.235));  // top at 435 mm
    screen.margin_m = 0.040;
    bench.setup.keepOuts = {screen};
    all = checkClearance(bench.setup, {});
    REQUIRE(find(all, "clearance.keep_out:m/2~keep_out/sight"));
    CHECK(*find(all, "clearance.keep_out:m/2~keep_out/sight")->value == Approx(0.035).margin(1e-9));
    CHECK(find(all, "clearance.keep_out:m/2~keep_out/sight")->verdict == Verdict::misses);
}

TEST_CASE("movement: the least gap over a turn is found between the ends, where no end shows it", "[movement]") {
    Bench bench;
    bench.addMount("m", 0.5, {"clamp", "post", "button"});
    // A rod carried by the turning part sweeps past the button: pivot at z = 0.5, y axis; a ball at 300 mm
    // from the pivot starts 30 degrees below the x axis and passes the button's level half way.
    bench.support().solids.push_back({"ball", Solid::sphere(Vec3(0.3 * std::cos(radians(-30.0)), 0, 0.5 + 0.3 * std::sin(radians(30.0))), 0.020), "turning"});
    const std::vector<Finding> all = checkMovement(bench.setup, {});
    const Finding* f = find(all, "movement.support:m");
    REQUIRE(f);
    // Independent: dense sampling of the same circle against the disc's face rim, worked in the plane.
    double least = 1.0;
    for (int i = 0; i <= 600000; ++i) {
        const double a = radians(30.0) - radians(60.0) * i / 600000.0;
        const double x = 0.3 * std::cos(a) - 0.2527, z = 0.3 * std::sin(a);
        const double dz = std::max(0.0, std::abs(z) - 0.03), dx = std::max(0.0, x);
        least = std::min(least, std::hypot(dx, dz) - 0.020);
    }
    CHECK(*f->value == Approx(least).margin(0.0005));
    CHECK(*f->value >= least - 1e-6);
    REQUIRE(f->at.size() == 1);
    CHECK(f->at[0].group == "turning");
    CHECK(f->at[0].value > radians(10));
    CHECK(f->at[0].value < radians(50));
}

TEST_CASE("movement: a site that goes with the turning part leaves a mount that does not", "[movement]") {
    Bench bench;
    bench.addMount("m", 0.5, {"clamp", "post", "button"});
    Site& site = bench.setup.situation.sites[0];
    CHECK_FALSE(find(checkMovement(bench.setup, {}), "movement.site:"));  // nothing moves either
    site.support = "stand";
    site.group = "turning";
    const std::vector<Finding> lost = checkMovement(bench.setup, {});
    const Finding* f = find(lost, "movement.site:m");
    REQUIRE(f);
    CHECK(f->verdict == Verdict::misses);
    // A chord: 2 r sin(30 deg) at 60 degrees, r = 252.7 mm.
    CHECK(*f->value == Approx(2 * 0.2527 * 0.5).margin(0.0006));
    CHECK(f->remedy);
    // A rail on the same part goes with it.
    bench.support().attachments[0].group = "turning";
    bench.rebuild();
    CHECK(find(checkMovement(bench.setup, {}), "movement.site:m")->verdict == Verdict::meets);
}

TEST_CASE("movement: what is judged is the distance then, not the shift from now", "[movement]") {
    // The site slides 7 mm along x; by hand: a switch 7 mm behind it ends 14 mm away, one 7 mm
    // ahead of it ends on it and is 7 mm away at the start. 10 mm are allowed.
    Bench bench;
    bench.support().groups = {{"sliding", "sliding part", "", Vec3::Zero(), Vec3::UnitX(), true, 0.0, 0.007, 0.0}};
    bench.addMount("m", 0.5, {"clamp", "post", "button"});
    Site& site = bench.setup.situation.sites[0];
    site.support = "stand";
    site.group = "sliding";
    const auto from = [&](double offset) {
        site.p_W = Vec3(0.2527 + offset, 0, 0.5);
        return *find(checkMovement(bench.setup, {}), "movement.site:m");
    };
    CHECK(from(0.007).verdict == Verdict::misses);
    CHECK(*from(0.007).value == Approx(0.014).margin(1e-9));
    CHECK(from(-0.007).verdict == Verdict::meets);
    CHECK(*from(-0.007).value == Approx(0.007).margin(1e-9));
    // A touchless switch answers along its line: the slide lies in it.
    bench.parts["button"].face->action = SwitchFace::Action::sense;
    bench.parts["button"].face->sensingRange_m = measured(0.02);
    bench.rebuild();
    CHECK(*from(0.003).value == Approx(0.0).margin(0.0005));
}

TEST_CASE("the box search certifies its minimum on functions of known rate", "[movement]") {
    const auto f = [](const std::vector<double>& x, double) { return std::sin(7 * x[0]) + 0.5 * std::cos(11 * x[1]) + 0.3 * x[0]; };
    const BoxMinimum found = leastOverBox(f, {-1, -1}, {1, 1}, {7.3, 5.5}, {0, 0}, 1e-3, 1e9, 2000000);
    double dense = 1e9;
    for (int i = 0; i <= 2000; ++i) for (int j = 0; j <= 2000; ++j) dense = std::min(dense, f({-1 + i / 1000.0, -1 + j / 1000.0}, 0));
    CHECK(found.certified);
    CHECK(found.value <= dense + 1e-3);
    CHECK(found.lowerBound <= dense);
    CHECK(found.value - found.lowerBound <= 1e-3 + 1e-12);
    // A function that says no more than "at least enough": the same minimum, at a place that attains it.
    const auto lazy = [&](const std::vector<double>& x, double enough) { return std::min(f(x, 0), enough); };
    const BoxMinimum same = leastOverBox(lazy, {-1, -1}, {1, 1}, {7.3, 5.5}, {0, 0}, 1e-2, 1e9, 2000000);
    CHECK(same.value == Approx(f(same.at, 0)).margin(1e-12));
    CHECK(same.value <= dense + 1e-2);
    // Too few looks: it says so and its bound still holds.
    const BoxMinimum stopped = leastOverBox(f, {-1, -1}, {1, 1}, {7.3, 5.5}, {0, 0}, 1e-9, 1e9, 50);
    CHECK_FALSE(stopped.certified);
    CHECK(stopped.lowerBound <= dense);
}

TEST_CASE("the motion bound is never beaten by the motion", "[movement]") {
    Bench bench;
    Support& s = bench.support();
    s.groups = {{"tilt", "tilt", "", Vec3(0.1, 0, 0.4), Vec3::UnitY(), false, -0.5, 0.5, 0.1},
                {"recline", "recline", "tilt", Vec3(-0.2, 0, 0.6), Vec3::UnitY(), false, 0.0, 1.2, 0.3},
                {"slide", "slide", "recline", Vec3::Zero(), Vec3::UnitZ(), true, 0.0, 0.2, 0.05}};
    const Situation& situation = bench.setup.situation;
    const std::vector<CarrierStep> chain = carriers(situation, "stand", "slide");
    REQUIRE(chain.size() == 3);
    const Vec3 p(0.3, 0.2, 1.1);
    for (std::size_t k = 0; k < 3; ++k) {
        const double bound = motionBound(chain, k, {Solid::sphere(p, 1e-6)});
        double most = 0;
        for (int i = 0; i < 4000; ++i) {
            GroupSettings settings;
            for (std::size_t j = 0; j < 3; ++j)
                settings[{"stand", chain[j].group}] = chain[j].min + (chain[j].max - chain[j].min) * static_cast<double>((static_cast<std::size_t>(i + 1) * (7 * j + 3) * 2654435761u) % 1000) / 999.0;
            GroupSettings moved = settings;
            const double h = 1e-5;
            moved[{"stand", chain[k].group}] += h;
            most = std::max(most, (carriedFromNow_W(situation, "stand", "slide", moved) * p - carriedFromNow_W(situation, "stand", "slide", settings) * p).norm() / h);
        }
        CHECK(most <= bound * (1 + 1e-6) + 1e-9);
        CHECK(most > 0.3 * bound);  // and it is no wild guess
    }
}
