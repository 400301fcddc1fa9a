#include <catch2/catch.hpp>

#include <cmath>

#include "core/units/quantity.h"
#include "core/units/thread.h"

using namespace hither;

// Unified inch. Diameters: the basic sizes of ASME B1.1 (inch). Stress areas: ASME B1.1 as printed in
// formulafactory.tools/?p=4730 and wermac.org/bolts/bolts_thread_pitch_chart.html (square inch). The
// printed 0.00604 of #4-40 is 0.12 % above the formula's own 0.006033: hence 0.2 %.
TEST_CASE("unified threads agree with ASME B1.1", "[threads]") {
    struct Row { const char* name; double major, pitchDiameter, minor, stress; };
    for (const Row& row : {Row{"UNC 4-40", 0.1120, 0.0958, 0.0849, 0.00604}, Row{"UNC 6-32", 0.1380, 0.1177, 0.1042, 0.00909},
                           Row{"UNC 1/4-20", 0.2500, 0.2175, 0.1959, 0.0318}, Row{"UNC 3/8-16", 0.3750, 0.3344, 0.3073, 0.0775}}) {
        INFO(row.name);
        const Thread t = *parseThread(row.name).value;
        CHECK(t.majorDiameter_m / 0.0254 == Approx(row.major).epsilon(1e-12));
        CHECK(std::abs(t.pitchDiameter_m() / 0.0254 - row.pitchDiameter) <= 0.00006);
        CHECK(std::abs(t.internalMinorDiameter_m() / 0.0254 - row.minor) <= 0.00006);
        CHECK(t.stressArea_m2() / (0.0254 * 0.0254) == Approx(row.stress).epsilon(0.002));
    }
    // 5/8-27 UNS: basic pitch diameter 0.6009 in, internal minor 0.585 in (B1.1-type table at huatuo6.cn).
    const Thread microphone = *parseThread("5/8-27").value;
    CHECK(std::abs(microphone.pitchDiameter_m() / 0.0254 - 0.6009) <= 0.00006);
    CHECK(std::abs(microphone.internalMinorDiameter_m() / 0.0254 - 0.585) <= 0.0005);
}

// ISO 261 / ISO 724 metric coarse (mm). Pitch diameters and stress areas (mm2): EN ISO 898-1 as printed
// at usefastener.com, ux.uis.no/~hirpa/6KdB/ME/StressArea.htm and euler9.tripod.com/bolt-database.
TEST_CASE("metric coarse threads agree with ISO 724 and ISO 898-1", "[threads]") {
    struct Row { const char* name; double pitch, pitchDiameter, stress, digits; };
    for (const Row& row : {Row{"M3", 0.5, 2.6752, 5.0308, 0.00005}, Row{"M4", 0.7, 3.5453, 8.78, 0.005}, Row{"M5", 0.8, 4.4804, 14.183, 0.0006}, Row{"M6", 1.0, 5.3505, 20.123, 0.0005}, Row{"M8", 1.25, 7.1881, 36.609, 0.0006}}) {
        INFO(row.name);
        const Thread t = *parseThread(row.name).value;
        CHECK(t.pitch_m * 1000 == Approx(row.pitch).epsilon(1e-12));
        CHECK(std::abs(t.pitchDiameter_m() * 1000 - row.pitchDiameter) <= 0.00006);
        CHECK(std::abs(t.stressArea_m2() * 1e6 - row.stress) <= row.digits);
    }
}

namespace {
/// The same area without the closed form, from the 60-degree profile alone: on a cylinder of radius r a
/// ridge of the stud covers the stretch of one pitch where the profile's surface lies outside r. The
/// helix is unrolled in many small pieces of one turn; the flanks are straight lines at 30 degrees to
/// the normal of the axis through the points a quarter pitch from the ridge's middle on the pitch cylinder.
double shearedByCounting(const Thread& t, double radius, double engaged, bool stud) {
    const int pieces = 200000;
    const double slope = std::sqrt(3.0);  // radius per axial length on a flank: 1 / tan(30 degrees)
    int inside = 0;
    for (int i = 0; i < pieces; ++i) {
        const double fromMiddle = std::abs((i + 0.5) / pieces - 0.5) * t.pitch_m;  // axial, from the middle of a ridge of the stud
        const double surface = t.pitchDiameter_m() / 2 + slope * (t.pitch_m / 4 - fromMiddle);
        if ((surface > radius) == stud) ++inside;
    }
    return 2 * pi * radius * engaged * inside / pieces;
}
}  // namespace

TEST_CASE("thread shear areas agree with the profile counted piece by piece", "[threads]") {
    for (const Thread& t : knownThreads()) {
        INFO(t.name);
        const double engaged = 0.0045;  // ISO 1222: a camera screw stands out 4.5 mm
        CHECK(t.externalShearArea_m2(engaged) == Approx(shearedByCounting(t, t.internalMinorDiameter_m() / 2, engaged, true)).epsilon(1e-4));
        CHECK(t.internalShearArea_m2(engaged) == Approx(shearedByCounting(t, t.majorDiameter_m / 2, engaged, false)).epsilon(1e-4));
    }
}

// By hand for 1/4-20 over 4.5 mm: P = 1.27, D1 = 4.97518, tooth 0.75 P wide at D1 and 0.875 P at D, so
// pi * 4.97518 * 0.75 * 4.5 = 52.751 mm2 and pi * 6.35 * 0.875 * 4.5 = 78.550 mm2.
TEST_CASE("thread shear areas of the camera screw agree with a hand computation", "[threads]") {
    const Thread t = *parseThread("1/4-20").value;
    CHECK(t.externalShearArea_m2(0.0045) * 1e6 == Approx(52.751).epsilon(2e-5));
    CHECK(t.internalShearArea_m2(0.0045) * 1e6 == Approx(78.550).epsilon(2e-5));
}
