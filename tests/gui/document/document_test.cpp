#include <catch2/catch.hpp>

#include "app/document/document.h"
#include "core/plan/edits/about.h"

using namespace hither;

TEST_CASE("A gesture is one step, and cancelled it leaves no trace") {
    Document document{QString()};
    document.startWith(Plan{}, false);
    document.beginGesture("Title");
    REQUIRE(document.preview(setTitle(document.gestureStart(), "A")));
    REQUIRE(document.preview(setTitle(document.gestureStart(), "AB")));
    document.endGesture();
    CHECK(document.plan().title == "AB");
    document.undo();
    CHECK(document.plan().title.empty());
    CHECK_FALSE(document.canUndo());
    document.redo();
    document.beginGesture("Title");
    REQUIRE(document.preview(setTitle(document.gestureStart(), "C")));
    document.cancelGesture();
    CHECK(document.plan().title == "AB");
    CHECK_FALSE(document.canRedo());
    CHECK(document.modified());
    document.undo();
    CHECK_FALSE(document.modified());
}
