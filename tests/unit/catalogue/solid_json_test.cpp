#include <catch2/catch.hpp>

#include <nlohmann/json.hpp>

#include "core/catalogue/solid_json.h"

using namespace hither;
using nlohmann::json;

namespace {

Solid read(const char* text) {
    std::vector<PartProblem> problems;
    const auto solid = readSolid(json::parse(text), "solid", problems);
    for (const PartProblem& problem : problems) FAIL_CHECK(describe(problem));
    REQUIRE(solid);
    return *solid;
}
std::vector<PartProblem> wrong(const char* text) {
    std::vector<PartProblem> problems;
    CHECK_FALSE(readSolid(json::parse(text), "solid", problems));
    return problems;
}

}  // namespace

TEST_CASE("each kind of solid is read where it says it is", "[catalogue][solid-json]") {
    CHECK(read(R"({"sphere":{"centre_mm":[1,2,3],"radius_mm":4}})") == Solid::sphere(Vec3(0.001, 0.002, 0.003), 0.004));
    CHECK(read(R"({"capsule":{"from_mm":[0,0,0],"to_mm":[0,0,100],"radius_mm":5}})") == Solid::capsule(Vec3::Zero(), Vec3(0, 0, 0.1), 0.005));
    CHECK(read(R"({"cylinder":{"from_mm":[0,0,0],"to_mm":[0,80,0],"radius_mm":5}})") == Solid::cylinder(Vec3::Zero(), Vec3(0, 0.08, 0), 0.005));
    const Solid box = read(R"({"box":{"centre_mm":[10,0,0],"size_mm":[20,40,60],"turn_deg":[0,0,90]}})");
    CHECK(box.kind == SolidKind::box);
    CHECK(box.half == Vec3(0.01, 0.02, 0.03));
    // Turned by 90 degrees about z the 20 mm side lies along y.
    const Eigen::AlignedBox3d bounds = box.bounds(Pose::Identity());
    CHECK((bounds.sizes() - Vec3(0.04, 0.02, 0.06)).norm() < 1e-12);
    CHECK((bounds.center() - Vec3(0.01, 0, 0)).norm() < 1e-12);
    const Solid rounded = read(R"({"rounded_box":{"size_mm":[20,40,60],"radius_mm":10}})");
    CHECK(rounded.kind == SolidKind::roundedBox);
    CHECK(rounded.radius == 0.01);
    const Solid hull = read(R"({"hull":{"points_mm":[[0,0,0],[10,0,0],[0,10,0],[0,0,10],[1,1,1]]}})");
    REQUIRE(hull.hull);
    CHECK(hull.hull->points.size() == 4);  // the fifth is inside
}

TEST_CASE("a hull is the same however its corners are listed", "[catalogue][solid-json]") {
    CHECK(read(R"({"hull":{"points_mm":[[0,0,0],[10,0,0],[0,10,0],[0,0,10],[10,10,0]]}})") ==
          read(R"({"hull":{"points_mm":[[10,10,0],[0,0,10],[0,10,0],[10,0,0],[0,0,0],[0,0,0],[5,5,0.5]]}})"));
}

TEST_CASE("solids that cannot be are refused with the place", "[catalogue][solid-json]") {
    CHECK(wrong("[]").at(0).key == "solid");
    CHECK(wrong("{}").at(0).found == "no solid");
    CHECK(wrong(R"({"sphere":{"radius_mm":1},"box":{"size_mm":[1,1,1]}})").at(0).found == "several solids in one");
    CHECK(wrong(R"({"cone":{"radius_mm":1}})").at(0).key == "solid/cone");
    CHECK(wrong(R"({"sphere":{"radius_mm":0}})").at(0).key == "solid/sphere/radius_mm");
    CHECK(wrong(R"({"sphere":{"radius_mm":1,"colour":"red"}})").at(0).key == "solid/sphere/colour");
    CHECK(wrong(R"({"sphere":{"centre_mm":[0,0,5001],"radius_mm":1}})").at(0).key == "solid/sphere/centre_mm");
    CHECK(wrong(R"({"sphere":7})").at(0).key == "solid/sphere");
    CHECK(wrong(R"({"capsule":{"from_mm":[0,0,0],"radius_mm":1}})").at(0).key == "solid/capsule/to_mm");
    CHECK(wrong(R"({"cylinder":{"from_mm":[0,0,1],"to_mm":[0,0,1],"radius_mm":1}})").at(0).key == "solid/cylinder/to_mm");
    CHECK(wrong(R"({"box":{"size_mm":[1,0,1]}})").at(0).key == "solid/box/size_mm");
    CHECK(wrong(R"({"rounded_box":{"size_mm":[10,20,30],"radius_mm":5.1}})").at(0).key == "solid/rounded_box/radius_mm");
    CHECK(wrong(R"({"hull":{"points_mm":[[0,0,0],[1,0,0],[0,1,0]]}})").at(0).key == "solid/hull/points_mm");
    CHECK(wrong(R"({"hull":{"points_mm":[[0,0,0],[1,0,0],[0,1,0],[1,1,0]]}})").at(0).found == "points that are all in one plane");
    CHECK(wrong(R"({"hull":{"points_mm":[[0,0,0],[1,0,0],[0,1,0],[1,1]]}})").size() == 1);
    json many = {{"hull", {{"points_mm", json::array()}}}};
    for (int i = 0; i < 257; ++i) many["hull"]["points_mm"].push_back({i, i * i % 97, i % 13});
    CHECK(wrong(many.dump().c_str()).at(0).allowed == "a list of at most 256");
}

TEST_CASE("a longer reach may be allowed for supports", "[catalogue][solid-json]") {
    std::vector<PartProblem> problems;
    const json far = json::parse(R"({"sphere":{"centre_mm":[0,0,9000],"radius_mm":1}})");
    CHECK(readSolid(far, "", problems, 10));
    CHECK(problems.empty());
}
