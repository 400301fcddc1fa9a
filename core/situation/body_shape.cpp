#include "core/situation/body_shape.h"

#include <algorithm>
#include <cmath>
#include <cstdio>

namespace hither {
namespace {

std::string inMillimetres(double metres) {
    char text[32];
    std::snprintf(text, sizeof text, "%.0f mm", metres * 1000);
    return text;
}

}  // namespace

std::optional<BodyShape> bodyShape(const BodySize& size, std::vector<std::string>& problems) {
    BodyShape s;
    const double stature = size.m("stature");
    const double sitting = size.m("sittingheight"), eye = size.m("eyeheightsitting");
    const double acromion = size.m("acromialheightsitting"), elbowRest = size.m("elbowrestheight");
    const std::size_t before = problems.size();
    const auto ordered = [&](double lower, const char* lowerName, double upper, const char* upperName, double least) {
        if (upper - lower < least)
            problems.push_back(std::string("\"") + upperName + "\" (" + inMillimetres(upper) + ") must be at least " + inMillimetres(least) + " more than \"" + lowerName + "\" (" + inMillimetres(lower) + ")");
    };
    ordered(eye, "eyeheightsitting", sitting, "sittingheight", 0.04);
    ordered(acromion, "acromialheightsitting", eye, "eyeheightsitting", 0.06);
    ordered(elbowRest, "elbowrestheight", acromion, "acromialheightsitting", 0.10);
    ordered(size.m("poplitealheight"), "poplitealheight", size.m("kneeheightsitting"), "kneeheightsitting", 0.05);
    ordered(size.m("lateralmalleolusheight"), "lateralmalleolusheight", size.m("poplitealheight"), "poplitealheight", 0.08);
    ordered(size.m("biacromialbreadth"), "biacromialbreadth", size.m("bideltoidbreadth"), "bideltoidbreadth", 0.01);

    // Legs. The knee is a ball that touches the top of the knee, its hollow and its front.
    s.kneeRadius = 0.5 * (size.m("kneeheightsitting") - size.m("poplitealheight"));
    s.hipForward = 0.075 * stature;
    s.hipAbove = 0.5 * size.m("thighclearance");
    s.hipHalf = 0.22 * size.m("hipbreadthsitting");
    const double thighForward = size.m("buttockkneelength") - s.hipForward - s.kneeRadius;
    ordered(s.hipForward + s.kneeRadius, "hip to back and half the knee", size.m("buttockkneelength"), "buttockkneelength", 0.08);
    if (problems.size() > before) return std::nullopt;
    s.thigh = std::hypot(thighForward, s.hipAbove - s.kneeRadius);
    s.ankleAbove = size.m("lateralmalleolusheight");
    s.shank = size.m("poplitealheight") + s.kneeRadius - s.ankleAbove;
    s.footLength = size.m("footlength");
    s.footBreadth = size.m("footbreadthhorizontal");

    // Arms. The elbow joint is at the radiale; shoulder-elbow length reaches to the elbow's underside.
    s.elbowRadius = std::clamp(size.m("shoulderelbowlength") - size.m("acromionradialelength"), 0.008, 0.06);
    s.upperArm = size.m("acromionradialelength") - 0.02 * stature;
    s.shoulderAbove = elbowRest + s.elbowRadius + s.upperArm;
    const double leastBelow = 0.003, mostBelow = 0.05 * stature;
    const double fitted = std::clamp(s.shoulderAbove, acromion - mostBelow, acromion - leastBelow);
    if (fitted != s.shoulderAbove) {
        problems.push_back("\"acromialheightsitting\", \"elbowrestheight\" and the upper arm do not go together: the upper arm is made " + inMillimetres(std::abs(fitted - s.shoulderAbove)) +
                           (fitted < s.shoulderAbove ? " shorter" : " longer") + " so that both heights hold; measure again, sitting upright with relaxed shoulders");
        s.upperArm += fitted - s.shoulderAbove;
        s.shoulderAbove = fitted;
        if (s.upperArm < 0.05) return std::nullopt;
    }
    s.forearm = size.m("radialestylionlength");
    s.forearmRadius = 0.95 * size.m("forearmcircumferenceflexed") / (2 * M_PI);
    s.shoulderHalf = 0.96 * 0.5 * size.m("biacromialbreadth");
    s.shoulderForward = 0.4 * size.m("chestdepth");
    s.hand = size.m("handlength");
    s.handBreadth = size.m("handbreadth");

    // Trunk, neck, head.
    s.headLength = size.m("headlength");
    s.headBreadth = size.m("headbreadth");
    const Vec3 pelvis(s.hipForward, 0, s.hipAbove);
    const Vec3 trunk(s.hipForward, 0, s.hipAbove + 0.055 * stature);
    const Vec3 neck(s.hipForward - 0.009 * stature, 0, acromion + 0.25 * (eye - acromion));
    const double tragion = sitting - size.m("tragiontopofhead");
    const Vec3 head(s.hipForward + 0.006 * stature, 0, std::max(tragion - 0.01, neck.z() + 0.3 * (eye - neck.z())));
    s.acromion_Trunk = acromion - trunk.z();
    s.chin_Head = eye - 0.6 * s.headLength - head.z();
    s.headMiddle_Head = Vec3(0.003 * stature, 0, sitting - 0.68 * size.m("tragiontopofhead") - head.z());
    s.eyes_Head = Vec3(s.headMiddle_Head.x() + 0.40 * s.headLength, 0, eye - head.z());

    s.joint[{Segment::pelvis, Side::none}] = pelvis;
    s.joint[{Segment::trunk, Side::none}] = trunk - pelvis;
    s.joint[{Segment::neck, Side::none}] = neck - trunk;
    s.joint[{Segment::head, Side::none}] = head - neck;
    for (const Side side : {Side::left, Side::right}) {
        const double y = side == Side::left ? 1 : -1;
        s.joint[{Segment::upperArm, side}] = Vec3(s.shoulderForward, y * s.shoulderHalf, s.shoulderAbove) - trunk;
        s.joint[{Segment::forearm, side}] = Vec3(0, 0, -s.upperArm);
        s.joint[{Segment::hand, side}] = Vec3(0, 0, -s.forearm);
        s.joint[{Segment::thigh, side}] = Vec3(0, y * s.hipHalf, 0);
        s.joint[{Segment::shank, side}] = Vec3(0, 0, -s.thigh);
        s.joint[{Segment::foot, side}] = Vec3(0, 0, -s.shank);
    }
    addBodySolids(s, size);
    return s;
}

}  // namespace hither
