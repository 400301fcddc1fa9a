#include "core/catalogue/mating.h"

#include <algorithm>
#include <cassert>

#include "core/units/tolerances.h"

namespace hither {

namespace {

/// Fewer full turns than this do not hold (the project's rule for camera screws, which stand out
/// only 4.5 mm, so that the usual one diameter of engagement cannot be had).
constexpr double leastTurns = 3;

bool reaches(double value, double limit) { return value >= limit - tolerance::limitSlack * std::max(1.0, limit); }

void judgeThread(const Port& outlet, const Port& base, Mate& mate) {
    if (!outlet.thread || !base.thread || !(*outlet.thread == *base.thread)) {
        mate.fault = MateFault::threadDiffers;
        return;
    }
    if (outlet.gender == base.gender) {
        mate.fault = MateFault::genderSame;
        return;
    }
    mate.threaded = true;
    mate.locked = outlet.lockRing || base.lockRing;
    const Figure& stud = outlet.gender == Gender::male ? outlet.length : base.length;
    const Figure& socket = outlet.gender == Gender::male ? base.length : outlet.length;
    const double pitch = outlet.thread->pitch_m;
    if (!stud.known() || !socket.known()) {
        // What is known can already be too little, whatever the other end is.
        const Figure& one = stud.known() ? stud : socket;
        mate.fault = MateFault::lengthUnknown;
        mate.basis = BasisKind::unknown;
        if (one.known() && !reaches(*one.value / pitch, leastTurns)) {
            mate.fault = MateFault::tooFewTurns;
            mate.engaged_m = *one.value;
            mate.turns = mate.engaged_m / pitch;
            mate.basis = one.basis.kind;
        }
        return;
    }
    mate.basis = weakest(stud.basis.kind, socket.basis.kind);
    mate.engaged_m = std::min(*stud.value, *socket.value);
    mate.turns = mate.engaged_m / pitch;
    if (!reaches(mate.turns, leastTurns)) mate.fault = MateFault::tooFewTurns;
    if (!reaches(*socket.value, *stud.value)) mate.fault = MateFault::bottoms;
}

void judgePattern(const Port& outlet, const Port& base, Mate& mate) {
    if (outlet.gender == base.gender) {
        mate.fault = MateFault::genderSame;
        return;
    }
    mate.fault = MateFault::patternDiffers;
    if (!outlet.pattern || !base.pattern) return;
    const BoltPattern& screws = outlet.gender == Gender::male ? *outlet.pattern : *base.pattern;
    const BoltPattern& holes = outlet.gender == Gender::male ? *base.pattern : *outlet.pattern;
    if (screws.screw != holes.screw || screws.count < 1 || holes.count < 1) return;
    // Equally spaced screws find holes when their number divides that of the holes: two in four.
    if (holes.count % screws.count != 0) return;
    if (std::max(screws.circleMin_m, holes.circleMin_m) >
        std::min(screws.circleMax_m, holes.circleMax_m) + tolerance::boltCircle_m + tolerance::limitSlack) return;
    mate.fault = MateFault::none;
    mate.clockingSteps = holes.count > 1 ? holes.count : 0;
}

/// The smaller, the nearer two ports are to going together.
int distance(MateFault fault) {
    switch (fault) {
        case MateFault::none: return 0;
        case MateFault::lengthUnknown: return 1;
        case MateFault::tooFewTurns: return 2;
        case MateFault::bottoms: return 3;
        case MateFault::patternDiffers: return 4;
        case MateFault::threadDiffers: return 5;
        case MateFault::genderSame: return 6;
        case MateFault::interfaceDiffers: return 7;
    }
    return 8;
}

}  // namespace

Mate mate(const Port& outlet, const Port& base) {
    Mate mate;
    if (outlet.interface != base.interface) {
        mate.fault = MateFault::interfaceDiffers;
        return mate;
    }
    switch (outlet.interface) {
        case Interface::thread: judgeThread(outlet, base, mate); break;
        case Interface::boltPattern: judgePattern(outlet, base, mate); break;
        default:
            if (outlet.gender == base.gender) mate.fault = MateFault::genderSame;
    }
    return mate;
}

BestMate mateWith(const Port& outlet, const Part& next) {
    BestMate best;
    for (std::size_t i = 0; i < next.bases.size(); ++i) {
        const Mate here = mate(outlet, next.bases[i]);
        const int nearer = distance(here.fault) - distance(best.mate.fault);
        if (best.base < 0 || nearer < 0 || (nearer == 0 && here.turns > best.mate.turns)) best = {static_cast<int>(i), here};
    }
    return best;
}

}  // namespace hither
