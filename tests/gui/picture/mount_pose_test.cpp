#include <catch2/catch.hpp>

#include <map>
#include <set>

#include "core/units/quantity.h"
#include "tests/gui/picture/mount_stand.h"

using namespace hither;

namespace {

/// The first freedom of an element of a part.
int freedomOf(const Chain& chain, int part, const std::string& joint) {
    for (int i = 0; i < chain.freedomCount(); ++i) {
        const Freedom& f = chain.freedoms[static_cast<std::size_t>(i)];
        if (f.part == part && f.joint == joint) return i;
    }
    return -1;
}
std::map<std::string, PictureItem> byKey(const std::vector<PictureItem>& items) {
    std::map<std::string, PictureItem> map;
    for (const PictureItem& item : items) map[item.key] = item;
    return map;
}
stand::Stand neckStand() {
    return stand::put(stand::situation(0.022, Section::round, 0.02), "rail", {"screw-clamp-7-8-in", "gooseneck-300"});
}
stand::Stand armStand() {
    return stand::put(stand::situation(0.022, Section::round, 0.02), "rail", {"screw-clamp-7-8-in", "arm-single-lock-160", "back-three-screws-40-4-40", "switch-round-medium"});
}

}  // namespace

TEST_CASE("A neck is drawn along the arcs of the chain") {
    stand::Stand s = neckStand();
    const int q0 = freedomOf(s.mount.chain, 1, "neck");
    REQUIRE(q0 >= 0);
    const double bend[6] = {6, -3, -10, 4, 2, 12};
    for (int i = 0; i < 6; ++i) s.mount.q[q0 + i] = bend[i];
    const ChainPoses poses = forward(s.mount.chain, s.mount.q);
    MeshStore store;
    const PictureItem* neck = nullptr;
    const auto items = mountItems(s.mount, s.given, stand::wishes(), store);
    // The longest piece of the neck's look is the neck.
    for (const PictureItem& item : items)
        if (item.look == Look::neckPart && (!neck || item.mesh->triangles.size() > neck->mesh->triangles.size())) neck = &item;
    REQUIRE(neck);
    // Rings of the mesh: points in groups of eight; each ring's middle must lie on the chain's curve.
    const std::size_t rings = neck->mesh->points.size() / 8;
    REQUIRE(rings >= 6);
    const auto middle = [&](std::size_t ring) {
        Vec3 sum = Vec3::Zero();
        for (std::size_t k = 0; k < 8; ++k) sum += neck->mesh->points[8 * ring + k].cast<double>();
        return Vec3(neck->X_W * (sum / 8));
    };
    CHECK((middle(rings - 1) - poses.X_WF[static_cast<std::size_t>(s.mount.chain.bends.back().step) + 1].translation()).norm() < 1e-5);
    for (std::size_t arc = 0; arc < 3; ++arc) {
        const Pose& X_WF = poses.X_WF[static_cast<std::size_t>(s.mount.chain.bends[arc].step)];
        CHECK((middle(arc * rings / 3) - X_WF.translation()).norm() < 1e-5);
        // Within an arc, by the chain itself with that arc cut short: a chain whose arc ends there.
        for (const double share : {0.25, 0.5, 0.75}) {
            Chain cut = s.mount.chain;
            const auto step = static_cast<std::size_t>(cut.bends[arc].step);
            cut.steps[step].arc *= share;
            const Vec3 at = forward(cut, s.mount.q).X_WF[step + 1].translation();
            double least = 1;
            for (std::size_t ring = 0; ring + 1 < rings; ++ring) {
                const Vec3 a = middle(ring), ab = middle(ring + 1) - a;
                const double t = ab.squaredNorm() > 0 ? std::clamp((at - a).dot(ab) / ab.squaredNorm(), 0.0, 1.0) : 0;
                least = std::min(least, (at - a - t * ab).norm());
            }
            CHECK(least < 0.0005);
        }
    }
}

TEST_CASE("Turning a hinge keeps every key and every mesh, bending a neck makes only the neck anew") {
    MeshStore store;
    stand::Stand s = armStand();
    const auto before = byKey(mountItems(s.mount, s.given, stand::wishes(), store));
    store.sweep();
    const int elbow = freedomOf(s.mount.chain, 1, "elbow");
    REQUIRE(elbow >= 0);
    s.mount.q[elbow] += radians(25);
    const auto after = byKey(mountItems(s.mount, s.given, stand::wishes(), store));
    REQUIRE(before.size() == after.size());
    int moved = 0;
    for (const auto& [key, item] : before) {
        REQUIRE(after.count(key));
        CHECK(after.at(key).mesh == item.mesh);
        if (!after.at(key).X_W.isApprox(item.X_W)) ++moved;
    }
    CHECK(moved > 3);
    CHECK(moved < static_cast<int>(before.size()));

    stand::Stand n = neckStand();
    const auto straight = byKey(mountItems(n.mount, n.given, stand::wishes(), store));
    store.sweep();
    n.mount.q[freedomOf(n.mount.chain, 1, "neck")] = 5;
    const auto bent = byKey(mountItems(n.mount, n.given, stand::wishes(), store));
    REQUIRE(straight.size() == bent.size());
    int remade = 0;
    for (const auto& [key, item] : straight) remade += bent.at(key).mesh != item.mesh;
    CHECK(remade == 1);
}

TEST_CASE("Keys are unique, and a part whose copy was changed gets a mesh of its own") {
    MeshStore store;
    stand::Stand s = armStand();
    const auto items = mountItems(s.mount, s.given, stand::wishes(JobStep::build, Picked::mount("m")), store);
    std::set<std::string> keys;
    for (const PictureItem& item : items) CHECK(keys.insert(item.key).second);

    Part longer = *s.mount.chain.parts[1];
    for (Element& e : longer.elements)
        if (auto* rigid = std::get_if<RigidElement>(&e.what))
            for (Solid& solid : rigid->solids)
                if (solid.kind == SolidKind::capsule) solid.half.z() += 0.01;
    stand::Stand changed = s;
    changed.mount.chain.parts[1] = std::make_shared<const Part>(longer);
    int differ = 0, same = 0;
    const auto first = byKey(mountItems(s.mount, s.given, stand::wishes(), store)), second = byKey(mountItems(changed.mount, changed.given, stand::wishes(), store));
    for (const auto& [key, item] : first) (second.at(key).mesh == item.mesh ? same : differ)++;
    CHECK(differ >= 2);
    CHECK(same >= 3);
}

TEST_CASE("Parts pick themselves and are outlined when picked or found fault with") {
    MeshStore store;
    const stand::Stand s = armStand();
    const auto outlined = [&](const PictureWishes& wishes) {
        std::set<int> parts;
        for (const PictureItem& item : mountItems(s.mount, s.given, wishes, store))
            if (item.outlined && item.pick.kind == Picked::Kind::part) parts.insert(item.pick.part);
        return parts;
    };
    CHECK(outlined(stand::wishes()).empty());
    CHECK(outlined(stand::wishes(JobStep::check, Picked::partOf("m", 1))) == std::set<int>{1});
    CHECK(outlined(stand::wishes(JobStep::check, Picked::partOf("another", 1))).empty());
    CHECK(outlined(stand::wishes(JobStep::check, Picked::mount("m"))) == std::set<int>{0, 1, 2, 3});
    Finding finding;
    Subject subject;
    subject.kind = Subject::Kind::part;
    subject.id = "m";
    subject.part = 2;
    finding.subjects = {subject};
    PictureWishes wishes = stand::wishes();
    wishes.finding = &finding;
    CHECK(outlined(wishes) == std::set<int>{2});
}
