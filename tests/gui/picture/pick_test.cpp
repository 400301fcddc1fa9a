#include <catch2/catch.hpp>

#include <random>

#include "app/picture/make_picture.h"
#include "app/picture/shapes.h"
#include "core/geometry/solid_tree.h"
#include "sample_pictures.h"

using namespace hither;

namespace {

PictureItem itemFrom(const Mesh& mesh, const Picked& pick, Look look = Look::metal, double opacity = 1) {
    PictureItem item;
    item.mesh = std::make_shared<const Mesh>(mesh);
    item.pick = pick;
    item.look = look;
    item.opacity = opacity;
    return item;
}

}  // namespace

TEST_CASE("A click picks what the core's own ray meets first") {
    std::mt19937 random(7);
    std::uniform_real_distribution<double> any(-1, 1);
    const auto point = [&] { return Vec3(any(random), any(random), any(random)); };
    std::vector<Solid> solids;
    for (int i = 0; i < 24; ++i) {
        const Vec3 at = point();
        const Pose X = frameFromZ(at, point(), point());
        switch (i % 4) {
            case 0: solids.push_back(Solid::box(X, Vec3(0.05, 0.1, 0.15))); break;
            case 1: solids.push_back(Solid::sphere(at, 0.12)); break;
            case 2: solids.push_back(Solid::capsule(at, at + 0.3 * point(), 0.06)); break;
            default: solids.push_back(Solid::cylinder(at, at + 0.3 * point(), 0.08));
        }
    }
    Picture picture;
    for (std::size_t i = 0; i < solids.size(); ++i) picture.items.push_back(itemFrom(solidMesh(solids[i]), Picked::support("s", std::to_string(i))));
    const SolidTree tree(solids);
    std::vector<Solid> thinner = solids;
    for (Solid& s : thinner) { s.radius *= 0.97; s.half *= 0.97; }
    const SolidTree inner(thinner);
    int compared = 0;
    for (int k = 0; k < 3000; ++k) {
        const Vec3 origin = 4 * point().normalized(), direction = (0.8 * point() - origin).normalized();
        const SolidTree::Hit exact = tree.castRay({origin, direction});
        const std::optional<PictureHit> hit = pickInPicture(picture, origin, direction);
        if (exact.index < 0) { CHECK_FALSE(hit); continue; }
        // Where the ray only just meets a round thing, it may pass its chords.
        if (std::abs(exact.hit.normal_W.dot(direction)) < 0.3 || inner.castRay({origin, direction}).index != exact.index) continue;
        REQUIRE(hit);
        // A chord is at most 2 mm inside the true surface; seen at a slant that is more along the ray.
        CHECK(hit->along == Approx(exact.hit.along_m).margin(0.008));
        if (std::abs(hit->along - exact.hit.along_m) < 1e-4) CHECK(hit->pick.piece == std::to_string(exact.index));
        CHECK((hit->point_W - (origin + hit->along * direction)).norm() < 1e-9);
        ++compared;
    }
    CHECK(compared > 500);
}

TEST_CASE("A click on the body picks the segment that the core finds there") {
    const SamplePlan& sample = samplePlans().front();
    REQUIRE(sample.setup.situation.body);
    Situation alone = sample.setup.situation;
    alone.supports.clear();
    alone.sites.clear();
    const Body& body = *alone.body;
    const Picture picture = PictureMaker().make(&alone, nullptr, {});
    std::mt19937 random(3);
    std::uniform_real_distribution<double> any(-1, 1);
    int same = 0, all = 0;
    for (int k = 0; k < 600; ++k) {
        const Vec3 origin = picture.bounds_W.center() + 3 * Vec3(any(random), any(random), any(random)).normalized();
        const Vec3 aim = picture.bounds_W.center() + 0.4 * picture.bounds_W.sizes().cwiseProduct(Vec3(any(random), any(random), any(random)));
        const auto exact = pickOnBody(body, {origin, (aim - origin).normalized()});
        const auto hit = pickInPicture(picture, origin, aim - origin);
        if (!exact || !hit) continue;
        ++all;
        CHECK(std::abs(hit->along - (exact->point_W - origin).norm()) < 0.03);
        same += hit->pick == Picked::person(word(exact->segment));
    }
    REQUIRE(all > 200);
    CHECK(same > 0.97 * all);  // the rest: joints, where two segments' balls lie within a chord of each other
}

TEST_CASE("Handles win over what they stand in, and what is seen through loses") {
    const Vec3 eye(0, 0, 5), down(0, 0, -1);
    Picture picture;
    picture.items.push_back(itemFrom(boxMesh(translation(Vec3(0, 0, 0)), Vec3(1, 1, 0.5)), Picked::support("table")));
    CHECK(pickInPicture(picture, eye, down)->pick == Picked::support("table"));
    CHECK(pickInPicture(picture, eye, down)->along == Approx(4.5));

    picture.items.push_back(itemFrom(boxMesh(translation(Vec3(0, 0, 2)), Vec3::Constant(0.5)), Picked::keepOut("k"), Look::keepOut, 0.3));
    CHECK(pickInPicture(picture, eye, down)->pick == Picked::support("table"));
    picture.items.push_back(itemFrom(sphereMesh(Vec3(0, 0, 0.485), 0.01), Picked::jointOf("m", 1, "elbow"), Look::jointHandle));
    CHECK(pickInPicture(picture, eye, down)->pick == Picked::jointOf("m", 1, "elbow"));
    picture.items.back() = itemFrom(sphereMesh(Vec3(0, 0, 0.4), 0.01), Picked::jointOf("m", 1, "elbow"), Look::jointHandle);
    CHECK(pickInPicture(picture, eye, down)->pick == Picked::support("table"));

    picture.items.erase(picture.items.begin());
    picture.items.pop_back();
    CHECK(pickInPicture(picture, eye, down)->pick == Picked::keepOut("k"));
    CHECK_FALSE(pickInPicture(picture, eye, Vec3(0, 0, 1)));
    picture.items.front().pick = {};
    CHECK_FALSE(pickInPicture(picture, eye, down));
}

TEST_CASE("In Build a click on a rail picks the rail, later its tube") {
    const SamplePlan& sample = samplePlans().front();
    const Situation& situation = sample.setup.situation;
    const SetupMount& mount = sample.setup.mounts.front();
    const Support* support = situation.support(mount.chain.support);
    REQUIRE(support);
    const Attachment* rail = support->attachment(mount.chain.attachment);
    REQUIRE(rail);
    Situation bare = situation;
    bare.body.reset();
    bare.sites.clear();
    for (const JobStep step : {JobStep::build, JobStep::check}) {
        PictureWishes wishes;
        wishes.step = step;
        const Picture picture = PictureMaker().make(&bare, nullptr, wishes);
        const Pose grip = groupPose_W(bare, support->id, rail->group) * gripFrame(*rail, mount.mount.place);
        const auto hit = pickInPicture(picture, grip * Vec3(0, 0, 0.02), -grip.linear().col(2));
        REQUIRE(hit);
        if (step == JobStep::build) CHECK(hit->pick == Picked::attachment(support->id, rail->id));
        else CHECK(hit->pick.kind == Picked::Kind::support);
    }
}
