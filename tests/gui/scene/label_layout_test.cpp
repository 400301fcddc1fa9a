#include <catch2/catch.hpp>

#include <random>

#include "app/scene/label_layout.h"

using namespace hither;

TEST_CASE("Labels that must be seen stay in the view; no label covers another") {
    std::mt19937 random(11);
    std::uniform_real_distribution<double> x(-40, 640), y(-40, 440), wide(60, 180);
    for (int round = 0; round < 50; ++round) {
        std::vector<LabelWish> wishes;
        for (int i = 0; i < 12; ++i) wishes.push_back({std::to_string(i), QPointF(x(random), y(random)), QSizeF(wide(random), 22), i < 2 ? i : 2, i >= 2});
        LabelLayout layout;
        const std::vector<LabelPlace> places = layout.place(wishes, QSizeF(600, 400));
        const QRectF view(0, 0, 600, 400);
        int needed = 0;
        for (const LabelPlace& p : places) {
            CHECK(view.contains(p.box));
            CHECK(p.box.size() == wishes[p.wish].size);
            if (!wishes[p.wish].optional) ++needed;
            for (const LabelPlace& q : places)
                if (&p != &q) CHECK_FALSE(p.box.intersects(q.box));
        }
        CHECK(needed == 2);
    }
}

TEST_CASE("A label keeps its side while there is room there") {
    LabelLayout layout;
    const std::vector<LabelWish> crowded = {{"first", QPointF(300, 200), QSizeF(100, 22), 0, false}, {"second", QPointF(302, 202), QSizeF(100, 22), 1, false}};
    const std::vector<LabelPlace> before = layout.place(crowded, QSizeF(600, 400));
    REQUIRE(before.size() == 2);
    // The other one is gone: the second stays where it was instead of taking the better place.
    const std::vector<LabelPlace> after = layout.place({crowded[1]}, QSizeF(600, 400));
    REQUIRE(after.size() == 1);
    CHECK(after[0].box == before[1].box);
    LabelLayout fresh;
    CHECK(fresh.place({crowded[1]}, QSizeF(600, 400))[0].box != before[1].box);
}
