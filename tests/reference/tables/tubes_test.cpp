#include <catch2/catch.hpp>

#include <cmath>
#include <string>

#include "core/units/thread.h"

using namespace hither;

// Pipe: ASTM D1785 outside diameters (us.misumi-ec.com/blog/pvc-cpvc-pipe-dimesions), mm as printed there.
// Conduit: steeltubeinstitute.org and engineeringtoolbox.com conduit-size-d_1738, mm as printed there.
TEST_CASE("pipe and conduit outside diameters agree with the published tables", "[tubes]") {
    struct Row { const char* name; double inch, mm; };
    for (const Row& row : {Row{"NPS 1/2", 0.840, 21.34}, Row{"NPS 3/4", 1.050, 26.67}, Row{"NPS 1", 1.315, 33.40}, Row{"NPS 1-1/4", 1.660, 42.16},
                           Row{"EMT 1/2", 0.706, 17.9}, Row{"EMT 3/4", 0.922, 23.4}, Row{"EMT 1", 1.163, 29.5}, Row{"EMT 1-1/4", 1.510, 38.4}}) {
        INFO(row.name);
        const auto tube = parseTube(row.name);
        REQUIRE(tube);
        CHECK(tube.value->outside_m / 0.0254 == Approx(row.inch).epsilon(1e-12));
        CHECK(std::abs(tube.value->outside_m * 1000 - row.mm) <= (std::string(row.name).substr(0, 3) == "EMT" ? 0.05 : 0.006));
    }
}

// The outside of a tube is its size: 7/8 in is 22.225 mm and 1 in 25.40 mm (an inch is 25.4 mm by definition).
TEST_CASE("a tube by its outside is as large as it says", "[tubes]") {
    CHECK(parseTube("7/8 in").value->outside_m * 1000 == Approx(22.225).epsilon(1e-12));
    CHECK(parseTube("1 in").value->outside_m * 1000 == Approx(25.40).epsilon(1e-12));
}
