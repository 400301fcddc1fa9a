#include <algorithm>
#include <array>
#include <utility>

#include "core/situation/person.h"

namespace hither {
namespace {

constexpr std::array<std::pair<Segment, const char*>, 10> segmentWords{{
    {Segment::pelvis, "pelvis"}, {Segment::trunk, "trunk"}, {Segment::neck, "neck"}, {Segment::head, "head"},
    {Segment::upperArm, "upper_arm"}, {Segment::forearm, "forearm"}, {Segment::hand, "hand"},
    {Segment::thigh, "thigh"}, {Segment::shank, "shank"}, {Segment::foot, "foot"}}};

bool paired(Segment segment) {
    return segment != Segment::pelvis && segment != Segment::trunk && segment != Segment::neck && segment != Segment::head;
}

}  // namespace

std::string word(SegmentId id) {
    const auto found = std::find_if(segmentWords.begin(), segmentWords.end(), [&](const auto& each) { return each.first == id.segment; });
    std::string text = found->second;
    if (id.side == Side::left) text += "_left";
    if (id.side == Side::right) text += "_right";
    return text;
}

std::optional<SegmentId> segmentFromWord(const std::string& text) {
    for (const auto& [segment, base] : segmentWords) {
        if (!paired(segment) && text == base) return SegmentId{segment, Side::none};
        for (const Side side : {Side::left, Side::right})
            if (paired(segment) && text == word(SegmentId{segment, side})) return SegmentId{segment, side};
    }
    return std::nullopt;
}

}  // namespace hither
