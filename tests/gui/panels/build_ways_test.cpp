#include <QLabel>

#include "core/plan/edits/joints.h"
#include "core/plan/edits/parts.h"
#include "core/plan/edits/sites.h"
#include "tests/gui/panels/build_desk.h"

using namespace hither;
using namespace hither::test;

namespace {
QString words(BuildWaysBar& bar) {
    QString all;
    for (QLabel* l : bar.findChildren<QLabel*>()) if (l->isVisible()) all += l->text();
    return all;
}
QPushButton* button(BuildWaysBar& bar, const QString& text) {
    for (QPushButton* b : bar.findChildren<QPushButton*>()) if (b->isVisible() && b->text() == text) return b;
    return nullptr;
}
/// The sample with its site farther to the right than the arm can go.
Plan outOfReach() {
    Plan plan = samplePlan("elbow_switch_on_chair");
    SiteSpec site = plan.sites[0];
    site.given = SiteGiven::typed;
    site.point = Vec3(0.0, -1.6, 0.8);
    site.direction = -Vec3::UnitY();
    return *replaceSite(plan, site.id, site).plan;
}
}  // namespace

TEST_CASE("Out of reach it says how near it gets and what stops it, and can be set there") {
    BuildDesk b(outOfReach());
    const std::string start = b.json();
    b.ways().start();
    b.waitForWays();
    REQUIRE(b.ways().state() == BuildWaysBar::State::none);
    CHECK(b.json() == start);
    const SolveReport& report = b.ways().ways()->report;
    REQUIRE(report.nearest);
    CHECK(words(b.ways()).contains("No way brings this switch to its site."));
    CHECK(words(b.ways()).contains(QString::fromStdString(printLength(report.reachShort_m, UnitSystem::metric)) + " too short"));
    const Eigen::VectorXd nearest = report.nearest->q;
    REQUIRE(button(b.ways(), "Set it as near as it gets"));
    button(b.ways(), "Set it as near as it gets")->click();
    CHECK((b.analysis.setup()->mounts[0].q - nearest).norm() < 1e-12);
    b.document.undo();
    CHECK(b.json() == start);
    CHECK_FALSE(b.document.canUndo());
}

TEST_CASE("The way shown says what the checks leave, as found by the core") {
    BuildDesk b(samplePlan("elbow_switch_on_chair"));
    b.ways().start();
    b.waitForWays();
    REQUIRE(b.ways().state() == BuildWaysBar::State::stepping);
    const Ways& ways = *b.ways().ways();
    const int count = static_cast<int>(ways.report.solutions.size());
    for (int i = 0; i < count; ++i) {
        CHECK(b.ways().way() == i);
        const int missed = ways.left[static_cast<std::size_t>(i)].missed;
        CHECK(words(b.ways()).startsWith(QString("Way %1 of %2: %3 check").arg(i + 1).arg(count).arg(missed == 0 ? QString("no") : QString::number(missed))));
        b.ways().step(1);
    }
    CHECK(b.ways().way() == 0);   // round and round
    b.ways().leave();
    CHECK_FALSE(b.document.canUndo());
}

TEST_CASE("Another change ends the ways shown; undo takes them away without a trace") {
    BuildDesk b(samplePlan("elbow_switch_on_chair"));
    const std::string start = b.json();
    b.ways().start();
    b.waitForWays();
    b.document.undo();
    CHECK(b.ways().state() == BuildWaysBar::State::idle);
    CHECK(b.json() == start);
    b.ways().start();
    b.waitForWays();
    REQUIRE(b.ways().state() == BuildWaysBar::State::stepping);
    b.document.apply("Lock", setJointKept(b.document.plan(), b.view.option(), "elbow-mount", 1, "elbow", true));
    CHECK(b.ways().state() == BuildWaysBar::State::idle);
    b.document.undo();
    b.document.undo();
    CHECK(b.json() == start);
    CHECK_FALSE(b.document.canUndo());
}

TEST_CASE("A search that runs can be cancelled, and a change of the mount drops it") {
    BuildDesk b(outOfReach());
    b.ways().start();
    REQUIRE(b.ways().state() == BuildWaysBar::State::searching);
    b.ways().takeFocus();
    b.key(Qt::Key_Escape);
    CHECK(b.ways().state() == BuildWaysBar::State::idle);
    b.ways().start();
    b.document.apply("Lock", setJointKept(b.document.plan(), b.view.option(), "elbow-mount", 1, "elbow", true));
    CHECK(b.ways().state() == BuildWaysBar::State::idle);
    QTest::qWait(300);
    CHECK(b.ways().state() == BuildWaysBar::State::idle);
}

TEST_CASE("Without a switch the button says what comes first") {
    Plan plan = samplePlan("elbow_switch_on_chair");
    plan = *removePart(plan, plan.options[0].id, "elbow-mount", 3).plan;
    BuildDesk b(plan);
    CHECK(words(b.ways()) == "Next: go on from the free end until the switch is there.");
    CHECK_FALSE(b.ways().canStart());
    b.actions.refresh();
    CHECK_FALSE(b.actions.action("build.bring_to_site")->isEnabled());
}
