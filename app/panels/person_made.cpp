#include "app/panels/person_made.h"

#include <algorithm>
#include <cmath>

namespace hither {
namespace {

/// a, b, c of Ry(a) Rx(b) Rz(c).
struct Turns { double a = 0, b = 0, c = 0; };
Turns turnsOf(const Mat3& R) {
    return {std::atan2(R(0, 2), R(2, 2)), std::asin(std::clamp(-R(1, 2), -1.0, 1.0)), std::atan2(R(1, 0), R(1, 1))};
}

}  // namespace

Posture postureOf(const Body& body, const Support& support) {
    // What moves with the support's groups is put back to where everything is at zero.
    const auto rotation = [&](Segment segment, Side side) -> Mat3 {
        const SegmentId id{segment, side};
        return (support.X_WS * groupPose_S(support, body.group.at(id))).linear().transpose() * body.X_WSegment.at(id).linear();
    };
    const auto between = [&](Segment parent, Side parentSide, Segment child, Side side) { return turnsOf(rotation(parent, parentSide).transpose() * rotation(child, side)); };
    Posture all;
    const Turns neck = between(Segment::trunk, Side::none, Segment::neck, Side::none);
    all["neck_flexion"] = neck.a;
    all["neck_bend"] = neck.b;
    all["neck_rotation"] = between(Segment::neck, Side::none, Segment::head, Side::none).c;
    for (const Side side : {Side::left, Side::right}) {
        const std::string end = side == Side::left ? "_left" : "_right";
        const double out = side == Side::left ? 1 : -1;
        const auto three = [&](const char* joint, const Turns& t) {
            all[joint + ("_flexion" + end)] = -t.a;
            all[joint + ("_abduction" + end)] = out * t.b;
            all[joint + ("_rotation" + end)] = out * t.c;
        };
        three("shoulder", between(Segment::trunk, Side::none, Segment::upperArm, side));
        three("hip", between(Segment::pelvis, Side::none, Segment::thigh, side));
        all["elbow_flexion" + end] = -between(Segment::upperArm, side, Segment::forearm, side).a;
        all["knee_flexion" + end] = between(Segment::thigh, side, Segment::shank, side).a;
        all["ankle_flexion" + end] = -between(Segment::shank, side, Segment::foot, side).a;
        // Pronation comes first in the hand and the wrist's deviation last: read from the other end.
        const Turns hand = turnsOf(rotation(Segment::hand, side).transpose() * rotation(Segment::forearm, side));
        all["forearm_pronation" + end] = out * hand.c;
        all["wrist_flexion" + end] = out * hand.b;
        all["wrist_deviation" + end] = hand.a;
    }
    return all;
}

bool canRestOn(const SupportSpec& support) {
    const SupportMade made = makeSupport(support);
    return made.support && made.support->resting.posture != Resting::Posture::none;
}

const SupportSpec* supportToRestOn(const Plan& plan) {
    for (const SupportSpec& s : plan.supports)
        if (plan.person && !plan.person->on.empty() ? s.id == plan.person->on : canRestOn(s)) return &s;
    return nullptr;
}

PersonMade personMade(const Plan& plan, const BodyData& data) {
    PersonMade all;
    if (!plan.person) return all;
    const SupportSpec* on = supportToRestOn(plan);
    SupportMade support = on ? makeSupport(*on) : SupportMade{};
    if (!support.support) {
        all.size = data.size(plan.person->body, all.problems);
        return all;
    }
    all.support = std::make_shared<const Support>(std::move(*support.support));
    BodyMade made = makeBody(*plan.person, *all.support, data);
    all.problems = std::move(made.problems);
    if (!made.body) {
        std::vector<std::string> again;
        all.size = data.size(plan.person->body, again);
        return all;
    }
    all.size = made.body->size;
    if (!plan.person->posture.empty()) {
        PersonSpec resting = *plan.person;
        resting.posture.clear();
        made = makeBody(resting, *all.support, data);
    }
    if (made.body) all.rest = postureOf(*made.body, *all.support);
    return all;
}

BodyLimits bodyLimits(const std::string& dimension, const BodySpec& body, const BodyData& data) {
    const bool child = body.table == BodyTable::child;
    if (dimension == "weightkg") return {5, 400};           // as the core allows
    if (dimension == "stature") return child ? BodyLimits{0.7, 2.0} : BodyLimits{0.5, 2.7};
    double usual = 0;
    if (!child) {
        usual = data.tables.at(body.table).statistics.at(dimension).mean;
    } else if (const auto stature = body.typed.find("stature"); stature != body.typed.end()) {
        std::vector<std::string> problems;
        const BodySize size = data.size({BodyTable::child, {}, {{"stature", stature->second}}}, problems);
        if (const auto at = size.dimensions.find(dimension); at != size.dimensions.end()) usual = at->second.value;
    }
    if (usual <= 0) return {0.01, 2.5};
    return {0.3 * usual, 2.5 * usual};                      // as the core allows
}

}  // namespace hither
