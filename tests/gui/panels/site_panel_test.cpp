#include <catch2/catch.hpp>

#include <QAbstractButton>
#include <QLabel>
#include <QLineEdit>
#include <QTreeWidget>

#include "app/panels/givens_words.h"
#include "app/panels/site_panel.h"
#include "app/widgets/field_row.h"
#include "givens_checks.h"
#include "site_fixture.h"

using namespace hither;

TEST_CASE("A site from a control site found by words, by keyboard") {
    GivensFixture f{withPerson()};
    Shown<SitePanel> shown(f);
    auto* find = shown.find<QLineEdit>("find control site");
    REQUIRE(find);
    const std::string before = f.json();
    find->setFocus(Qt::TabFocusReason);
    QTest::keyClicks(find, "right elbow out");
    QTest::keyClick(find, Qt::Key_Return);
    auto* tree = shown.find<QTreeWidget>("control sites");
    REQUIRE(tree->hasFocus());
    CHECK(tree->currentItem()->data(0, Qt::UserRole).toString() == "elbow_right");
    // Core says that the elbow moves away from the body: on the right, to the right.
    CHECK(shown.find<QLabel>("control site movement")->text().contains("to the right"));
    CHECK(shown.find<QLabel>("control site movement")->text().contains("40 mm"));
    QTest::keyClick(tree, Qt::Key_Return);
    shown.settle();
    REQUIRE(f.document.plan().sites.size() == 1);
    CHECK(f.document.plan().sites.front().controlSite == "elbow_right");
    CHECK(f.document.plan().sites.front().given == SiteGiven::fromPosture);
    CHECK(f.view.picked() == Picked::site("elbow_right"));
    f.document.undo();
    CHECK(f.json() == before);
}

TEST_CASE("Every control site can be found and is under a body part") {
    GivensFixture f{withPerson()};
    Shown<SitePanel> shown(f);
    auto* tree = shown.find<QTreeWidget>("control sites");
    std::size_t listed = 0;
    for (int g = 0; g < tree->topLevelItemCount(); ++g) listed += static_cast<std::size_t>(tree->topLevelItem(g)->childCount());
    CHECK(listed == controlSites().size());
    for (const auto& [id, name] : controlSites()) {
        CAPTURE(id);
        CHECK(controlSiteGroup(id) != "Other");
    }
    tree->expandAll();
    shown.settle();
    // WCAG 2.2, 2.5.8: a target is at least 24 px high.
    CHECK(tree->visualItemRect(tree->topLevelItem(0)).height() >= 24);
    CHECK(tree->visualItemRect(tree->topLevelItem(0)->child(0)).height() >= 24);
}

TEST_CASE("Figures of a site: typed is measured, empty is not known, Esc leaves no trace") {
    GivensFixture f{withSite()};
    Shown<SitePanel> shown(f);
    auto* force = shown.find<NumberField>("site force");
    REQUIRE(force);
    CHECK(force->placeholderText() == "not known");
    const std::string before = f.json();
    force->setFocus(Qt::TabFocusReason);
    QTest::keyClicks(force, "2,5 N");
    CHECK(f.document.plan().sites.front().force_N.value == 2.5);
    QTest::keyClick(force, Qt::Key_Escape);
    CHECK(f.json() == before);
    QTest::keyClicks(force, "6");
    QTest::keyClick(force, Qt::Key_Return);
    CHECK(f.document.plan().sites.front().force_N == Figure{6, {BasisKind::measured, {}}});
    CHECK(qobject_cast<FieldRow*>(force->parentWidget())->basis() == BasisKind::measured);
    // The movement that is usual at the elbow stands greyly while none is typed.
    CHECK(shown.find<NumberField>("site movement")->placeholderText() == "40 mm");
    f.document.undo();
    CHECK(f.json() == before);
    CHECK(qobject_cast<FieldRow*>(force->parentWidget())->basis() == BasisKind::unknown);
}

TEST_CASE("A site stays where it is when it is given in another way") {
    GivensFixture f{withSite()};
    Shown<SitePanel> shown(f);
    const auto placed = [&] { return *f.analysis->situation()->site("elbow"); };
    const Site before = placed();
    for (const SiteGiven given : {SiteGiven::onBody, SiteGiven::fromPosture, SiteGiven::typed, SiteGiven::onBody, SiteGiven::typed, SiteGiven::fromPosture}) {
        auto* box = shown.find<ChoiceBox>("given");
        const int at = box->findData(static_cast<int>(given));
        REQUIRE(at >= 0);
        box->setCurrentIndex(at);
        emit box->activated(at);
        shown.settle();
        CHECK(f.document.plan().sites.front().given == given);
        CHECK((placed().p_W - before.p_W).norm() < 1e-9);
        CHECK((placed().d_W - before.d_W).norm() < 1e-9);
    }
}

