#include <catch2/catch.hpp>

#include "core/units/quantity.h"
#include "core/units/thread.h"

using namespace hither;

TEST_CASE("threads are read under each of their usual names", "[units]") {
    struct Row { const char* typed; const char* name; };
    for (const Row& row : {Row{"1/4-20 UNC", "UNC 1/4-20"}, {"UNC 1/4-20", "UNC 1/4-20"}, {"1/4-20", "UNC 1/4-20"}, {"1/4\"-20", "UNC 1/4-20"}, {"1/4 in - 20 unc", "UNC 1/4-20"}, {"\xC2\xBC-20", "UNC 1/4-20"},
                           {"3/8-16", "UNC 3/8-16"}, {"#6-32", "UNC 6-32"}, {"6-32 UNC", "UNC 6-32"}, {"No. 6-32", "UNC 6-32"}, {"UNC 4-40", "UNC 4-40"}, {"5/8-27", "UNS 5/8-27"}, {"UNS 5/8-27", "UNS 5/8-27"},
                           {"M5", "M5"}, {"m5 x 0.8", "M5"}, {"M5\xC3\x97" "0,8", "M5"}, {"M 3", "M3"}, {"#10-32", "UNF 10-32"}, {"10-24", "UNC 10-24"}, {"M2.5", "M2.5"}}) {
        const auto read = parseThread(row.typed);
        INFO(row.typed << ": " << read.reason);
        REQUIRE(read);
        CHECK(read.value->name == row.name);
    }
    for (const Thread& thread : knownThreads()) {
        INFO(thread.name);
        REQUIRE(parseThread(thread.name));
        CHECK(*parseThread(thread.name).value == thread);
    }
    CHECK(knownThreads().size() == 10);
}

TEST_CASE("what is no known thread is refused with the reason", "[units]") {
    struct Row { const char* typed; const char* saysSo; };
    for (const Row& row : {Row{"", "nothing was typed"}, {"1/4", "threads per inch"}, {"1/4-", "whole number"}, {"1/4-21", "not among"}, {"1/4-20 UNF", "is UNC, not UNF"}, {"M", "no diameter"}, {"M5 x", "no pitch"}, {"M5 x 0.5", "coarse"},
                           {"M7", "not among"}, {"1/4-20 BSW", "55 degrees"}, {"1/4-20 UNC LH", "left over"}, {"M5 LH", "left over"}, {"UNC", "no thread size"}, {"camera", "no thread size"}, {"1/-20", "no lower number"}, {"-", "no thread size"}}) {
        const auto read = parseThread(row.typed);
        INFO(row.typed << ": " << read.reason);
        REQUIRE_FALSE(read);
        CHECK(read.reason.find(row.saysSo) != std::string::npos);
    }
}

TEST_CASE("a thread that is not engaged has no shear area", "[units]") {
    const Thread t = *parseThread("1/4-20").value;
    CHECK(t.externalShearArea_m2(0) == 0);
    CHECK(t.internalShearArea_m2(-0.001) == 0);
}

TEST_CASE("a tube's trade size and its outside are never confused", "[units]") {
    struct Row { const char* typed; double mm; };
    for (const Row& row : {Row{"NPS 3/4", 26.67}, {"3/4 NPS", 26.67}, {"3/4 in pipe", 26.67}, {"pipe 3/4\"", 26.67}, {"DN 20", 26.67}, {"NPS 1-1/4", 42.164}, {"NPS 1 1/4", 42.164}, {"1\xC2\xBC in pipe", 42.164},
                           {"EMT 1/2", 17.9324}, {"1/2 EMT", 17.9324}, {"conduit 1/2 in", 17.9324}, {"7/8 in", 22.225}, {"3/4 in", 19.05}, {"tube 3/4 in", 19.05}, {"3/4 in tube", 19.05}, {"3/4 in OD", 19.05},
                           {"1\xC2\xBD in tube", 38.1}, {"22.2 mm", 22.2}, {"22,2 mm", 22.2}}) {
        const auto read = parseTube(row.typed);
        INFO(row.typed << ": " << read.reason);
        REQUIRE(read);
        CHECK(read.value->outside_m * 1000 == Approx(row.mm).epsilon(1e-12));
        CHECK(read.value->asTyped == row.typed);
    }
    CHECK(parseTube("  7/8 in ").value->asTyped == "7/8 in");
}

TEST_CASE("a bare trade size says everything it could be", "[units]") {
    const auto bare = parseTube("3/4");
    REQUIRE_FALSE(bare);
    for (const char* fact : {"NPS 3/4", "26.67 mm", "EMT 3/4", "23.42 mm", "3/4 in", "19.05 mm"}) { INFO(bare.reason); CHECK(bare.reason.find(fact) != std::string::npos); }
    for (const char* wrong : {"", "22.2", "7/8", "tube 3/4", "NPS", "NPS 7/8", "NPS 20 mm", "EMT 3", "NPS EMT 1/2", "0 mm", "-20 mm", "600 mm", "pipe", "NPS 1/0", "3/4 xx"}) { INFO(wrong); CHECK_FALSE(parseTube(wrong)); }
    CHECK(parseTube("22.2").reason.find("22.2 mm") != std::string::npos);
}
