#include "core/checks/finding.h"

#include <cmath>

#include "core/units/tolerances.h"

namespace hither {

const char* word(Verdict verdict) {
    switch (verdict) {
        case Verdict::meets: return "meets";
        case Verdict::close: return "close";
        case Verdict::misses: return "misses";
        case Verdict::unknown: return "unknown";
    }
    return "unknown";
}

int gravity(Verdict verdict) {
    switch (verdict) {
        case Verdict::misses: return 3;
        case Verdict::unknown: return 2;
        case Verdict::close: return 1;
        case Verdict::meets: return 0;
    }
    return 2;
}

const char* word(CheckKind kind) {
    switch (kind) {
        case CheckKind::fit: return "fit";
        case CheckKind::reach: return "reach";
        case CheckKind::aim: return "aim";
        case CheckKind::clearance: return "clearance";
        case CheckKind::personReach: return "person_reach";
        case CheckKind::hold: return "hold";
        case CheckKind::give: return "give";
        case CheckKind::press: return "press";
        case CheckKind::steady: return "steady";
        case CheckKind::returning: return "return";
        case CheckKind::room: return "room";
        case CheckKind::bedGaps: return "bed_gaps";
        case CheckKind::cords: return "cords";
    }
    return "fit";
}

Verdict judgeAtMost(double value, double limit) {
    const double slack = tolerance::limitSlack;
    if (!(value <= limit + slack)) return Verdict::misses;
    return value > limit - tolerance::closeShare * std::abs(limit) + slack ? Verdict::close : Verdict::meets;
}

Verdict judgeAtLeast(double value, double limit) {
    const double slack = tolerance::limitSlack;
    if (!(value >= limit - slack)) return Verdict::misses;
    return value < limit + tolerance::closeShare * std::abs(limit) - slack ? Verdict::close : Verdict::meets;
}

}  // namespace hither
