#include <catch2/catch.hpp>

#include <algorithm>
#include <cmath>

#include <QPushButton>
#include <QToolButton>

#include "app/widgets/theme.h"
#include "build_fixture.h"
#include "core/chain/chain.h"
#include "givens_checks.h"

using namespace hither;
using namespace hither::test;

namespace {

QPushButton* button(QWidget& in, const QString& words) {
    for (auto* b : in.findChildren<QPushButton*>())
        if (b->text() == words && b->isVisibleTo(&in)) return b;
    return nullptr;
}

/// Searches for the ways to the site with the key that the panel leaves the keyboard on.
void bringToSite(BuildFixture& f) {
    auto* start = qobject_cast<QPushButton*>(QApplication::focusWidget());
    REQUIRE(start);
    REQUIRE(start->text() == "Bring to site");
    f.key(Qt::Key_Space);
    REQUIRE(QTest::qWaitFor([&] { return f.ways().state() != BuildWaysBar::State::searching; }, 60000));
    REQUIRE(f.ways().state() == BuildWaysBar::State::stepping);
    f.settle();
}

/// How far the switch's face is from its site, m, and its axis from the movement, rad.
std::pair<double, double> offSite(const BuildFixture& f) {
    const auto setup = f.analysis->setup();
    REQUIRE(setup);
    const SetupMount& m = setup->mounts.front();
    const Site* site = setup->situation.site(m.mount.site);
    REQUIRE(site);
    const Pose face = forward(m.chain, m.q).last();
    return {(face.translation() - site->p_W).norm(), std::acos(std::clamp((face.linear() * m.chain.operatingAxis).dot(site->d_W), -1.0, 1.0))};
}

}  // namespace

TEST_CASE("A mount is built, brought to its site and kept by the keyboard alone, one step each") {
    BuildFixture f;
    // A plan without a mount asks where to fix one, with nothing pressed before.
    REQUIRE(f.where().isVisible());
    f.where().list()->setFocus(Qt::TabFocusReason);
    std::vector<std::string> states{f.json()};
    const auto step = [&](const char* label) {
        CHECK(f.document.undoLabel() == label);
        states.push_back(f.json());
        CHECK(states.back() != states[states.size() - 2]);
    };
    REQUIRE(f.downTo(*f.where().list(), "chair/back_cane_right"));
    CHECK(f.view.picked() == Picked::attachment("chair", "back_cane_right"));
    f.key(Qt::Key_Return);
    CHECK(f.where().isHidden());
    CHECK_FALSE(f.document.canUndo());
    REQUIRE(f.takeByKeys("screw clamp", "screw-clamp-7-8-in"));
    step("Put Screw tube clamp, hinged, 7/8 in class on Back cane, right");
    REQUIRE(f.takeByKeys("arm", "arm-single-lock-130"));
    step("Add Single-lock arm, halves of 130 mm");
    REQUIRE(f.takeByKeys("back", "back-three-screws-40-4-40"));
    step("Add Switch back, three #4-40 screws on a circle of 40 mm");
    REQUIRE(f.takeByKeys("switch", "switch-round-medium"));
    step("Add Round switch, medium, 65 mm");
    CHECK(f.partIds() == std::vector<std::string>{"screw-clamp-7-8-in", "arm-single-lock-130", "back-three-screws-40-4-40", "switch-round-medium"});
    CHECK(f.option().mounts.front().site == "elbow");   // the only site, and nobody serves it yet
    CHECK(f.offers().isHidden());
    CHECK(offSite(f).first > 0.05);
    bringToSite(f);
    CHECK(f.json() != states.back());                   // the first way is shown
    const std::string first = f.json();
    f.key(Qt::Key_Right);
    CHECK(f.ways().way() == 1);
    CHECK(f.json() != first);
    f.key(Qt::Key_Left);
    CHECK(f.json() == first);
    f.key(Qt::Key_Space);                               // Keep has the keyboard
    CHECK(f.ways().state() == BuildWaysBar::State::idle);
    CHECK_FALSE(f.document.inGesture());
    step("Bring Mount 1 to its site");
    const auto [away, turned] = offSite(f);
    const Site* site = f.analysis->situation()->site("elbow");
    CHECK(away < site->tolerance_m);
    CHECK(turned < site->angleTolerance_rad);

    for (std::size_t i = states.size() - 1; i-- > 0;) {
        f.document.undo();
        f.settle();
        CHECK(f.json() == states[i]);
    }
    CHECK_FALSE(f.document.canUndo());
    CHECK(f.where().isVisible());
    for (std::size_t i = 1; i < states.size(); ++i) {
        f.document.redo();
        f.settle();
        CHECK(f.json() == states[i]);
    }
    CHECK_FALSE(f.document.canRedo());
    CHECK(f.where().isHidden());
}

