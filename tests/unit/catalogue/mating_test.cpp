#include <catch2/catch.hpp>

#include "core/catalogue/mating.h"

using namespace hither;

namespace {

Figure of(double metres, BasisKind kind = BasisKind::measured) { return {metres, {kind, {}}}; }

Port threaded(const char* thread, Gender gender, Figure length) {
    Port port;
    port.thread = *parseThread(thread).value;
    port.gender = gender;
    port.length = std::move(length);
    return port;
}
Port plain(Interface interface, Gender gender) {
    Port port;
    port.interface = interface;
    port.gender = gender;
    return port;
}
Port pattern(Gender gender, int count, double circleMin_mm, double circleMax_mm, const char* screw = "UNC 4-40") {
    Port port = plain(Interface::boltPattern, gender);
    port.pattern = BoltPattern{count, circleMin_mm / 1000, circleMax_mm / 1000, screw};
    return port;
}

}  // namespace

TEST_CASE("a camera screw of 4.5 mm holds in 1/4-20 and not in 3/8-16", "[catalogue][mating]") {
    // ISO 1222: the screw stands out 4.5 mm for both threads (as given by photo-cafeteria.com and a
    // public thread library). Pitches 25.4/20 and 25.4/16 mm (ASME B1.1): 4.5/1.27 = 3.54 turns,
    // 4.5/1.5875 = 2.83 turns. The socket of the camera on that page is 7.4 mm deep.
    const Mate small = mate(threaded("1/4-20", Gender::male, of(0.0045)), threaded("1/4-20", Gender::female, of(0.0074)));
    CHECK(small.fault == MateFault::none);
    CHECK(small.goesTogether());
    CHECK(small.threaded);
    CHECK(small.turns == Approx(3.5433).margin(5e-5));
    CHECK(small.engaged_m == 0.0045);
    const Mate large = mate(threaded("3/8-16", Gender::male, of(0.0045)), threaded("3/8-16", Gender::female, of(0.0074)));
    CHECK(large.fault == MateFault::tooFewTurns);
    CHECK_FALSE(large.goesTogether());
    CHECK(large.turns == Approx(2.8346).margin(5e-5));
}

TEST_CASE("three turns exactly hold, a hair less do not, as long as the socket is deep, a hair longer bottoms", "[catalogue][mating]") {
    const double pitch = 0.0254 / 20;
    const Port socket = threaded("1/4-20", Gender::female, of(0.010));
    CHECK(mate(threaded("1/4-20", Gender::male, of(3 * pitch)), socket).fault == MateFault::none);
    CHECK(mate(threaded("1/4-20", Gender::male, of(3 * pitch * (1 - 1e-7))), socket).fault == MateFault::tooFewTurns);
    CHECK(mate(threaded("1/4-20", Gender::male, of(0.010)), socket).fault == MateFault::none);
    CHECK(mate(threaded("1/4-20", Gender::male, of(0.010 + 1e-7)), socket).fault == MateFault::bottoms);
    // A shallow socket makes too few turns too, but what happens at the bench is that the screw bottoms.
    CHECK(mate(threaded("1/4-20", Gender::male, of(0.006)), threaded("1/4-20", Gender::female, of(0.003))).fault == MateFault::bottoms);
}

TEST_CASE("a thread mates either way round and engages the shorter of stud and socket", "[catalogue][mating]") {
    const Port stud = threaded("M6", Gender::male, of(0.009, BasisKind::assumed)), socket = threaded("M6", Gender::female, of(0.012, BasisKind::published));
    for (const Mate& m : {mate(stud, socket), mate(socket, stud)}) {
        CHECK(m.fault == MateFault::none);
        CHECK(m.engaged_m == 0.009);
        CHECK(m.turns == Approx(9.0));  // M6 coarse pitch 1 mm (ISO 261)
        CHECK(m.basis == BasisKind::assumed);
        CHECK_FALSE(m.locked);
    }
    Port ring = stud;
    ring.lockRing = true;
    CHECK(mate(ring, socket).locked);
    CHECK(mate(socket, ring).locked);
}

TEST_CASE("why two threads do not go together", "[catalogue][mating]") {
    const Port stud = threaded("1/4-20", Gender::male, of(0.006));
    CHECK(mate(stud, stud).fault == MateFault::genderSame);
    CHECK(mate(stud, threaded("3/8-16", Gender::female, of(0.01))).fault == MateFault::threadDiffers);
    CHECK(mate(stud, threaded("M6", Gender::female, of(0.01))).fault == MateFault::threadDiffers);  // near in size, another thread
    CHECK(mate(stud, plain(Interface::accessoryShoe, Gender::female)).fault == MateFault::interfaceDiffers);
    CHECK_FALSE(mate(stud, threaded("3/8-16", Gender::female, of(0.01))).threaded);
}

TEST_CASE("a thread of unknown length may go together, unless the other end alone is too short", "[catalogue][mating]") {
    const Port unknownSocket = threaded("1/4-20", Gender::female, {}), unknownStud = threaded("1/4-20", Gender::male, {});
    const Mate maybe = mate(threaded("1/4-20", Gender::male, of(0.006)), unknownSocket);
    CHECK(maybe.fault == MateFault::lengthUnknown);
    CHECK(maybe.goesTogether());
    CHECK(maybe.basis == BasisKind::unknown);
    CHECK(maybe.threaded);
    CHECK(mate(unknownStud, unknownSocket).fault == MateFault::lengthUnknown);
    const Mate never = mate(threaded("1/4-20", Gender::male, of(0.002, BasisKind::assumed)), unknownSocket);
    CHECK(never.fault == MateFault::tooFewTurns);
    CHECK(never.basis == BasisKind::assumed);
    CHECK(mate(unknownStud, threaded("1/4-20", Gender::female, of(0.003))).fault == MateFault::tooFewTurns);
}

