#pragma once
#include "core/situation/support_maker.h"

namespace hither {

/// What chairs have in common: seat, back, armrests, push handles, foot rests. The three kinds
/// differ in what carries the seat and what moves.
struct ChairParts {
    std::string seatGroup, backGroup, legGroup;  ///< groups of the seat with the arms, the back, the foot rests
    bool headrest = false;                       ///< a head rest on a post of its own
    bool backBar = false;                        ///< a bar across behind the back
};

/// Directions and places of the seat, in S: "seat_width" and so on as the chairs' dimensions say.
struct ChairShape {
    explicit ChairShape(const SupportMaker& maker);
    double width, depth, height;
    Vec3 hip;       ///< middle of the line where seat and back meet
    Vec3 along;     ///< along the seat, to the front
    Vec3 seatUp;    ///< away from the seat
    Vec3 backUp;    ///< along the back, upward
    Vec3 backFront; ///< away from the back, toward the person
    /// Point of the seat plane, `forward` along the seat from the hip line and `side` across (+ left).
    Vec3 onSeat(double forward, double side) const { return hip + forward * along + Vec3(0, side, 0); }
};

/// The dimensions that all chairs have, with the seat's height as given.
std::vector<SupportDimension> chairDimensions(double seatHeight_mm, double minHeight_mm);
void makeChairSeat(SupportMaker& maker, const ChairParts& parts);
/// A wheel standing on the floor and its landmark at the middle of its outer side.
void makeWheel(SupportMaker& maker, const std::string& id, const std::string& name, int side, double x, double inner, double diameter, double width);

}  // namespace hither
