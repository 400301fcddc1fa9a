#include <catch2/catch.hpp>

#include <cstring>

#include "core/storage/plan_file.h"
#include "core/storage/plan_rules.h"
#include "sample.h"

using namespace hither;
using namespace hither::test;

namespace {

const std::string& whole() {
    static const std::string bytes = planToBytes(everyKeyPlan()).bytes.value();
    return bytes;
}
const Plan& original() {
    static const Plan plan = everyKeyPlan();
    return plan;
}

/// What any damage must come to. Gives whether the file still reads.
bool fine(const std::string& bytes) {
    const PlanRead read = planFromBytes(bytes, "damaged.hither");
    if (read.plan) {
        REQUIRE(read.problems.empty());
        REQUIRE(*read.plan == original());
        return true;
    }
    REQUIRE_FALSE(read.problems.empty());
    for (const StorageError& p : read.problems) {
        REQUIRE(p.file == "damaged.hither");
        {
            REQUIRE_FALSE(p.facts.at("found").empty());
            REQUIRE(isPrintableText(p.place, false));
            for (const auto& [key, value] : p.facts) REQUIRE(isPrintableText(value, false));
        }
        REQUIRE_FALSE(p.facts.at("allowed").empty());
    }
    return false;
}

}  // namespace

TEST_CASE("each byte of the header, flipped in every bit") {
    int readable = 0;
    for (std::size_t at = 0; at < 100; ++at)
        for (int bit = 0; bit < 8; ++bit) {
            CAPTURE(at, bit);
            std::string b = whole();
            b[at] = static_cast<char>(b[at] ^ (1 << bit));
            const bool read = fine(b);
            readable += read ? 1 : 0;
            if (at < 16 || (at >= 60 && at < 64) || (at >= 68 && at < 72)) REQUIRE_FALSE(read);
        }
    INFO(readable << " of 800 still read");
    CHECK(readable < 800);
}

TEST_CASE("every truncation by page, and just around it") {
    const std::size_t page = 1024;
    for (std::size_t n = 0; n * page < whole().size(); ++n)
        for (const int off : {-1, 0, 1, 100}) {
            const auto size = static_cast<long>(n * page) + off;
            if (size < 0) continue;
            CAPTURE(size);
            REQUIRE_FALSE(fine(whole().substr(0, static_cast<std::size_t>(size))));
        }
    // The same with a header that promises no more than is left: only the pages can tell.
    for (std::size_t n = 1; n * page < whole().size(); ++n) {
        CAPTURE(n);
        std::string b = whole().substr(0, n * page);
        b[28] = b[29] = 0;
        b[30] = static_cast<char>(n >> 8);
        b[31] = static_cast<char>(n & 255);
        REQUIRE_FALSE(fine(b));
    }
    REQUIRE_FALSE(fine(whole().substr(0, whole().size() - 1)));
    REQUIRE_FALSE(fine(whole() + '\0'));
    REQUIRE_FALSE(fine(whole() + std::string(page, '\0')));
}

TEST_CASE("three thousand files with random bytes changed") {
    std::mt19937_64 random(20261125);
    int readable = 0;
    for (int i = 0; i < 3000; ++i) {
        std::string b = whole();
        const int count = std::uniform_int_distribution<int>(1, 1 + i % 8)(random);
        for (int k = 0; k < count; ++k)
            b[std::uniform_int_distribution<std::size_t>(0, b.size() - 1)(random)] = static_cast<char>(std::uniform_int_distribution<int>(0, 255)(random));
        CAPTURE(i);
        readable += fine(b) ? 1 : 0;
    }
    INFO(readable << " of 3000 still read");
    CHECK(readable < 3000);
    CHECK(readable > 0);  // damage in free space harms nothing
}

TEST_CASE("pages swapped, blanked and pointed elsewhere") {
    std::mt19937_64 random(3);
    const std::size_t page = 1024, pages = whole().size() / page;
    for (int i = 0; i < 400; ++i) {
        std::string b = whole();
        const std::size_t p = std::uniform_int_distribution<std::size_t>(0, pages - 1)(random), q = std::uniform_int_distribution<std::size_t>(0, pages - 1)(random);
        CAPTURE(p, q);
        switch (i % 4) {
            case 0:
                for (std::size_t k = 0; k < page; ++k) std::swap(b[p * page + k], b[q * page + k]);
                break;
            case 1: b.replace(p * page, page, std::string(page, '\0')); break;
            case 2: b.replace(p * page, page, std::string(page, '\xff')); break;
            default: {  // the right-most child or the first cell's child of a page
                const std::size_t at = p * page + (p == 0 ? 100 : 0) + 8;
                b[at + 3] = static_cast<char>(q);
                break;
            }
        }
        fine(b);
    }
}
