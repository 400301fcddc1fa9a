#include <functional>
#include <set>
#include <string>
#include <vector>

#include <QString>

#include <catch2/catch.hpp>

#include "app/document/document.h"
#include "app/document/view_state.h"
#include "core/storage/plan_json.h"
#include "tests/gui/document/random_edits.h"
#include "tests/unit/plan/fixture.h"

using namespace hither;
using namespace hither::test;

namespace {

/// A gesture of some previews on one joint, now and then cancelled. Says whether it could leave a step.
void gesture(Document& document, RandomEdits& draw) {
    const Plan& start = document.plan();
    if (start.options.empty() || start.options.front().mounts.empty()) return;
    const PlanOption option = start.options.front();
    const Mount& mount = option.mounts.front();
    document.beginGesture("Turn the elbow");
    for (std::size_t i = 0; i < 1 + draw.below(4); ++i)
        for (std::size_t part = 0; part < mount.parts.size(); ++part) document.preview(draw.joint(document.gestureStart(), option.id, mount.id, part, "elbow"));
    if (draw.oneIn(3)) document.cancelGesture();
    else document.endGesture();
}

}  // namespace

TEST_CASE("A walk of 2,000 edits of every kind is undone to its first byte and redone to its last") {
    ShippedRead read = readShipped();
    REQUIRE(read.shipped);
    Plan first = smallPlan();
    SupportSpec chair;
    chair.id = "chair";
    chair.kind = "chair-manual";
    first.supports.push_back(chair);
    Document document{QString()};
    document.startWith(first, false);
    ViewState view(document);
    quint64 last = document.revision();
    QObject::connect(&document, &Document::changed, &document, [&](quint64 revision) {
        CHECK(revision == last + 1);
        last = revision;
    });
    int refusals = 0;
    QObject::connect(&document, &Document::refused, &document, [&](const QString& why) {
        CHECK_FALSE(why.isEmpty());
        ++refusals;
    });

    const std::string begin = planToJson(document.plan());
    RandomEdits draw(20261125, *read.shipped);
    std::set<std::string> done, refused;
    std::size_t depth = 0;
    std::vector<std::size_t> kept{std::hash<std::string>{}(begin)};  // of the plan at every tenth step
    for (int drawn = 0; depth < 2000 && drawn < 10000; ++drawn) {
        const std::shared_ptr<const Plan> before = document.shared();
        if (draw.oneIn(12)) {
            gesture(document, draw);
        } else {
            RandomEdits::Drawn edit = draw.next(document.plan());
            const bool could = static_cast<bool>(edit.edited);
            CHECK(document.apply(QString::fromStdString(edit.name), std::move(edit.edited)) == could);
            if (!could) CHECK(document.shared() == before);
            (could ? done : refused).insert(edit.name);
        }
        if (document.shared() != before && ++depth % 10 == 0) kept.push_back(std::hash<std::string>{}(planToJson(document.plan())));
        // A step back and the same step again is where one was.
        if (draw.oneIn(20) && document.canUndo()) {
            const std::shared_ptr<const Plan> here = document.shared();
            document.undo();
            document.redo();
            CHECK(document.shared() == here);
        }
    }
    for (const std::string& name : refused) UNSCOPED_INFO("refused: " << name);
    for (const std::string& name : done) UNSCOPED_INFO("done: " << name);
    CHECK(done.size() == RandomEdits::kinds);
    CHECK(refused.size() > 20);
    CHECK(refusals > 100);
    CHECK(depth == 2000);

    const std::string end = planToJson(document.plan());
    std::size_t at = depth;
    while (document.canUndo()) {
        CHECK_FALSE(document.undoLabel().isEmpty());
        document.undo();
        --at;
        if (at % 10 == 0) CHECK(std::hash<std::string>{}(planToJson(document.plan())) == kept[at / 10]);
    }
    CHECK(at == 0);
    CHECK(planToJson(document.plan()) == begin);
    CHECK_FALSE(document.modified());
    while (document.canRedo()) document.redo();
    CHECK(planToJson(document.plan()) == end);
    CHECK(document.modified());
}
