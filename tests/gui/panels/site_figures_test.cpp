#include <catch2/catch.hpp>

#include <QAbstractButton>
#include <QLabel>
#include <QTreeWidget>

#include "app/panels/site_panel.h"
#include "app/widgets/field_row.h"
#include "site_fixture.h"

using namespace hither;

TEST_CASE("A tolerance is shown as it is typed; Esc leaves no trace, Enter is one step") {
    GivensFixture f{withSite()};
    Shown<SitePanel> shown(f);
    auto* tolerance = shown.find<NumberField>("site tolerance");
    REQUIRE(tolerance);
    const std::string before = f.json();
    tolerance->setFocus(Qt::TabFocusReason);
    tolerance->selectAll();
    QTest::keyClicks(tolerance, "25");
    CHECK(f.document.inGesture());
    CHECK(f.document.plan().sites.front().tolerance_m == Approx(0.025));
    QTest::keyClick(tolerance, Qt::Key_Escape);
    CHECK(f.json() == before);
    CHECK_FALSE(f.document.canUndo());
    tolerance->selectAll();
    QTest::keyClicks(tolerance, "25");
    QTest::keyClick(tolerance, Qt::Key_Return);
    CHECK(f.document.plan().sites.front().tolerance_m == Approx(0.025));
    f.document.undo();
    CHECK(f.json() == before);
    CHECK_FALSE(f.document.canUndo());
}

TEST_CASE("How a figure is known is said by a person, and stays when another number is typed; its source does not") {
    Plan plan = withSite();
    plan.sites.front().force_N = {4, {BasisKind::measured, "KL, 2026-05-01"}};
    GivensFixture f{plan};
    Shown<SitePanel> shown(f);
    const auto force = [&] { return f.document.plan().sites.front().force_N; };
    CHECK(shown.find<ChoiceBox>("site force basis")->isVisible());
    CHECK_FALSE(shown.find<ChoiceBox>("site spread basis")->isVisible());
    auto* known = shown.find<ChoiceBox>("site force basis");
    emit known->activated(known->currentIndex());   // chosen again as it is
    CHECK(force().basis.source == "KL, 2026-05-01");
    CHECK_FALSE(f.document.canUndo());
    choose(shown.find<ChoiceBox>("site force basis"), "assumed");
    CHECK(force() == Figure{4, {BasisKind::assumed, {}}});
    auto* field = shown.find<NumberField>("site force");
    CHECK(qobject_cast<FieldRow*>(field->parentWidget())->basis() == BasisKind::assumed);
    field->setFocus(Qt::TabFocusReason);
    field->selectAll();
    QTest::keyClicks(field, "5");
    QTest::keyClick(field, Qt::Key_Return);
    CHECK(force() == Figure{5, {BasisKind::assumed, {}}});
    field->selectAll();
    QTest::keyClick(field, Qt::Key_Delete);
    QTest::keyClick(field, Qt::Key_Return);
    CHECK(force() == Figure{});
    CHECK_FALSE(shown.find<ChoiceBox>("site force basis")->isVisible());
}

TEST_CASE("The panel says which mounts serve a site") {
    Plan plan = withSite();
    PlanOption option;
    option.id = "a";
    option.name = "Left side";
    plan.options.push_back(option);
    GivensFixture none{plan};
    Shown<SitePanel> without(none);
    CHECK(without.find<QLabel>("serving mounts")->text().contains("No mount"));
    Mount mount;
    mount.id = "m";
    mount.name = "Elbow arm";
    mount.support = "chair";
    mount.site = "elbow";
    plan.options.front().mounts.push_back(mount);
    GivensFixture f{plan};
    Shown<SitePanel> shown(f);
    CHECK(shown.find<QLabel>("serving mounts")->text() == "Elbow arm, in option Left side");
    QTest::mouseClick(shown.find<QAbstractButton>("remove site"), Qt::LeftButton);
    shown.settle();
    CHECK(f.document.plan().sites.size() == 1);
    CHECK(shown.find<QLabel>("refusal")->text().contains("serves it"));
}

TEST_CASE("What a click on the body will do is said before it is made") {
    GivensFixture f{withSite()};
    Shown<SitePanel> shown(f);
    shown.find<QAbstractButton>("fold Add another site")->click();
    shown.settle();
    auto* hint = shown.find<QLabel>("click hint");
    f.view.pick(Picked::site("elbow"));
    CHECK(hint->text().contains("moves the site"));
    shown.settle();
    // The longer hint pushes what is below it down; nothing lies over anything.
    auto* tree = shown.find<QTreeWidget>("control sites");
    CAPTURE(tree->height(), tree->minimumHeight(), tree->sizeHint().height(), shown.panel->height(), shown.panel->heightForWidth(shown.panel->width()));
    CHECK(tree->geometry().bottom() < shown.find<QLabel>("control site movement")->geometry().top());
    auto* another = shown.find<QAbstractButton>("click another");
    another->setFocus(Qt::TabFocusReason);
    QTest::keyClick(another, Qt::Key_Space);
    CHECK(f.view.picked().nothing());
    CHECK(hint->text().contains("a new site"));
    CHECK(f.document.plan().sites.size() == 1);
}
