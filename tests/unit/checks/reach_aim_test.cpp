#include <catch2/catch.hpp>

#include "fixture.h"

using namespace hither;
using namespace hither::test;

TEST_CASE("reach: the face against the site's tolerance", "[reach]") {
    Bench bench;
    bench.addMount("m", 0.5, {"clamp", "post", "button"});
    const auto at = [&](double dx) {
        bench.setup.situation.sites[0].p_W = Vec3(0.2527 + dx, 0, 0.5);
        return *find(checkReach(bench.setup, {}), "reach.site:");
    };
    CHECK(at(0).verdict == Verdict::meets);
    CHECK(*at(0.004).value == Approx(0.004).margin(1e-12));
    CHECK(at(0.008).verdict == Verdict::meets);
    CHECK(at(0.0085).verdict == Verdict::close);
    CHECK(at(0.010).verdict == Verdict::close);    // exactly at its limit passes
    CHECK(at(0.0101).verdict == Verdict::misses);
    CHECK(at(0.0101).remedy);
    bench.setup.mounts[0].mount.site.clear();
    CHECK(find(checkReach(bench.setup, {}), "reach.no_site:")->verdict == Verdict::unknown);
}

TEST_CASE("reach: a touchless switch answers anywhere within its zone", "[reach]") {
    Bench bench;
    bench.parts["button"].face->action = SwitchFace::Action::sense;
    bench.parts["button"].face->sensingRange_m = measured(0.03);
    bench.addMount("m", 0.5, {"clamp", "post", "button"});
    bench.setup.situation.sites[0].p_W = Vec3(0.2527 + 0.025, 0.004, 0.5);
    CHECK(*find(checkReach(bench.setup, {}), "reach.site:")->value == Approx(0.004).margin(1e-12));
    bench.setup.situation.sites[0].p_W = Vec3(0.2527 + 0.035, 0, 0.5);
    CHECK(*find(checkReach(bench.setup, {}), "reach.site:")->value == Approx(0.005).margin(1e-12));
}

TEST_CASE("reach: a joint outside its range misses, at its end is close, exactly at the end is inside", "[reach]") {
    Bench bench;
    bench.addMount("m", 0.5, {"clamp", "hinge", "post", "button"});
    const auto hingeAt = [&](double deg) {
        bench.setup.mounts[0].mount.parts[1].joints["hinge"] = {{radians(deg)}, false};
        bench.rebuild();
        return checkReach(bench.setup, {});
    };
    CHECK_FALSE(find(hingeAt(0), "reach.range:"));
    CHECK(find(hingeAt(0), "reach.range_end:")->verdict == Verdict::meets);
    CHECK_FALSE(find(hingeAt(90), "reach.range:"));
    CHECK(find(hingeAt(90), "reach.range_end:")->verdict == Verdict::close);
    REQUIRE(find(hingeAt(95), "reach.range:"));
    CHECK(find(hingeAt(95), "reach.range:")->verdict == Verdict::misses);
    CHECK(*find(hingeAt(95), "reach.range:")->limit == Approx(radians(90)));
    CHECK(*find(hingeAt(-95), "reach.range:")->limit == Approx(radians(-90)));
}

TEST_CASE("reach: a joint between its clicks is said, with the nearest click", "[reach]") {
    Bench bench;
    std::get<HingeElement>(bench.parts["hinge"].elements[0].what).detent = radians(12);
    bench.addMount("m", 0.5, {"clamp", "hinge", "post", "button"});
    bench.setup.mounts[0].mount.parts[1].joints["hinge"] = {{radians(31)}, false};
    bench.rebuild();
    const std::vector<Finding> all = checkReach(bench.setup, {});
    REQUIRE(find(all, "reach.detent:"));
    CHECK(*find(all, "reach.detent:")->limit == Approx(radians(36)));
    bench.setup.mounts[0].mount.parts[1].joints["hinge"] = {{radians(36)}, false};
    bench.rebuild();
    CHECK_FALSE(find(checkReach(bench.setup, {}), "reach.detent:"));
}

TEST_CASE("aim: the angle against the tighter tolerance, and the force that arrives", "[aim]") {
    Bench bench;
    bench.addMount("m", 0.5, {"clamp", "post", "button"});
    const auto turned = [&](double deg) {
        bench.setup.situation.sites[0].d_W = -Vec3(std::cos(radians(deg)), std::sin(radians(deg)), 0);
        return *find(checkAim(bench.setup, {}), "aim:");
    };
    CHECK(turned(0).verdict == Verdict::meets);
    CHECK(*turned(12).value == Approx(radians(12)).margin(1e-12));
    CHECK(turned(16).verdict == Verdict::meets);
    CHECK(turned(17).verdict == Verdict::close);
    CHECK(turned(20).verdict == Verdict::close);   // exactly at the limit passes
    CHECK(turned(20.1).verdict == Verdict::misses);
    CHECK(turned(180).verdict == Verdict::misses); // facing away is not facing
    CHECK(turned(60).facts.at("arrives").first == Approx(2.5));
    CHECK(turned(180).facts.at("arrives").first == 0.0);
    bench.parts["button"].face->angleTolerance_rad = measured(radians(10));
    bench.rebuild();
    CHECK(*turned(0).limit == Approx(radians(10)));
    CHECK(turned(12).verdict == Verdict::misses);
}