TEST_CASE("plates, shoes and pads go together by gender", "[catalogue][mating]") {
    for (const Interface interface : {Interface::dovetailPlate, Interface::accessoryShoe, Interface::hookAndLoop, Interface::adhesivePad}) {
        CHECK(mate(plain(interface, Gender::male), plain(interface, Gender::female)).fault == MateFault::none);
        CHECK(mate(plain(interface, Gender::female), plain(interface, Gender::male)).fault == MateFault::none);
        CHECK(mate(plain(interface, Gender::male), plain(interface, Gender::male)).fault == MateFault::genderSame);
        CHECK_FALSE(mate(plain(interface, Gender::male), plain(interface, Gender::female)).threaded);
        CHECK(mate(plain(interface, Gender::male), plain(Interface::thread, Gender::female)).fault == MateFault::interfaceDiffers);
    }
}

TEST_CASE("screws find holes when circle, screw and number agree", "[catalogue][mating]") {
    const auto fault = [](const Port& a, const Port& b) { return mate(a, b).fault; };
    const Port two = pattern(Gender::male, 2, 30, 30);
    CHECK(fault(two, pattern(Gender::female, 2, 30, 30)) == MateFault::none);
    CHECK(mate(two, pattern(Gender::female, 2, 30, 30)).clockingSteps == 2);
    CHECK(mate(pattern(Gender::female, 4, 30, 30), two).clockingSteps == 4);  // two screws in a plate with four holes
    CHECK(fault(two, pattern(Gender::female, 3, 30, 30)) == MateFault::patternDiffers);
    CHECK(fault(pattern(Gender::male, 4, 30, 30), pattern(Gender::female, 2, 30, 30)) == MateFault::patternDiffers);
    CHECK(fault(two, pattern(Gender::male, 2, 30, 30)) == MateFault::genderSame);
    CHECK(fault(two, pattern(Gender::female, 2, 30, 30, "M3")) == MateFault::patternDiffers);
    // Circles within half a millimetre, a screw's play in its hole, agree; exactly at it too.
    CHECK(fault(two, pattern(Gender::female, 2, 30.5, 30.5)) == MateFault::none);
    CHECK(fault(two, pattern(Gender::female, 2, 30.51, 30.51)) == MateFault::patternDiffers);
    CHECK(fault(two, pattern(Gender::female, 2, 20, 29.4)) == MateFault::patternDiffers);
    CHECK(fault(two, pattern(Gender::female, 2, 25, 40)) == MateFault::none);  // slotted plate
    // One screw in the middle turns freely and finds no circle.
    const Mate single = mate(pattern(Gender::male, 1, 0, 0), pattern(Gender::female, 1, 0, 0));
    CHECK(single.fault == MateFault::none);
    CHECK(single.clockingSteps == 0);
    CHECK(fault(pattern(Gender::male, 1, 0, 0), pattern(Gender::female, 2, 30, 30)) == MateFault::patternDiffers);
}

TEST_CASE("of several base ports the one that holds best is taken", "[catalogue][mating]") {
    Part next;
    CHECK(mateWith(plain(Interface::accessoryShoe, Gender::female), next).base == -1);
    next.bases = {plain(Interface::adhesivePad, Gender::female), threaded("1/4-20", Gender::female, of(0.002)), threaded("1/4-20", Gender::female, of(0.005)),
                  threaded("1/4-20", Gender::female, of(0.008)), threaded("1/4-20", Gender::female, {})};
    CHECK(mateWith(threaded("1/4-20", Gender::male, of(0.005)), next).base == 2);
    CHECK(mateWith(threaded("1/4-20", Gender::male, of(0.0081)), next).base == 4);  // bottoms in all that are known
    CHECK(mateWith(plain(Interface::adhesivePad, Gender::male), next).base == 0);
    const BestMate none = mateWith(threaded("3/8-16", Gender::male, of(0.005)), next);
    CHECK(none.base == 1);  // none goes together: the nearest, the first of its kind
    CHECK(none.mate.fault == MateFault::threadDiffers);
}

TEST_CASE("ports are described in the words of the bench", "[catalogue][mating]") {
    CHECK(describe(threaded("1/4-20", Gender::female, of(0.008))) == "1/4-20 socket, 8 mm deep");
    CHECK(describe(threaded("3/8-16", Gender::male, of(0.0045))) == "3/8-16 stud, 4.5 mm long");
    CHECK(describe(threaded("M5", Gender::female, {})) == "M5 socket, depth not known");
    Port ring = threaded("M5", Gender::male, of(0.010));
    ring.lockRing = true;
    CHECK(describe(ring) == "M5 stud, 10 mm long, with a lock ring");
    CHECK(describe(pattern(Gender::male, 2, 30, 30)) == "2 4-40 screws on a circle of 30 mm");
    CHECK(describe(pattern(Gender::female, 4, 25, 40, "M3")) == "4 holes for M3 on a circle of 25 mm to 40 mm");
    CHECK(describe(pattern(Gender::female, 1, 0, 0)) == "1 hole for 4-40 in the middle");
    CHECK(describe(plain(Interface::dovetailPlate, Gender::female)) == "clamp for a 38 mm dovetail plate");
}
