#include <catch2/catch.hpp>

#include "app/document/view_state.h"
#include "core/plan/edits/mounts.h"
#include "core/plan/edits/options.h"
#include "core/plan/edits/parts.h"
#include "core/plan/edits/sites.h"
#include "tests/unit/plan/fixture.h"

using namespace hither;
using namespace hither::test;

TEST_CASE("What no longer exists is no longer picked, and comes back without being picked") {
    Document document{QString()};
    document.startWith(smallPlan(), false);
    ViewState view(document);
    int told = 0;
    QObject::connect(&view, &ViewState::pickedChanged, &view, [&] { ++told; });
    CHECK(view.option() == "first");
    REQUIRE(view.mount());
    CHECK(view.mount()->id == "main");

    view.pick(Picked::jointOf("main", 1, "elbow"));
    CHECK(told == 1);
    view.setOfferFor({OfferFor::Kind::outlet, {}, {}, {}, "main", 1});
    REQUIRE(document.apply("Replace the arm", replacePart(document.plan(), "first", "main", 1, neckPart())));
    CHECK(view.picked().nothing());  // a gooseneck has no elbow
    CHECK(view.offerFor().kind == OfferFor::Kind::outlet);
    document.undo();
    CHECK(view.picked().nothing());
    CHECK(told == 2);

    view.pick(Picked::partOf("main", 2));
    REQUIRE(document.apply("Take the mount away", removeMount(document.plan(), "first", "main")));
    CHECK(view.picked().nothing());
    CHECK(view.offerFor() == OfferFor{});
    CHECK(view.mount() == nullptr);
}

TEST_CASE("The option in view follows the plan") {
    Document document{QString()};
    document.startWith(smallPlan(), false);
    ViewState view(document);
    REQUIRE(document.apply("Copy", copyOption(document.plan(), "first", "second", "Second")));
    view.setOption("second");
    view.showFinding("aim:main");
    view.setOption("nobody");
    CHECK(view.option() == "second");
    CHECK(view.optionIndex() == 1);
    document.undo();
    CHECK(view.option() == "first");
    CHECK(view.finding() == "aim:main");
    Plan other = smallPlan();
    other.id = "other";
    other.options.clear();
    document.startWith(other, false);
    CHECK(view.option().empty());
    CHECK(view.optionIndex() == -1);
    CHECK(view.finding().isEmpty());
}

TEST_CASE("Somebody who changes the document when told that nothing is picked any more does no harm") {
    Document document{QString()};
    document.startWith(smallPlan(), false);
    ViewState view(document);
    view.pick(Picked::site("elbow_right"));
    view.setOfferFor({OfferFor::Kind::outlet, {}, {}, {}, "main", 1});
    QObject::connect(&view, &ViewState::pickedChanged, &view, [&] {
        document.startWith(Plan{}, false);
    });
    Plan without = smallPlan();
    without.sites.clear();
    without.options[0].mounts[0].site.clear();
    document.startWith(without, false);
    CHECK(document.plan().options.empty());
    CHECK(view.option().empty());
    CHECK(view.offerFor() == OfferFor{});
}