TEST_CASE("Esc while the ways are shown leaves no trace") {
    BuildFixture f;
    REQUIRE(f.elbowMountByKeys());
    const std::string before = f.json();
    const QString label = f.document.undoLabel();
    bringToSite(f);
    f.key(Qt::Key_Right);
    CHECK(f.json() != before);
    f.key(Qt::Key_Escape);
    CHECK(f.ways().state() == BuildWaysBar::State::idle);
    CHECK(f.json() == before);
    CHECK(f.document.undoLabel() == label);
    CHECK_FALSE(f.document.canRedo());
    // Undo while a way is shown leaves the way and takes back the step before it.
    bringToSite(f);
    f.document.undo();
    f.settle();
    CHECK(f.ways().state() == BuildWaysBar::State::idle);
    CHECK(f.partIds().size() == 3);
    f.document.redo();
    f.settle();
    CHECK(f.json() == before);
}

TEST_CASE("A part that needs an adapter is added with it by one press") {
    BuildFixture f;
    // A clamp that ends in a 3/8 stud; the switch backs here have 1/4 sockets.
    REQUIRE(f.startByKeys("chair/back_cane_right", "3/8", "jaw-clamp-15-40-stud-3-8"));
    const std::string before = f.json();
    f.type("back three");
    REQUIRE(f.downTo(*f.offers().list(), "back-three-screws-40-4-40"));
    const Offer* offer = f.offers().current();
    REQUIRE(offer);
    REQUIRE(offer->fit == OfferFit::withAdapters);
    REQUIRE(offer->before.size() == 1);
    const std::string adapter = offer->before.front().part->id;
    QPushButton* add = nullptr;
    for (auto* b : f.offers().findChildren<QPushButton*>())
        if (b->text().startsWith("Add with")) add = b;
    REQUIRE(add);
    CHECK(add->accessibleName().contains(QString::fromStdString(offer->before.front().part->name)));
    QTest::mouseClick(add, Qt::LeftButton);
    f.settle();
    CHECK(f.partIds() == std::vector<std::string>{"jaw-clamp-15-40-stud-3-8", adapter, "back-three-screws-40-4-40"});
    const auto setup = f.analysis->setup();
    REQUIRE(setup);
    for (const ChainMate& mate : setup->mounts.front().chain.mates) CHECK(mate.mate.goesTogether());
    f.document.undo();
    CHECK(f.json() == before);
}

TEST_CASE("What does not go together cannot be added, and says why") {
    BuildFixture f;
    REQUIRE(f.where().isVisible());
    f.where().list()->setFocus(Qt::TabFocusReason);
    REQUIRE(f.downTo(*f.where().list(), "chair/back_cane_right"));
    f.key(Qt::Key_Return);
    f.type("desk clamp");
    const Offer* offer = f.offers().current();
    REQUIRE(offer);
    CHECK(offer->fit == OfferFit::no);
    CHECK_FALSE(offer->words.empty());
    CHECK_FALSE(button(f.offers(), "Add")->isEnabled());
    const std::string before = f.json();
    f.key(Qt::Key_Return);
    CHECK(f.json() == before);
    CHECK(f.offers().isVisible());
    f.key(Qt::Key_Escape);   // the words
    CHECK(f.offers().isVisible());
    f.key(Qt::Key_Escape);   // the list
    CHECK(f.offers().isHidden());
    CHECK(f.where().isVisible());
}

TEST_CASE("Replacing a part in the middle leaves the settings of the others") {
    BuildFixture f;
    REQUIRE(f.elbowMountByKeys());
    bringToSite(f);
    f.key(Qt::Key_Space);
    const Mount before = f.option().mounts.front();
    f.chain().list()->setFocus(Qt::TabFocusReason);
    REQUIRE(f.downTo(*f.chain().list(), "part/3"));
    f.key(Qt::Key_Up);
    f.key(Qt::Key_Up);
    REQUIRE(f.chain().part() == 1);
    button(f.chain(), "Replace")->setFocus(Qt::TabFocusReason);
    f.key(Qt::Key_Space);
    REQUIRE(f.takeByKeys("arm", "arm-single-lock-160"));
    CHECK(f.document.undoLabel() == "Replace Single-lock arm, halves of 130 mm by Single-lock arm, halves of 160 mm");
    const Mount& now = f.option().mounts.front();
    REQUIRE(now.parts.size() == 4);
    CHECK(now.parts[1].part == "arm-single-lock-160");
    CHECK(now.parts[0] == before.parts[0]);
    CHECK(now.parts[2] == before.parts[2]);
    CHECK(now.parts[3] == before.parts[3]);
    CHECK(now.place == before.place);
    CHECK(now.site == before.site);
    f.document.undo();
    CHECK(f.option().mounts.front() == before);
}

TEST_CASE("Another mount beside the first; Esc goes back without one") {
    BuildFixture f;
    REQUIRE(f.elbowMountByKeys());
    CHECK(f.where().isHidden());
    const std::string before = f.json();
    QTest::mouseClick(button(f.panel(), "New mount"), Qt::LeftButton);
    f.settle();
    REQUIRE(f.where().isVisible());
    f.key(Qt::Key_Escape);
    CHECK(f.where().isHidden());
    CHECK(f.json() == before);
    REQUIRE(f.startByKeys("chair/seat_rail_left", "screw clamp", "screw-clamp-7-8-in"));
    REQUIRE(f.option().mounts.size() == 2);
    CHECK(f.option().mounts[1].name == "Mount 2");
    CHECK(f.view.mount()->id == f.option().mounts[1].id);
}
