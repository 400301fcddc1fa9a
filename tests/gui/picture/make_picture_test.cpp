#include <catch2/catch.hpp>

#include <set>

#include "app/picture/make_picture.h"
#include "sample_pictures.h"

using namespace hither;

namespace {

const PictureItem* itemOf(const Picture& picture, const std::string& key) {
    for (const PictureItem& item : picture.items)
        if (item.key == key) return &item;
    return nullptr;
}

}  // namespace

TEST_CASE("Every sample makes a picture of at most 14,000 triangles and 2,200 more for each mount after the first, each item with its own key") {
    for (const SamplePlan& sample : samplePlans())
        for (const JobStep step : {JobStep::build, JobStep::check}) {
            INFO(sample.name);
            PictureWishes wishes;
            wishes.step = step;
            const Picture picture = PictureMaker().make(&sample.setup.situation, &sample.setup, wishes);
            std::size_t triangles = 0;
            std::set<std::string> keys;
            for (const PictureItem& item : picture.items) {
                REQUIRE(item.mesh);
                triangles += item.mesh->triangles.size();
                CHECK(keys.insert(item.key).second);
                CHECK(item.mesh->points.size() == item.mesh->normals.size());
            }
            CHECK(triangles <= 14000 + 2200 * (std::max<std::size_t>(sample.setup.mounts.size(), 1) - 1));
            CHECK(triangles > 1000);
            REQUIRE_FALSE(picture.bounds_W.isEmpty());
            // What stands on the floor does not go below it, and a person is no giant.
            CHECK(picture.bounds_W.min().z() > -0.05);
            CHECK(picture.bounds_W.sizes().maxCoeff() < 4);
        }
}

TEST_CASE("From one picture to the next a mesh is made anew only when its shape changed") {
    SamplePlan sample = samplePlans().front();
    PictureMaker maker;
    PictureWishes wishes;
    const Picture first = maker.make(&sample.setup.situation, &sample.setup, wishes);
    Support& support = sample.setup.situation.supports.front();
    support.X_WS = translation(Vec3(0.1, 0, 0)) * support.X_WS;
    const Picture second = maker.make(&sample.setup.situation, &sample.setup, wishes);
    REQUIRE(first.items.size() == second.items.size());
    std::size_t moved = 0;
    for (std::size_t i = 0; i < first.items.size(); ++i) {
        INFO(first.items[i].key);
        CHECK(first.items[i].key == second.items[i].key);
        CHECK((first.items[i].mesh == second.items[i].mesh || first.items[i].pick.kind == Picked::Kind::part || first.items[i].key.find("cushion") != std::string::npos));
        moved += !first.items[i].X_W.isApprox(second.items[i].X_W);
    }
    CHECK(moved > 10);
}

TEST_CASE("Pieces follow the moving groups of their support") {
    for (const SamplePlan& sample : samplePlans()) {
        for (const Support& support : sample.setup.situation.supports) {
            if (support.groups.empty()) continue;
            Situation turned = sample.setup.situation;
            for (Support& s : turned.supports)
                if (s.id == support.id) s.groups.front().value = s.groups.front().max;
            const Picture before = PictureMaker().make(&sample.setup.situation, nullptr, {}), after = PictureMaker().make(&turned, nullptr, {});
            for (const SupportSolid& s : support.solids) {
                INFO(support.id << " " << s.name);
                const std::string key = "support/" + support.id + "/" + s.name + "/0";
                REQUIRE(itemOf(before, key));
                const Pose expected = groupPose_W(turned, support.id, s.group) * groupPose_W(sample.setup.situation, support.id, s.group).inverse() * itemOf(before, key)->X_W;
                CHECK(itemOf(after, key)->X_W.isApprox(expected, 1e-9));
            }
        }
    }
}

TEST_CASE("Where a grip fits is shown in Build alone") {
    const SamplePlan& sample = samplePlans().front();
    const auto count = [&](JobStep step) {
        PictureWishes wishes;
        wishes.step = step;
        const Picture picture = PictureMaker().make(&sample.setup.situation, &sample.setup, wishes);
        std::set<std::string> attachments;
        for (const PictureItem& item : picture.items)
            if (item.pick.kind == Picked::Kind::attachment) attachments.insert(item.pick.id + "/" + item.pick.piece);
        return attachments.size();
    };
    CHECK(count(JobStep::check) == 0);
    std::size_t all = 0;
    for (const Support& support : sample.setup.situation.supports) all += support.attachments.size();
    CHECK(count(JobStep::build) > all / 2);  // some have no free stretch
    CHECK(count(JobStep::build) <= all);
}

