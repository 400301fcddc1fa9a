#include "tests/gui/panels/build_desk.h"

#include "core/checks/serving.h"

using namespace hither;
using namespace hither::test;

namespace {
/// Steps that can be undone.
int steps(Document& d) {
    int count = 0;
    while (d.canUndo()) { d.undo(); ++count; }
    for (int i = 0; i < count; ++i) d.redo();
    return count;
}
}  // namespace

TEST_CASE("A mount is built from nothing, brought to its site and kept by keyboard alone") {
    BuildDesk b(withoutMounts(samplePlan("elbow_switch_on_chair")));
    const std::string start = b.json();

    // Where: the right back cane.
    b.panel.setFocus();
    b.window.setFocus();
    b.shortcut("Ctrl+M");
    REQUIRE(b.focus() == b.where().list());
    const QString cane = "chair/back_cane_right";
    for (int i = 0; i < 60 && b.where().list()->currentKey() != cane; ++i) b.key(Qt::Key_Down);
    REQUIRE(b.where().list()->currentKey() == cane);
    CHECK(b.view.picked() == Picked::attachment("chair", "back_cane_right"));
    b.key(Qt::Key_Return);
    CHECK(b.view.offerFor().kind == OfferFor::Kind::attachment);

    // What: words, Enter; the list goes on to the next free end by itself.
    b.type("hinged 7/8");
    REQUIRE(b.offers().current());
    CHECK(b.offers().current()->part->id == "screw-clamp-7-8-in");
    b.key(Qt::Key_Return);
    REQUIRE(b.view.mount());
    CHECK(b.mount().attachment == "back_cane_right");
    CHECK(b.view.offerFor().kind == OfferFor::Kind::outlet);
    CHECK(b.focus()->inherits("QLineEdit"));
    CHECK(static_cast<QLineEdit*>(b.focus())->text().isEmpty());

    b.type("single-lock 200");
    b.key(Qt::Key_Return);
    b.type("three 4-40");
    b.key(Qt::Key_Return);
    b.type("switch");
    for (int i = 0; i < 40 && b.offers().current()->part->id != "switch-round-medium"; ++i) b.key(Qt::Key_Down);
    b.key(Qt::Key_Return);
    CHECK(b.parts() == std::vector<std::string>{"screw-clamp-7-8-in", "arm-single-lock-200", "back-three-screws-40-4-40", "switch-round-medium"});
    CHECK(b.mount().site == "elbow");   // the site that no switch served
    CHECK(b.view.offerFor().kind == OfferFor::Kind::nothing);
    CHECK(b.refused.isEmpty());

    // To the site: the focus stands on the button already.
    const std::string built = b.json();
    CHECK(static_cast<QPushButton*>(b.focus())->text() == "Bring to site");
    b.key(Qt::Key_Space);
    b.waitForWays();
    REQUIRE(b.ways().state() == BuildWaysBar::State::stepping);
    CHECK(b.document.inGesture());
    const std::string first = b.json();
    CHECK(first != built);
    b.shortcut("Alt+PgDown");
    CHECK(b.ways().way() == 1);
    CHECK(b.json() != first);
    b.shortcut("Alt+PgUp");
    CHECK(b.json() == first);
    b.key(Qt::Key_Escape);
    CHECK(b.ways().state() == BuildWaysBar::State::idle);
    CHECK(b.json() == built);
    CHECK(steps(b.document) == 4);
    b.shortcut("Ctrl+B");
    b.waitForWays();
    b.key(Qt::Key_Return);   // "Keep" has the focus
    CHECK(b.ways().state() == BuildWaysBar::State::idle);
    CHECK(steps(b.document) == 5);
    const std::shared_ptr<const Setup> setup = b.analysis.setup();
    REQUIRE(setup);
    const SetupMount& m = setup->mounts[0];
    const Site& site = *setup->situation.site("elbow");
    CHECK(faceToPoint(m, forward(m.chain, m.q).last(), site.p_W) < 1e-5);

    const std::string end = b.json();
    while (b.document.canUndo()) b.document.undo();
    CHECK(b.json() == start);
    while (b.document.canRedo()) b.document.redo();
    CHECK(b.json() == end);
}

TEST_CASE("Parts are replaced, turned and removed from the list, Delete only there") {
    BuildDesk b(samplePlan("elbow_switch_on_chair"));
    const std::string start = b.json();
    b.chain().list()->setFocus();
    b.key(Qt::Key_Down);
    b.key(Qt::Key_Down);
    CHECK(b.view.picked() == Picked::partOf("elbow-mount", 1));
    b.shortcut("Ctrl+R");
    b.type("gooseneck 300 thin");
    REQUIRE(b.offers().current());
    b.key(Qt::Key_Return);
    CHECK(b.parts()[1] == "gooseneck-300-thin");
    CHECK(b.parts().size() == 4);
    CHECK(b.view.offerFor().kind == OfferFor::Kind::nothing);
    b.shortcut("Ctrl+T");
    CHECK(b.mount().parts[1].reversed);
    b.chain().list()->setFocus();
    b.key(Qt::Key_Delete);
    CHECK(b.parts() == std::vector<std::string>{"screw-clamp-7-8-in", "back-three-screws-40-4-40", "switch-round-medium"});
    // In a field Delete deletes a letter and no part.
    b.view.pick(Picked::partOf("elbow-mount", 1));
    b.shortcut("Insert");
    b.type("x");
    b.key(Qt::Key_Home);
    b.key(Qt::Key_Delete);
    CHECK(b.parts().size() == 3);
    while (b.document.canUndo()) b.document.undo();
    CHECK(b.json() == start);
}

TEST_CASE("Nothing goes behind a switch, and nothing is offered there") {
    BuildDesk b(samplePlan("elbow_switch_on_chair"));
    CHECK_FALSE(b.chain().canAdd());   // nothing picked, no free end
    b.view.pick(Picked::partOf("elbow-mount", 3));
    CHECK_FALSE(b.actions.action("build.add_part")->isEnabled());
    b.chain().list()->setFocus();
    b.key(Qt::Key_Return);
    CHECK(b.view.offerFor().kind == OfferFor::Kind::nothing);
    b.view.pick(Picked::partOf("elbow-mount", 2));
    CHECK(b.actions.action("build.add_part")->isEnabled());
}

TEST_CASE("Esc in the offers leaves them, and asks first what is typed") {
    BuildDesk b(samplePlan("elbow_switch_on_chair"));
    b.view.pick(Picked::partOf("elbow-mount", 0));
    b.shortcut("Insert");
    b.type("neck");
    b.key(Qt::Key_Escape);
    CHECK(b.view.offerFor().kind == OfferFor::Kind::outlet);
    b.key(Qt::Key_Escape);
    CHECK(b.view.offerFor().kind == OfferFor::Kind::nothing);
    CHECK(b.focus() == b.chain().list());
}
