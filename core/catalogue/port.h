#pragma once
#include <optional>
#include <string>
#include <vector>

#include "core/units/basis.h"
#include "core/units/thread.h"

namespace hither {

/// How two parts meet. Threads are open standards; the others are plain descriptions.
enum class Interface { thread, dovetailPlate, accessoryShoe, hookAndLoop, adhesivePad, boltPattern };
/// `male` goes in or onto (stud, plate, foot, hook, pad with glue, screws); `female` receives
/// (socket, plate clamp, shoe, loop, clean flat back, holes).
enum class Gender { male, female };

/// Holes or screws of a switch back: `count` equally spaced on a circle (two: on a line, one: a
/// single screw in the middle, circle 0). A slotted plate takes circles from `circleMin_m` to
/// `circleMax_m`; a plain one has both equal.
struct BoltPattern {
    int count = 0;
    double circleMin_m = 0;
    double circleMax_m = 0;
    std::string screw;  ///< thread name, "UNC 4-40", "M3"
    bool operator==(const BoltPattern&) const = default;
};

/// One end of a part. Its frame's origin is the middle of the seating face; z runs along the
/// chain, from the support toward the switch, at a base port as at an outlet, so mated port
/// frames coincide but for the clocking turn about z.
struct Port {
    Interface interface = Interface::thread;
    Gender gender = Gender::female;
    std::optional<Thread> thread;        ///< only for Interface::thread
    std::optional<BoltPattern> pattern;  ///< only for Interface::boltPattern
    Figure length;        ///< male: how far the screw stands out; female: how deep the thread is; m
    std::string material; ///< key of resources/materials, for thread strength
    bool lockRing = false;///< a ring or nut that fixes the clocking at any angle
    bool operator==(const Port&) const = default;
};

/// "1/4-20 socket, 8 mm deep": for sentences and lists.
std::string describe(const Port& port);

}  // namespace hither