TEST_CASE("Sleeves leave the closed stretches of a rail out") {
    SupportSpec spec;
    spec.id = "post";
    spec.kind = "custom";
    Attachment rail;
    rail.id = "rail";
    rail.a = Vec3(0, 0, 0.5);
    rail.b = Vec3(0, 0, 1.5);
    rail.reference = Vec3::UnitX();
    rail.outside_m = {0.025, {BasisKind::measured, {}}};
    Blocked blocked;
    blocked.from_m = 0.3;
    blocked.to_m = 0.5;
    rail.blocked = {blocked};
    spec.attachments = {rail};
    const SupportMade made = makeSupport(spec);
    REQUIRE(made.support);
    Situation situation;
    situation.supports = {*made.support};
    const Picture picture = PictureMaker().make(&situation, nullptr, {});
    double covered = 0;
    for (const PictureItem& item : picture.items) {
        if (item.look != Look::attachmentFree) continue;
        Eigen::AlignedBox3d box;
        for (const Eigen::Vector3f& p : item.mesh->points) box.extend(item.X_W * p.cast<double>());
        covered += box.sizes().z();
        CHECK((box.max().z() < 0.8 + 1e-5 || box.min().z() > 1.0 - 1e-5));
        CHECK(box.sizes().x() > 0.025);
    }
    CHECK(covered == Approx(0.8).margin(1e-4));
}

TEST_CASE("The finding shown outlines its subjects and joins its nearest points") {
    const SamplePlan& sample = samplePlans().front();
    REQUIRE(sample.setup.situation.body);
    Finding finding;
    finding.verdict = Verdict::misses;
    finding.measure = Measure::length;
    finding.value = 0.0254;
    finding.witness = Witness{Vec3(0, 0, 0.5), Vec3(0, 0.0254, 0.5)};
    Subject body;
    body.kind = Subject::Kind::body;
    body.id = "hand_right";
    Subject mount;
    mount.kind = Subject::Kind::part;
    mount.id = sample.setup.mounts.front().mount.id;
    mount.part = 0;
    finding.subjects = {body, mount};
    PictureWishes wishes;
    wishes.finding = &finding;
    wishes.units = UnitSystem::inch;
    const Picture picture = PictureMaker().make(&sample.setup.situation, &sample.setup, wishes);
    REQUIRE(picture.lines.size() == 1);
    CHECK(picture.lines.front().look == Look::misses);
    CHECK(picture.lines.front().b_W.y() == Approx(0.0254));
    std::set<std::string> words;
    for (const PictureLabel& label : picture.labels) words.insert(label.words);
    CHECK(words.count("1 in") == 1);
    CHECK(picture.floorStep_m == Approx(0.1016));
    std::size_t outlined = 0;
    for (const PictureItem& item : picture.items) {
        if (!item.outlined) continue;
        ++outlined;
        CHECK((item.pick == Picked::person("hand_right") || item.pick == Picked::partOf(mount.id, 0)));
    }
    CHECK(outlined >= 2);
}

TEST_CASE("A site's arrow is as long as its movement, and its segment is tinted") {
    for (const SamplePlan& sample : samplePlans()) {
        const Picture picture = PictureMaker().make(&sample.setup.situation, &sample.setup, {});
        for (const Site& site : sample.setup.situation.sites) {
            INFO(sample.name << " " << site.id);
            const PictureItem* arrow = itemOf(picture, "site/" + site.id + "/arrow");
            REQUIRE(arrow);
            double length = 0;
            for (const Eigen::Vector3f& p : arrow->mesh->points) length = std::max(length, (arrow->X_W * p.cast<double>() - site.p_W).dot(site.d_W));
            if (site.movement_m.known()) CHECK(length == Approx(*site.movement_m.value).margin(1e-6));
            else CHECK(arrow->opacity < 1);
            const PictureItem* ball = itemOf(picture, "site/" + site.id + "/tolerance");
            REQUIRE(ball);
            CHECK(static_cast<double>(ball->mesh->points.front().norm()) == Approx(site.tolerance_m));
            if (site.segment) CHECK(itemOf(picture, "body/" + word(*site.segment))->look == Look::bodySite);
        }
    }
}

TEST_CASE("Without a situation there is an empty picture") {
    const Picture picture = PictureMaker().make(nullptr, nullptr, {});
    CHECK(picture.items.empty());
    CHECK(picture.bounds_W.isEmpty());
}
