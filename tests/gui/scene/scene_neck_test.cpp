#include <catch2/catch.hpp>

#include "shown_scene.h"

using namespace hither;

namespace {

/// A pixel at which the item of this key is hit.
std::optional<QPointF> pixelOfKey(const SceneStand& s, const std::string& key) {
    for (int y = 2; y < s.size().height(); y += 3)
        for (int x = 2; x < s.size().width(); x += 3) {
            const Ray ray = s.ray(QPointF(x, y));
            const auto hit = pickInPicture(s.scene->picture(), ray.origin_W, ray.direction_W);
            if (hit && hit->key == key) return QPointF(x, y);
        }
    return std::nullopt;
}

}  // namespace

TEST_CASE("The handle of each arc of a neck bends that arc and no other, as one step") {
    const int arc = GENERATE(0, 1, 2);
    SceneStand s("two_options_at_one_site", JobStep::build);
    const SetupMount mount = s.analysis.setup()->mounts.front();
    std::vector<std::size_t> steps;   // the arcs' steps, from support to switch
    for (std::size_t k = 0; k < mount.chain.steps.size(); ++k)
        if (mount.chain.steps[k].kind == ChainStep::Kind::bend && mount.chain.steps[k].part == 1) steps.push_back(k);
    REQUIRE(steps.size() == 3);
    const std::size_t step = steps[static_cast<std::size_t>(arc)];
    s.comeNear(forward(mount.chain, mount.q).X_WF[step + 1].translation(), 0.4);
    s.view.pick(Picked::partOf(s.mount().id, 1));
    QTest::qWait(40);
    std::string key;
    for (const PictureItem& item : s.scene->picture().items)
        if (item.look == Look::jointHandle && item.pick.part == 1 && item.key.ends_with("/" + std::to_string(step))) key = item.key;
    REQUIRE_FALSE(key.empty());
    const std::optional<QPointF> at = pixelOfKey(s, key);
    REQUIRE(at);
    const std::string before = planToJson(s.document.plan());
    const int first = mount.chain.steps[step].q0;
    s.drag(*at, QPointF(18, -22));
    const Eigen::VectorXd now = s.analysis.setup()->mounts.front().q;
    REQUIRE(now.size() == mount.q.size());
    for (int i = 0; i < static_cast<int>(now.size()); ++i) {
        INFO("arc " << arc << ", freedom " << i << " of " << now.size());
        if (i < first || i > first + 1) CHECK(now[i] == Approx(mount.q[i]).margin(1e-9));
    }
    CHECK((now.segment(first, 2) - mount.q.segment(first, 2)).norm() > 0.01);   // 1/m
    CHECK(s.document.canUndo());
    s.document.undo();
    CHECK(planToJson(s.document.plan()) == before);
    CHECK_FALSE(s.document.canUndo());
}
