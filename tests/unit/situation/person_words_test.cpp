#include <catch2/catch.hpp>

#include <set>

#include "core/situation/person.h"

using namespace hither;

TEST_CASE("segments have words and words have segments", "[body]") {
    std::set<std::string> words;
    for (const Segment segment : {Segment::pelvis, Segment::trunk, Segment::neck, Segment::head, Segment::upperArm, Segment::forearm, Segment::hand, Segment::thigh, Segment::shank, Segment::foot})
        for (const Side side : {Side::none, Side::left, Side::right}) {
            const bool middle = segment == Segment::pelvis || segment == Segment::trunk || segment == Segment::neck || segment == Segment::head;
            if (middle != (side == Side::none)) continue;
            const SegmentId id{segment, side};
            CHECK(words.insert(word(id)).second);
            const auto back = segmentFromWord(word(id));
            REQUIRE(back);
            CHECK(*back == id);
        }
    CHECK(words.size() == 16);
    CHECK(word({Segment::forearm, Side::right}) == "forearm_right");
    for (const char* wrong : {"", "forearm", "head_left", "tail", "Forearm_right", "forearm_right "}) CHECK(!segmentFromWord(wrong));
}

TEST_CASE("control sites have ids of their own and twins", "[body]") {
    std::set<std::string> ids;
    for (const auto& [id, name] : controlSites()) {
        CHECK(ids.insert(id).second);
        CHECK(!name.empty());
    }
    for (const auto& id : ids) {
        const auto left = id.rfind("_left");
        if (left != std::string::npos) CHECK(ids.count(id.substr(0, left) + "_right"));
    }
}
