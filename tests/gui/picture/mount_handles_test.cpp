#include <catch2/catch.hpp>

#include <set>

#include "app/picture/make_picture.h"
#include "core/units/quantity.h"
#include "tests/gui/picture/mount_stand.h"

using namespace hither;

namespace {

using JointAt = std::pair<int, std::string>;

std::set<JointAt> handles(const stand::Stand& s, const PictureWishes& wishes) {
    MeshStore store;
    std::set<JointAt> found;
    for (const PictureItem& item : mountItems(s.mount, s.given, wishes, store))
        if (item.look == Look::jointHandle) {
            CHECK(item.pick.kind == Picked::Kind::joint);
            CHECK(item.pick.id == "m");
            CHECK_FALSE(item.castsShadow);
            found.insert({item.pick.part, item.pick.piece});
        }
    return found;
}
/// What the chain can move, read from its freedoms.
std::set<JointAt> movable(const Chain& chain) {
    std::set<JointAt> all;
    for (const Freedom& f : chain.freedoms) {
        if (f.kept) continue;
        all.insert({f.part, f.of == Freedom::Of::joint ? f.joint : f.of == Freedom::Of::clocking ? "clocking" : f.of == Freedom::Of::around ? "around" : "place"});
    }
    return all;
}

}  // namespace

TEST_CASE("Every freedom that is not kept has a handle, on every part of the catalogue") {
    for (const auto& part : stand::shipped().catalogue.parts())
        for (const stand::Stand& s : stand::stands(*part)) {
            INFO(s.words);
            CHECK(handles(s, stand::wishes(JobStep::build, Picked::mount("m"))) == movable(s.mount.chain));
        }
}

TEST_CASE("Kept joints have no handle, other steps and other mounts none at all") {
    stand::Stand s = stand::put(stand::situation(0.022, Section::round, 0.02), "rail", {"screw-clamp-7-8-in", "arm-three-knobs-200", "back-three-screws-40-4-40"});
    for (Freedom& f : s.mount.chain.freedoms)
        if (f.joint == "elbow" || f.of == Freedom::Of::along) f.kept = true;
    const auto all = handles(s, stand::wishes(JobStep::build, Picked::mount("m")));
    CHECK_FALSE(all.count({1, "elbow"}));
    CHECK(all.count({1, "ball1"}));
    CHECK(all.count({0, "around"}));   // round the tube is still free
    CHECK(all == movable(s.mount.chain));
    // Of the picked part only, also while one of its joints is picked.
    const std::set<JointAt> arm{{1, "ball1"}, {1, "ball2"}, {1, "clocking"}};
    CHECK(handles(s, stand::wishes(JobStep::build, Picked::partOf("m", 1))) == arm);
    CHECK(handles(s, stand::wishes(JobStep::build, Picked::jointOf("m", 1, "ball1"))) == arm);
    CHECK(handles(s, stand::wishes(JobStep::build, Picked::mount("another"))).empty());
    CHECK(handles(s, stand::wishes(JobStep::build)).empty());
    CHECK(handles(s, stand::wishes(JobStep::check, Picked::mount("m"))).empty());
}

TEST_CASE("A neck has a handle at the end of each of its arcs") {
    const stand::Stand s = stand::put(stand::situation(0.022, Section::round, 0.02), "rail", {"screw-clamp-7-8-in", "gooseneck-300"});
    MeshStore store;
    const ChainPoses poses = forward(s.mount.chain, s.mount.q);
    std::vector<Vec3> at;
    for (const PictureItem& item : mountItems(s.mount, s.given, stand::wishes(JobStep::build, Picked::partOf("m", 1)), store))
        if (item.pick == Picked::jointOf("m", 1, "neck")) at.push_back(item.X_W.translation());
    REQUIRE(at.size() == 3);
    for (std::size_t arc = 0; arc < 3; ++arc)
        CHECK((at[arc] - poses.X_WF[static_cast<std::size_t>(s.mount.chain.bends[arc].step) + 1].translation()).norm() < 1e-9);
}

TEST_CASE("Handles reach at least 16 mm from their middle, so that they can be hit") {
    for (const char* id : {"screw-clamp-7-8-in", "arm-three-knobs-200", "gooseneck-300", "post-telescopic-130-190", "rosette-hinge-15", "ball-head-small"}) {
        const stand::Stand s = stand::put(stand::situation(0.022, Section::round, 0.02), "rail", {"screw-clamp-7-8-in", id});
        MeshStore store;
        for (const PictureItem& item : mountItems(s.mount, s.given, stand::wishes(JobStep::build, Picked::mount("m")), store)) {
            if (item.look != Look::jointHandle && item.look != Look::outletHandle) continue;
            float reach = 0;
            for (const Eigen::Vector3f& p : item.mesh->points) reach = std::max(reach, p.norm());
            INFO(item.key);
            CHECK(reach >= 0.016F);
        }
    }
}

TEST_CASE("A handle turns about the axis of its hinge and goes with it") {
    stand::Stand s = stand::put(stand::situation(0.022, Section::round, 0.02), "rail", {"screw-clamp-7-8-in", "rosette-hinge-15"});
    const auto grab = [&] {
        MeshStore store;
        for (const PictureItem& item : mountItems(s.mount, s.given, stand::wishes(JobStep::build, Picked::partOf("m", 1)), store)) {
            if (item.pick != Picked::jointOf("m", 1, "rosette")) continue;
            // The ball is at the mesh's farthest point along x.
            float far = 0;
            for (const Eigen::Vector3f& p : item.mesh->points) far = std::max(far, p.x());
            return Vec3(item.X_W * Vec3(far, 0, 0));
        }
        return Vec3(Vec3::Zero());
    };
    int joint = -1;
    for (int i = 0; i < s.mount.chain.freedomCount(); ++i) if (s.mount.chain.freedoms[static_cast<std::size_t>(i)].joint == "rosette") joint = i;
    REQUIRE(joint >= 0);
    const ChainPoses poses = forward(s.mount.chain, s.mount.q);
    Vec3 pivot = Vec3::Zero(), axis = Vec3::UnitZ();
    for (std::size_t k = 0; k < s.mount.chain.steps.size(); ++k)
        if (s.mount.chain.steps[k].q0 == joint) { pivot = poses.X_WF[k].translation(); axis = poses.X_WF[k].linear() * s.mount.chain.steps[k].axis; }
    const Vec3 before = grab();
    s.mount.q[joint] += radians(45);
    const Vec3 expected = pivot + Eigen::AngleAxisd(radians(45), axis) * (before - pivot);
    CHECK((grab() - expected).norm() < 1e-6);
}

TEST_CASE("The place for the next part is offered at a free outlet only, in Build only") {
    const auto outlets = [](const stand::Stand& s, JobStep step) {
        MeshStore store;
        std::vector<Picked> picks;
        for (const PictureItem& item : mountItems(s.mount, s.given, stand::wishes(step), store))
            if (item.look == Look::outletHandle) picks.push_back(item.pick);
        return picks;
    };
    const Situation given = stand::situation(0.022, Section::round, 0.02);
    const stand::Stand open = stand::put(given, "rail", {"screw-clamp-7-8-in", "gooseneck-300"});
    const stand::Stand whole = stand::put(given, "rail", {"screw-clamp-7-8-in", "gooseneck-300", "back-three-screws-40-4-40", "switch-round-medium"});
    CHECK(outlets(open, JobStep::build) == std::vector<Picked>{Picked::outletOf("m", 1)});
    CHECK(outlets(open, JobStep::check).empty());
    CHECK(outlets(whole, JobStep::build).empty());
}
