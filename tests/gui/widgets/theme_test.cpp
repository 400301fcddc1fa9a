#include <catch2/catch.hpp>

#include "app/widgets/theme.h"

using namespace hither;

TEST_CASE("Contrast is the one of WCAG 2.1") {
    CHECK(contrast(Qt::black, Qt::white) == Approx(21));
    CHECK(contrast(Qt::white, Qt::white) == Approx(1));
    CHECK(contrast(QColor("#767676"), Qt::white) == Approx(4.54).margin(0.005));  // the greyest text on white that passes 4.5 : 1, WCAG technique G18
}

TEST_CASE("Every pair of colours keeps its contrast in light and dark") {
    for (const Theme* theme : {&Theme::light(), &Theme::darkOne()})
        for (const Theme::Pair& pair : theme->pairs()) {
            INFO((theme->dark ? "dark: " : "light: ") << pair.what.toStdString() << ", " << pair.front.name().toStdString() << " on " << pair.back.name().toStdString());
            CHECK(contrast(pair.front, pair.back) >= pair.least);
        }
}
