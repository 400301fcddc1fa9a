#include "core/catalogue/reversed.h"

#include <algorithm>
#include <cassert>
#include <cmath>

namespace hither {

namespace {

/// F = Rx(180 deg) turns a port frame's z about; it is its own inverse.
const Pose F = pose(Vec3(1, -1, -1).asDiagonal().toDenseMatrix(), Vec3::Zero());

/// Axis of a turn or slide as the turned element sees it: R(a, q)^-1 = R(a, -q) = R(-a, q).
Vec3 mirrored(const Vec3& axis) { return {-axis.x(), axis.y(), axis.z()}; }

struct Turner {
    RigidElement operator()(RigidElement rigid) const {
        // What E carried is seen from the new incoming frame, the old outgoing one turned about.
        const Pose X_newE = F * rigid.X.inverse();
        for (Solid& solid : rigid.solids) solid = solid.movedBy(X_newE);
        rigid.centreOfMass = X_newE * rigid.centreOfMass;
        rigid.X = X_newE * F;
        return rigid;
    }
    HingeElement operator()(HingeElement hinge) const { hinge.axis = mirrored(hinge.axis); return hinge; }
    SlideElement operator()(SlideElement slide) const { slide.axis = mirrored(slide.axis); return slide; }
    SwivelElement operator()(SwivelElement swivel) const { return swivel; }  // its axis z is its own mirror image
    BallElement operator()(BallElement ball) const { return ball; }
    BendElement operator()(BendElement bend) const { return bend; }
};

}  // namespace

Part reversed(const Part& part) {
    assert(part.reversible && part.bases.size() == 1 && part.outlet && part.keepFree.empty());
    Part turned = part;
    turned.bases = {*part.outlet};
    turned.outlet = part.bases.front();
    std::reverse(turned.elements.begin(), turned.elements.end());
    for (Element& element : turned.elements)
        element.what = std::visit([](const auto& what) -> decltype(Element::what) { return Turner{}(what); }, element.what);
    return turned;
}

std::vector<double> reversedValues(const Element& element, const std::vector<double>& q) {
    assert(q.size() == static_cast<std::size_t>(element.freedoms()));
    if (std::holds_alternative<BallElement>(element.what)) {
        const double c = std::cos(q[2]), s = std::sin(q[2]);
        return {-c * q[0] - s * q[1], -s * q[0] + c * q[1], q[2]};
    }
    if (std::holds_alternative<BendElement>(element.what)) return {-q[4], q[5], -q[2], q[3], -q[0], q[1]};
    return q;
}

}  // namespace hither