TEST_CASE("The direction is typed as turned and upward, whatever frame the site is given in") {
    GivensFixture f{withSite()};
    Shown<SitePanel> shown(f);
    choose(shown.find<ChoiceBox>("direction given"), true);
    shown.settle();
    auto* upward = shown.find<NumberField>("direction elevation");
    auto* turned = shown.find<NumberField>("direction azimuth");
    REQUIRE(upward);
    turned->setFocus(Qt::TabFocusReason);
    turned->selectAll();
    QTest::keyClicks(turned, "-90");
    QTest::keyClick(turned, Qt::Key_Return);
    upward->setFocus(Qt::TabFocusReason);
    upward->selectAll();
    QTest::keyClicks(upward, "10");
    QTest::keyClick(upward, Qt::Key_Return);
    // 90 degrees to the right and 10 up: (0, -cos 10, sin 10).
    const Vec3 d = f.analysis->situation()->site("elbow")->d_W;
    CHECK((d - Vec3(0, -0.984807753, 0.173648178)).norm() < 1e-6);
    CHECK(shown.find<QLabel>("direction words")->text() == QString::fromUtf8("The body part moves to the right, 10° up."));
}

TEST_CASE("A typed point needs no person and can go with a part of the support") {
    Plan plan = GivensFixture::chairPlan();
    plan.supports.front().kind = "chair-tilt";
    GivensFixture f{plan};
    Shown<SitePanel> shown(f);
    CHECK(shown.find<QAbstractButton>("to person"));
    shown.find<QAbstractButton>("type site")->click();
    shown.settle();
    REQUIRE(f.document.plan().sites.size() == 1);
    auto* forward = shown.find<NumberField>("site point 0");
    REQUIRE(forward);
    forward->setFocus(Qt::TabFocusReason);
    forward->selectAll();
    REQUIRE(forward->hasFocus());
    QTest::keyClicks(forward, "40 cm - 25");
    QTest::keyClick(forward, Qt::Key_Return);
    CHECK(f.document.plan().sites.front().point.x() == Approx(0.375));
    choose(shown.find<ChoiceBox>("goes with"), QString("chair\ntilt"));
    CHECK(f.document.plan().sites.front().goesWithSupport == "chair");
    CHECK(f.document.plan().sites.front().goesWithGroup == "tilt");
    QTest::mouseClick(shown.find<QAbstractButton>("remove site"), Qt::LeftButton);
    CHECK(f.document.plan().sites.empty());
}

// The eight ways round and the two ends, by hand.
TEST_CASE("Movements in words") {
    CHECK(movementWords(Vec3(1, 0, 0)) == "forward");
    CHECK(movementWords(Vec3(0, 1, 0)) == "to the left");
    CHECK(movementWords(Vec3(-1, 0, 0)) == "backward");
    CHECK(movementWords(Vec3(0, -1, 0)) == "to the right");
    CHECK(movementWords(Vec3(1, -1, 0)) == "forward and to the right");
    CHECK(movementWords(Vec3(0, 0, 1)) == "up");
    CHECK(movementWords(Vec3(0, 0.05, -1)) == "down");
    CHECK(movementWords(Vec3(1, 0, -1)) == QString::fromUtf8("forward, 45° down"));
    for (const Vec3& d : {Vec3(1, 2, 3), Vec3(-1, 0.5, -2), Vec3(0, -1, 0)}) CHECK((directionOf(bearingOf(d)) - d.normalized()).norm() < 1e-12);
}

TEST_CASE("Every control of the site form has a name, a place in the order of tabs and room") {
    for (const Plan& plan : {withSite(), withPerson(), GivensFixture::chairPlan()}) {
        GivensFixture f{plan};
        Shown<SitePanel> shown(f);
        checkNames(*shown.panel);
        checkTabs(*shown.panel);
        const QFont usual = QApplication::font();
        QFont twice = usual;
        twice.setPointSizeF(2 * usual.pointSizeF());
        QApplication::setFont(twice);
        {
            Shown<SitePanel> large(f);
            checkRoom(*large.panel);
        }
        QApplication::setFont(usual);
    }
}
